"""Times as people write them, and which are asked back."""

from __future__ import annotations

from contextlib import suppress

import pytest
from hypothesis import given
from hypothesis import strategies as st

from tankside.core.quantities.display import time_text
from tankside.core.quantities.entry import read_time
from tankside.core.refusals import Refusal, Refused


def refusal_of(text: str) -> Refusal:
    """The refusal that `text` meets."""
    with pytest.raises(Refused) as no:
        read_time(text)
    return no.value.refusal


@given(st.integers(1, 86_400))
def test_what_is_shown_is_read_again(time_s: int) -> None:
    """Every whole second of a day, from 0:01 to 1440:00."""
    assert time_s == read_time(time_text(time_s))


@pytest.mark.parametrize(
    ("text", "time_s"),
    [
        ("9:30", 570),
        (" 9 : 30 ", 570),
        ("9 1/2", 570),
        ("9½", 570),
        ("9 ½ min", 570),
        ("9m30s", 570),
        ("9m30", 570),
        ("9 min 30 s", 570),
        ("9'30\"", 570),
        ("9′30″", 570),
        ("570 s", 570),
        ("570sec", 570),
        ("9.5 min", 570),
        ("9,5 Minutes", 570),
        ("9", 540),
        ("9 min", 540),
        ("9.00", 540),
        ("9.75", 585),
        ("½", 30),
        ("30 s", 30),
        ("1:02:30", 3750),
        ("1 h", 3600),
        ("1h30", 5400),
        ("1 h 5 min", 3900),
        ("９：３０", 570),
    ],
)
def test_times_as_people_write_them(text: str, time_s: float) -> None:
    """Colon, fraction, units, full-width digits."""
    assert time_s == read_time(text)


@pytest.mark.parametrize(
    ("text", "first", "second"),
    [
        ("9.30", "9:30", "9:18"),
        ("9,30", "9:30", "9:18"),
        ("9.30 min", "9:30", "9:18"),
        ("9,5", "9:30", "9:50"),
        ("9.5", "9:30", "9:50"),
        ("9.3", "9:18", "9:30"),
        ("9.7", "9:42", "9:07"),
        ("9:5", "9:05", "9:50"),
        ("570", "9:30", "570:00"),
        ("30", "0:30", "30:00"),
    ],
)
def test_two_readings_are_asked_back(text: str, first: str, second: str) -> None:
    """Neither is taken silently; each way on holds a text that is read without doubt."""
    no = refusal_of(text)

    assert "time-two-readings" == no.code
    assert ("read-as-first", "read-as-second") == no.ways_on
    assert (first, second) == (no.numbers["first"], no.numbers["second"])
    assert read_time(first) != read_time(second)


@pytest.mark.parametrize(
    ("text", "code"),
    [
        ("", "time-unreadable"),
        ("soon", "time-unreadable"),
        ("9:75", "time-past-59"),
        ("1:75:00", "time-past-59"),
        ("0:00", "time-not-readable"),
        ("25 h", "time-not-readable"),
        ("9 1/0", "number-unreadable"),
        ("-9:30", "time-unreadable"),
        ("1e3 s", "time-unreadable"),
    ],
)
def test_what_is_no_time_is_told_why(text: str, code: str) -> None:
    """A refusal, not a guess."""
    assert code == refusal_of(text).code


@given(st.text(alphabet="0123456789.,:/ ½hms'\"+-eminº", max_size=12))
def test_any_text_is_read_or_refused(text: str) -> None:
    """Nothing typed is a traceback, and nothing unreadable comes through."""
    with suppress(Refused):
        assert 1 <= read_time(text) <= 86_400
