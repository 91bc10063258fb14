"""How far a running session is, as planning needs it to work out the rest: `run` builds it."""

from __future__ import annotations

from dataclasses import dataclass
from typing import Literal

from tankside.core.planning.plan import Plan

Whereabouts = Literal["not begun", "in a bath", "between baths", "done"]


@dataclass(frozen=True, slots=True)
class BathProgress:
    """One bath of a tankful, in seconds from now: negative is past, None is not yet or not known.

    `ends_s` of a bath in the tank is when it is due to end; `fills` counts fills of a wash had so far.
    """

    id: str
    poured_s: float | None = None
    ends_s: float | None = None
    over: bool = False
    skipped: bool = False
    fills: int = 0


@dataclass(frozen=True, slots=True)
class TankfulProgress:
    """Where one tankful is, with its baths in the order of the plan."""

    letter: str
    where: Whereabouts
    baths: tuple[BathProgress, ...]

    @property
    def begun(self) -> bool:
        """Whether anything was poured into it, so that its chemistry cannot be moved."""
        return self.where != "not begun"


@dataclass(frozen=True, slots=True)
class Progress:
    """A session under way: its present plan and where each tankful is."""

    plan: Plan
    tankfuls: tuple[TankfulProgress, ...]

    def tankful(self, letter: str) -> TankfulProgress:
        """The tankful of that letter."""
        return next(one for one in self.tankfuls if one.letter == letter)
