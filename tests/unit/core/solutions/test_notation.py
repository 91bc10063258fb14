"""Dilutions as people write them: exact, and never guessed."""

from __future__ import annotations

from contextlib import suppress

import pytest
from hypothesis import given
from hypothesis import strategies as st

from tankside.core.refusals import Refusal, Refused
from tankside.core.solutions.notation import Dilution, read_dilution

whole = st.builds(Dilution, st.integers(1, 100), st.integers(1, 1000)) | st.just(Dilution(1, 0))


def refusal_of(text: str) -> Refusal:
    """The refusal that `text` meets."""
    with pytest.raises(Refused) as no:
        read_dilution(text)
    return no.value.refusal


@given(whole)
def test_what_is_shown_is_read_again(dilution: Dilution) -> None:
    """In both notations, exact."""
    assert dilution == read_dilution(str(dilution))
    assert dilution.exact_fraction == read_dilution(dilution.as_one_in).exact_fraction


@pytest.mark.parametrize(
    ("text", "dilution"),
    [
        ("1+1", Dilution(1, 1)),
        (" 1 + 4 ", Dilution(1, 4)),
        ("stock", Dilution(1, 0)),
        ("Undiluted", Dilution(1, 0)),
        ("1+0", Dilution(1, 0)),
        ("1 in 50", Dilution(1, 49)),
        ("1 part in 5", Dilution(1, 4)),
        ("1+1.5", Dilution(2, 3)),
        ("1+1,5", Dilution(2, 3)),
        ("2+3", Dilution(2, 3)),
        ("1 in 1", Dilution(1, 0)),
    ],
)
def test_dilutions_as_people_write_them(text: str, dilution: Dilution) -> None:
    """Parts stay whole numbers, so that no third of a part is ever rounded."""
    assert dilution == read_dilution(text)


@pytest.mark.parametrize("text", ["1:4", "1/4", "1 to 4", "1 : 4"])
def test_a_ratio_is_asked_back(text: str) -> None:
    """One part and four of water, or one part in four: 25 % apart, never assumed."""
    no = refusal_of(text)

    assert "dilution-two-readings" == no.code
    assert ("1+4", "1 in 4") == (no.numbers["first"], no.numbers["second"])


@pytest.mark.parametrize(
    ("text", "code"),
    [
        ("", "dilution-unreadable"),
        ("strong", "dilution-unreadable"),
        ("4:1", "dilution-unreadable"),
        ("0:4", "dilution-unreadable"),
        ("0+4", "dilution-without-stock"),
        ("5 in 4", "dilution-without-stock"),
        ("1+20000", "dilution-too-weak"),
        ("1+1+100", "dilution-of-two-stocks"),
    ],
)
def test_what_is_no_dilution_is_told_why(text: str, code: str) -> None:
    """A refusal, not a guess."""
    assert code == refusal_of(text).code


@given(st.text(alphabet="0123456789.,+:/ intoparstck", max_size=12))
def test_any_text_is_read_or_refused(text: str) -> None:
    """Nothing typed is a traceback."""
    with suppress(Refused):
        assert 0 < read_dilution(text).stock_fraction <= 1
