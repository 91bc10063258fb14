"""What is readable at all; what is sensible is for the sciences to say."""

from __future__ import annotations

from dataclasses import dataclass

from tankside.core.refusals import refuse


@dataclass(frozen=True, slots=True)
class Limits:
    """`least` to `most`, both readable, in the unit of the quantity."""

    least: float
    most: float

    def hold(self, value: float) -> bool:
        """Whether `value` is readable."""
        return self.least <= value <= self.most


LIQUID_C = Limits(0.0, 100.0)
ROOM_C = Limits(-20.0, 50.0)
VOLUME_ML = Limits(0.01, 200_000.0)
TIME_S = Limits(1.0, 86_400.0)
INDEX = Limits(0.5, 409_600.0)

USUAL_LIQUID_C = Limits(5.0, 60.0)
"""A bare number outside this, that would lie inside in the other unit, is asked back."""

USUAL_VOLUME_ML = Limits(3.0, 5_000.0)
"""The same for volumes: '0.5' may be half a litre."""


def check_temperature(temp_c: float, *, limits: Limits = LIQUID_C) -> float:
    """`temp_c` if it is readable, else refused.

    Own model: docs/how-to/amounts. Doubt: none.

    >>> check_temperature(20.0)
    20.0
    """
    if not limits.hold(temp_c):
        raise refuse("temperature-not-readable", temp_c=temp_c, least_c=limits.least, most_c=limits.most)
    return temp_c


def check_volume(volume_ml: float) -> float:
    """`volume_ml` if it is readable, else refused.

    Own model: docs/how-to/amounts. Doubt: none.

    >>> check_volume(500.0)
    500.0
    """
    if not VOLUME_ML.hold(volume_ml):
        raise refuse("volume-not-readable", volume_ml=volume_ml, most_ml=VOLUME_ML.most)
    return volume_ml


def check_time(time_s: float) -> float:
    """`time_s` if it is readable, else refused.

    Own model: docs/how-to/amounts. Doubt: none.

    >>> check_time(570.0)
    570.0
    """
    if not TIME_S.hold(time_s):
        raise refuse("time-not-readable", time_s=time_s)
    return time_s
