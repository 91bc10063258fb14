"""Adding rolls: codes that are taken are drawn again, and what was known of a film stays known."""

from __future__ import annotations

from dataclasses import replace
from uuid import UUID

import pytest
from evening_clock import at
from fakes import memory_desk

from tankside.core.codes import code_from
from tankside.core.refusals import Refused
from tankside.core.rolls.formats import Format
from tankside.core.rolls.roll import Film
from tankside.workflows.keep_rolls import NewRoll, add_roll, edit_roll, find_roll, preset

NEW = NewRoll(Film("Ferry 125", "cubic"), Format("120"), 125.0, camera=" folder ")


class LoadedDice:
    """Draws what it was given, in order; keys count up."""

    def __init__(self, *draws: int) -> None:
        self._draws = list(draws)
        self._keys = 0

    def key(self) -> UUID:
        """The next key."""
        self._keys += 1
        return UUID(int=self._keys)

    def below(self, count: int) -> int:
        """The next draw."""
        return self._draws.pop(0) % count


def test_a_code_that_is_taken_is_drawn_again() -> None:
    """It should give the second roll the next code that is free."""
    desk, dice = memory_desk(), LoadedDice(5, 5, 5, 6)
    first = add_roll(desk, dice, NEW, at(0.0))
    second = add_roll(desk, dice, NEW, at(1.0))
    assert (str(code_from(5)), str(code_from(6))) == (first.code, second.code)
    assert 2 == len(desk.rolls.all())


def test_dice_that_always_fall_alike_are_given_up() -> None:
    """It should refuse after twenty draws and add nothing."""
    desk = memory_desk()
    add_roll(desk, LoadedDice(5), NEW, at(0.0))
    with pytest.raises(Refused, match="no-free-code"):
        add_roll(desk, LoadedDice(*[5] * 20), NEW, at(1.0))
    assert 1 == len(desk.rolls.all())


def test_the_next_roll_is_like_the_last() -> None:
    """It should offer film, format, index and camera of the roll added last, and nothing at first."""
    desk = memory_desk()
    assert preset(desk) is None
    add_roll(desk, LoadedDice(1), replace(NEW, notes="harbour", precious=True), at(0.0))
    assert replace(NEW, camera="folder") == preset(desk)


def test_a_grain_nobody_told_is_the_one_told_before() -> None:
    """It should not forget that a film is cubic because the next roll did not say so."""
    desk = memory_desk()
    add_roll(desk, LoadedDice(1), NEW, at(0.0))
    again = add_roll(desk, LoadedDice(2), replace(NEW, film=Film("  Ferry   125 ")), at(1.0))
    assert Film("Ferry 125", "cubic") == again.film
    assert 1 == len(desk.films.all())


def test_a_roll_is_found_by_what_is_typed() -> None:
    """It should read the code in any case, and say which code no roll has."""
    desk = memory_desk()
    roll = add_roll(desk, LoadedDice(77), NEW, at(0.0))
    assert roll == find_roll(desk, f" {roll.code.lower().replace('-', '')} ")
    with pytest.raises(Refused, match="no-such-roll"):
        find_roll(desk, str(code_from(78)))


def test_a_roll_without_film_or_with_an_impossible_index_is_refused() -> None:
    """It should refuse at the field, when adding and when editing."""
    desk = memory_desk()
    with pytest.raises(Refused) as caught:
        add_roll(desk, LoadedDice(1), replace(NEW, film=Film("  ")), at(0.0))
    assert ("film-is-missing", "film") == (caught.value.refusal.code, caught.value.refusal.at)
    roll = add_roll(desk, LoadedDice(1), NEW, at(0.0))
    with pytest.raises(Refused) as caught:
        edit_roll(desk, replace(roll, index=0.0))
    assert ("index-not-readable", "index") == (caught.value.refusal.code, caught.value.refusal.at)
    assert roll == desk.rolls.by_key(roll.key)
