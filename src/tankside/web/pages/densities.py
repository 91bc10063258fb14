"""The Densities: combinations with step strips, one of them in curves and its time, its control chart."""

from __future__ import annotations

from dataclasses import dataclass
from uuid import UUID
from zoneinfo import ZoneInfo

from fastapi import APIRouter
from starlette.requests import Request
from starlette.responses import Response

from tankside.core.methods.step_strips import latest
from tankside.core.planning.explain_contrast import ASSUMED_AIM
from tankside.core.quantities.preferences import preferences_from
from tankside.core.refusals import Refused, refuse
from tankside.core.review.explain_strips import why_strip_time
from tankside.core.sensitometry.tones import GRADES, PAPER_RANGE, wanted_contrast
from tankside.web.addresses import go_to
from tankside.web.desk import InHouse
from tankside.web.drawing.chart import LAPTOP, PHONE, drawn_chart
from tankside.web.drawing.graduation import graduation
from tankside.web.drawing.vessel import empty_vessel
from tankside.web.forms import Form, TypedForm, number_of
from tankside.web.shown.densities import shown_combination
from tankside.web.shown.journal import day_words
from tankside.web.templating import page
from tankside.web.why_screen import Back, why_screen
from tankside.wording.densities import chart_words, name_of, odd_words
from tankside.workflows.accept_correction import accept_correction, leave_as_it_is
from tankside.workflows.house import House
from tankside.workflows.read_control import ReadControl, read_control
from tankside.workflows.read_densities import ReadCombination, list_combinations, read_combination
from tankside.workflows.records import KeptProposal

router = APIRouter(prefix="/densities")

STOP_LOG = 0.30103
LEAST_WANTED, MOST_WANTED = 0.2, 1.5
AIM = ("wanted", "stops", "range")


def density(value: float) -> str:
    """A density with its tenth."""
    return f"{value:.1f}"


VESSEL = empty_vessel(graduation(low=0, high=2.4, unit=0.1, length_px=384, upward=True, words=density))


@dataclass(frozen=True, slots=True)
class Entry:
    """A combination in the list."""

    key: str
    name: str
    holds: str


@dataclass(frozen=True, slots=True)
class ChartRow:
    """One control strip of the chart in figures."""

    number: int
    day: str
    low: str
    high: str
    difference: str


@router.get("")
def show(request: Request, house: InHouse) -> Response:
    """Every combination with strips; an empty vessel where there is none."""
    listed = list_combinations(house.desk)
    entries = [Entry(str(one.combination.key), name_of(one.combination), _holds(one.strips, one.control))
               for one in listed]  # fmt: skip
    return page(request, "densities/list.html", here="Densities", vessel=VESSEL, entries=entries)


@router.get("/{key}")
def one(request: Request, house: InHouse, key: UUID) -> Response:
    """One combination: its curves, the time for a wanted contrast, what is proposed."""
    read = read_combination(house.desk, key)
    form = Form({name: (value,) for name, value in request.query_params.items() if name in AIM})
    aim = read.in_use.aimed.contrast if read.in_use else ASSUMED_AIM
    wanted = aim
    try:
        wanted = _wanted(form, aim)
    except Refused as refused:
        form = form.refused_by(refused, say=request.app.state.say, fields=AIM)
    preferences = preferences_from(house.desk.preferences.all())
    shown = shown_combination(read, wanted, _proposals(house, read), preferences, ZoneInfo(house.zone))
    form = form if form.refusals or form.text("stops") else Form.filled(wanted=f"{wanted:.2f}")
    strips = latest(house.desk.step_strips.all())
    return page(
        request, "densities/one.html", status=422 if form.refusals else 200, here="Densities", shown=shown,
        form=form, grades=_grades(), strips=len(strips),
        combinations=len({one.combination for one in strips}),
    )  # fmt: skip


@router.post("/{key}/proposal")
def decide(house: InHouse, form: TypedForm, request: Request, key: UUID) -> Response:
    """Take what the strips propose, or leave everything as it is."""
    try:
        proposal = UUID(form.text("proposal"))
    except ValueError:
        raise refuse("no-such-proposal", ways_on=("look-at-densities",)) from None
    if form.text("do") == "take":
        accept_correction(house.desk, house.dice, proposal, house.clock.now())
    else:
        leave_as_it_is(house.desk, proposal, house.clock.now())
    return go_to(request, f"/densities/{key}")


@router.get("/{key}/why")
def why(request: Request, house: InHouse, key: UUID) -> Response:
    """Why the time for a contrast is what it is."""
    read = read_combination(house.desk, key)
    if read.in_use is None or not read.judged:
        raise refuse("no-strip-to-judge", ways_on=("read-a-strip",))
    form = Form({name: (value,) for name, value in request.query_params.items() if name == "wanted"})
    wanted = _wanted(form, read.in_use.aimed.contrast)
    return why_screen(
        request,
        why_strip_time(read.in_use.aimed, wanted, read.judged, read.answers),
        preferences_from(house.desk.preferences.all()),
        here="Densities",
        back=Back(f"Back to {name_of(read.combination)}", f"/densities/{key}?wanted={wanted:.2f}"),
    )


@router.get("/{key}/control")
def control(request: Request, house: InHouse, key: UUID) -> Response:
    """The control chart of a combination."""
    read, known = read_control(house.desk, key), house.desk.combinations.by_key(key)
    assert known is not None
    preferences = preferences_from(house.desk.preferences.all())
    odd = {n: odd_words(one, preferences) for n, one in read.differed.items()}
    return page(
        request, "densities/control.html", here="Densities", key=str(key), name=name_of(known),
        verdict=chart_words(read.chart), limits=read.chart.limits,
        rows=_rows(read, ZoneInfo(house.zone)),
        odd=[(n + 1, words) for n, words in odd.items()],
        laptop=drawn_chart(read.chart, layout=LAPTOP), phone=drawn_chart(read.chart, layout=PHONE),
    )  # fmt: skip


def _holds(strips: int, control: int) -> str:
    """What a combination has."""
    told = [f"{strips} step strip{'' if strips == 1 else 's'}"] if strips else []
    told += [f"{control} control strip{'' if control == 1 else 's'}"] if control else []
    return ", ".join(told)


def _wanted(form: Form, aim: float) -> float:
    """The contrast asked for: typed, or from a subject in stops and the range that is to take it."""
    if form.text("stops"):
        stops, over = number_of(form, "stops"), number_of(form, "range", PAPER_RANGE)
        try:
            found = wanted_contrast(STOP_LOG * stops, density_range=over)
        except Refused as no:
            raise Refused(no.refusal.placed("stops")) from None
    else:
        found = _number(form, "wanted", aim)
    if not LEAST_WANTED <= found <= MOST_WANTED:
        raise refuse("contrast-out-of-range", at="stops" if form.text("stops") else "wanted",
                     least=LEAST_WANTED, most=MOST_WANTED)  # fmt: skip
    return found


def _number(form: Form, name: str, default: float) -> float:
    """A number of a field, refused at it."""
    try:
        return number_of(form, name, default)
    except Refused as no:
        raise Refused(no.refusal.placed(name)) from None


def _grades() -> list[tuple[str, str]]:
    """Paper grades by the middle of their density range, and a scan."""
    grades = [(f"{(low + high) / 2:.2f}", f"paper grade {grade}") for grade, low, high in GRADES]
    return [(f"{PAPER_RANGE:.2f}", "a middle paper"), *grades, ("1.20", "a scan, densities to 1.20")]


def _proposals(house: House, read: ReadCombination) -> list[KeptProposal]:
    """What is offered on the strips of this combination, and the latest that was taken."""
    own = [
        one for one in house.desk.proposals.all()
        if one.combination == read.combination.key and one.proposal.what != "index"
        and "step strip" in one.proposal.seen_percent.source
    ]  # fmt: skip
    offered = [one for one in own if one.standing == "offered"]
    taken = [one for one in own if one.standing == "accepted"]
    return [*offered, *taken[:1]]


def _rows(read: ReadControl, zone: ZoneInfo) -> list[ChartRow]:
    """The chart in figures."""
    low, high = read.steps
    return [
        ChartRow(
            n + 1,
            day_words(one.noted.astimezone(zone)),
            f"{one.densities[low] or 0:.2f}",
            f"{one.densities[high] or 0:.2f}",
            f"{value:.2f}",
        )
        for n, (one, value) in enumerate(zip(read.strips, read.chart.values, strict=True))
    ]
