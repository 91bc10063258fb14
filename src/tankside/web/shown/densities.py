"""What the Densities pages show: one combination with its curves, its time, and what would narrow it."""

from __future__ import annotations

from collections.abc import Mapping, Sequence
from dataclasses import dataclass
from json import dumps
from uuid import UUID
from zoneinfo import ZoneInfo

import numpy as np

from tankside.core.development.belief import Belief, contrast_after, time_for
from tankside.core.doubt.estimate import Estimate
from tankside.core.quantities.display import temperature_text, time_text
from tankside.core.quantities.preferences import Preferences
from tankside.core.refusals import Refusal, Refused
from tankside.core.review.strips import best_next
from tankside.core.sensitometry.curve import half_width
from tankside.web.drawing.family import (
    LAPTOP,
    PHONE,
    TIMES_LAPTOP,
    TIMES_PHONE,
    AgainstTime,
    Family,
    Wish,
    against_time,
    family,
)
from tankside.web.drawing.field import SIGNS, Sign
from tankside.web.shown.journal import ShownProposal, day_words
from tankside.wording.curves import finding_text
from tankside.wording.densities import (
    and_doubt,
    evidence_words,
    name_of,
    next_words,
    readings_note,
    speed_note,
    speed_words,
    strips_between,
    time_words,
)
from tankside.wording.proposals import say_proposal
from tankside.wording.refusals import say
from tankside.workflows.read_densities import ReadCombination, ReadStrip
from tankside.workflows.records import KeptProposal

EVERY_LOG_H, READ_EVERY, TABLE_TIMES = 0.5, 0.05, 6


@dataclass(frozen=True, slots=True)
class StripRow:
    """One strip in the table."""

    key: str
    number: int
    sign: Sign
    day: str
    time: str
    warm: str
    contrast: str
    base: str
    speed: str
    chosen: bool


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
        _wish(one, signs[one.strip.key], absolute=absolute, chosen=one is chosen) for one in read.strips
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
        reading=_reading(wishes),
        reading_of=next((one.name for one in wishes if one.chosen), ""),
        rows=tuple(
            _row(one, n, signs[one.strip.key], preferences, zone, chosen=one is chosen)
            for n, one in enumerate(read.strips, 1)
        ),
        times=_times(read, signs, wanted, time),
        notes=_notes(read, chosen),
        curve_table=_curve_table(read.strips, wishes),
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


def _wish(one: ReadStrip, sign: Sign, *, absolute: bool, chosen: bool) -> Wish:
    """One curve, its readings above base and fog; without absolute exposure all lie on the tablet's scale."""
    strip, base = one.strip, one.found.curve.base_fog.value
    clear = strip.exposed.log_h0 or 0.0
    along = strip.log_h if strip.log_h is not None else tuple(clear - patch for patch in strip.patches)
    readings = [(x, d - base) for x, d in zip(along, strip.densities, strict=True) if d is not None]
    name = time_text(one.had.had_s)
    return Wish(one.found.curve, sorted(readings), sign, name, chosen, 0.0 if absolute else -clear)


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


def _row(
    one: ReadStrip, number: int, sign: Sign, preferences: Preferences, zone: ZoneInfo, *, chosen: bool
) -> StripRow:
    """One strip in figures."""
    return StripRow(
        str(one.strip.key),
        number,
        sign,
        day_words(one.day.astimezone(zone)),
        time_text(one.had.had_s),
        temperature_text(one.had.mean_c, preferences),
        and_doubt(one.found.contrast_index),
        f"{one.found.curve.base_fog.value:.2f}",
        speed_words(one),
        chosen,
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


def _curve_table(
    strips: Sequence[ReadStrip], wishes: Sequence[Wish]
) -> tuple[tuple[str, tuple[str, ...]], ...]:
    """Density above base and fog with its doubt, at every half of log exposure."""
    if not strips:
        return ()
    spans = [(one.curve.shape.log_h[0] + one.shift, one.curve.shape.log_h[-1] + one.shift) for one in wishes]
    low, high = min(first for first, _ in spans), max(last for _, last in spans)
    at = np.arange(np.ceil(low / EVERY_LOG_H), np.floor(high / EVERY_LOG_H) + 1) * EVERY_LOG_H
    return tuple(
        (f"{log_h:.1f}".replace("-", "\u2212"), tuple(_density_at(one, float(log_h)) for one in wishes))
        for log_h in at
    )


def _reading(wishes: Sequence[Wish]) -> str:
    """Log exposure, density and half its interval along the chosen curve, every 0.05, for the script."""
    one = next((each for each in wishes if each.chosen), None)
    if one is None:
        return ""
    shape, half, last = one.curve.shape, half_width(one.curve), max(x for x, _ in one.readings)
    first = min(x for x, _ in one.readings)
    at = np.arange(first, last + READ_EVERY / 2, READ_EVERY)
    points = [
        [round(x + one.shift, 3), round(shape.net_at(x), 3), round(float(np.interp(x, shape.log_h, half)), 3)]
        for x in map(float, at)
    ]
    return dumps(points, separators=(",", ":"))


def _density_at(one: Wish, log_h: float) -> str:
    """One density with half its interval."""
    shape, x = one.curve.shape, log_h - one.shift
    if not shape.log_h[0] <= x <= shape.log_h[-1]:
        return "\u2013"
    half = float(np.interp(x, shape.log_h, half_width(one.curve)))
    return f"{shape.net_at(x):.2f} ± {max(half, 0.005):.2f}"


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
