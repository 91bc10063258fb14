"""What a plan takes for granted because nobody was asked: shown, and each changeable by one tap."""

from __future__ import annotations

from dataclasses import dataclass
from typing import Literal

AssumptionCode = Literal[
    "one-shot", "agitation", "stop", "fix", "wash", "wetting", "no-presoak",
    "stop-parts", "fixer-parts", "wetting-parts", "room", "tank-at-room", "tank-worth", "thermometer-true",
]  # fmt: skip


@dataclass(frozen=True, slots=True)
class Assumption:
    """One thing assumed: `value` in the unit that its code implies (seconds, C, mL), or `text` (parts)."""

    code: AssumptionCode
    value: float | None = None
    text: str = ""
