"""Stated 90 % intervals hold the truth: 500 runs of each kind here, 10,000 in benchmarks/coverage.py."""

from __future__ import annotations

import importlib.util
import sys
from types import ModuleType

import pytest
from project import ROOT


def benchmark(name: str) -> ModuleType:
    """A program of benchmarks/, loaded from its file."""
    spec = importlib.util.spec_from_file_location(f"benchmark_{name}", ROOT / "benchmarks" / f"{name}.py")
    assert spec is not None
    assert spec.loader is not None
    module = importlib.util.module_from_spec(spec)
    sys.modules[spec.name] = module
    spec.loader.exec_module(module)
    return module


COVERAGE = benchmark("coverage")
SPEED = benchmark("speed")


@pytest.mark.parametrize("case", [one for one in COVERAGE.CASES if one.promised], ids=lambda one: one.name)
def test_an_interval_holds_nine_truths_in_ten(case: object) -> None:
    """Truth from the stated prior: 86 to 94 % of 500 (three standard errors each way)."""
    assert 0.86 <= case.coverage(500) <= 0.94  # type: ignore[attr-defined]


def test_what_breaks_the_assumptions_is_held_less_often() -> None:
    """An offset, half minutes and a late wall are not in the interval of an end, and it shows."""
    (strange,) = [one for one in COVERAGE.CASES if not one.promised]

    assert strange.coverage(200) < 0.86


def test_blocks_and_the_loop_agree() -> None:
    """The fast way and quadrature with a root give the same time to 1e-5 (paths are straight for 30 s)."""
    draws = SPEED.sampled(SPEED.BLOCK, 0)

    assert SPEED.by_loop(draws, 20) == pytest.approx(SPEED.by_blocks(SPEED.BLOCK)[:20], rel=1e-5)
