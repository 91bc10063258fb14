"""Baths of a tankful as the page shows them, each fill of a wash as a face of its own."""

from __future__ import annotations

from collections.abc import Iterator

from tankside.core.planning.plan import PlannedBath
from tankside.core.run.anchors import drained, filled, poured
from tankside.core.run.cue_script import end_after_s, least_s
from tankside.core.run.sink_view import BathView, TankfulView
from tankside.core.run.standing import bottle_for
from tankside.core.run.state import RunState, TankfulState
from tankside.web.drawing.kinds import sign_of_bath
from tankside.web.screen.acts import beside_bath, whole_s
from tankside.web.screen.residual import residual_of
from tankside.web.screen.values import BathFace
from tankside.wording.cues import BATHS
from tankside.wording.sink_acts import liquid_words
from tankside.wording.sink_baths import at_least, left_of


def baths(state: RunState, one: TankfulState, view: TankfulView, now_us: int) -> tuple[BathFace, ...]:
    """The baths of one tankful in order."""
    planned = one.plan.baths
    return tuple(
        face
        for at, bath in enumerate(planned)
        for face in _faces(state, one, bath, planned[at + 1 :], view.bath, now_us=now_us)
    )


def _faces(
    state: RunState,
    one: TankfulState,
    bath: PlannedBath,
    later: tuple[PlannedBath, ...],
    there: BathView | None,
    *,
    now_us: int,
) -> Iterator[BathFace]:
    over = tuple(poured(other.id) for other in later)
    view = there if there is not None and there.id == bath.id else None
    if bath.kind != "wash":
        yield _face(state, one, bath, view, ends=(drained(bath.id), *over), later=later)
        return
    for n in range(1, bath.fills + 1):
        follows = tuple(filled(bath.id, k) for k in range(n + 1, bath.fills + 1))
        ends = (*follows, drained(bath.id), *over)
        yield _fill(one, bath, n, view, ends=ends, later=later, now_us=now_us)


def _face(
    state: RunState,
    one: TankfulState,
    bath: PlannedBath,
    view: BathView | None,
    *,
    ends: tuple[str, ...],
    later: tuple[PlannedBath, ...],
) -> BathFace:
    end_s, times = end_after_s(one, bath), bath.times
    exact = times.most_s is not None and times.most_s <= times.aim_s
    late_s = bath.drain_late_s if exact else 0.0
    low_s, high_s = _told(one, bath, view)
    half_s = None if low_s is None or high_s is None else (high_s - low_s) / 2
    under = left_of(end_s, half_s, view.temp_c if view else None) if exact else at_least(times.least_s, end_s)
    liquid = next((known for known in state.plan.liquids if known.key == bath.liquid), None)
    follows = later[0] if later else None
    return BathFace(
        id=bath.id,
        tankful=one.letter,
        sign=sign_of_bath(bath.kind),
        name=BATHS[bath.kind],
        what=f"{liquid.name} {liquid.parts}".strip() if liquid else "",
        begins=poured(bath.id),
        ends=ends,
        least_s=whole_s(least_s(one, bath)),
        aim_s=whole_s(end_s),
        most_s=None if times.most_s is None else whole_s(end_s + times.most_s - times.aim_s + late_s),
        exact=exact,
        under=under,
        after="drain now",
        at_end=f"drain, then {liquid_words(follows.kind)}" if follows else "drain, then hang",
        code=(bottle_for(state, one, bath.id) or "") if bath.liquid else "",
        at_end_code=(bottle_for(state, one, follows.id) or "") if follows and follows.liquid else "",
        low_s=None if low_s is None else whole_s(low_s),
        high_s=None if high_s is None else whole_s(high_s),
        others=beside_bath(bath.id, agitated=bath.agitation is not None),
    )


def _told(
    one: TankfulState, bath: PlannedBath, view: BathView | None
) -> tuple[float, float] | tuple[None, None]:
    """The interval of the end in seconds after the pour, as told, or as planned before anything was read."""
    if view is not None and view.low_us is not None and view.high_us is not None:
        return (view.low_us - view.poured_us) / 1e6, (view.high_us - view.poured_us) / 1e6
    planned = one.plan.development.end_s if bath.kind == "develop" else None
    return (planned.low, planned.high) if planned is not None else (None, None)


def _fill(
    one: TankfulState,
    bath: PlannedBath,
    n: int,
    view: BathView | None,
    *,
    ends: tuple[str, ...],
    later: tuple[PlannedBath, ...],
    now_us: int,
) -> BathFace:
    last, follows = n == bath.fills, later[0] if later else None
    after = f"drain, then {liquid_words(follows.kind)}" if follows else "drain, then hang"
    temp = f", {view.temp_c:.1f} °C" if view is not None and view.temp_c is not None else ""
    return BathFace(
        id=bath.id,
        tankful=one.letter,
        sign=sign_of_bath(bath.kind),
        name=BATHS[bath.kind],
        what=f"fill {n} of {bath.fills}{temp}",
        begins=filled(bath.id, n),
        ends=ends,
        least_s=bath.times.least_s,
        aim_s=bath.times.aim_s,
        most_s=bath.times.most_s,
        exact=False,
        under="at least; longer does no harm",
        after="",
        at_end=after if last else "drain, then new water",
        residual=residual_of(one, bath, n, now_us),
        others=beside_bath(bath.id, agitated=False),
    )
