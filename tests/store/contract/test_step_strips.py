"""What every desk owes to step tablets and step strips: kept as typed, put right by a newer row alone."""

from __future__ import annotations

from dataclasses import replace
from datetime import timedelta

import pytest
from evening import COMBINATION, MADE, key

from tankside.core.methods.step_strips import Exposed, StepStrip, Tablet, even_tablet
from tankside.workflows.ports import Desk
from tankside.workflows.records import Conflict

TABLET = Tablet(key(70), "my tablet", even_tablet(5, step=0.3))
STRIP = StepStrip(
    key(71), MADE, COMBINATION.key, "1,62 1,30 - 0,55 0,28", (1.62, 1.30, None, 0.55, 0.28), "my tablet",
    TABLET.densities, base_fog=0.25, reading_sd=0.015, instrument="flatbed", exposed=Exposed(-0.1, True),
    run=key(7), tankful="A", words="invented",
)  # fmt: skip
ALONE = StepStrip(
    key(72), MADE - timedelta(hours=1), COMBINATION.key, "log_h,density", (0.2, 0.9), "", (), (-3.0, -1.0),
    control=True, time_s=570.0, temp_c=20.0,
)  # fmt: skip


def test_strips_come_back_as_they_were(desk: Desk) -> None:
    """It should keep every field, in the order the strips were noted."""
    desk.combinations.keep(COMBINATION)
    for one in (STRIP, ALONE):
        desk.step_strips.add(one)

    assert (ALONE, STRIP) == desk.step_strips.all()
    assert STRIP == desk.step_strips.by_key(key(71))
    assert desk.step_strips.by_key(key(79)) is None


def test_a_strip_is_put_right_by_one_newer_row(desk: Desk) -> None:
    """It should keep both, and report a conflict for a second correction of the same one or a key taken."""
    desk.combinations.keep(COMBINATION)
    right = replace(STRIP, key=key(73), replaces=STRIP.key, noted=MADE + timedelta(hours=1))
    for one in (STRIP, right):
        desk.step_strips.add(one)
    for taken in (replace(right, key=key(74)), replace(STRIP, typed="other")):
        with pytest.raises(Conflict):
            desk.step_strips.add(taken)

    assert (STRIP, right) == desk.step_strips.all()


def test_tablets_are_kept_by_name(desk: Desk) -> None:
    """It should list them by name and let one be written over."""
    other = Tablet(key(75), "a borrowed one", (0.04, 0.21, 0.33, 0.5, 0.66))
    for one in (TABLET, other, replace(TABLET, name="zone tablet")):
        desk.tablets.keep(one)

    assert ["a borrowed one", "zone tablet"] == [one.name for one in desk.tablets.all()]
    assert other == desk.tablets.by_key(key(75))
