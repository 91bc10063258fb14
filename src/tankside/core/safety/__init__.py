"""Cautions at the moment of handling: what can hurt, as codes with where they come from.

They stand in for no safety sheet: every list ends with the maker's sheet and the local codes.
"""

from tankside.core.safety.cautions import (
    MIXING,
    POURING,
    SCALD_FROM_C,
    STANDING,
    Caution,
    CautionCode,
    Handled,
    Moment,
    cautions,
)

__all__ = [
    "MIXING",
    "POURING",
    "SCALD_FROM_C",
    "STANDING",
    "Caution",
    "CautionCode",
    "Handled",
    "Moment",
    "cautions",
]
