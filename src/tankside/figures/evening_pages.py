"""The plots of docs/science on an evening as a whole: tempering, order of the baths, stock, areas, review."""

from __future__ import annotations

from collections.abc import Callable
from dataclasses import replace
from datetime import UTC, datetime
from uuid import UUID

import numpy as np
from matplotlib.axes import Axes
from matplotlib.patches import Rectangle

from tankside.core.development.contrast import C_INF, contrast_at, rate_constant
from tankside.core.development.printed_rows import Row
from tankside.core.development.rate import rate_of
from tankside.core.methods.combinations import TimeRow
from tankside.core.methods.default_method import default_method
from tankside.core.methods.known_time import KnownTime
from tankside.core.planning.development import Setting, mix_to
from tankside.core.planning.first_evening import Keys, SixAnswers, default_tank, first_evening
from tankside.core.planning.plan import Plan
from tankside.core.planning.timetable import timetable
from tankside.core.planning.work_out import work_out
from tankside.core.rates import Q10
from tankside.core.rolls.formats import UNIT_M2, Format
from tankside.core.solutions.notation import Dilution
from tankside.core.thermal.tank import plastic_tau_min, plastic_worth_ml
from tankside.figures.plain import DEVELOPER, INK, LIQUIDS, SECOND, field, name_end, rows_alone

LOGGED_C = (21.0, 20.8, 21.1)
MEASURED = (0.590, 0.585, 0.595)
AIM, DUE_S = 0.56, 570.0
"""Three invented step strips: what the log of their runs says, and what they measured; aim and time."""


def jug_c(tank_c: float) -> tuple[float, float, float]:
    """What a jug must read (C) for 9:30 at 20 C to be right in a plastic tank as cold as its room, 5-95 %."""
    setting = Setting(500, plastic_worth_ml(500), tank_c, tank_c, plastic_tau_min(500))
    row = TimeRow(UUID(int=1), DUE_S, 20.0, 125.0, "leaflet", "invented", _STARTS.date())
    found = mix_to(KnownTime(row, (row,), rate_of([Row(20.0, DUE_S)])), setting, DUE_S).estimate
    return found.low, found.value, found.high


def tempering() -> Axes:
    """How warm to mix by how cold the tank is."""
    axes = field(
        across="tank and room, °C", up="jug at the pour, °C", across_range=(12, 28), up_range=(17, 23)
    )
    tank_c = np.linspace(12, 28, 33)
    low, told, high = np.array([jug_c(float(one)) for one in tank_c]).T
    axes.fill_between(tank_c, low, high, facecolor="none", edgecolor=SECOND, hatch="////", linewidth=0)
    axes.plot(tank_c, told, color=DEVELOPER, linewidth=3.4)
    name_end(axes, 28, told[-1], "plastic 500 mL", colour=DEVELOPER)
    axes.plot([12, 28], [20, 20], color=SECOND, linewidth=0.9)
    name_end(axes, 28, 20.0, "as the leaflet\nsays", colour=SECOND)
    axes.set_xticks([12, 16, 20, 24, 28])
    return axes


def two_tankfuls() -> Plan:
    """An invented evening: 9:30 and 7:00, each in a tank of its own, for one pair of hands."""
    keys = Keys(UUID(int=1), "7MPA-4", *(UUID(int=number) for number in range(2, 7)))
    answers = SixAnswers(
        "Ferry 125", Format("135-36"), 125.0, "Umber", Dilution(1, 1), DUE_S, 20.0, 500.0, 20.5, grain="cubic"
    )
    wish = first_evening(answers, keys=keys, starts=_STARTS, zone="UTC").wish
    (slow,) = wish.rolls
    (row,) = slow.combination.rows
    combination = replace(
        slow.combination, key=UUID(int=12), film="Ferry 50",
        rows=(replace(row, key=UUID(int=13), time_s=420.0),),
    )  # fmt: skip
    quick = replace(slow, roll=replace(slow.roll, key=UUID(int=11), code="QCKR-2"), combination=combination)
    tanks = (wish.tanks[0], default_tank(UUID(int=14), volume_ml=500.0, name="other tank"))
    return work_out(replace(wish, rolls=(slow, quick), tanks=tanks), key=UUID(int=9), number=1, made=_STARTS)


def two_tanks() -> Axes:
    """Two tankfuls as stripes, and under them what the hands do: inversions low, all else high."""
    seen = timetable(two_tankfuls())
    axes = field(across="min after the first pour", up="", across_range=(0, 60), up_range=(-0.6, 3.1))
    for row, column in zip((2, 1), seen.columns, strict=True):
        for layer in column.layers:
            _stripe(axes, (layer.start_s, layer.end_s), row, 0.62, LIQUIDS[layer.bath])
        name_end(axes, 60, row, f"tank {column.letter}")
    for act in seen.acts:
        inverts = act.kind == "invert"
        _stripe(axes, (act.start_s, act.end_s), 0, 0.25 if inverts else 0.62, SECOND if inverts else INK)
    name_end(axes, 60, 0, "hands")
    for place, (bath, colour) in zip((0.0, 0.29, 0.62, 0.79, 1.04), LIQUIDS.items(), strict=True):
        said = f"■ {_SAID.get(bath, bath)}"
        axes.text(place, 0.93, said, color=colour, fontsize=10, transform=axes.transAxes)
    rows_alone(axes)
    return axes


def planning() -> Axes:
    """Least, aim and most of each bath of the default method."""
    steps = default_method(time_s=DUE_S, fix_longer=False).steps
    axes = field(
        across="min, from least to most", up="", across_range=(0, 12), up_range=(-0.6, 4.6), high_in=3.0
    )
    for row, step in enumerate(reversed(steps)):
        times = step.times
        most_s = 720.0 if times.most_s is None else times.most_s
        axes.plot([times.least_s / 60, most_s / 60], [row, row], color=SECOND, linewidth=3.4)
        axes.plot([times.aim_s / 60], [row], "s", color=LIQUIDS[step.kind], markersize=9)
        fills = f",\neach of {step.fills}" if step.fills > 1 else ""
        name_end(axes, 12, row, f"{_SAID.get(step.kind, step.kind)}{fills}")
    rows_alone(axes)
    return axes


def least_stock() -> Axes:
    """Stock in a tank by its volume, for three dilutions, against what two rolls need."""
    axes = field(across="tank, mL", up="stock in it, mL", across_range=(300, 1200), up_range=(0, 400))
    for water in (2, 4, 9):
        axes.plot([300, 1200], [300 / (1 + water), 1200 / (1 + water)], color=INK, linewidth=1.8)
        name_end(axes, 1200, 1200 / (1 + water), f"1+{water}")
    axes.plot([300, 1200], [160, 160], color=DEVELOPER, linewidth=3.4)
    name_end(axes, 1200, 160, "two rolls need", colour=DEVELOPER)
    axes.plot([600, 600, 800, 800], [0, 120, 160, 0], color=SECOND, linewidth=0.9)
    axes.plot([600], [120], "x", color=INK, markersize=9, markeredgewidth=2)
    axes.plot([480, 800], [160, 160], "s", color=DEVELOPER, markersize=6)
    for ml, stock_ml, said in ((608, 92, "too little"), (808, 135, "enough"), (320, 215, "1+2 would do")):
        axes.text(ml, stock_ml, said, fontsize=10, color=INK)
    return axes


def film_area() -> Axes:
    """One unit of area as a strip of 135, a strip of 120 and four sheets, all to one scale."""
    axes = field(across="cm", up="", across_range=(0, 150), up_range=(0, 56), high_in=1.9)
    axes.set_aspect("equal")
    unit_cm2 = 1e4 * UNIT_M2
    for wide_cm, at_cm, pieces, name in (
        (3.5, 46, 1, "135-36"), (6.1, 28, 1, "120"), (10.16, 6, 4, "four 4x5")
    ):  # fmt: skip
        each_cm = unit_cm2 / wide_cm / pieces
        for piece in range(pieces):
            corner = (piece * each_cm, at_cm)
            axes.add_patch(Rectangle(corner, each_cm, wide_cm, facecolor="#D9D0DC", edgecolor=INK))
        name_end(axes, 150, at_cm + wide_cm / 2, name)
    rows_alone(axes)
    return axes


def foretold() -> list[float]:
    """The contrasts that the logged temperatures alone predict."""
    k_per_s = rate_constant(AIM, time_s=DUE_S, c_inf=C_INF.value)
    law = Q10(rate_of([Row(20.0, DUE_S)]).q10.value)
    counted_s = [DUE_S * float(law.factor(temp_c)) for temp_c in LOGGED_C]
    return [float(contrast_at(one, c_inf=C_INF.value, k_per_s=k_per_s)) for one in counted_s]


def review() -> Axes:
    """Contrast of three step strips beside what the log of each run predicts, and the aim."""
    axes = field(across="step strip", up="contrast index", across_range=(0.7, 3.3), up_range=(0.54, 0.61))
    predicted = foretold()
    axes.plot([0.7, 3.3], [AIM, AIM], color=SECOND, linewidth=0.9)
    name_end(axes, 3.3, AIM, "aim: what\n20.0 °C predicts", colour=SECOND)
    axes.plot([1, 2, 3], predicted, "o", color=DEVELOPER, fillstyle="none", markersize=13, markeredgewidth=2)
    axes.plot([1, 2, 3], MEASURED, "s", color=INK, markersize=6)
    for number, (made, temp_c) in enumerate(zip(predicted, LOGGED_C, strict=True), start=1):
        axes.annotate(
            f"{temp_c:.1f} °C", (number, made), xytext=(0, -14), textcoords="offset points",
            ha="center", va="top", fontsize=10, color=DEVELOPER,
        )  # fmt: skip
    name_end(axes, 3.3, 0.601, "■ measured")
    name_end(axes, 3.3, 0.593, "○ predicted\n   by the log", colour=DEVELOPER)
    axes.set_xticks([1, 2, 3])
    return axes


def _stripe(axes: Axes, ends_s: tuple[float, float], row: float, height: float, colour: str) -> None:
    """A length on the clock, from ends in s, on its row."""
    start_s, end_s = ends_s
    corner = (start_s / 60, row - height / 2)
    axes.add_patch(Rectangle(corner, (end_s - start_s) / 60, height, facecolor=colour, linewidth=0))


_STARTS = datetime(2026, 10, 3, 19, 10, tzinfo=UTC)
_SAID = {"stop": "stop bath", "wetting": "wetting bath"}

EVENING_PAGES: dict[str, tuple[str, Callable[[], Axes]]] = {
    "film-area": ("One unit of area in three formats", film_area),
    "least-stock": ("Stock in a tank and what two rolls need", least_stock),
    "planning": ("Least, aim and most of each bath", planning),
    "review": ("Three step strips beside what their logs predict", review),
    "tempering": ("How warm to mix by how cold the tank is", tempering),
    "two-tanks": ("Two tankfuls and one pair of hands", two_tanks),
}
