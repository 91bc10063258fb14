"""The scale of a wash: what each fill leaves in the film by plan, sampled so that the page can follow it."""

from __future__ import annotations

from dataclasses import replace

from tankside.core.permanence.wash_plan import told_residual
from tankside.core.permanence.washing import FLOOR_G_M2
from tankside.core.planning.plan import PlannedBath
from tankside.core.run.advise_wash import Left, WashAdvice, advise_wash
from tankside.core.run.anchors import poured
from tankside.core.run.state import Fill as FillNoted
from tankside.core.run.state import Mark, Pass, TankfulState
from tankside.web.screen.acts import whole_s
from tankside.web.screen.values import Fill, Residual
from tankside.wording.sink_baths import after_fill, last_doubt, residual

SAMPLES = 6


def residual_of(one: TankfulState, bath: PlannedBath, n: int, now_us: int) -> Residual | None:
    """The scale while fill `n` soaks; None where no fixer came before this wash."""
    order = [planned.kind for planned in one.plan.baths[: one.plan.baths.index(bath)]]
    if "fix" not in order:
        return None
    there = _supposed(one, bath, n, now_us)
    began = max((fill.mark.at_us for fill in there.fills), default=there.poured.at_us)
    step_us = round(bath.times.aim_s * 1e6 / SAMPLES)
    sampled = [advise_wash(one, there, began + step_us * k) for k in range(SAMPLES + 1)]
    done, first = sampled[0].done, sampled[0]
    trace = tuple(
        (whole_s(bath.times.aim_s * k / SAMPLES), _slow(each.now)) for k, each in enumerate(sampled)
    )
    fills = (
        *(Fill(((0.0, _slow(left)),), after_fill(left.n, left.slow_g_m2)) for left in done),
        Fill(trace, ""),
    )
    return Residual(
        high=_figures(first.start_g_m2 * 1.8),
        floor=FLOOR_G_M2,
        limit=first.limit_g_m2,
        limit_words=f"limit {first.limit_g_m2:g}",
        start=_figures(first.start_g_m2),
        start_words=f"{residual(first.start_g_m2)} g/m² of fixer at first",
        fills=fills,
        fill=n,
        last=_last(first),
        last_words=after_fill(bath.fills, first.last.slow_g_m2),
        last_doubt=last_doubt(first.last),
    )


def _supposed(one: TankfulState, bath: PlannedBath, n: int, now_us: int) -> Pass:
    """The wash as it will have been when fill `n` is poured: true fills, and planned ones for the rest."""
    there = next((was for was in reversed(one.passes) if was.bath == bath.id), None)
    if there is None:
        there = Pass(bath.id, None, None, Mark(poured(bath.id), now_us), 1)
    known = {fill.n: fill for fill in there.fills}
    last_us, fills = there.poured.at_us, []
    for k in range(2, n + 1):
        planned = FillNoted(k, Mark("", last_us + round(bath.times.aim_s * 1e6)))
        fill = known.get(k, planned)
        fills.append(fill)
        last_us = fill.mark.at_us
    return replace(there, fills=tuple(fills))


def _slow(left: Left) -> float:
    """The slow end, which is planned on."""
    return _figures(left.slow_g_m2)


def _figures(residual_g_m2: float | None) -> float:
    """A residual as it may be told; what is well below stands at the floor."""
    told = None if residual_g_m2 is None else told_residual(residual_g_m2)
    return FLOOR_G_M2 if told is None else told


def _last(advice: WashAdvice) -> tuple[float, float, float]:
    """Where the last fill will land: planned on, and from the quick to the slow end."""
    slow = _slow(advice.last)
    return slow, _figures(advice.last.quick_g_m2), slow
