"""What the Densities pages show: one combination with its curves, its time, and what would narrow it."""

from __future__ import annotations

from collections.abc import Mapping, Sequence
from dataclasses import dataclass
from uuid import UUID
from zoneinfo import ZoneInfo

import numpy as np

from tankside.core.development.belief import Belief, contrast_after, time_for
from tankside.core.doubt.estimate import Estimate
from tankside.core.quantities.display import temperature_text, time_text
from tankside.core.quantities.preferences import Preferences
from tankside.core.refusals import Refusal, Refused
from tankside.core.review.strips import best_next
from tankside.web.drawing.family import (
    LAPTOP,
    PHONE,
    TIMES_LAPTOP,
    TIMES_PHONE,
    AgainstTime,
    Family,
    against_time,
    family,
)
from tankside.web.drawing.field import SIGNS, Sign
from tankside.web.shown.journal import ShownProposal, day_words
from tankside.web.shown.strip_curves import curve_table, reading_along, wish_of
from tankside.web.shown.strip_rows import StripRow, row_of
from tankside.wording.curves import finding_text
from tankside.wording.densities import (
    evidence_words,
    name_of,
    next_words,
    readings_note,
    speed_note,
    strips_between,
    time_words,
)
from tankside.wording.proposals import say_proposal
from tankside.wording.refusals import say
from tankside.workflows.read_densities import ReadCombination, ReadStrip
from tankside.workflows.records import KeptProposal

TABLE_TIMES = 6


@dataclass(frozen=True, slots=True)
class Wanted:
    """The time for a contrast, or the sentence that says why there is none."""

    contrast: str
    time: str
    sentence: str
    next: str
    refused: str
    own_aim: bool


@dataclass(frozen=True, slots=True)
class ShownCombination:
    """The whole page of one combination."""

    key: str
    title: str
    sentence: str
    wanted: Wanted | None
    laptop: Family | None
    phone: Family | None
    reading: str
    reading_of: str
    rows: tuple[StripRow, ...]
    times: tuple[AgainstTime, ...]
    notes: tuple[str, ...]
    curve_table: tuple[tuple[str, tuple[str, ...]], ...]
    time_table: tuple[tuple[str, str], ...]
    proposals: tuple[ShownProposal, ...]
    control: int


def shown_combination(
    read: ReadCombination,
    wanted: float,
    proposals: Sequence[KeptProposal],
    preferences: Preferences,
    zone: ZoneInfo,
) -> ShownCombination:
    """One combination in curves, figures and words."""
    ref_c = read.in_use.row.temp_c if read.in_use else read.strips[0].had.ref_c if read.strips else 20.0
    chosen = _chosen(read.strips, wanted)
    signs = {one.strip.key: SIGNS[n % len(SIGNS)] for n, one in enumerate(read.strips)}
    absolute = all(one.strip.exposed.log_h0 is not None for one in read.strips)
    wishes = [
        wish_of(one, signs[one.strip.key], absolute=absolute, chosen=one is chosen) for one in read.strips
    ]
    counts = "log exposure, lux seconds" if absolute else "log exposure through the tablet"
    time = _time(read.belief, wanted)
    return ShownCombination(
        key=str(read.combination.key),
        title=name_of(read.combination),
        sentence=_sentence(read, ref_c, preferences, zone),
        wanted=_wanted(read, wanted, time, ref_c, preferences),
        laptop=family(wishes, layout=LAPTOP, counts=counts) if wishes else None,
        phone=family(wishes, layout=PHONE, counts=counts) if wishes else None,
        reading=reading_along(wishes),
        reading_of=next((one.name for one in wishes if one.chosen), ""),
        rows=tuple(
            row_of(one, n, signs[one.strip.key], preferences, zone, chosen=one is chosen)
            for n, one in enumerate(read.strips, 1)
        ),
        times=_times(read, signs, wanted, time),
        notes=_notes(read, chosen),
        curve_table=curve_table(read.strips, wishes),
        time_table=_time_table(read),
        proposals=tuple(_proposal(one, preferences, zone) for one in proposals),
        control=len(read.control),
    )


def _sentence(read: ReadCombination, ref_c: float, preferences: Preferences, zone: ZoneInfo) -> str:
    """How many strips, when, at which temperature they count."""
    if not read.strips:
        return "No step strip tells a curve yet."
    days = [one.day.astimezone(zone) for one in read.strips]
    return strips_between(days, temperature_text(ref_c, preferences))


def _chosen(strips: Sequence[ReadStrip], wanted: float) -> ReadStrip | None:
    """The strip whose contrast is next to the wanted one."""
    apart = [(abs(one.judged.contrast.value - wanted), one) for one in strips if one.judged is not None]
    return min(apart, key=lambda pair: pair[0], default=(0.0, None))[1]


def _time(belief: Belief | None, wanted: float) -> Estimate | Refusal | None:
    """The time for a contrast, or why there is none."""
    if belief is None:
        return None
    try:
        return time_for(belief, wanted)
    except Refused as no:
        return no.refusal


def _wanted(
    read: ReadCombination,
    wanted: float,
    time: Estimate | Refusal | None,
    ref_c: float,
    preferences: Preferences,
) -> Wanted | None:
    """The answer of the page."""
    if read.belief is None or read.in_use is None or time is None:
        return None
    own = abs(wanted - read.in_use.aimed.contrast) < 0.005
    if isinstance(time, Refusal):
        return Wanted(f"{wanted:.2f}", "", "", "", say(time, preferences), own)
    from_what = evidence_words(len(read.judged), len(read.answers))
    return Wanted(
        f"{wanted:.2f}",
        time_words(time),
        f"at {temperature_text(ref_c, preferences)}, {from_what}.",
        next_words(best_next(read.belief, wanted), time),
        "",
        own,
    )


def _times(
    read: ReadCombination, signs: Mapping[UUID, Sign], wanted: float, time: Estimate | Refusal | None
) -> tuple[AgainstTime, ...]:
    """Contrast against time, for a laptop and for a phone."""
    if read.belief is None or not read.judged:
        return ()
    points = [
        (one.had.counted_s, one.found.contrast_index.value, signs[one.strip.key])
        for one in read.strips
        if isinstance(one.found.contrast_index, Estimate)
    ]
    aim = (wanted, time.value) if isinstance(time, Estimate) else None
    return tuple(
        against_time(read.belief, points, wanted=aim, layout=layout) for layout in (TIMES_LAPTOP, TIMES_PHONE)
    )


def _notes(read: ReadCombination, chosen: ReadStrip | None) -> tuple[str, ...]:
    """Why speed is called as it is, and how well was read."""
    if not read.strips:
        return ()
    one = chosen or read.strips[0]
    return speed_note(one, read.strips.index(one) + 1), readings_note(list(read.strips))


def _time_table(read: ReadCombination) -> tuple[tuple[str, str], ...]:
    """Contrast with its interval at a few times."""
    if read.belief is None or not read.judged:
        return ()
    times = [one.counted_s for one in read.judged]
    low, high = 60 * np.floor(min(times) * 0.7 / 60), 60 * np.ceil(max(times) * 1.2 / 60)
    step = 60 * max(1, round((high - low) / 60 / TABLE_TIMES))
    return tuple(
        (time_text(float(at)), finding_text(contrast_after(read.belief, float(at))))
        for at in np.arange(max(low, 60), high + 1, step)
    )


def _proposal(one: KeptProposal, preferences: Preferences, zone: ZoneInfo) -> ShownProposal:
    decided = day_words(one.decided.astimezone(zone)) if one.decided else ""
    return ShownProposal(one, say_proposal(one.proposal, preferences), decided)
