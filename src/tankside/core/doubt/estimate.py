"""A number with its doubt and where it comes from."""

from __future__ import annotations

from dataclasses import dataclass


@dataclass(frozen=True, slots=True)
class Estimate:
    """`value` with its equal-tailed 5-95 % interval `low` to `high`, all in `unit`; `source` says whence."""

    value: float
    low: float
    high: float
    unit: str
    source: str = ""

    def __post_init__(self) -> None:
        if not self.low <= self.value <= self.high:
            raise ValueError(f"an estimate must lie in its interval: {self.low} {self.value} {self.high}")
