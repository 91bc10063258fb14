"""Formats of film, with the area that chemistry feels."""

from __future__ import annotations

from dataclasses import dataclass
from typing import Literal

from tankside.core.refusals import refuse

FormatKind = Literal["135-36", "135-24", "135-length", "120", "4x5"]
KINDS: tuple[FormatKind, ...] = ("135-36", "135-24", "135-length", "120", "4x5")

UNIT_M2 = 0.0516128
"""One unit of film area in m2: 80 square inches, one 135-36 or one 120 roll."""

WIDTH_135_M = 0.035


@dataclass(frozen=True, slots=True)
class Format:
    """A format; `length_m` is asked of 135 by length, `sheets` counts sheets of 4x5 (one to a dozen)."""

    kind: FormatKind
    length_m: float | None = None
    sheets: int = 1

    def __post_init__(self) -> None:
        if self.kind == "135-length" and not (self.length_m and 0.1 <= self.length_m <= 30.5):
            raise refuse("film-length-out-of-range", at="length_m", length_m=self.length_m or 0.0)
        if not 1 <= self.sheets <= 12:
            raise refuse("sheets-out-of-range", at="sheets", sheets=self.sheets)

    @property
    def area_units(self) -> float:
        """Area of one side in units of 80 in2.

        Own model: practice of counting rolls, docs/science/film-area.

        >>> Format("4x5", sheets=6).area_units
        1.5
        >>> round(Format("135-length", length_m=1.5).area_units, 2)
        1.02
        """
        match self.kind:
            case "135-36" | "120":
                return 1.0
            case "135-24":
                return 0.7
            case "135-length":
                return WIDTH_135_M * (self.length_m or 0.0) / UNIT_M2
            case "4x5":
                return 0.25 * self.sheets

    @property
    def gelatin_on_both_sides(self) -> bool:
        """Whether the back of the film is coated too, so that it holds twice the liquid in the wash."""
        return self.kind in ("120", "4x5")
