"""The doors at the sink to the working of a number: of the end, of the fix, of the wash."""

from __future__ import annotations

from tankside.core.planning.explain import explain
from tankside.core.planning.why import AboutPlan
from tankside.core.quantities.preferences import Preferences
from tankside.core.refusals import Refused
from tankside.core.run.cue_script import end_after_s
from tankside.core.run.state import RunState, TankfulState
from tankside.web.screen.values import Why
from tankside.wording.sink_why import why_heading, why_this_end
from tankside.wording.why import answer_sentence, leaves_out_sentences, title


def working(state: RunState, one: TankfulState, about: AboutPlan = "time") -> str:
    """Where the working of a tankful's number stands, in the plan of this very run, and the way back."""
    return f"/plan/why/{about}?tankful={one.letter}&plan={state.plan.key}&back=sink"


def why_here(state: RunState, one: TankfulState, preferences: Preferences) -> Why | None:
    """The door to the working of what is in the tank: developer, fixer or wash water."""
    there = one.in_tank
    if there is None:
        return None
    bath = one.bath(there.bath)
    match bath.kind:
        case "develop":
            return Why(
                heading=why_heading(end_after_s(one, bath)),
                sentences=why_this_end(state, one, there.bath, preferences),
                page=working(state, one),
            )
        case "fix" | "wash":
            return _of_plan(state, one, bath.kind, preferences)
        case _:
            return None


def _of_plan(state: RunState, one: TankfulState, about: AboutPlan, preferences: Preferences) -> Why | None:
    """What the plan says of a bath; nothing where it holds no working."""
    try:
        found = explain(state.plan, about, one.letter)
    except Refused:
        return None
    said = (answer_sentence(found, preferences), *leaves_out_sentences(found))
    return Why(heading=title(found, preferences), sentences=said, page=working(state, one, about))
