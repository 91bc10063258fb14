"""Why a stop bath may still take so many rolls: the count is the rule, and its acid only explains it."""

from __future__ import annotations

from tankside.core.doubt.estimate import Estimate
from tankside.core.planning.why import Figure, Length, Plot, Why, narrowings, rule
from tankside.core.refusals import Refused
from tankside.core.shelf.stop_count import StopCount
from tankside.core.solutions.stop_bath import (
    PH_END,
    PUBLISHED_ROLLS_PER_L,
    acid_left_share,
    acid_taken_mol_l,
    rolls_until_done,
)

STOP_PAGE = "docs/science/stop-bath"
ACID_MOL_L = 0.1546
"""The bath whose count is published: 32 mL of 28 % acid a litre (Anchell 2008, p. 268)."""

SULFITE_G_L, BORAX_G_L = 100.0, 2.0
"""The developer that explains: that of D-76, as stock."""

CARRIED_ML = 10.0
"""Held by a wet roll and its tank, as measured (Torzynski 2004)."""

STRONG, MIDDLE, THIN = 1.0, 2.0, 4.0
"""That developer as stock, 1+1 and 1+3."""

PLOT_ROLLS, PLOT_EVERY = 15, 3


def why_stop_left(count: StopCount, *, put_in_ml: float, turned: bool) -> Why:
    """Why `put_in_ml` (mL) of working stop bath may still take so many rolls.

    The count binds, its label's before the one published; `turned` ends it whatever the count. What the acid
    alone would take stands beside it, for a developer as stock and at 1+3.
    """
    left = 0.0 if turned else count.left
    litres = put_in_ml / 1000
    return Why(
        "stop-left",
        None,
        rule(left, "rolls", "its label" if count.by_label else "anchell-2008"),
        (*_counts(count, litres), *_acid(count, put_in_ml)),
        (),
        narrowings("look-at-indicator", *(() if count.by_label else ("note-label",))),
        (
            Figure("put_in_ml", put_in_ml, "mL", "ledger"),
            Figure("used", count.used, "rolls", "counted by area"),
            *((_label(count, litres),) if count.by_label else ()),
            Figure("per_l_published", float(PUBLISHED_ROLLS_PER_L), "rolls", "anchell-2008"),
            Figure("turned", float(turned), "yes", "its tests"),
            Figure("acid_mmol_l", 1000 * ACID_MOL_L, "mmol/L", "anchell-2008"),
            Figure("sulfite_g_l", SULFITE_G_L, "g/L", "D-76 as stock"),
            Figure("borax_g_l", BORAX_G_L, "g/L", "D-76 as stock"),
            Figure("carried_ml", CARRIED_ML, "mL", "torzynski-2004"),
            Figure("ph_end", PH_END, "", "its indicator turns near it"),
        ),
        "left = rolls a litre x litres put in - rolls used, each as its area of 80 in2. Acid left = usable "
        "x k - taken x (1 - k), k = (1 - carried / volume) ^ rolls",
        (STOP_PAGE, "docs/science/film-area", "anchell-2008", "torzynski-2004"),
        spread="rule",
        leaves_out=("acid-explains", "consistent-only"),
        plot=_plot(),
    )


def _label(count: StopCount, litres: float) -> Figure:
    """Rolls a litre by its label."""
    return Figure("per_l_label", count.whole / litres, "rolls", "its label")


def _counts(count: StopCount, litres: float) -> tuple[Length, ...]:
    """What each count leaves: that of the label where somebody read it, and the published one."""
    used = Figure("used", count.used, "rolls", "counted by area")
    published = max(0.0, PUBLISHED_ROLLS_PER_L * litres - count.used)
    figures = (Figure("per_l", float(PUBLISHED_ROLLS_PER_L), "rolls", "anchell-2008"), used)
    told = Length("stop-published", rule(published, "rolls", "anchell-2008"), figures)
    if not count.by_label:
        return (told,)
    per_l = Figure("per_l", count.whole / litres, "rolls", "its label")
    return Length("stop-label", rule(count.left, "rolls", "its label"), (per_l, used)), told


def _acid(count: StopCount, put_in_ml: float) -> tuple[Length, ...]:
    """What the acid alone would still take, from a developer as stock to 1+3; none for a thimble or a vat."""
    try:
        ends = [
            rolls_until_done(
                volume_ml=put_in_ml, acid_mol_l=ACID_MOL_L, taken_mol_l=_taken(times), carried_ml=CARRIED_ML
            )
            for times in (STRONG, MIDDLE, THIN)
        ]
    except Refused:
        return ()
    low, middle, high = (max(0.0, one - count.used) for one in ends)
    figures = (Figure("strong", low, "rolls", STOP_PAGE), Figure("thin", high, "rolls", STOP_PAGE))
    return (Length("stop-acid", Estimate(middle, low, high, "rolls", STOP_PAGE), figures),)


def _taken(times: float) -> float:
    """Acid that a litre of the developer takes, thinned so many times."""
    return acid_taken_mol_l(sulfite_g_l=SULFITE_G_L / times, borax_g_l=BORAX_G_L / times)


def _plot() -> Plot:
    """Usable acid left in a litre of the published bath, roll by roll, by the developer carried in."""

    def shares(times: float) -> tuple[float, ...]:
        return tuple(
            100 * acid_left_share(
                rolls, volume_ml=1000, acid_mol_l=ACID_MOL_L, taken_mol_l=_taken(times), carried_ml=CARRIED_ML
            )
            for rolls in across
        )  # fmt: skip

    across = tuple(float(one) for one in range(PLOT_ROLLS + 1))
    return Plot(
        "stop-acid",
        "rolls",
        "%",
        across,
        shares(STRONG),
        shares(THIN),
        shares(MIDDLE),
        rows=tuple(range(0, PLOT_ROLLS + 1, PLOT_EVERY)),
    )
