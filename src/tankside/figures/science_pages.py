"""The plots of docs/science on temperature, rate, contrast and doubt, one function a page."""

from __future__ import annotations

from collections.abc import Callable, Mapping

import numpy as np
from matplotlib.axes import Axes

from tankside.core.development.contrast import contrast_at, rate_constant
from tankside.core.development.printed_rows import Row
from tankside.core.development.rate import rate_of
from tankside.core.doubt.distributions import FloatArray, LogNormal, Normal
from tankside.core.doubt.groups import alone, draws_for, seed_of
from tankside.core.doubt.parts import Parts, parts_of
from tankside.core.rates import Q10, Q10_BELIEF
from tankside.core.thermal.drift import temp_at
from tankside.core.thermal.mixing import Water, mix
from tankside.core.thermal.tank import met_c, plastic_worth_ml
from tankside.figures import curve_pages
from tankside.figures.agitation_page import agitation
from tankside.figures.chemistry_pages import CHEMISTRY_PAGES
from tankside.figures.evening_pages import EVENING_PAGES
from tankside.figures.plain import DEVELOPER, INK, SECOND, field, name_end, rows_alone, svg_of


def mixing() -> Axes:
    """How much colder a mixture is than the rule of thumb says, for three hot taps and a cold one of 10 C."""
    axes = field(
        across="wanted, °C", up="colder than the rule says, K", across_range=(16, 26), up_range=(0, 0.3)
    )
    targets = np.linspace(16, 26, 41)
    for hot_c in (40.0, 50.0, 60.0):
        short = [_rule_short_by(float(target), hot_c) for target in targets]
        axes.plot(targets, short, color=INK, linewidth=1.8)
        name_end(axes, 26, short[-1], f"hot tap {hot_c:.0f} °C")
    return axes


def tank_and_liquid() -> Axes:
    """Where 20 C developer ends when it meets its tank."""
    axes = field(across="tank before, °C", up="both together, °C", across_range=(12, 30), up_range=(18, 22.5))
    tank_c = np.linspace(12, 30, 37)
    tanks = (
        ("plastic 500 mL", 500.0, plastic_worth_ml(500), DEVELOPER),
        ("plastic 1 L", 1000.0, plastic_worth_ml(1000), INK),
        ("steel 500 mL", 500.0, 47.0, INK),
    )
    for name, liquid_ml, worth_ml, colour in tanks:
        met = [met_c(liquid_ml=liquid_ml, liquid_c=20, worth_ml=worth_ml, tank_c=float(t)) for t in tank_c]
        axes.plot(tank_c, met, color=colour, linewidth=3.4 if colour == DEVELOPER else 1.8)
        name_end(axes, 30, met[-1], name, colour=colour)
    return axes


def drift() -> Axes:
    """A plastic tank of 20 C in a cold and a warm room, with the band of its time constant."""
    axes = field(across="min after the pour", up="°C", across_range=(0, 30), up_range=(17.5, 24))
    time_s = np.linspace(0, 1800, 61)
    for room_c in (15.0, 28.0):
        slow, told, fast = (
            temp_at(time_s, start_c=20, room_c=room_c, tau_min=tau) for tau in (180.0, 106.0, 60.0)
        )
        axes.fill_between(
            time_s / 60, slow, fast, facecolor="none", edgecolor=SECOND, hatch="////", linewidth=0
        )
        axes.plot(time_s / 60, told, color=INK, linewidth=1.8)
        name_end(axes, 30, float(told[-1]), f"room {room_c:.0f} °C")
    return axes


def rate() -> Axes:
    """Time that makes the contrast of 9:30 at 20 C, for the believed factor and its band."""
    known = rate_of([Row(20.0, 570.0)])
    axes = field(across="steady, °C", up="min to develop", across_range=(18, 24), up_range=(5.5, 12))
    temps = np.linspace(known.least_c, known.most_c, 49)
    for factor in (known.q10.low, known.q10.value, known.q10.high):
        minutes = 9.5 / Q10(factor).factor(temps)
        told = factor == known.q10.value
        axes.plot(temps, minutes, color=DEVELOPER if told else INK, linewidth=3.4 if told else 1.8)
        name_end(axes, 24, float(minutes[-1]), f"{factor:.1f} per 10 K")
    return axes


def contrast() -> Axes:
    """Contrast against time through 0.56 at 9:30, for three contrasts that the film could reach."""
    axes = field(across="min at 20 °C", up="contrast index", across_range=(0, 20), up_range=(0, 1))
    time_s = np.linspace(0, 1200, 121)
    for c_inf in (0.75, 0.95, 1.30):
        k = rate_constant(0.56, time_s=570, c_inf=c_inf)
        made = contrast_at(time_s, c_inf=c_inf, k_per_s=k)
        told = c_inf == 0.95
        axes.plot(time_s / 60, made, color=DEVELOPER if told else INK, linewidth=3.4 if told else 1.8)
        name_end(axes, 20, float(made[-1]), f"at most {c_inf:.2f}")
    axes.plot([0, 9.5, 9.5], [0.56, 0.56, 0], color=SECOND, linewidth=0.9)
    axes.set_xticks([0, 5, 9.5, 15, 20], ["0", "5", "9.5", "15", "20"])
    return axes


def doubt() -> Axes:
    """The parts of the doubt of an end of development after one reading, largest first."""
    parts = parts_of_an_end().parts
    axes = field(
        across="s, standard deviation of the end",
        up="",
        across_range=(0, 14),
        up_range=(-0.6, 2.6),
        high_in=2.4,
    )
    for row, part in enumerate(reversed(parts)):
        axes.plot([0, part.sd], [row, row], color=INK, linewidth=8, solid_capstyle="butt")
        name_end(axes, part.sd, row, part.group)
    axes.set_xticks([0, 5, 10])
    rows_alone(axes)
    return axes


def parts_of_an_end() -> Parts:
    """Reading, time constant and factor, freed one at a time: 9:30 due, 19.2 C at 1:00, a room of 16."""
    groups = (
        alone("reading", Normal(19.23, 0.1)),
        alone("time constant", LogNormal(60, 180)),
        alone("factor per 10 K", Q10_BELIEF, central=2.2),
    )

    def end_s(values: Mapping[str, FloatArray]) -> FloatArray:
        middle = temp_at(300, start_c=values["reading"], room_c=16, tau_min=values["time constant"])
        return np.asarray(570 / values["factor per 10 K"] ** ((middle - 20) / 10))

    return parts_of(end_s, groups, draws_for(groups, seed=seed_of("docs", 570, 19.2, 16)))


def _rule_short_by(target_c: float, hot_c: float) -> float:
    """How far the mixture that the rule of thumb tells stays below its target."""
    share = (target_c - 10) / (hot_c - 10)
    return target_c - mix([Water(1000 * share, hot_c), Water(1000 * (1 - share), 10)]).temp_c


PAGES: dict[str, tuple[str, Callable[[], Axes]]] = {
    "mixing": ("What the rule of thumb leaves out", mixing),
    "tank-and-liquid": ("Developer of 20 C meets its tank", tank_and_liquid),
    "drift": ("Half an hour in two rooms", drift),
    "rate-and-equivalent-time": ("Time for the contrast of 9:30 at 20 C", rate),
    "agitation": ("Hand movements of four patterns in 9:30", agitation),
    "contrast-and-time": ("Contrast through 0.56 at 9:30", contrast),
    "doubt": ("Where the doubt of an end comes from", doubt),
    "curves": ("An invented strip of 21 steps and its curve", curve_pages.curve),
    "speed-and-contrast-index": ("Speed point, rise over 1.30 and contrast index", curve_pages.arcs),
    "kinetics": ("Contrast against time before and after three strips", curve_pages.kinetics),
    "process-control": ("Sixteen control strips", curve_pages.control),
    **CHEMISTRY_PAGES,
    **EVENING_PAGES,
}


def drawn(page: str) -> str:
    """The plot of a page of docs/science, as SVG."""
    title, draw = PAGES[page]
    return svg_of(draw(), title=title)
