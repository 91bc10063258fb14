"""Codes on stickers: every single wrong character and every swap of two is caught."""

from __future__ import annotations

from contextlib import suppress
from itertools import combinations

import pytest
from hypothesis import given
from hypothesis import strategies as st

from tankside.core.codes import ALPHABET, COUNT, Code, code_from, read_code
from tankside.core.refusals import Refused

codes = st.integers(0, COUNT - 1).map(code_from)


def refusal_of(text: str) -> str:
    """The code of the refusal that `text` meets."""
    with pytest.raises(Refused) as no:
        read_code(text)
    return no.value.refusal.code


@given(codes)
def test_a_written_code_is_read_again(code: Code) -> None:
    """What stands on the sticker is what is read, typed in any of the usual ways."""
    assert code == read_code(str(code))
    assert code == read_code(f"  {str(code).lower().replace('-', ' ')} ")
    assert code == read_code(f"{code.characters}{code.check}")


@given(codes, st.integers(0, 4), st.sampled_from(ALPHABET))
def test_every_single_wrong_character_is_caught(code: Code, place: int, wrong: str) -> None:
    """One character misread, the check among them."""
    typed = code.characters + code.check
    mistyped = typed[:place] + wrong + typed[place + 1 :]
    if mistyped != typed:
        assert "code-mistyped" == refusal_of(mistyped)


@given(codes)
def test_every_swap_of_two_is_caught(code: Code) -> None:
    """Neighbours or not: the weights all differ and 31 is prime."""
    typed = list(code.characters + code.check)
    for first, second in combinations(range(5), 2):
        swapped = typed.copy()
        swapped[first], swapped[second] = swapped[second], swapped[first]
        if swapped != typed:
            assert "code-mistyped" == refusal_of("".join(swapped))


def test_weights_leave_no_error_uncaught() -> None:
    """The arithmetic behind the two tests above, over every weight and every difference modulo 31."""
    weights, steps = (2, 3, 4, 5, 1), range(1, 31)
    assert all(weight * step % 31 for weight in weights for step in steps)
    assert all((one - other) * step % 31 for one, other in combinations(weights, 2) for step in steps)


@pytest.mark.parametrize(("text", "check"), [("F9QD", "2"), ("K7M4", "T")])
def test_checks_worked_by_hand(text: str, check: str) -> None:
    """2a+3b+4c+5d: F9QD gives 26+21+84+55 = 186 = 6 x 31; K7M4 gives 131 = 5 x 31 - 24."""
    assert check == Code(text).check


@pytest.mark.parametrize(
    ("text", "code"),
    [("", "code-length"), ("K7M4", "code-length"), ("K7M4-TT", "code-length"), ("K7M0-T", "code-character")],
)
def test_what_is_no_code_is_told_why(text: str, code: str) -> None:
    """Too short, too long, or with a character that never stands on a sticker."""
    assert code == refusal_of(text)


@given(st.text(max_size=12))
def test_any_text_is_read_or_refused(text: str) -> None:
    """Nothing typed is a traceback."""
    with suppress(Refused):
        read_code(text)
