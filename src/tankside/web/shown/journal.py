"""One tankful of the journal made ready to be shown: pictures, list, tables and proposals in words."""

from __future__ import annotations

from collections.abc import Iterator
from dataclasses import dataclass
from datetime import datetime, timedelta
from zoneinfo import ZoneInfo

from tankside.core.quantities.display import temperature_text, time_text
from tankside.core.quantities.preferences import Preferences
from tankside.core.review.beside import Beside, Stay
from tankside.core.review.differed import Begun, Warmth
from tankside.core.review.evidence import NextMorning, NotAsked, Strips, TwoDensities
from tankside.web.drawing.beside import LAPTOP, PHONE, Picture, Said, picture
from tankside.web.drawing.heat import Reading, Warm
from tankside.web.drawing.kinds import SIGNS, Sign, sign_of_bath
from tankside.wording.cues import BATHS
from tankside.wording.deviations import say_deviation
from tankside.wording.journal import read_words, verdict, why_counted
from tankside.wording.keeping import anyway_sentences
from tankside.wording.permanence import wash_verdict
from tankside.wording.proposals import SaidProposal, say_proposal
from tankside.workflows.moments import EPOCH
from tankside.workflows.read_journal import Heat, ReadTankful
from tankside.workflows.records import KeptProposal

EVERY_POINT_S = 60.0


@dataclass(frozen=True, slots=True)
class Differed:
    """One thing that differed, where it belongs: its clock, its words, and its moment in the picture."""

    clock: str
    at_s: float
    head: str
    rest: str


@dataclass(frozen=True, slots=True)
class BathRow:
    """One bath as planned and as it happened, for the table."""

    bath: str
    planned: str
    happened: str
    began: str


@dataclass(frozen=True, slots=True)
class ShownProposal:
    """A proposal with its words and where it stands."""

    kept: KeptProposal
    said: SaidProposal
    decided: str


@dataclass(frozen=True, slots=True)
class ShownTankful:
    """Everything that the page of a tankful shows; without a picture nothing was poured."""

    run: str
    letter: str
    title: str
    tank: str
    rolls: tuple[str, ...]
    verdict: str
    read: str
    wash: str
    why: tuple[tuple[str, str], ...]
    doors: tuple[tuple[str, str], ...]
    anyway: tuple[str, ...]
    differed: tuple[Differed, ...]
    laptop: Picture | None
    phone: Picture | None
    baths: tuple[BathRow, ...]
    temperatures: tuple[tuple[str, str, str], ...]
    proposals: tuple[ShownProposal, ...]
    answered: str
    may_be_asked: bool
    photographs: tuple[str, ...]
    signs: tuple[Sign, ...]


def shown_tankful(read: ReadTankful, preferences: Preferences) -> ShownTankful:
    """One tankful in words and pictures, times on the clock of its place."""
    zone, shown = ZoneInfo(read.run.state.zone), read.beside
    opened = moment(read.run.state.opened.at_us).astimezone(zone)
    differed = tuple(_differed(read, zone, preferences)) if shown else ()
    said = tuple(_said(read, shown, differed, zone, preferences)) if shown else ()
    warm = _warm(read.heat, preferences) if read.heat else None
    pictures: list[Picture | None] = [None, None]
    if shown:
        begins = moment(shown.zero_us).astimezone(zone)
        minutes = begins.hour * 60 + begins.minute + (begins.second + begins.microsecond / 1e6) / 60
        pictures = [
            picture(shown, begins_min=minutes, layout=one, warm=warm, said=said) for one in (LAPTOP, PHONE)
        ]
    return ShownTankful(
        run=str(read.run.key),
        letter=read.letter,
        title=f"Tankful {read.letter}, {day_words(opened)}",
        tank=read.planned.tank.name,
        rolls=tuple(roll.code for roll in read.planned.rolls),
        verdict=verdict(read.counted, preferences) if shown else "",
        read=read_words(read.counted),
        wash=wash_verdict(read.wash) if read.wash else "",
        why=why_counted(read.counted, read.planned.development, preferences),
        doors=_doors(read),
        anyway=anyway_sentences(read.run.state.plan, read.letter, opened.date()),
        differed=differed,
        laptop=pictures[0],
        phone=pictures[1],
        baths=tuple(_bath_rows(shown, zone)) if shown else (),
        temperatures=tuple(_temperatures(read, shown, zone, preferences)) if shown else (),
        proposals=tuple(_proposals(read, zone, preferences)),
        answered=_answered(read),
        may_be_asked=read.may_be_asked,
        photographs=tuple(one.sha256 for one in read.photographs),
        signs=tuple(one for one in SIGNS if one in _signs(shown)) if shown else (),
    )


def _doors(read: ReadTankful) -> tuple[tuple[str, str], ...]:
    """The doors to the working of what was planned: words and path."""
    key, run, letter = read.run.state.plan.key, read.run.key, read.letter
    return tuple(
        (words, f"/plan/why/{words}?tankful={letter}&plan={key}&back=journal&run={run}")
        for words in ("time", "contrast", "fix", "wash")
    )


def _signs(shown: Beside) -> set[Sign]:
    """The kinds of bath in the picture."""
    return {sign_of_bath(stay.kind) for stay in (*shown.planned, *shown.happened)}


def day_words(day: datetime) -> str:
    """A day as the journal's headings have it.

    >>> from datetime import UTC
    >>> day_words(datetime(2026, 11, 25, 21, 4, tzinfo=UTC))
    '25 November'
    """
    return f"{day.day} {day:%B}"


def moment(at_us: int) -> datetime:
    """A moment of a run's timeline."""
    return EPOCH + timedelta(microseconds=at_us)


def _clock(shown: Beside, seconds: float, zone: ZoneInfo) -> str:
    """The clock at the place, to the second."""
    then = moment(shown.zero_us + round(seconds * 1e6)).astimezone(zone)
    return f"{then.hour}:{then:%M:%S}"


def _differed(read: ReadTankful, zone: ZoneInfo, preferences: Preferences) -> Iterator[Differed]:
    shown = read.beside
    assert shown is not None
    for one in read.deviations:
        told = say_deviation(one, read.run.state, preferences)
        at_s = (one.at_us - shown.zero_us) / 1e6
        yield Differed(_clock(shown, at_s, zone), min(max(at_s, 0.0), shown.last_s), told.head, told.rest)


def _said(
    read: ReadTankful, shown: Beside, differed: tuple[Differed, ...], zone: ZoneInfo, preferences: Preferences
) -> Iterator[Said]:
    """What stands beside the picture: what differed, and plainly when it was poured, read and hung."""
    kinds = [type(one.what) for one in read.deviations]
    if Begun not in kinds:
        yield Said(0.0, f"Poured at {_clock(shown, 0.0, zone)}.", rank=0)
    if read.heat and Warmth not in kinds:
        for one in read.heat.readings:
            words = f"Read {temperature_text(one.temp_c, preferences)},"
            yield Said(read.heat.from_s + one.time_s, words, "as planned.", rank=0)
    for each in differed:
        yield Said(each.at_s, each.head, each.rest, rank=2)
    if shown.hung_s is not None:
        place = next((was.place for was in read.run.state.tankful(read.letter).hung if was.place), "")
        hung = _clock(shown, shown.hung_s, zone)[:-3]
        yield Said(
            shown.hung_s, f"Hung at {hung}{',' if place else '.'}", f"{place}." if place else "", rank=1
        )


def _warm(heat: Heat, preferences: Preferences) -> Warm:
    """The temperatures for the picture, thinned to a point a minute."""

    def points(times: Iterator[float], temps: Iterator[float]) -> tuple[tuple[float, float], ...]:
        every = [(heat.from_s + at_s, temp_c) for at_s, temp_c in zip(times, temps, strict=True)]
        return tuple(
            one for n, one in enumerate(every) if n in (0, len(every) - 1) or one[0] % EVERY_POINT_S < 15
        )

    def number(temp_c: float) -> str:
        return temperature_text(temp_c, preferences).split(" ")[0]

    happened = heat.happened
    return Warm(
        planned=points(map(float, heat.planned.times_s), map(float, heat.planned.temps_c)),
        happened=points(map(float, happened.times_s), map(float, happened.temps_c)) if happened else (),
        band_k=heat.band_k,
        readings=(
            *(
                Reading(
                    heat.from_s + one.time_s,
                    one.temp_c,
                    "dev",
                    number(one.temp_c),
                )
                for one in heat.readings
            ),
            *(Reading(at_s, temp_c, "wash", number(temp_c)) for at_s, temp_c in heat.water),
        ),
        unit=preferences.temperature,
    )


def _bath_rows(shown: Beside, zone: ZoneInfo) -> Iterator[BathRow]:
    for planned, happened in shown.pairs():
        stay = planned or happened
        assert stay is not None
        began = _clock(shown, happened.start_s, zone) if happened else ""
        yield BathRow(BATHS[stay.kind], _stay(planned), _stay(happened), began)


def _stay(stay: Stay | None) -> str:
    if stay is None:
        return "no"
    fills = f", {len(stay.fills_s)} fills" if stay.fills_s else ""
    return f"{time_text(stay.for_s)}{fills}{'' if stay.ended else ', still in'}"


def _temperatures(
    read: ReadTankful, shown: Beside, zone: ZoneInfo, preferences: Preferences
) -> Iterator[tuple[str, str, str]]:
    """Each reading: when, of what, how much."""
    if read.heat is None:
        return
    for one in read.heat.readings:
        clock = _clock(shown, read.heat.from_s + one.time_s, zone)
        yield clock, "Developer in the tank", temperature_text(one.temp_c, preferences)
    for at_s, temp_c in read.heat.water:
        yield _clock(shown, at_s, zone), "Wash water", temperature_text(temp_c, preferences)


def _proposals(read: ReadTankful, zone: ZoneInfo, preferences: Preferences) -> Iterator[ShownProposal]:
    """What is offered and what was taken; what was left is not shown again."""
    for one in sorted(read.proposals, key=lambda each: each.made):
        if one.standing == "declined":
            continue
        decided = day_words(one.decided.astimezone(zone)) if one.decided else ""
        yield ShownProposal(one, say_proposal(one.proposal, preferences), decided)


def _answered(read: ReadTankful) -> str:
    """What the person said of the negatives."""
    if read.strips:
        return (
            "You read a step strip of it."
            if read.strips == 1
            else f"You read {read.strips} step strips of it."
        )
    match read.said:
        case NextMorning(shadows=shadows, contrast=contrast):
            return f"You said: shadows {shadows}, contrast {contrast}."
        case TwoDensities(shadow_d=shadow, highlight_d=highlight):
            return f"You read: shadow {shadow:.2f}, highlight {highlight:.2f}."
        case Strips(measured=measured):
            return f"You read {len(measured)} step strips."
        case NotAsked():
            return "You are not asked about this tankful."
        case None:
            return ""
