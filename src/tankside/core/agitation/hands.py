"""A pattern as what the hands do in one bath: movements with their instants."""

from __future__ import annotations

from collections.abc import Iterator
from dataclasses import dataclass

from tankside.core.agitation.patterns import Agitation


@dataclass(frozen=True, slots=True)
class HandMovement:
    """One movement, in s after the start of pour-in: number `n` of its bath, 0 for the first.

    It should begin at `start_s` and takes `lasts_s`; it may begin anywhere from `earliest_s` to `latest_s`.
    """

    n: int
    start_s: float
    lasts_s: float
    earliest_s: float
    latest_s: float

    @property
    def end_s(self) -> float:
        """When the hands are free again."""
        return self.start_s + self.lasts_s


def hand_movements(
    pattern: Agitation | None, *, pour_s: float, end_s: float, needed_s: float | None = None
) -> tuple[HandMovement, ...]:
    """What the hands do in one bath of that pattern, in order.

    Arguments: `pour_s` (0 or more) how long pouring in keeps the hands; `end_s` (above 0) when it is poured
    out; `needed_s` up to where agitation is needed, no later than `end_s` (a fixer's least time), else all of
    it; None for a bath that nobody moves. Result: instants in s after the start of pour-in.
    Each movement is over by then; cycle `n` begins at `n every_s`, once the first movement is over, and may
    slip by the pattern's softness but not into the pour-out. Continuous: one movement that fills the bath.
    Own model: docs/science/agitation. Doubt: none; a missed one is noted and corrects nothing.

    >>> by_hand = Agitation("inversion", first_s=30, then_s=10, every_s=60, soft_s=10)
    >>> [(one.start_s, one.lasts_s) for one in hand_movements(by_hand, pour_s=15, end_s=200)]
    [(15, 15), (60, 10), (120, 10), (180, 10)]
    >>> [one.latest_s for one in hand_movements(by_hand, pour_s=15, end_s=195)]
    [15, 70, 130, 185]
    """
    if pattern is None or pattern.movement == "none":
        return ()
    until_s = end_s if needed_s is None else min(needed_s, end_s)
    if pattern.continuous:
        return (_firm(pour_s, until_s - pour_s),) if until_s > pour_s else ()
    return tuple(_by_turns(pattern, pour_s=pour_s, end_s=end_s, until_s=until_s))


def hands_free_s(pattern: Agitation | None, *, pour_s: float) -> float:
    """When, in s after the start of pour-in, pouring and the first movement leave the hands free.

    Own model: docs/science/agitation. Doubt: none.

    >>> hands_free_s(None, pour_s=15), hands_free_s(Agitation("inversion"), pour_s=15)
    (15, 30.0)
    """
    return max(pour_s, pattern.first_s) if pattern is not None else pour_s


def cycle_at(pattern: Agitation | None, had_s: float) -> int:
    """The number of the movement that was due last, `had_s` (0 or more) after the start of pour-in.

    Own model: docs/science/agitation. Doubt: none.

    >>> cycle_at(Agitation("inversion"), 130), cycle_at(None, 130)
    (2, 0)
    """
    if pattern is None or pattern.every_s <= 0 or pattern.continuous:
        return 0
    return int(had_s // pattern.every_s)


def _by_turns(pattern: Agitation, *, pour_s: float, end_s: float, until_s: float) -> Iterator[HandMovement]:
    """The first movement, then one each cycle."""
    free_s = hands_free_s(pattern, pour_s=pour_s)
    if free_s > pour_s and until_s > pour_s:
        yield _firm(pour_s, min(free_s, until_s) - pour_s)
    if not pattern.by_hand or pattern.then_s <= 0 or pattern.every_s <= 0:
        return
    n = 1
    while n * pattern.every_s + pattern.then_s <= until_s:
        due_s = n * pattern.every_s
        if due_s >= free_s:
            earliest_s = max(free_s, due_s - pattern.soft_s)
            latest_s = min(due_s + pattern.soft_s, end_s - pattern.then_s)
            yield HandMovement(n, due_s, pattern.then_s, earliest_s, latest_s)
        n += 1


def _firm(start_s: float, lasts_s: float) -> HandMovement:
    """A movement that may not slip, the first of its bath."""
    return HandMovement(0, start_s, lasts_s, start_s, start_s)
