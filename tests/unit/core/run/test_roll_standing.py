"""Where the rolls of a run stand while it goes, and once nobody goes on with them."""

from __future__ import annotations

from dataclasses import replace

import pytest
from unit.core.run.evening import FIXER, Sink, opened, plan, tankful

from tankside.core.run.commands import CloseRun, DrainBath, EndTankful, HangFilm, PourBath
from tankside.core.run.roll_standing import roll_standings


def stand(sink: Sink) -> list[str]:
    """The standing of each roll of tankful A."""
    rolls = [roll.key for roll in sink.state.tankful("A").plan.rolls]
    found = roll_standings(sink.state)
    return [found[key] for key in rolls]


def through(*baths: str) -> Sink:
    """These baths of A, one after the other, a minute each."""
    sink = opened(plan("A"))
    for number, bath in enumerate(baths):
        sink.do(PourBath(bath), 120.0 * number)
        sink.do(DrainBath(bath, held=True), 120.0 * number + 60)
    return sink


def test_rolls_follow_their_run() -> None:
    """Waiting, in the tank from the first pour, done once hung."""
    sink = opened(plan("A"))
    assert ["waiting"] == stand(sink)
    sink.do(PourBath("A.develop"), 0)
    assert ["in the tank"] == stand(sink)
    sink.do(HangFilm("A"), 3000)
    assert ["done"] == stand(sink)


def test_each_roll_hangs_by_itself() -> None:
    """Of two rolls the one on the line is done, the other still in the tank."""
    sink = opened(replace(plan("A"), tankfuls=(tankful("A", rolls=2),)))
    sink.do(PourBath("A.develop"), 0)
    sink.do(HangFilm("A", ("AROLL-1",)), 3000)
    assert ["in the tank", "done"] == stand(sink)


@pytest.mark.parametrize(
    ("baths", "expected"),
    [
        ((), "waiting"),
        (("A.develop",), "lost"),
        (("A.develop", "A.stop"), "lost"),
        (("A.develop", "A.stop", "A.fix"), "done"),
        (("A.fix",), "lost"),
    ],
)
def test_a_tankful_given_up_leaves_nothing_in_the_tank(baths: tuple[str, ...], expected: str) -> None:
    """Developed only, the image goes; fixed, it stays; and so where the whole session is broken off."""
    for ending in (EndTankful("A", "given up"), CloseRun("broken off")):
        sink = through(*baths)
        sink.do(ending, 4000)
        assert [expected] == stand(sink)


def test_fixer_taken_for_the_developer_loses_the_image() -> None:
    """It was noted as the developer, but the bottle was the fixer's."""
    sink = opened(plan("A"))
    sink.do(PourBath("A.develop", FIXER), 0)
    sink.do(EndTankful("A", "given up"), 60)
    assert ["lost"] == stand(sink)
