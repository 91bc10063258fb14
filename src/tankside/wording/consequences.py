"""What the sink says when something went otherwise: what is, what it means, what can be done."""

from __future__ import annotations

from dataclasses import dataclass
from typing import assert_never

from tankside.core.quantities.display import temperature_text, time_text, volume_text
from tankside.core.quantities.preferences import Preferences
from tankside.core.run.consequences import Consequence
from tankside.core.run.doubts import Doubt
from tankside.core.run.state import RunState
from tankside.core.run.wrong_bottle import Contamination
from tankside.wording.cues import BATHS, LIQUIDS
from tankside.wording.fixer import fixer_past_words
from tankside.wording.refusals import PLAIN

RINSE = "Drain, three fills of water, developer for its full time."
BEST = {
    "pour-out-now": "Draining now",
    "rinse-then-develop": "Change the plan: three fills of water first",
    "end-tankful": "End this tankful",
    "": "",
}
WAYS = {
    "the-first-is-right": "The first is right",
    "the-second-is-right": "The second is right",
    "take-it-back": "Take it back",
    "let-it-stand": "Let it stand",
    "elapsed-is-right": "The program counted right",
    "wall-is-right": "The clock is right now",
}


@dataclass(frozen=True, slots=True)
class SaidAtSink:
    """`head` is readable in one breath; `more` follows; `best` stands on the button of the ready command."""

    head: str
    more: str = ""
    best: str = ""


def say_consequence(one: Consequence, state: RunState, preferences: Preferences = PLAIN) -> SaidAtSink:  # noqa: PLR0911
    """A consequence in words."""
    best = BEST[one.best_words]
    match one.code:
        case "over-time":
            return _over_time(one, best)
        case "outside-times":
            return _outside_times(one, state, preferences)
        case "image-gone":
            return SaidAtSink("The image is gone.", "Fixer came before the developer. Save the fixer.", best)
        case "before-developer":
            poured = _liquid(state, one, one.poured)
            more = f"{poured.capitalize()} came before the developer. {RINSE}"
            return SaidAtSink("Film unharmed.", more, best)
        case "unfixed":
            return SaidAtSink("Not fixed yet.", "Drain, fix, then begin the wash anew.", best)
        case "unwashed":
            return SaidAtSink("Not washed yet.", "Drain, wash, then a fresh wetting bath.", best)
        case "wrong-bottle":
            took, wanted = _liquid(state, one, one.poured), _liquid(state, one, one.owed)
            return SaidAtSink(f"That was {took}, not {wanted}.", "", best)
        case "fixer-past":
            return _fixer_past(one)
        case "contaminated":
            return _contaminated(one.contamination, preferences)
        case _:
            assert_never(one.code)


def say_doubt(one: Doubt, state: RunState) -> SaidAtSink:  # noqa: PLR0911 - one arm a doubt
    """A doubt as a question; its ways are in `WAYS`."""
    bath = BATHS[state.tankful(one.tankful).bath(one.bath).kind] if one.tankful and one.bath else ""
    apart = time_text(abs(one.by_s)) if one.by_s is not None else ""
    match one.code:
        case "poured-twice":
            return SaidAtSink(f"{bath} was noted as poured twice, {apart} apart. Which is right?")
        case "pour-not-noted":
            return SaidAtSink(f"{bath} was drained, but its pour was not noted.")
        case "drain-not-noted":
            return SaidAtSink(f"{bath} was followed by another bath, but its draining was not noted.")
        case "drained-again":
            return SaidAtSink(f"{bath} was noted as drained once more. Did it happen?")
        case "fate-again":
            return SaidAtSink(f"Where {bath} went was noted twice. Which is right?")
        case "fate-of-nothing":
            return SaidAtSink(f"{bath} was poured back, but never poured in.")
        case "reading-odd":
            return SaidAtSink(f"A tank {abs(one.by_k or 0.0):.0f} K from what was expected. Read right?")
        case "clock":
            return SaidAtSink(f"The clock of this machine jumped by {apart}.", "No end has moved by it.")
        case "clock-across":
            return SaidAtSink(f"This machine began again {apart} in the past.", "Look at a clock.")
        case _:
            assert_never(one.code)


def _over_time(one: Consequence, best: str) -> SaidAtSink:
    head = f"{time_text(one.over_s)} over." + (" Pour out now." if best else "")
    if one.contrast is None:
        return SaidAtSink(head, "", best)
    found, size = one.contrast.percent, one.contrast.size
    band = f"{found.value:+.0f} % ({found.low:.0f} to {found.high:.0f})"
    paper = {
        "too small to see": "Too small to see in the film.",
        "just": "Just to be seen.",
        "will show": "Print it on paper up to one grade softer.",
    }[size]
    return SaidAtSink(head, f"Contrast {band}. {paper} Every tap was kept.", best)


def _outside_times(one: Consequence, state: RunState, preferences: Preferences) -> SaidAtSink:
    rate = state.tankful(one.tankful).plan.development.rate
    least, most, reads = (
        temperature_text(value, preferences) for value in (rate.least_c, rate.most_c, one.reads_c or 0.0)
    )
    cold = (one.reads_c or 0.0) < rate.least_c
    more = f"Times are known for {least} to {most}, so no end moves by it."
    bath = "warmer" if cold else "cooler"
    return SaidAtSink(f"The tank reads {reads}.", f"{more} Stand it in {bath} water and read again.")


def _fixer_past(one: Consequence) -> SaidAtSink:
    if one.fixer is None:
        return SaidAtSink("The fixer was past its limit.")
    return SaidAtSink(*fixer_past_words(one.fixer))


def _contaminated(one: Contamination | None, preferences: Preferences) -> SaidAtSink:
    if one is None:
        return SaidAtSink("A bottle is contaminated.")
    what = f" of {one.kind}" if one.kind else ""
    head = f"{one.bottle} is contaminated and not used again."
    more = f"{volume_text(one.poured_ml, preferences)}{what} went into it."
    if one.most_strength is not None:
        more += f" It is at most {100 * one.most_strength:.0f} % of its strength."
    return SaidAtSink(head, f"{more} This film is unaffected.")


def _liquid(state: RunState, one: Consequence, bath: str | None) -> str:
    return LIQUIDS[state.tankful(one.tankful).bath(bath).kind] if bath else ""
