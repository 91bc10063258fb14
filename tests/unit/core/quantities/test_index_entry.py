"""Exposure indices as people write them."""

from __future__ import annotations

from contextlib import suppress

import pytest
from hypothesis import given
from hypothesis import strategies as st

from tankside.core.quantities.display import index_text
from tankside.core.quantities.entry import read_index
from tankside.core.refusals import Refused


@given(st.integers(1, 409_600))
def test_what_is_shown_is_read_again(index: int) -> None:
    """Every whole index, past a million too, in full digits."""
    assert index == read_index(index_text(index))


@pytest.mark.parametrize(
    ("text", "index"),
    [
        ("200", 200),
        ("EI 1600", 1600),
        ("ei400", 400),
        ("ISO 100/21", 100),
        ("ISO 100/21°", 100),
        ("125/22º", 125),
        ("ASA 80", 80),
        ("DIN 27", 400),
        ("21°", 100),
        ("ISO 24°", 200),
    ],
)
def test_indices_as_people_write_them(text: str, index: float) -> None:
    """Arithmetic, logarithmic or both."""
    assert index == read_index(text)


@pytest.mark.parametrize(
    ("text", "code"),
    [
        ("", "index-unreadable"),
        ("fast", "index-unreadable"),
        ("0", "index-not-readable"),
        ("ISO 100/24", "index-scales-disagree"),
    ],
)
def test_what_is_no_index_is_told_why(text: str, code: str) -> None:
    """Two scales that contradict each other are not averaged."""
    with pytest.raises(Refused) as no:
        read_index(text)
    assert code == no.value.refusal.code


@given(st.text(alphabet="0123456789./ °EISOADN", max_size=10))
def test_any_text_is_read_or_refused(text: str) -> None:
    """Nothing typed is a traceback."""
    with suppress(Refused):
        assert read_index(text) > 0
