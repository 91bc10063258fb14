"""Whether a tank holds enough stock for its film, and what could be done if it does not."""

from __future__ import annotations

from collections.abc import Sequence
from dataclasses import dataclass
from math import floor

from tankside.core.quantities.limits import check_volume
from tankside.core.refusals import refuse
from tankside.core.solutions.dilution import stock_and_water
from tankside.core.solutions.notation import Dilution

_EXACT = 1e-9
"""Share by which binary fractions may miss an exact amount."""


@dataclass(frozen=True, slots=True)
class StockForFilm:
    """Stock that a full tank contains (`stock_ml`) and that its film needs (`needed_ml`), with the ways on.

    `fits_rolls` any so many of the rolls; `needs_ml` the least volume that holds enough at this dilution;
    `stronger` the weakest 1+n that does in this tank, with its `stronger_ml` of stock; its own time must be
    asked. None: not possible.
    """

    stock_ml: float
    needed_ml: float
    fits_rolls: int | None
    needs_ml: float
    stronger: Dilution | None
    stronger_ml: float = 0.0

    @property
    def enough(self) -> bool:
        """Whether the tank holds enough."""
        return self.stock_ml >= self.needed_ml * (1 - _EXACT)


def least_stock(areas: Sequence[float], *, least_stock_ml: float) -> float:
    """Least stock in mL for rolls of `areas` (units of 80 square inches), in proportion to area.

    Arguments: `least_stock_ml` for one unit, as the leaflet says, above 0.
    Own model: docs/science/least-stock. Doubt: that of the leaflet's rule; the area is exact.

    >>> least_stock([1.0, 0.25], least_stock_ml=80.0)
    100.0
    """
    return sum(areas) * least_stock_ml


def tank_needed(needed_ml: float, dilution: Dilution) -> float:
    """The least volume in mL that contains `needed_ml` of stock at `dilution`.

    Source: definition of parts by volume. Doubt: none.

    >>> tank_needed(160.0, Dilution(1, 4))
    800.0
    """
    return needed_ml * (dilution.stock + dilution.water) / dilution.stock


def stock_for_film(
    areas: Sequence[float], *, tank_ml: float, dilution: Dilution, least_stock_ml: float
) -> StockForFilm:
    """Stock in a full tank against that needed by the rolls in it, with the ways on.

    Arguments: `areas` one roll each, in units of 80 square inches; `tank_ml` above 0; `least_stock_ml` of
    one unit. Result: mL and counts. Own model: docs/science/least-stock. Doubt: that of the leaflet's rule.

    >>> found = stock_for_film([1, 1], tank_ml=600, dilution=Dilution(1, 4), least_stock_ml=80)
    >>> found.stock_ml, found.needed_ml, found.fits_rolls, found.needs_ml, str(found.stronger)
    (120.0, 160, 1, 800.0, '1+2')
    """
    stock_ml = stock_and_water(check_volume(tank_ml), dilution).stock_ml
    needed_ml = least_stock(areas, least_stock_ml=least_stock_ml)
    stronger = _stronger(tank_ml / needed_ml, dilution) if needed_ml else None
    return StockForFilm(
        stock_ml,
        needed_ml,
        _fits_rolls(areas, stock_ml / least_stock_ml),
        tank_needed(needed_ml, dilution),
        stronger,
        stock_and_water(tank_ml, stronger).stock_ml if stronger else 0.0,
    )


def check_stock(
    areas: Sequence[float], *, tank_ml: float, dilution: Dilution, least_stock_ml: float
) -> StockForFilm:
    """`stock_for_film`, refused with its ways on where the tank holds too little.

    Arguments as there. Own model: docs/science/least-stock. Doubt: as there.

    >>> check_stock([1], tank_ml=600, dilution=Dilution(1, 4), least_stock_ml=80).enough
    True
    """
    found = stock_for_film(areas, tank_ml=tank_ml, dilution=dilution, least_stock_ml=least_stock_ml)
    if found.enough:
        return found
    raise refuse(
        "too-little-stock",
        at="tank_ml",
        ways_on=(
            *(("fewer-rolls",) if found.fits_rolls else ()),
            "more-volume",
            *(("stronger-dilution",) if found.stronger else ()),
        ),
        stock_ml=found.stock_ml,
        needed_ml=found.needed_ml,
        rolls=len(areas),
        fits_rolls=found.fits_rolls or 0,
        volume_ml=tank_ml,
        needs_ml=found.needs_ml,
        parts=str(dilution),
        stronger=str(found.stronger or ""),
        stronger_ml=found.stronger_ml,
    )


def _fits_rolls(areas: Sequence[float], units: float) -> int | None:
    """How many of the rolls fit whichever they are: so many of the largest do; None for none at all."""
    largest = sorted(areas, reverse=True)
    fitting = [n for n in range(1, len(largest) + 1) if sum(largest[:n]) <= units * (1 + _EXACT)]
    return fitting[-1] if fitting else None


def _stronger(times: float, dilution: Dilution) -> Dilution | None:
    """The weakest 1+n, stronger than `dilution`, whose stock is at least the whole over `times`."""
    water = floor(times * (1 + _EXACT) - 1)
    if water < 0:
        return None
    found = Dilution(1, water)
    return found if found.stock_fraction > dilution.stock_fraction else None
