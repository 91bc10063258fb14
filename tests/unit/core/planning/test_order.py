"""The start of one more tankful: the fast search against the plain one, and what may be shut unseen."""

from __future__ import annotations

import importlib.util
from dataclasses import replace
from typing import Any

import pytest
from hypothesis import given, settings
from hypothesis import strategies as st
from planned import tankful
from project import ROOT

from tankside.core.methods.baths import HandWork, Times
from tankside.core.methods.default_method import HANDS
from tankside.core.planning.acts import Act
from tankside.core.planning.check import faults
from tankside.core.planning.openings import Openings, may_be_placed
from tankside.core.planning.order import Coming, in_order
from tankside.core.planning.placing import placed
from tankside.core.planning.plan import PlannedTankful


def plain() -> Any:
    """The plain search of benchmarks/, loaded from its file."""
    spec = importlib.util.spec_from_file_location("plain_order", ROOT / "benchmarks" / "plain_order.py")
    assert spec is not None
    assert spec.loader is not None
    module = importlib.util.module_from_spec(spec)
    spec.loader.exec_module(module)
    return module


def short(letter: str, develop_s: float, *, rigid: bool = False) -> PlannedTankful:
    """A tankful with a fix of 2 to 3 min and one fill of water, so that the plain search is soon through."""
    one = tankful(letter, develop_s, rigid=rigid)
    times = {"fix": Times(120.0, 120.0, 180.0), "wash": Times(120.0, 120.0, None)}
    baths = tuple(replace(bath, times=times.get(bath.kind, bath.times), fills=1) for bath in one.baths)
    return replace(one, baths=baths)


SLOW = HandWork(pour_s=20.0, drain_s=20.0, measure_s=45.0, between_tankfuls_s=15.0)
CORPUS = [
    (570.0, 420.0, False, HANDS), (570.0, 570.0, False, HANDS), (450.0, 610.0, False, HANDS),
    (485.0, 365.0, False, HANDS), (330.0, 330.0, True, HANDS), (415.0, 395.0, True, HANDS),
    (360.0, 300.0, False, SLOW), (300.0, 480.0, False, SLOW), (420.0, 420.0, False, SLOW),
]  # fmt: skip


@pytest.mark.parametrize(("a_s", "b_s", "rigid", "hands"), CORPUS)
def test_the_fast_search_answers_as_the_plain_one(
    a_s: float, b_s: float, rigid: bool, hands: HandWork
) -> None:
    """The same start and the same stretches, step for step, and the judge finds nothing."""
    first, own = short("A", a_s, rigid=rigid), short("B", b_s, rigid=rigid)
    one = Coming(own, own if a_s != b_s else None)
    ordered = in_order(first, [one], hands)
    assert plain().plainly_joined(first, one, hands, until_s=6000.0) == ordered.tankfuls
    assert () == faults(ordered.acts, between_s=hands.between_tankfuls_s)


seconds = st.integers(0, 240).map(float)
acts = st.builds(
    lambda letter, start_s, for_s, early_s, late_s: Act(
        letter, "fix", "invert", start_s, for_s, start_s - early_s, start_s + late_s
    ),
    st.sampled_from("AB"),
    seconds,
    st.sampled_from([10.0, 15.0, 30.0, 180.0]),
    st.sampled_from([0.0, 10.0, 60.0]),
    st.sampled_from([0.0, 10.0, 60.0]),
)


@given(st.lists(acts, max_size=7), st.sampled_from([0.0, 10.0]))
@settings(max_examples=400, deadline=None)
def test_what_is_shut_unseen_cannot_be_placed(some: list[Act], between_s: float) -> None:
    """Whatever the placing manages and the judge passes, the quick look lets through."""
    found = placed(some, between_s=between_s)
    if found is not None and not faults(found, between_s=between_s):
        assert may_be_placed(Openings.of(some), between_s=between_s)


def test_a_long_piece_finds_no_room_between_inversions() -> None:
    """Three minutes of mixing do not go between another tank's inversions, each free by 10 s of a minute."""
    turns = [Act("A", "fix", "invert", at_s, 10, at_s - 10, at_s + 10) for at_s in range(0, 600, 60)]
    mixing = Act("B", "develop", "mix", 200.0, 180.0, 120.0, 300.0)
    assert not may_be_placed(Openings.of([*turns, mixing]), between_s=10.0)
    assert may_be_placed(Openings.of([*turns, replace(mixing, for_s=40.0)]), between_s=10.0)
    assert may_be_placed(Openings.of(turns).beside(Openings.of([mixing]).later(600.0)), between_s=10.0)
