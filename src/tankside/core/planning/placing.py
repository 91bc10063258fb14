"""Where soft acts go, so that two hands are enough."""

from __future__ import annotations

from bisect import insort
from collections.abc import Iterable
from dataclasses import replace
from itertools import pairwise

from tankside.core.planning.acts import Act


def placed(acts: Iterable[Act], *, between_s: float) -> tuple[Act, ...] | None:
    """The acts with every soft one moved to where the hands are free, or None where that fails.

    First each soft act is put as near to its own best moment as it will go; where that fails the hands are
    walked through the session, always taking what is most pressing, and acts then slide back towards their
    best. Acts of different tankfuls keep `between_s` apart.
    Own model: docs/science/two-tanks. Doubt: a None is no proof; `check` judges what comes out.
    """
    every = list(acts)
    firm = sorted((act for act in every if not act.soft), key=lambda act: act.start_s)
    if _collides(firm, between_s):
        return None
    soft = [act for act in every if act.soft]
    found = _one_by_one(firm, soft, between_s) or _walked(firm, soft, between_s)
    return None if found is None else tuple(found)


def _gap(one: Act, other: Act, between_s: float) -> float:
    """Breathing room that two acts need between them."""
    return 0.0 if one.tankful == other.tankful else between_s


def _collides(in_order: list[Act], between_s: float) -> bool:
    """Whether any two neighbours in time are too near."""
    return any(
        later.start_s < earlier.end_s + _gap(earlier, later, between_s)
        for earlier, later in pairwise(in_order)
    )


def _one_by_one(firm: list[Act], soft: list[Act], between_s: float) -> list[Act] | None:
    """Short acts first, by their latest moment, each as near to its own best as it will go."""
    out = list(firm)
    for act in sorted(soft, key=lambda one: (one.for_s, one.latest_s)):
        start_s = _free_start(act, act.start_s, out, between_s)
        if start_s is None:
            return None
        insort(out, replace(act, start_s=start_s), key=lambda one: one.start_s)
    return out


def _walked(firm: list[Act], soft: list[Act], between_s: float) -> list[Act] | None:
    """At each free moment begin the most pressing act that leaves room for the rest."""
    out, waiting = list(firm), sorted(soft, key=lambda one: one.latest_s)
    while waiting:
        best: tuple[float, int] | None = None
        for number, act in enumerate(waiting):
            start_s = _free_start(act, act.earliest_s, out, between_s)
            if start_s is None:
                return None
            if (best is None or start_s < best[0]) and _leaves_room(act, start_s, waiting, between_s):
                best = (start_s, number)
            if best is not None and act.earliest_s > best[0]:
                break
        if best is None:
            return None
        act = waiting.pop(best[1])
        insort(out, replace(act, start_s=best[0]), key=lambda one: one.start_s)
    return _slid_back(out, soft, between_s)


def _leaves_room(act: Act, start_s: float, waiting: list[Act], between_s: float) -> bool:
    """Whether every more pressing act can still begin in time after this one."""
    end_s = start_s + act.for_s
    return all(
        end_s + _gap(act, other, between_s) <= other.latest_s
        for other in waiting
        if other is not act and other.earliest_s < end_s + between_s and other.latest_s < act.latest_s
    )


def _slid_back(out: list[Act], soft: list[Act], between_s: float) -> list[Act]:
    """Each soft act once more as near to its own best moment as the others now let it."""
    best_s = {_name(act): act.start_s for act in soft}
    for number, act in enumerate(out):
        if act.soft:
            others = out[:number] + out[number + 1 :]
            start_s = _free_start(act, best_s[_name(act)], others, between_s)
            out[number] = act if start_s is None else replace(act, start_s=start_s)
    return sorted(out, key=lambda one: one.start_s)


def _name(act: Act) -> tuple[object, ...]:
    """What tells an act from every other, wherever it is put."""
    return (act.tankful, act.bath, act.kind, act.fill, act.earliest_s, act.latest_s)


def _free_start(act: Act, wanted_s: float, taken: list[Act], between_s: float) -> float | None:
    """The start nearest to `wanted_s` at which the hands are free, if any."""
    near = [
        (one.start_s - _gap(one, act, between_s) - act.for_s, one.end_s + _gap(one, act, between_s))
        for one in taken
        if one.end_s + between_s > act.earliest_s and one.start_s - between_s < act.latest_s + act.for_s
    ]
    tries = [wanted_s, *(edge for pair in near for edge in pair)]
    free = [
        start_s
        for start_s in tries
        if act.earliest_s <= start_s <= act.latest_s
        and not any(before_s < start_s < after_s for before_s, after_s in near)
    ]
    return min(free, key=lambda start_s: abs(start_s - wanted_s), default=None)
