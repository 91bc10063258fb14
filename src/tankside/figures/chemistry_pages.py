"""The plots of docs/science on formulas, keeping, stop bath, replenishing, fixing and washing."""

from __future__ import annotations

from collections.abc import Callable

import numpy as np
from matplotlib.axes import Axes

from tankside.core.permanence.capacity import two_bath_silver_g_l
from tankside.core.permanence.washing import FLOOR_G_M2, LIMIT_G_M2, residual_after_fills
from tankside.core.solutions.oxygen import most_lost_g
from tankside.core.solutions.replenishing import built_up_g_l, original_left
from tankside.core.solutions.stop_bath import acid_left_share, acid_taken_mol_l
from tankside.core.solutions.weighing import MOST_ERROR_PERCENT, weighing_error_percent
from tankside.figures.plain import DEVELOPER, INK, SECOND, field, name_end


def formulas() -> Axes:
    """What a scale of 0.1 g does to each constituent of a metol-hydroquinone developer, by volume mixed."""
    axes = field(across="mL mixed", up="half a mark, % of it", across_range=(250, 2000), up_range=(0, 12))
    volumes = np.linspace(250, 2000, 71)
    for name, g_l in (("of 2 g/L", 2.0), ("of 5 g/L", 5.0), ("of 100 g/L", 100.0)):
        errors = [weighing_error_percent(g_l * float(ml) / 1000, mark=0.1) for ml in volumes]
        axes.plot(volumes, errors, color=DEVELOPER if g_l == 2.0 else INK, linewidth=1.8)
        name_end(axes, 2000, errors[-1] + {2.0: 0.5, 5.0: 0.15, 100.0: -0.3}[g_l], name)
    axes.plot([250, 2000], [MOST_ERROR_PERCENT] * 2, color=SECOND, linewidth=0.9)
    name_end(axes, 2000, MOST_ERROR_PERCENT, "above: mix\nmore", colour=SECOND)
    return axes


def keeping() -> Axes:
    """The most sulfite that the air in a litre bottle can take, once and ten times opened."""
    axes = field(
        across="mL left in a litre bottle",
        up="% of its sulfite, at most",
        across_range=(1000, 100),
        up_range=(0, 40),
    )
    left_ml = np.linspace(1000, 100, 91)
    for openings, words in ((1, "100 g/L, once"), (10, "100 g/L, ten times,\nor 10 g/L, once")):
        lost = np.array(
            [100 * most_lost_g(air_ml=1000 - ml, openings=openings) / (ml / 10) for ml in left_ml]
        )
        inside = lost <= 40
        axes.plot(left_ml[inside], lost[inside], color=INK, linewidth=1.8)
        name_end(axes, float(left_ml[inside][-1]), float(lost[inside][-1]), words)
    return axes


def stop_bath() -> Axes:
    """Usable acid left in a litre of stop bath after each roll, for one developer at three dilutions."""
    axes = field(
        across="rolls through one litre", up="% of its usable acid", across_range=(0, 30), up_range=(0, 100)
    )
    rolls = np.linspace(0, 30, 121)
    for name, times, lower in (("stock", 1, 6.6), ("1+1", 2, 0.0), ("1+3", 4, 0.0)):
        taken = acid_taken_mol_l(sulfite_g_l=100 / times, borax_g_l=2 / times)
        left = [
            100
            * acid_left_share(float(n), volume_ml=1000, acid_mol_l=0.1546, taken_mol_l=taken, carried_ml=10)
            for n in rolls
        ]
        shown = np.array(left) > 0
        axes.plot(rolls[shown], np.array(left)[shown], color=INK, linewidth=1.8)
        end = int(np.flatnonzero(shown)[-1])
        name_end(axes, float(rolls[end]) - lower, left[end] + (6 if end < 120 else 0), name)
    axes.plot([12, 12], [0, 100], color=SECOND, linewidth=0.9)
    name_end(axes, 12, 96, "published: 12", colour=SECOND)
    return axes


def replenishing() -> Axes:
    """A litre topped up with 70 mL a roll: what builds up, and what is left of the first filling."""
    axes = field(across="rolls", up="% of where it ends", across_range=(0, 60), up_range=(0, 100))
    rolls = np.arange(61)
    bath = {"bath_ml": 1000.0, "top_up_ml": 70.0}
    most = built_up_g_l(5000, given_mg=62, **bath)
    built = [100 * built_up_g_l(int(n), given_mg=62, **bath) / most for n in rolls]
    first = [100 * original_left(int(n), **bath) for n in rolls]
    axes.plot(rolls, built, color=DEVELOPER, linewidth=3.4)
    axes.plot(rolls, first, color=INK, linewidth=1.8)
    name_end(axes, 60, built[-1], "built up", colour=DEVELOPER)
    name_end(axes, 60, first[-1], "first filling")
    return axes


def fixing() -> Axes:
    """Silver in a litre of fixer: one bath, and the second of two, roll by roll."""
    axes = field(across="rolls through one litre", up="g/L of silver", across_range=(0, 30), up_range=(0, 6))
    rolls = np.linspace(0, 30, 61)
    both = np.array(
        [two_bath_silver_g_l(silver_g_roll=0.2, carry_l=0.005, bath_l=1, rolls=float(n)) for n in rolls]
    )
    for name, column in (("first or\nonly bath", 0), ("second bath", 1)):
        axes.plot(rolls, both[:, column], color=INK, linewidth=1.8)
        name_end(axes, 30, float(both[-1, column]), name)
    axes.plot([0, 30], [4, 4], color=SECOND, linewidth=0.9)
    name_end(axes, 30, 4, "ceiling of\nrapid fixer", colour=SECOND)
    return axes


def washing() -> Axes:
    """Thiosulfate left after each soak of 2 min in fills of 300 mL, for the half-lives of two sources."""
    axes = field(
        across="fills of 300 mL, 2 min each", up="g/m² left", across_range=(0, 8), up_range=(1e-3, 10)
    )
    axes.set_yscale("log")
    axes.set_yticks([0.001, 0.01, 0.1, 1, 10], ["0.001", "0.01", "0.1", "1", "10"])
    axes.minorticks_off()
    start = 119.8 * 2 / 1000 / 0.0516128
    for half_life_s in (15.0, 60.0):
        left = np.array(
            [start, *residual_after_fills(soaks_s=(120,) * 8, fill_ml=300, half_life_s=half_life_s)]
        )
        shown = left >= FLOOR_G_M2
        axes.plot(
            np.arange(9)[shown],
            left[shown],
            color=INK,
            linewidth=1.8,
            marker="o",
            markersize=4,
            clip_on=False,
        )
        end = int(np.flatnonzero(shown)[-1])
        name_end(axes, end, float(left[end]), f"half in {half_life_s:.0f} s")
    axes.plot([0, 8], [LIMIT_G_M2] * 2, color=SECOND, linewidth=0.9)
    name_end(axes, 8, LIMIT_G_M2, "limit 0.014", colour=SECOND)
    axes.axhspan(1e-3, FLOOR_G_M2, facecolor="none", edgecolor=SECOND, hatch="////", linewidth=0)
    name_end(axes, 8, 0.0014, "nothing is\ntold here", colour=SECOND)
    return axes


CHEMISTRY_PAGES: dict[str, tuple[str, Callable[[], Axes]]] = {
    "formulas": ("What a scale of 0.1 g does", formulas),
    "keeping": ("The most that the air over it can take", keeping),
    "stop-bath": ("Acid left in a litre of stop bath", stop_bath),
    "replenishing": ("A litre topped up with 70 mL a roll", replenishing),
    "fixing": ("Silver in one bath and in two", fixing),
    "washing": ("What soaks of two minutes leave", washing),
}
