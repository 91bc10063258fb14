"""The journal's sentences: an invented run told from end to end, and each kind of difference in words."""

from __future__ import annotations

from unit.core.review.invented_run import carried_out, closed
from unit.core.run.evening import opened, plan

from tankside.core.doubt.estimate import Estimate
from tankside.core.quantities.preferences import Preferences
from tankside.core.review.deviations import deviations
from tankside.core.review.differed import (
    ColdWash,
    Deviation,
    Drained,
    LeftOut,
    Missed,
    OfContrast,
    PutRight,
    Replanned,
    Timed,
    Warmth,
    Washed,
    What,
)
from tankside.core.review.predicted import counted
from tankside.core.run.advise_wash import Left
from tankside.core.run.commands import NoteAgitation, TakeReading, WriteNote
from tankside.wording.deviations import say_deviation
from tankside.wording.journal import read_words, verdict

STATE = opened(plan("A")).state


def said(what: What, preferences: Preferences = Preferences()) -> str:  # noqa: B008 - frozen
    """One difference of the developer in words."""
    return say_deviation(Deviation(0, "A", "A.develop", what), STATE, preferences).whole


def test_an_invented_run_in_words() -> None:
    """The whole evening as the journal tells it, in order of time."""
    sink = opened(plan("A"))
    late = {"A.develop.drain": 9.0, "A.fix.drain": 47.0}
    sink.do(WriteNote("new thermometer", "A"), -30.0)
    carried_out(lambda cue: late.get(cue, 0.0), sink=sink)
    sink.do(TakeReading("tank", "A", 20.1), 130.0)
    sink.do(NoteAgitation("A.develop", 4), 250.0)
    told = [say_deviation(one, sink.state).whole for one in deviations(closed(sink).run, "A")]

    assert [
        "You noted: new thermometer",
        "Fifth inversion missed. Develop: no correction for it.",
        "Drained 9 s late. Too small to see in the film.",
        "Fix 47 s longer. Harmless: this bath is at least, not exact.",
    ] == told
    # 579 s at 20.1 C count 579 * 2.2 ** 0.0096 = 583 s at 20 C.
    found = counted(sink.state, "A")
    assert "The tank was read once." == read_words(found)
    assert (
        "Counts as 9:45 of development at 20.0 °C where 9:30 was meant, "
        "inside your ± 0:55. Nothing to correct."
    ) == verdict(found)


def test_contrast_is_said_by_size_and_from_three_percent_with_its_number() -> None:
    """Too small to see has no number; what will show has one with its interval."""
    seen = OfContrast(Estimate(13.2, 9.8, 17.1, "%"), "will show")

    assert "Drained 2:10 late. It will show in the film. Contrast +13 % (+10 to +17)." == said(
        Drained(130.0, 570.0, seen)
    )
    assert "Drained 45 s early. What that does to this film is not known." == said(
        Drained(-45.0, 570.0, None)
    )


def test_degrees_are_the_persons_own() -> None:
    """Readings and limits in Fahrenheit where that was chosen."""
    preferences = Preferences("F")
    small = OfContrast(Estimate(1.0, 0.0, 2.0, "%"), "too small to see")

    assert "The tank read 66.2 °F, planned 68.0 °F. Too small to see in the film." == said(
        Warmth(19.0, 20.0, small), preferences
    )
    assert said(ColdWash(8.0), preferences).startswith("Wash water 46.4 °F. Under 50.0 °F")


def test_permanence_is_never_passed_nor_failed() -> None:
    """Not confirmed is said with the question turned round and what one more fill would do."""
    three = Washed(3, 4, 60.0, Left(3, None, 0.05), 0.014, 35.0, void=None)

    assert (
        "Washed with three fills, planned four. Enough if half leaves in 35 s or less; "
        "sources say 15 and 60. "
        "The pessimistic model does not confirm it: one more 5-minute soak costs one fill."
    ) == said(three)
    assert "Washed with three fills, planned four. Left by plan: well below. Enough." == said(
        Washed(3, 4, 300.0, Left(3, None, None), 0.014, 102.0, void=None)
    )
    assert "cannot be said" in said(Washed(3, 4, 300.0, Left(3, None, None), 0.014, 102.0, void="fix"))


def test_each_other_difference_says_what_it_means() -> None:
    """What is, then what it means or what can be done."""
    assert "First inversion missed. The first minute decides how even the film is: look for streaks." == said(
        Missed((0,), first_minute=True)
    )
    assert "Fix skipped. You said: no fixer. The film is not permanent: fix it, then wash it anew." == said(
        LeftOut("fix", "no fixer", noted=True)
    )
    assert "The draining was put 40 s earlier; the first note is kept. You said: telephone." == said(
        PutRight("retimed", "bath-drained", -40.0, "telephone")
    )
    assert "The plan was changed. You said: stop came first. Three fills added." == said(
        Replanned("stop came first", ("Three fills added",))
    )
    assert "under its least time of 5:00. It may not be fixed through" in said(
        Timed("fix", "too short", -100.0, 300.0)
    )
