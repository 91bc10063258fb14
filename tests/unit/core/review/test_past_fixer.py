"""A wash is told of no film that went through a fixer past its limit: by count, by test piece, by look."""

from __future__ import annotations

from dataclasses import replace

import pytest
from unit.core.run.evening import BENCH, FIXER, Sink, at, opened, plan

from tankside.core.permanence.clearing import ClearingTest
from tankside.core.permanence.fixer_standing import FixerKnown
from tankside.core.review.deviations import deviations
from tankside.core.review.differed import PastFixer, Washed
from tankside.core.review.washed import washed_to
from tankside.core.run.commands import ChangeWater, DrainBath, PourBath, TimeTest
from tankside.core.run.events import BenchBottle
from tankside.core.run.sink_view import sink_view

FRESH = ClearingTest(45, 20)


def bench(known: FixerKnown) -> tuple[BenchBottle, ...]:
    """The bench with that fixer on it."""
    return tuple(replace(one, fixer=known) if one.code == FIXER else one for one in BENCH)


def carried_out(known: FixerKnown, *, clears_s: float | None = None, until: str = "hung") -> Sink:
    """An evening of one roll in that fixer; `clears_s` a test piece at 20 C once it was fixed."""
    sink = opened(plan("A"), bench=bench(known))
    for second, bath in ((0, "A.develop"), (600, "A.stop"), (700, "A.fix")):
        sink.do(PourBath(bath), second)
        sink.do(
            DrainBath(bath, held=True),
            second + (570 if bath == "A.develop" else 60 if bath == "A.stop" else 300),
        )
    if clears_s is not None:
        sink.do(TimeTest(FIXER, "river 100", "clearing", clears_s, 20.0), 1010)
    sink.do(PourBath("A.wash"), 1020)
    if until == "hung":
        for fill in (2, 3, 4):
            sink.do(ChangeWater("A.wash", fill), 1020 + 300 * (fill - 1))
        sink.do(DrainBath("A.wash", held=True), 2220)
    return sink


@pytest.mark.parametrize(
    ("known", "clears_s", "past"),
    [
        (FixerKnown(18.0, 1000, fresh=FRESH), None, ()),
        (FixerKnown(19.0, 1000, fresh=FRESH), None, ()),
        (FixerKnown(19.5, 1000, fresh=FRESH), None, ("count",)),
        (FixerKnown(3.0, 1000, fresh=FRESH), 75.0, ()),
        (FixerKnown(3.0, 1000, fresh=FRESH), 92.0, ("test",)),
        (FixerKnown(3.0, 1000, fresh=FRESH, looks_bad=True), None, ("look",)),
    ],
)
def test_the_journal_tells_no_wash_after_a_fixer_past_its_limit(
    known: FixerKnown, clears_s: float | None, past: tuple[str, ...]
) -> None:
    """Published: 20 rolls a litre (Anchell 2008, p. 108), this one counted; twice the fresh (NAVEDTRA)."""
    run = carried_out(known, clears_s=clears_s).run
    said = [one.what.used.stands.past for one in deviations(run, "A") if isinstance(one.what, PastFixer)]

    assert ([past] if past else []) == said
    assert bool(past) == (washed_to(run, "A") is None)


def test_fewer_fills_after_it_say_why_nothing_is_told() -> None:
    """The deviation of the wash carries the reason."""
    sink = carried_out(FixerKnown(20.0, 1000), until="wash")
    sink.do(DrainBath("A.wash", held=True), 1320)
    (washed,) = [one.what for one in deviations(sink.run, "A") if isinstance(one.what, Washed)]

    assert "fixer" == washed.void


@pytest.mark.parametrize(("used", "told"), [(3.0, True), (20.0, False)])
def test_the_sink_shows_no_residual_after_it(used: float, *, told: bool) -> None:
    """The wash runs on; its residual is not shown, and a plate says what is best."""
    sink = carried_out(FixerKnown(used, 1000), until="wash")
    view = sink_view(sink.state, at(1100))
    bath = view.tankfuls[0].bath

    assert bath is not None
    assert told == (bath.wash is not None)
    assert told == ("fixer-past" not in [one.code for one in view.consequences])
