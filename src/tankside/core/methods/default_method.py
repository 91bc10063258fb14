"""The method of a first evening: every number ours or common practice, shown, and changeable."""

from __future__ import annotations

from collections.abc import Mapping
from types import MappingProxyType
from typing import Literal

from tankside.core.agitation.patterns import Agitation
from tankside.core.methods.baths import HandWork, Method, Step, Times

Origin = Literal["common practice", "ours", "published range, safe side"]

BY_HAND = Agitation("inversion", first_s=30.0, then_s=10.0, every_s=60.0, soft_s=10.0)
IN_FIXER = Agitation("inversion", first_s=30.0, then_s=10.0, every_s=60.0, soft_s=20.0)
"""Fixing runs to completion, so an inversion there may slip further than one in the developer."""

HANDS = HandWork(pour_s=15.0, drain_s=15.0, measure_s=30.0, between_tankfuls_s=10.0)

STOP = Times(30.0, 60.0, 120.0)
FIX_CUBIC = Times(300.0, 300.0, 600.0)
FIX_LONG = Times(480.0, 480.0, 600.0)
WASH_FILL = Times(300.0, 300.0, None)
WASH_FILLS = 4
WETTING = Times(30.0, 60.0, 120.0)

DRAIN_EARLY_S = 5.0
DRAIN_LATE_S = 10.0
HANG_S_PER_ROLL = 90.0
DRY_REELS_S = 300.0
LOAD_S_PER_ROLL = 120.0

ORIGINS: Mapping[str, Origin] = MappingProxyType(
    {
        "develop": "published range, safe side",
        "agitation": "common practice",
        "stop": "common practice",
        "fix": "published range, safe side",
        "wash": "ours",
        "wetting": "common practice",
        "hands": "ours",
        "soft": "common practice",
        "drain window": "ours",
        "hang": "ours",
        "dry reels": "ours",
        "load": "ours",
    }
)
"""Where each number comes from; the developing time itself comes from the combination's rows."""


def default_method(*, time_s: float, fix_longer: bool) -> Method:
    """The default method for a developing time of `time_s` (s, over 0).

    `fix_longer` is true for tabular film and for film of unknown grain. Result: a method whose developer is
    exact and used once, stop bath and fixer reused, wash of four fills, wetting bath thrown away.

    Own model: common practice on the safe side, docs/science/planning.
    Doubt: rules, not estimates; each is a least, an aim and a most.

    >>> [step.kind for step in default_method(time_s=570.0, fix_longer=False).steps]
    ['develop', 'stop', 'fix', 'wash', 'wetting']
    """
    exact = Times(time_s, time_s, time_s)
    fix = FIX_LONG if fix_longer else FIX_CUBIC
    return Method(
        "by hand, one-shot developer",
        (
            Step("develop", "developer", exact, "drain", BY_HAND),
            Step("stop", "stop bath", STOP, "back", BY_HAND),
            Step("fix", "fixer", fix, "back", IN_FIXER),
            Step("wash", "water", WASH_FILL, "drain", None, fills=WASH_FILLS),
            Step("wetting", "wetting agent", WETTING, "drain", None),
        ),
        HANDS,
    )
