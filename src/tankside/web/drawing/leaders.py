"""Words beside a scale: pushed apart as little as will do, in order, and joined to their marks by elbows."""

from __future__ import annotations

from collections.abc import Sequence
from dataclasses import dataclass, replace
from itertools import pairwise


@dataclass(frozen=True, slots=True)
class Words:
    """A wish: words of `height_px` centred at the mark `at_px`; a higher `rank` is dropped later."""

    at_px: float
    height_px: float
    rank: int = 0


@dataclass(frozen=True, slots=True)
class Leader:
    """A mark, and the centre of its words; None where they found no room, while the mark stays."""

    at_px: float
    words_px: float | None


def spread(
    wishes: Sequence[Words], *, top_px: float, bottom_px: float, farthest_px: float | None = None
) -> tuple[Leader, ...]:
    """Place words between `top_px` and `bottom_px` with the least sum of squared shifts.

    `wishes` stand in the order of their marks, and so do the answers. Where all together are too tall, or
    one would be shifted more than `farthest_px`, the lowest rank is dropped, the later one first.
    """
    if any(after.at_px < before.at_px for before, after in pairwise(wishes)):
        raise ValueError("words are placed in the order of their marks")
    kept = list(range(len(wishes)))
    while kept:
        chosen = [wishes[index] for index in kept]
        crowd = range(len(kept))
        if sum(one.height_px for one in chosen) <= bottom_px - top_px:
            centres = _least_shift(chosen, top_px, bottom_px)
            crowd = _crowd_without_room(chosen, centres, farthest_px)
            if not crowd:
                found = dict(zip(kept, centres, strict=True))
                return tuple(Leader(one.at_px, found.get(index)) for index, one in enumerate(wishes))
        kept.pop(min(reversed(crowd), key=lambda index: chosen[index].rank))
    return tuple(Leader(one.at_px, None) for one in wishes)


def _crowd_without_room(
    wishes: Sequence[Words], centres: Sequence[float], farthest_px: float | None
) -> range:
    """The touching words around the first one that is pushed too far; empty where all have room."""
    if farthest_px is None:
        return range(0)
    pushed = [abs(one.at_px - y) > farthest_px for one, y in zip(wishes, centres, strict=True)]
    if True not in pushed:
        return range(0)
    first = last = pushed.index(True)
    while first > 0 and _touch(wishes, centres, first - 1):
        first -= 1
    while last < len(wishes) - 1 and _touch(wishes, centres, last):
        last += 1
    return range(first, last + 1)


def _touch(wishes: Sequence[Words], centres: Sequence[float], index: int) -> bool:
    """Whether words `index` and the next leave no room between them."""
    apart = (wishes[index].height_px + wishes[index + 1].height_px) / 2
    return centres[index + 1] - centres[index] <= apart + 0.01


@dataclass(frozen=True, slots=True)
class _Block:
    """Neighbouring words that touch and therefore move together; `start` is measured without the heights."""

    start: float
    size: int

    def joined(self, other: _Block) -> _Block:
        """Both as one block, at the mean of what all its words want."""
        size = self.size + other.size
        return replace(self, start=(self.start * self.size + other.start * other.size) / size, size=size)


def _least_shift(wishes: Sequence[Words], top_px: float, bottom_px: float) -> list[float]:
    """Centres of the words: isotonic regression by pooling neighbours, then held inside the room.

    Taking off the heights of the words above turns 'do not overlap' into 'do not decrease'; clipping the
    free answer to the room is then still the least-squares one.
    """
    above, before = [], 0.0
    for one in wishes:
        above.append(before + one.height_px / 2)
        before += one.height_px
    blocks: list[_Block] = []
    for one, offset in zip(wishes, above, strict=True):
        block = _Block(one.at_px - offset, 1)
        while blocks and blocks[-1].start >= block.start:
            block = blocks.pop().joined(block)
        blocks.append(block)
    starts = [block.start for block in blocks for _ in range(block.size)]
    last = bottom_px - before
    return [
        round(min(max(start, top_px), last) + offset, 3) for start, offset in zip(starts, above, strict=True)
    ]


def elbow(*, from_x: float, from_y: float, to_x: float, to_y: float, run_px: float = 8.0) -> str:
    """A line out of the mark, slanted, and level into the words, as an SVG path.

    Most of the way is level on the side of the words, so that neighbouring slants do not cross.

    >>> elbow(from_x=0, from_y=10, to_x=40, to_y=30)
    'M0 10h8L32 30H40'
    >>> elbow(from_x=0, from_y=10, to_x=40, to_y=10)
    'M0 10H40'
    """
    if abs(from_y - to_y) < 0.5:
        return f"M{from_x:g} {from_y:g}H{to_x:g}"
    side = 1 if to_x >= from_x else -1
    run = min(run_px, abs(to_x - from_x) / 3) * side
    return f"M{from_x:g} {from_y:g}h{run:g}L{to_x - run:g} {to_y:g}H{to_x:g}"
