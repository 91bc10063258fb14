"""Units outside against C, mL and s inside."""

from __future__ import annotations

from typing import assert_never

from tankside.core.quantities.preferences import TemperatureUnit, VolumeUnit

US_FL_OZ_ML = 29.5735295625
"""A 128th of the US gallon of 231 cubic inches: exact."""

IMPERIAL_FL_OZ_ML = 28.4130625
"""A 160th of the imperial gallon of 4.54609 litres: exact."""


def celsius(temp_f: float) -> float:
    """Degrees Celsius of degrees Fahrenheit, any.

    Source: definition of the Fahrenheit degree. Doubt: none.

    >>> celsius(68.0)
    20.0
    """
    return (temp_f - 32.0) * 5.0 / 9.0


def fahrenheit(temp_c: float) -> float:
    """Degrees Fahrenheit of degrees Celsius, any.

    Source: definition of the Fahrenheit degree. Doubt: none.

    >>> fahrenheit(20.0)
    68.0
    """
    return temp_c * 9.0 / 5.0 + 32.0


def temp_c_of(value: float, unit: TemperatureUnit) -> float:
    """Degrees Celsius of `value` in `unit`.

    Source: definition. Doubt: none.

    >>> temp_c_of(68.0, "F")
    20.0
    """
    match unit:
        case "C":
            return value
        case "F":
            return celsius(value)
        case _:
            assert_never(unit)


def temp_in(temp_c: float, unit: TemperatureUnit) -> float:
    """`temp_c` as a number in `unit`.

    Source: definition. Doubt: none.

    >>> temp_in(20.0, "F")
    68.0
    """
    match unit:
        case "C":
            return temp_c
        case "F":
            return fahrenheit(temp_c)
        case _:
            assert_never(unit)


def step_in(step_k: float, unit: TemperatureUnit) -> float:
    """A difference of temperature as a number in `unit`.

    Source: definition. Doubt: none.

    >>> step_in(5.0, "F")
    9.0
    """
    return temp_in(step_k, unit) - temp_in(0.0, unit)


def ml_each(unit: VolumeUnit) -> float:
    """Millilitres in one of `unit`.

    Source: definitions. Doubt: none.

    >>> ml_each("us_fl_oz")
    29.5735295625
    """
    match unit:
        case "ml":
            return 1.0
        case "us_fl_oz":
            return US_FL_OZ_ML
        case "imperial_fl_oz":
            return IMPERIAL_FL_OZ_ML
        case _:
            assert_never(unit)
