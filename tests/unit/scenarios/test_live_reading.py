"""S4: 9:30 with a room of 16, read in the tank at 1:00 and at 5:00 with a thermometer 0.3 too high.

Source of the expected ends: reference practice, scenario S4 (ours, computed apart from this code, +-5 s).
"""

from __future__ import annotations

import pytest
from unit.core.run.evening import Sink, opened, plan

from tankside.core.run.commands import PourBath, TakeReading
from tankside.core.run.events import EndMoved


def told_after(sink: Sink, raw_c: float, seconds: float) -> EndMoved | None:
    """Read the tank of A, and what end is told for it."""
    events = sink.do(TakeReading("tank", "A", raw_c), seconds)
    return next((one.body for one in events if isinstance(one.body, EndMoved)), None)


def read_at_one_minute(raw_c: float = 19.5, offset_c: float = -0.3) -> tuple[Sink, EndMoved | None]:
    """A developer poured at 20:00, read at 1:00."""
    sink = opened(plan("A", room_c=16.0, offset_c=offset_c))
    sink.do(PourBath("A.develop"), 0)
    return sink, told_after(sink, raw_c, 60)


def test_the_end_told_at_one_minute() -> None:
    """Raw 19.5 is 19.2: the end is told as 10:13, 9:52 to 10:29."""
    _, told = read_at_one_minute()
    assert told is not None
    assert told.end_after_s == pytest.approx(613, abs=5)
    assert told.interval_s == (pytest.approx(592, abs=5), pytest.approx(629, abs=5))


def test_without_the_offset_the_end_would_be_another() -> None:
    """The same raw reading of a true thermometer asks for a shorter time by far more than 5 s."""
    _, told = read_at_one_minute()
    _, plain = read_at_one_minute(offset_c=0.0)
    assert told is not None
    assert plain is not None
    assert told.end_after_s - plain.end_after_s > 10


def test_a_reading_that_confirms_moves_nothing() -> None:
    """Raw 19.2 at 5:00 gives 10:17 to 10:19, less than 3 % from what was told."""
    sink, told = read_at_one_minute()
    assert told is not None
    assert told_after(sink, 19.2, 300) is None
    assert sink.state.tankful("A").told_end_s("A.develop") == told.end_after_s


def test_a_cold_reading_moves_the_end_once_more() -> None:
    """Raw 18.5 at 5:00 moves it by 10 s and 3 % or more, later."""
    sink, first = read_at_one_minute()
    second = told_after(sink, 18.5, 300)
    assert first is not None
    assert second is not None
    moved_s = second.end_after_s - first.end_after_s
    assert moved_s >= max(10, 0.03 * first.end_after_s)


def test_inversions_keep_their_clock_when_the_end_moves() -> None:
    """Cues stay at full minutes after the pour, and one more is had before the later end."""
    from tankside.core.run.cue_script import cue_script  # noqa: PLC0415

    sink, _ = read_at_one_minute()
    times = [one.after_s for one in cue_script(sink.state).cues if one.id.startswith("A.develop.invert")]
    assert times == [15, 60, 120, 180, 240, 300, 360, 420, 480, 540, 600]
