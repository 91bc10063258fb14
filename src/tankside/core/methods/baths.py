"""The baths of a method: kinds, times, where the liquid goes afterwards."""

from __future__ import annotations

from dataclasses import dataclass
from typing import Literal

from tankside.core.agitation.patterns import Agitation
from tankside.core.solutions.kinds import SolutionKind

BathKind = Literal["presoak", "develop", "stop", "fix", "aid", "wash", "wetting"]
Destination = Literal["back", "drain"]


@dataclass(frozen=True, slots=True)
class Times:
    """Least, aim and most time of a bath in seconds, from the start of pour-in to the start of pour-out."""

    least_s: float
    aim_s: float
    most_s: float | None

    def __post_init__(self) -> None:
        if not 0 <= self.least_s <= self.aim_s <= (self.most_s if self.most_s is not None else self.aim_s):
            raise ValueError("a bath's times must rise from least to aim to most")


@dataclass(frozen=True, slots=True)
class Step:
    """One step of a method; `fills` above one only in a wash, whose times are those of one fill."""

    kind: BathKind
    solution: SolutionKind
    times: Times
    destination: Destination
    agitation: Agitation | None = None
    fills: int = 1


@dataclass(frozen=True, slots=True)
class HandWork:
    """How long the hands need, in seconds."""

    pour_s: float = 15.0
    drain_s: float = 15.0
    measure_s: float = 30.0
    between_tankfuls_s: float = 10.0


@dataclass(frozen=True, slots=True)
class Method:
    """A named procedure: its steps in order."""

    name: str
    steps: tuple[Step, ...]
    hands: HandWork = HandWork()
