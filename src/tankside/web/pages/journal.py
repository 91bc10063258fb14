"""The Journal: runs on a scale of months, and each tankful with its plan beside it."""

from __future__ import annotations

from dataclasses import dataclass
from uuid import UUID
from zoneinfo import ZoneInfo

from fastapi import APIRouter
from starlette.requests import Request
from starlette.responses import Response

from tankside.core.quantities.preferences import preferences_from
from tankside.core.refusals import refuse
from tankside.web.addresses import go_to
from tankside.web.desk import AtDesk, InHouse
from tankside.web.drawing.graduation import graduation
from tankside.web.drawing.months import months
from tankside.web.drawing.vessel import empty_vessel
from tankside.web.shown.journal import day_words, moment, shown_tankful
from tankside.web.templating import page
from tankside.wording.journal import verdict
from tankside.workflows.moments import moment_of
from tankside.workflows.read_journal import (
    ListedRun,
    Which,
    letters,
    list_runs,
    read_run,
    read_tankful,
    years_of_runs,
)

router = APIRouter()

NOTHING_POURED = "Nothing was poured in it."
VESSEL = empty_vessel(graduation(low=0, high=70, unit=1, length_px=392))


@dataclass(frozen=True, slots=True)
class Row:
    """A run as one reads it in the list."""

    address: str
    day: str
    rolls: str
    more: str
    asks: tuple[str, ...]


@router.get("/journal")
def show(request: Request, house: InHouse, year: int | None = None) -> Response:
    """The runs of one year, the latest unless told, each joined to its day."""
    years = years_of_runs(house.desk)
    if not years:
        return page(request, "pages/journal.html", here="Journal", vessel=VESSEL)
    chosen = year if year in years else years[0]
    runs = list_runs(house.desk, chosen)[::-1]
    days = [run.opened.astimezone(ZoneInfo(run.zone)).date() for run in runs]
    today = min(moment_of(house.clock.now()).date(), days[-1].replace(month=12, day=31))
    margin = months(days, chosen=[False for _ in runs], today=max(today, days[-1]))
    rows = [_row(run) for run in runs]
    return page(
        request, "journal/list.html", here="Journal",
        rows=rows, margin=margin, years=years, chosen=chosen, last=rows[-1],
    )  # fmt: skip


@router.get("/journal/{run}")
def one_run(request: Request, desk: AtDesk, run: str) -> Response:
    """A run with its tankfuls; with one tankful it is that one's page."""
    found = read_run(desk, key_of(run))
    if len(letters(found)) == 1:
        return go_to(request, f"/journal/{found.key}/{letters(found)[0]}")
    preferences = preferences_from(desk.preferences.all())
    read = [read_tankful(desk, Which(found.key, letter)) for letter in letters(found)]
    told = [
        (
            one.letter,
            one.planned.tank.name,
            verdict(one.counted, preferences) if one.beside else NOTHING_POURED,
            one.may_be_asked,
        )
        for one in read
    ]
    opened = moment_of_run(found.state.opened.at_us, found.state.zone)
    return page(request, "journal/run.html", here="Journal", title=opened, run=str(found.key), tankfuls=told)


@router.get("/journal/{run}/{letter}")
def one_tankful(request: Request, desk: AtDesk, run: str, letter: str) -> Response:
    """One tankful: the verdict, what differed, planned beside happened, and what is proposed."""
    preferences = preferences_from(desk.preferences.all())
    shown = shown_tankful(read_tankful(desk, Which(key_of(run), letter)), preferences)
    return page(request, "journal/tankful.html", here="Journal", shown=shown)


def key_of(run: str) -> UUID:
    """The key in an address; anything else names no run."""
    try:
        return UUID(run)
    except ValueError:
        raise refuse("no-such-run", ways_on=("look-at-the-journal",)) from None


def moment_of_run(at_us: int, zone: str) -> str:
    """The day of a run at its place."""
    return day_words(moment(at_us).astimezone(ZoneInfo(zone)))


def _row(run: ListedRun) -> Row:
    opened = run.opened.astimezone(ZoneInfo(run.zone))
    one = run.tankfuls[0] if len(run.tankfuls) == 1 else None
    films = ", ".join(dict.fromkeys(each.film for each in run.tankfuls))
    tanks = ", ".join(dict.fromkeys(each.tank for each in run.tankfuls))
    return Row(
        address=f"/journal/{run.run}" + (f"/{one.letter}" if one else ""),
        day=f"{day_words(opened)}, {opened:%H:%M}",
        rolls=" ".join(code for each in run.tankfuls for code in each.rolls),
        more=f"{films}; {tanks}" + ("" if run.closed else "; still open"),
        asks=tuple(each.letter for each in run.tankfuls if each.asked),
    )
