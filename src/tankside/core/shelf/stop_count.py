"""How many rolls a stop bath may still take: the count on its label is the rule, and nothing else counts."""

from __future__ import annotations

from dataclasses import dataclass

from tankside.core.solutions.stop_bath import PUBLISHED_ROLLS_PER_L


@dataclass(frozen=True, slots=True)
class StopCount:
    """`used` of `whole` rolls; `by_label` is false where the published count stands in for its label's."""

    used: float
    whole: float
    by_label: bool

    @property
    def left(self) -> float:
        """Rolls left, never less than none."""
        return max(0.0, self.whole - self.used)


def stop_count(*, used_units: float, put_in_ml: float, label_per_l: float | None) -> StopCount:
    """The count of a stop bath of `put_in_ml` (mL) after `used_units` of plain film area.

    Arguments: `label_per_l` rolls a litre by its label, None where nobody has read it.
    Source: Anchell (2008), p. 268: 12 rolls a litre, the one published count, where its label is not read.
    Doubt: the developer carried in alone moves it fourfold; an indicator or a strip is the test.

    >>> stop_count(used_units=9, put_in_ml=1000, label_per_l=None).left
    3.0
    """
    per_l = PUBLISHED_ROLLS_PER_L if label_per_l is None else label_per_l
    return StopCount(used_units, per_l * put_in_ml / 1000, label_per_l is not None)
