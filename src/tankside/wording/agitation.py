"""A pattern of agitation in words."""

from __future__ import annotations

from typing import assert_never

from tankside.core.agitation.patterns import Agitation, inversions_in


def pattern_words(pattern: Agitation) -> str:
    """How the hands move a tank.

    >>> pattern_words(Agitation("inversion"))
    'inverted 30 s, then 10 s (about 4 times) every 60 s'
    """
    first, then, every = (f"{one:g} s" for one in (pattern.first_s, pattern.then_s, pattern.every_s))
    match pattern.movement:
        case "none":
            return "not moved"
        case "stand":
            return f"moved {first}, then left standing"
        case "inversion" | "rotation":
            verb = "inverted" if pattern.movement == "inversion" else "rolled"
            if pattern.continuous:
                return f"{verb} without a stop"
            turns = f" (about {inversions_in(pattern.then_s)} times)" if verb == "inverted" else ""
            return f"{verb} {first}, then {then}{turns} every {every}"
        case _:
            assert_never(pattern.movement)
