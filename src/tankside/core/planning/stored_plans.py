"""Plans as older versions stored them, brought up to the present shape."""

from __future__ import annotations

from collections.abc import Mapping
from typing import Any

Stored = Mapping[str, Any]

LEAST_C, MOST_C = 18.0, 24.0
"""What a factor per 10 K alone was believed for when plans carried nothing else."""


def with_rates(plan: Stored) -> Stored:
    """A stored plan whose developments carry a whole rate: once they carried a factor and its reference.

    >>> old = {"tankfuls": [{"letter": "A", "development": {"ref_c": 20.0, "q10": {"value": 2.2}}}]}
    >>> with_rates(old)["tankfuls"][0]["development"]["rate"]["q10"]
    {'value': 2.2}
    """
    tankfuls = [{**one, "development": _with_rate(one["development"])} for one in plan["tankfuls"]]
    return {**plan, "tankfuls": tankfuls}


def _with_rate(development: Stored) -> Stored:
    """A development with its rate as one value; what its own time was known at stays inside what is known."""
    if "rate" in development:
        return development
    kept = {name: value for name, value in development.items() if name not in ("ref_c", "q10")}
    ref_c = development["ref_c"]
    rate = {
        "q10": development["q10"], "ref_c": ref_c,
        "least_c": min(LEAST_C, ref_c), "most_c": max(MOST_C, ref_c),
    }  # fmt: skip
    return {**kept, "rate": rate}
