"""Which rows are used, and that no time is ever computed from another dilution or index."""

from __future__ import annotations

from dataclasses import replace
from datetime import date

import pytest
from planned import combination, key, row

from tankside.core.methods.combinations import TimeRow
from tankside.core.methods.known_time import find, known_time, rows_in_use
from tankside.core.refusals import Refused
from tankside.core.solutions.notation import Dilution

LEAFLET = row(61)
OWN = TimeRow(key(62), 540.0, 20.0, 125.0, "own", "notebook", date(2026, 9, 1))
ACCEPTED = TimeRow(key(63), 520.0, 20.0, 125.0, "accepted", "review", date(2026, 9, 20))


@pytest.mark.parametrize(
    ("rows", "time_s"), [((LEAFLET,), 570.0), ((LEAFLET, OWN), 540.0), ((LEAFLET, OWN, ACCEPTED), 520.0)]
)
def test_accepted_over_own_over_leaflet(rows: tuple[TimeRow, ...], time_s: float) -> None:
    """The most trusted row gives the time."""
    assert time_s == known_time(combination(*rows), 125.0).rate.time_s.value


def test_a_replaced_row_is_kept_but_not_used() -> None:
    """A correction that names the row it replaces takes its place."""
    later = replace(ACCEPTED, key=key(64), time_s=500.0, replaces=ACCEPTED.key)

    assert [later, LEAFLET] == list(rows_in_use(combination(LEAFLET, ACCEPTED, later), 125.0))


def test_several_leaflet_rows_sharpen_the_factor() -> None:
    """Three rows on a line leave less doubt about the factor than none."""
    rows = (row(61, 570.0, 20.0), row(65, 480.0, 22.0), row(66, 420.0, 24.0))
    one, three = known_time(combination(rows[0]), 125.0), known_time(combination(*rows), 125.0)

    assert three.rate.q10.high - three.rate.q10.low < (one.rate.q10.high - one.rate.q10.low) / 2


def test_another_index_is_refused_with_those_known() -> None:
    """A time at 125 says nothing of 400."""
    with pytest.raises(Refused) as no:
        known_time(combination(LEAFLET), 400.0)

    assert ("no-time-at-index", "125") == (no.value.refusal.code, no.value.refusal.numbers["known"])


def test_another_dilution_is_another_combination() -> None:
    """1+4 is found at 1+4 and nowhere else."""
    known = [combination(LEAFLET)]

    assert find(known, film="ferry 125", developer="umber", dilution=Dilution(1, 4)) is known[0]
    assert find(known, film="Ferry 125", developer="Umber", dilution=Dilution(1, 5)) is None
