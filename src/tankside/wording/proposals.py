"""What a review proposes, in words: what was seen, what explains it, and the one change on offer."""

from __future__ import annotations

from dataclasses import dataclass
from typing import assert_never

from tankside.core.quantities.display import index_text, temperature_text, time_text, to_step
from tankside.core.quantities.preferences import Preferences
from tankside.core.review.evidence import YOUR_ANSWER
from tankside.core.review.proposals import KNOWN_S, Proposal
from tankside.wording.percent import LEAST_PERCENT, percent_band
from tankside.wording.refusals import PLAIN

LEAVE = "Leave it as it is"
THIRDS = {1: "a third of a stop", 2: "two thirds of a stop", 3: "a stop"}


@dataclass(frozen=True, slots=True)
class SaidProposal:
    """`heading` is the change, `reasons` why, `take` stands on its button; empty where nothing is to take."""

    heading: str
    reasons: tuple[str, ...]
    take: str = ""
    taken: str = ""


def told_number(one: Proposal, value: float) -> float:
    """A number of a proposal as it is told: a time to what it is known, an index as cameras carry it."""
    return to_step(value, 0.1 if one.what == "index" else KNOWN_S)


def say_proposal(one: Proposal, preferences: Preferences = PLAIN) -> SaidProposal:
    """A proposal in words."""
    match one.what:
        case "time":
            return _time(one)
        case "index":
            return _index(one)
        case "temper":
            return _temper(one, preferences)
        case "keep":
            return SaidProposal(
                f"Keep {_time_of(one, one.old)}",
                (*_seen(one), "Under 3 % is too small to see: nothing to correct."),
            )
        case _:
            assert_never(one.what)


def changed_words(one: Proposal, preferences: Preferences = PLAIN) -> str:
    """Why a plan differs since that proposal was taken, for the plan that shows it."""
    seen = "; ".join(line.rstrip(".") for line in _seen(one))
    match one.what:
        case "time":
            new, old = _time_of(one, one.new), _time_of(one, one.old)
            return f"{new} instead of {old}. {seen}. Half of the correction."
        case "index":
            return f"{index_text(one.new)} instead of {index_text(one.old)}, at the same time. {seen}."
        case "temper":
            there = temperature_text(one.at_c or 0.0, preferences)
            return f"The time stays: last time it was {there} in the tank. {seen}."
        case "keep":
            return f"The time stays. {seen}."
        case _:
            assert_never(one.what)


def _time_of(one: Proposal, time_s: float) -> str:
    return time_text(told_number(one, time_s))


def _time(one: Proposal) -> SaidProposal:
    new = _time_of(one, one.new)
    full = one.full_percent
    reasons = [*_seen(one)]
    if full is not None:
        whole = _time_of(one, one.old * (1 + full.value / 100))
        reasons.append(f"All of it would be {percent_band(full)} of the time, {whole}; {_why_half(one)}.")
    reasons.append(f"{_time_of(one, one.old)} is kept beside it.")
    half = full is not None and abs(100 * (one.new / one.old - 1)) < abs(full.value) - LEAST_PERCENT
    heading = f"{new} instead of {_time_of(one, one.old)}"
    return SaidProposal(
        heading, tuple(reasons), f"Take half of it: {new}" if half else f"Take {new}", f"Taken: {new}"
    )


def _index(one: Proposal) -> SaidProposal:
    thirds = round(abs(one.stops) * 3)
    way = "more" if one.stops < 0 else "less"
    stops = THIRDS.get(thirds, f"{abs(one.stops):.1f} stops")
    shadows = "The shadows came out thin." if one.stops < 0 else "The shadows came out heavy."
    new = index_text(one.new)
    return SaidProposal(
        f"Expose the next roll at {new}",
        (
            f"{shadows} That is exposure, not time: {stops} {way} is half of it.",
            f"It is developed as {index_text(one.old)} was; {index_text(one.old)} is kept beside it.",
        ),
        f"Take {new}",
        f"Taken: {new}",
    )


def _temper(one: Proposal, preferences: Preferences) -> SaidProposal:
    there = temperature_text(one.at_c or 0.0, preferences)
    return SaidProposal(
        f"Temper, or {_time_of(one, one.new)} at {there}",
        (*_seen(one), f"The temperature explains it. {_time_of(one, one.old)} stays as it is."),
        "Temper next time",
        "Taken: temper",
    )


def _seen(one: Proposal) -> tuple[str, ...]:
    """What the negatives said, and what the log says of it."""
    seen, explained = one.seen_percent, one.explained_percent
    if seen.source == YOUR_ANSWER:
        word = "right" if seen.value == 0 else "harsh" if seen.value > 0 else "flat"
        said = f"You called the contrast {word}; that stands for {percent_band(seen)}."
    else:
        came = "as meant" if abs(seen.value) < LEAST_PERCENT else percent_band(seen)
        said = f"{_seen_on(seen.source)} came out {came} in contrast."
    if abs(explained.value) < LEAST_PERCENT:
        return (said, "Time and temperature explain nothing of it.")
    return (said, f"Time and temperature of the run explain {percent_band(explained)}.")


def _seen_on(source: str) -> str:
    """What the contrast was seen on.

    >>> _seen_on("your 3 step strips"), _seen_on("two densities")
    ('Your 3 step strips', 'The negatives')
    """
    return source[0].upper() + source[1:] if "step strip" in source else "The negatives"


def _why_half(one: Proposal) -> str:
    """Why not all of it is taken at once."""
    several = "step strips" in one.seen_percent.source
    return "a step is never more than half of it" if several else "one roll is weak evidence"
