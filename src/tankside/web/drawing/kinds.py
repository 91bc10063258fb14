"""The sign of each kind of bath and liquid: the short name that its hatch, tint and stripe share."""

from __future__ import annotations

from typing import Literal, assert_never

from tankside.core.methods.baths import BathKind
from tankside.core.solutions.kinds import SolutionKind

Sign = Literal["dev", "stop", "fix", "aid", "wash", "wet"]
SIGNS: tuple[Sign, ...] = ("dev", "stop", "fix", "aid", "wash", "wet")
BATH_NAMES: dict[Sign, str] = {
    "dev": "Develop",
    "stop": "Stop bath",
    "fix": "Fix",
    "aid": "Washing aid",
    "wash": "Wash",
    "wet": "Wetting bath",
}


def sign_of_bath(kind: BathKind) -> Sign:
    """The sign of a bath; a presoak is water and looks like it.

    >>> sign_of_bath("presoak")
    'wash'
    """
    match kind:
        case "develop":
            return "dev"
        case "wetting":
            return "wet"
        case "presoak" | "wash":
            return "wash"
        case "stop" | "fix" | "aid":
            return kind
        case _:
            assert_never(kind)


def sign_of_solution(kind: SolutionKind) -> Sign:
    """The sign of a liquid on the shelf."""
    match kind:
        case "developer":
            return "dev"
        case "stop bath":
            return "stop"
        case "fixer":
            return "fix"
        case "washing aid":
            return "aid"
        case "wetting agent":
            return "wet"
        case "water":
            return "wash"
        case _:
            assert_never(kind)
