"""What a scale does to each constituent, and when a larger volume is the better answer."""

from __future__ import annotations

from collections.abc import Sequence
from math import floor, log10

from tankside.core.refusals import refuse
from tankside.core.solutions.dilution import MOST_ERROR
from tankside.core.solutions.formulas import Part

MOST_ERROR_PERCENT = 100 * MOST_ERROR
USUAL_ML = (250.0, 500.0, 1000.0, 2000.0, 5000.0, 10_000.0, 20_000.0)
"""Volumes that people mix."""


def weighing_error_percent(amount: float, *, mark: float) -> float:
    """Half a mark of the scale or measure, in percent of `amount` (both in g or mL, above 0).

    Own model: docs/science/formulas. Doubt: a scale may be worse than half its mark; check it with a coin.

    >>> round(weighing_error_percent(1.2, mark=0.1), 1)
    4.2
    """
    if not 0.0001 <= mark <= 50:
        raise refuse("scale-mark-out-of-range", at="mark", mark_g=mark)
    return 100 * mark / 2 / amount


def least_volume_ml(parts: Sequence[Part], *, volume_ml: float, mark: float) -> float | None:
    """The least usual volume in mL at which no part is off by more than 5 %; None if `volume_ml` already is.

    Own model: docs/science/formulas: 5 %, as for a dilution at the mark of its measure. Doubt: as the scale.

    >>> borax = Part("borax", "pentahydrate", 0.917, "g")
    >>> least_volume_ml([borax], volume_ml=600, mark=0.1)
    1000.0
    """
    worst = max(weighing_error_percent(one.amount, mark=mark) for one in parts)
    if worst <= MOST_ERROR_PERCENT:
        return None
    needed_ml = volume_ml * worst / MOST_ERROR_PERCENT
    larger = next((usual for usual in USUAL_ML if usual >= needed_ml), None)
    if larger is None:
        raise refuse("scale-too-coarse", at="mark", mark_g=mark, ways_on=("finer-scale",))
    return larger


def shown_step(mark: float) -> float:
    """The step that an amount is shown to for a scale with `mark`: the power of ten within half of it.

    Own model: docs/science/formulas. Doubt: none.

    >>> shown_step(0.1), shown_step(1.0)
    (0.01, 0.1)
    """
    return float(10.0 ** floor(log10(mark / 2) + 1e-9))


def check_packet(*, packet_ml: float, wanted_ml: float) -> None:
    """Refuse part of a powder packet: its grains have settled apart, so only the whole is what it says.

    Arguments: `packet_ml` the volume it makes, `wanted_ml` that one wants (mL).
    Own model: docs/science/formulas (common practice). Doubt: none.

    >>> check_packet(packet_ml=1000, wanted_ml=1000)
    """
    if abs(packet_ml - wanted_ml) > 0.02 * packet_ml:
        raise refuse(
            "packet-is-mixed-whole",
            at="volume_ml",
            ways_on=("mix-the-packet-whole", "raw-chemicals"),
            packet_ml=packet_ml,
            wanted_ml=wanted_ml,
        )
