"""Draws, groups that move together, the answer told, and the parts of its doubt."""

from __future__ import annotations

from collections.abc import Mapping

import numpy as np
import pytest

from tankside.core.doubt.distributions import FloatArray, LogNormal, Normal
from tankside.core.doubt.groups import Group, Input, alone, draws_for, seed_of, uniform_draws, width
from tankside.core.doubt.monte_carlo import propagate
from tankside.core.doubt.parts import parts_of, what_would_narrow

GROUPS = (alone("wide", Normal(0.0, 3.0)), alone("narrow", Normal(0.0, 1.0)))


def total(values: Mapping[str, FloatArray]) -> FloatArray:
    """The sum of both."""
    return values["wide"] + values["narrow"]


def test_the_same_question_draws_the_same() -> None:
    """Seeds come from the question and nothing else."""
    seed = seed_of("end of development", 570.0, (19.2, 18.9))

    assert seed == seed_of("end of development", 570.0, (19.2, 18.9))
    assert seed != seed_of("end of development", 570.0, (19.2, 18.8))
    assert np.array_equal(draws_for(GROUPS, seed=seed, count=50), draws_for(GROUPS, seed=seed, count=50))


def test_draws_fill_every_stratum_once() -> None:
    """A thousand draws lie one in each thousandth, in every column, without order between columns."""
    draws = uniform_draws(7, count=1000, columns=3)

    assert np.all(np.sort(np.floor(1000 * draws), axis=0) == np.arange(1000)[:, None])
    assert abs(np.corrcoef(draws[:, 0], draws[:, 1])[0, 1]) < 0.1
    assert draws.min() > 0
    assert draws.max() < 1


def test_inputs_of_a_group_move_together() -> None:
    """The stated correlation comes out, and each input keeps its own distribution."""
    pair = Group(
        "taps", (Input("hot", Normal(52, 1)), Input("cold", LogNormal(12, 16))), ((1.0, 0.8), (0.8, 1.0))
    )
    drawn = pair.at(uniform_draws(3, count=20_000, columns=width([pair])))

    assert pytest.approx(0.8, abs=0.01) == np.corrcoef(drawn["hot"], np.log(drawn["cold"]))[0, 1]
    assert pytest.approx((12, 16), rel=0.01) == tuple(np.quantile(drawn["cold"], [0.05, 0.95]))


def test_the_told_answer_is_that_at_the_told_values() -> None:
    """A told value beside the median is used for the answer, the distribution for its interval."""
    groups = [alone("q10", LogNormal(1.5, 2.9), central=2.2)]
    estimate = propagate(lambda v: v["q10"] ** 0.1, groups, draws_for(groups, seed=1)).estimate("", "ours")

    assert pytest.approx(2.2**0.1) == estimate.value
    assert (1.5**0.1, 2.9**0.1) == pytest.approx((estimate.low, estimate.high), rel=1e-3)


def test_parts_close_with_their_remainder() -> None:
    """Shares and remainder are the whole; of a sum of independent parts nothing remains."""
    parts = parts_of(total, GROUPS, draws_for(GROUPS, seed=5))

    assert pytest.approx(1.0) == sum(part.share for part in parts.parts) + parts.remainder
    assert pytest.approx(0.0, abs=0.02) == parts.remainder
    assert ["wide", "narrow"] == [part.group for part in parts.parts]
    assert [3.0, 1.0] == pytest.approx([part.sd for part in parts.parts], rel=0.01)


def test_a_product_leaves_a_remainder() -> None:
    """Two groups whose product alone matters have no parts of their own: all is remainder."""
    parts = parts_of(lambda v: v["wide"] * v["narrow"], GROUPS, draws_for(GROUPS, seed=5))

    assert pytest.approx(1.0, abs=1e-9) == parts.remainder


def test_what_would_narrow_it() -> None:
    """Measuring the wide one leaves the narrow one's doubt; measuring the narrow one is not worth naming."""
    parts = parts_of(total, GROUPS, draws_for(GROUPS, seed=5))
    named = what_would_narrow(parts, ["wide", "narrow"])

    assert ["wide"] == [group for group, _ in named]
    assert pytest.approx(1.0, rel=0.1) == named[0][1]
    assert what_would_narrow(parts, ["narrow"]) == ()


def test_a_certain_answer_has_no_parts() -> None:
    """Where nothing that is uncertain matters, all shares are zero."""
    parts = parts_of(lambda v: 0 * v["wide"], GROUPS, draws_for(GROUPS, seed=5, count=100))

    assert [0.0, 0.0] == [part.share for part in parts.parts]
    assert parts.sd == 0
