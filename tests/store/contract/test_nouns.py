"""What every desk owes: rolls, films, combinations, plans, bottles and the things around them."""

from __future__ import annotations

from dataclasses import replace
from datetime import date, timedelta

import pytest
from evening import (
    BATCHES,
    BOTTLES,
    COMBINATION,
    FILM,
    MADE,
    PLACE,
    PLAN,
    ROLLS,
    TANK,
    THERMOMETER,
    key,
)

from tankside.core.methods.combinations import TimeRow
from tankside.core.rolls.roll import Film
from tankside.core.solutions.keeping import by_leaflet
from tankside.workflows.ports import Desk
from tankside.workflows.records import CodeTaken, Conflict


def test_a_roll_comes_back_as_it_was_added(desk: Desk) -> None:
    """It should find a roll by key and by code, with its film, and know no other."""
    desk.rolls.add(ROLLS[0], MADE)
    desk.rolls.add(ROLLS[1], MADE + timedelta(minutes=1))
    assert ROLLS[0] == desk.rolls.by_key(ROLLS[0].key)
    assert ROLLS[1] == desk.rolls.by_code("R5TN-6")
    assert (ROLLS[1], ROLLS[0]) == desk.rolls.all()
    assert desk.rolls.by_code("ZZZZ-Z") is None
    assert desk.rolls.by_key(key(99)) is None


def test_a_roll_may_be_written_over_but_for_its_code(desk: Desk) -> None:
    """It should keep the code of the sticker whatever else changes."""
    desk.rolls.add(ROLLS[0], MADE)
    changed = replace(ROLLS[0], index=200.0, notes="rain", standing="in the tank", piece_of=None)
    desk.rolls.keep(replace(changed, code="ZZZZ-Z"))
    assert changed == desk.rolls.by_key(ROLLS[0].key)


def test_a_roll_nobody_added_cannot_be_written_over(desk: Desk) -> None:
    """It should be a bug, not a new roll."""
    with pytest.raises(KeyError):
        desk.rolls.keep(ROLLS[0])


def test_a_code_stands_on_one_thing_only(desk: Desk) -> None:
    """It should refuse a code that is on another roll or on a bottle, and add nothing."""
    desk.rolls.add(ROLLS[0], MADE)
    with pytest.raises(CodeTaken):
        desk.rolls.add(replace(ROLLS[1], code=ROLLS[0].code), MADE)
    desk.batches.add(BATCHES[0])
    desk.bottles.add(BOTTLES[0])
    with pytest.raises(CodeTaken):
        desk.rolls.add(replace(ROLLS[1], code=BOTTLES[0].code), MADE)
    assert (ROLLS[0],) == desk.rolls.all()


def test_what_is_learnt_of_a_film_holds_for_all_its_rolls(desk: Desk) -> None:
    """It should tell every roll of a film the same grain."""
    desk.rolls.add(ROLLS[0], MADE)
    desk.films.keep(Film(FILM.name, "tabular"))
    roll = desk.rolls.by_key(ROLLS[0].key)
    assert roll is not None
    assert "tabular" == roll.film.grain
    assert (Film(FILM.name, "tabular"),) == desk.films.all()
    assert desk.films.called("another") is None


def test_a_combination_only_grows(desk: Desk) -> None:
    """It should add a new row to the combination alike in all that counts, and keep the old one."""
    desk.combinations.keep(COMBINATION)
    row = TimeRow(
        key(43), 545.0, 20.0, 125.0, "accepted", "half the correction", date(2026, 11, 26), 0.57, key(42)
    )
    stood = desk.combinations.keep(replace(COMBINATION, key=key(44), rows=(row,), least_stock_ml=80.0))
    grown = replace(COMBINATION, rows=(*COMBINATION.rows, row), least_stock_ml=80.0)
    assert grown == stood
    assert grown == desk.combinations.by_key(COMBINATION.key)
    assert (grown,) == desk.combinations.all()
    assert grown == desk.combinations.keep(COMBINATION)


def test_a_row_of_a_combination_is_never_overwritten(desk: Desk) -> None:
    """It should be a bug to give a known row another time."""
    desk.combinations.keep(COMBINATION)
    with pytest.raises(ValueError, match="never overwritten"):
        desk.combinations.keep(replace(COMBINATION, rows=(replace(COMBINATION.rows[0], time_s=1.0),)))
    assert COMBINATION == desk.combinations.by_key(COMBINATION.key)


def test_another_agitation_is_another_combination(desk: Desk) -> None:
    """It should keep apart what differs in agitation only, for a time holds with its agitation."""
    desk.combinations.keep(COMBINATION)
    other = replace(COMBINATION, key=key(45), agitation=replace(COMBINATION.agitation, every_s=30.0), rows=())
    assert other == desk.combinations.keep(other)
    assert 2 == len(desk.combinations.all())


def test_a_plan_comes_back_whole_under_each_number(desk: Desk) -> None:
    """It should give the highest number unless told, and digit for digit what was kept."""
    second = replace(PLAN, number=2, made=MADE + timedelta(minutes=5))
    desk.plans.keep(PLAN)
    desk.plans.keep(PLAN)
    desk.plans.keep(second)
    assert second == desk.plans.by_key(PLAN.key)
    assert PLAN == desk.plans.by_key(PLAN.key, 1)
    assert second == desk.plans.latest()
    assert desk.plans.by_key(key(99)) is None


def test_a_numbered_plan_never_changes(desk: Desk) -> None:
    """It should report a conflict where the number is kept and says otherwise."""
    desk.plans.keep(PLAN)
    with pytest.raises(Conflict):
        desk.plans.keep(replace(PLAN, liquids=()))
    assert PLAN == desk.plans.by_key(PLAN.key, 1)


def test_bottles_stand_by_code_with_their_batches(desk: Desk) -> None:
    """It should find bottles and batches as they were added, and move a bottle but not rename it."""
    for batch in BATCHES:
        desk.batches.add(batch)
    for bottle in BOTTLES:
        desk.bottles.add(bottle)
    assert (BOTTLES[1], BOTTLES[0]) == desk.bottles.all()
    assert BATCHES[0] == desk.batches.by_key(BOTTLES[0].batch)
    assert set(BATCHES) == set(desk.batches.all())
    moved = replace(BOTTLES[0], place="under the bench")
    desk.bottles.keep(replace(moved, code="ZZZZ-Z"))
    assert moved == desk.bottles.by_code("K7M4-T")
    with pytest.raises(CodeTaken):
        desk.bottles.add(replace(BOTTLES[0], key=key(99)))


def test_what_is_typed_of_a_batch_may_change_and_nothing_else(desk: Desk) -> None:
    """It should keep how long the leaflet says it keeps and what it cost, and leave what it is."""
    desk.batches.add(replace(BATCHES[0], price_minor=250))
    typed = replace(BATCHES[0], keeping=by_leaflet(6, 2), price_minor=None)
    desk.batches.keep(replace(typed, name="another", made_ml=1.0))
    assert typed == desk.batches.by_key(BATCHES[0].key)
    assert (typed,) == desk.batches.all()
    with pytest.raises(KeyError):
        desk.batches.keep(BATCHES[1])


def test_tanks_thermometers_and_places_may_be_written_over(desk: Desk) -> None:
    """It should keep the latest of each under its key."""
    desk.tanks.keep(TANK)
    desk.tanks.keep(replace(TANK, tau_min=95.0))
    desk.thermometers.keep(THERMOMETER)
    desk.places.keep(PLACE)
    assert (replace(TANK, tau_min=95.0),) == desk.tanks.all()
    assert THERMOMETER == desk.thermometers.by_key(THERMOMETER.key)
    assert PLACE == desk.places.by_key(PLACE.key)
    assert desk.places.by_key(key(99)) is None


def test_preferences_are_chosen_and_chosen_again(desk: Desk) -> None:
    """It should keep the last choice of each name."""
    desk.preferences.keep("temperature", "F")
    desk.preferences.keep("temperature", "C")
    assert {"temperature": "C"} == desk.preferences.all()
