"""Tanks, thermometers and the place one works in, as a plan freezes them."""

from __future__ import annotations

from dataclasses import dataclass
from uuid import UUID

from tankside.core.methods.combinations import TankKind


@dataclass(frozen=True, slots=True)
class Tank:
    """A tank by the person's name for it; `worth_ml` is the water its wall and reels are worth in heat."""

    key: UUID
    name: str
    volume_ml: float
    worth_ml: float
    tau_min: float
    kind: TankKind = "plastic"


@dataclass(frozen=True, slots=True)
class Thermometer:
    """A thermometer: `offset_c` is added to what it reads; `step_c` is its finest mark."""

    key: UUID
    name: str
    offset_c: float = 0.0
    step_c: float = 0.1


@dataclass(frozen=True, slots=True)
class Place:
    """Where one works; nothing learnt about one place carries silently to another."""

    key: UUID
    name: str
    room_c: float = 20.0
    hot_c: float | None = None
    cold_c: float | None = None
    jug_worth_ml: float = 42.0
    zone: str = "UTC"
