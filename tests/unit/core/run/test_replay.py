"""A run from its rows: in place where they come last, anew where one of them reaches back."""

from __future__ import annotations

import pytest
from unit.core.run.evening import Sink, opened, plan

from tankside.core.run.commands import Asked, PourBath, RetimeNote, TakeReading, WithdrawNote, WriteNote
from tankside.core.run.replay import replay


def read_every_ten_seconds(count: int) -> Sink:
    """A developer poured at 0, then a reading every 10 s."""
    sink = opened(plan("A"))
    sink.do(PourBath("A.develop"), 0)
    for number in range(1, count):
        sink.do(TakeReading("room", "", 20.0), 10.0 * number)
    return sink


def same_notes(before: Sink, asked: Asked, seconds: float, *, age_s: float = 0.0) -> bool:
    """Whether the notes that stood are the very same values after one command more, not made anew."""
    notes = before.run.settled.notes
    before.do(asked, seconds, age_s=age_s)
    assert replay(before.run.events) == before.run
    return all(old is new for old, new in zip(notes, before.run.settled.notes, strict=False))


def test_what_comes_last_is_added_in_place() -> None:
    """The notes before a new one are not settled again."""
    assert same_notes(read_every_ten_seconds(20), WriteNote("fan on"), 400)


@pytest.mark.parametrize(
    "asked", [WithdrawNote("phone:3/0"), RetimeNote("phone:3/0", 399.0), PourBath("A.develop")]
)
def test_what_reaches_back_is_settled_anew(asked: Asked) -> None:
    """Taken back, moved, or noted late: everything is put in order again."""
    age_s = 396.0 if isinstance(asked, PourBath) else 0.0
    assert not same_notes(read_every_ten_seconds(20), asked, 400, age_s=age_s)


def test_the_same_act_again_is_found_in_place() -> None:
    """Poured twice within 20 s, other notes between: the second one counts for the first."""
    sink = opened(plan("A"))
    (first, *_) = sink.do(PourBath("A.develop"), 0)
    sink.do(TakeReading("room", "", 20.0), 5)
    assert same_notes(sink, PourBath("A.develop"), 12)
    assert sink.run.settled.kept_for("phone:3/0") == first.id
