"""The bottle to have in hand: at measuring, where a wrong one is taken, and at the pour."""

from __future__ import annotations

from tankside.core.run.cue_script import Cue
from tankside.core.run.state import RunState
from tankside.web.screen.values import Guard
from tankside.wording.cues import BATHS

EMPTY_S = 30.0
"""How long an empty tank may wait before the next bath (ours)."""


def guard_of(state: RunState, cue: Cue) -> Guard | None:
    """The guard of a cue that takes a bottle used again; None for water and for what is mixed once."""
    if cue.bottle is None or cue.bath_kind is None or cue.kind not in ("measure", "pour"):
        return None
    bottle = state.bench_bottle(cue.bottle)
    cap, place = (bottle.cap, bottle.place) if bottle else ("", "")
    liquid = next((one for one in state.plan.liquids if one.key == cue.liquid), None)
    if liquid is None or not liquid.reusable:
        return None
    volume = f"{liquid.volume_ml:.0f}"
    name = BATHS[cue.bath_kind]
    if cue.kind == "measure":
        signs = [f"{cap} cap" if cap else "", place]
        lead = f"Now measure {volume} mL:"
        where = ", ".join(sign for sign in signs if sign)
        return Guard("measure", lead, name, cue.bottle, where, "Into the dry jug. Look at the label.", volume)
    where = f"from the jug in front of the {cap} cap" if cap else "from its jug"
    then = f"{place[:1].upper()}{place[1:]}. {volume} mL." if place else f"{volume} mL."
    return Guard("pour", "Pour now:", name, cue.bottle, where, then, volume, EMPTY_S)
