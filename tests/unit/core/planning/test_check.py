"""The judge of timetables finds what is wrong, and only that."""

from __future__ import annotations

from dataclasses import replace

from hypothesis import given
from hypothesis import strategies as st
from planned import tankful

from tankside.core.methods.default_method import HANDS
from tankside.core.planning.acts import Act, acts_of
from tankside.core.planning.check import faults
from tankside.core.planning.placing import placed

ALONE = placed(acts_of(tankful("A", 570.0), HANDS), between_s=10.0) or ()


def stray(start_s: float, for_s: float = 10.0, letter: str = "B") -> Act:
    """An act of another tankful."""
    return Act(letter, "fix", "pour", start_s, for_s, start_s, start_s)


def test_one_tankful_alone_is_never_at_fault() -> None:
    """The acts of one tankful follow each other."""
    assert ALONE != ()
    assert faults(ALONE, between_s=10.0) == ()


@given(st.sampled_from(ALONE), st.floats(min_value=-0.9, max_value=0.9))
def test_a_planted_overlap_is_found(act: Act, share: float) -> None:
    """Work of another tankful that begins inside an act is always found."""
    planted = stray(act.start_s + share * act.for_s, act.for_s)
    kinds = {one.kind for one in faults([*ALONE, planted], between_s=0.0)}

    assert "overlap" in kinds


@given(st.floats(min_value=0.0, max_value=9.9))
def test_ten_seconds_between_tankfuls(gap_s: float) -> None:
    """Less than 10 s between acts of different tankfuls is too near; within one tankful it is not."""
    one, other = stray(0.0), stray(10.0 + gap_s, letter="A")

    assert [fault.kind for fault in faults([one, other], between_s=10.0)] == ["too near"]
    assert faults([one, replace(other, tankful="B")], between_s=10.0) == ()


def test_an_act_beyond_its_reach_is_found() -> None:
    """An inversion moved by more than it may slip is a fault."""
    moved = Act("A", "develop", "invert", 75.0, 10.0, 50.0, 70.0)

    assert [fault.kind for fault in faults([moved], between_s=10.0)] == ["out of reach"]
