"""Which rolls share a tank, and in what order the tankfuls come."""

from __future__ import annotations

from dataclasses import replace

import pytest
from planned import combination, key, row, wanted

from tankside.core.planning.first_evening import default_tank
from tankside.core.planning.tankfuls import in_tankfuls
from tankside.core.planning.wish import WantedRoll


def of_film(number: int, film: str, of_key: int) -> WantedRoll:
    """A roll of an invented film, by a combination under that key."""
    known = replace(combination(row(70 + number)), key=key(of_key), film=film)
    one = wanted(number, known)
    return replace(one, roll=replace(one.roll, film=replace(one.roll.film, name=film)))


@pytest.mark.parametrize("keys", [(41, 42), (42, 41)])
def test_the_order_does_not_hang_on_the_keys(keys: tuple[int, int]) -> None:
    """Two films come by their names, whatever keys their combinations were given."""
    rolls = [of_film(1, "Mill Race 400", keys[0]), of_film(2, "Ferry 125", keys[1])]
    tanks = [default_tank(key(200 + n), volume_ml=300.0, name=f"tank {n}") for n in range(2)]
    loads = in_tankfuls(rolls, tanks)
    assert ["Ferry 125", "Mill Race 400"] == [one.rolls[0].roll.film.name for one in loads]
