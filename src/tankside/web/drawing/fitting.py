"""The finest engraved scale that holds a range of values with some room, from mark to mark."""

from __future__ import annotations

from collections.abc import Callable

from tankside.web.drawing.graduation import Graduation, graduation

CLEAR = 0.12
"""Share of the whole that stays free above the first value and below the last."""

STEPS = {
    "s": ((10.0, 3, 6), (60.0, 5, 10), (300.0, 2, 6)),
    "C": ((0.1, 5, 10), (0.5, 2, 10), (5.0, 2, 4)),
    "mL": ((1.0, 5, 10), (5.0, 2, 10), (20.0, 5, 10), (100.0, 5, 10)),
    "contrast index": ((0.01, 5, 10), (0.02, 5, 10), (0.1, 5, 5)),
    "density": ((0.02, 5, 10), (0.1, 5, 5)),
    "log H": ((0.02, 5, 10), (0.1, 5, 5)),
    "degrees": ((1.0, 3, 3),),
    "%": ((5.0, 2, 10),),
    "rolls": ((0.5, 2, 2), (1.0, 5, 5), (5.0, 2, 4)),
}
"""Steps, and every how many of them a longer mark stands, by unit."""

MOST_UNITS = 60


def fitting_scale(
    low: float,
    high: float,
    *,
    unit: str,
    length_px: float,
    words: Callable[[float], str],
    upward: bool = False,
) -> Graduation:
    """The finest scale in `unit` that holds `low` to `high` with some room on both sides."""
    choices = STEPS.get(unit, STEPS["mL"])
    spans = [_span(low, high, step * middle) for step, middle, _ in choices]
    fits = (number for number, one in enumerate(choices) if _width(spans[number]) <= MOST_UNITS * one[0])
    chosen = next(fits, len(choices) - 1)
    step, middle, long = choices[chosen]
    first, last = spans[chosen]
    return graduation(
        low=first, high=last, unit=step, length_px=length_px,
        middle=middle, long=long, words=words, upward=upward,
    )  # fmt: skip


def _span(low: float, high: float, whole: float) -> tuple[float, float]:
    """From mark to mark, with some room on both sides; nothing below nought where there is nothing."""
    room = max((high - low) * CLEAR, whole)
    first = _down(low - room, whole)
    return max(first, 0.0) if low >= 0 else first, -_down(-high - room, whole)


def _width(span: tuple[float, float]) -> float:
    """How much a span spans."""
    return span[1] - span[0]


def _down(value: float, step: float) -> float:
    """The multiple of `step` at or below `value`."""
    return float(step * (value // step))
