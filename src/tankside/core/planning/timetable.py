"""The session on a clock: columns of baths, and the lane of the hands."""

from __future__ import annotations

from dataclasses import dataclass
from datetime import datetime
from typing import Literal

from tankside.core.methods.baths import BathKind
from tankside.core.planning.acts import Act


@dataclass(frozen=True, slots=True)
class Layer:
    """One bath of one tankful in its glass: from the start of pour-in to the start of pour-out.

    `fills_s` are the starts of the fills of a wash; all seconds count from the timetable's `begins`.
    """

    bath: BathKind
    start_s: float
    end_s: float
    fills_s: tuple[float, ...] = ()


@dataclass(frozen=True, slots=True)
class Column:
    """One tankful as a glass of layers; `hung_s` is when its last roll hangs."""

    letter: str
    layers: tuple[Layer, ...]
    hung_s: float


@dataclass(frozen=True, slots=True)
class Stretch:
    """A stretch without work: 'free', or 'inversions' where some tank still wants inverting."""

    kind: Literal["free", "inversions"]
    start_s: float
    end_s: float


@dataclass(frozen=True, slots=True)
class Timetable:
    """Columns, acts in order of time, stretches and the tightest moment (s to spare before that act)."""

    begins: datetime
    ends: datetime
    columns: tuple[Column, ...]
    acts: tuple[Act, ...]
    stretches: tuple[Stretch, ...]
    tightest: Act | None
    spare_s: float | None
