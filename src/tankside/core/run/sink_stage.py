"""In which of the sink's states one tankful is."""

from __future__ import annotations

from typing import Literal

from tankside.core.run.anchors import hung
from tankside.core.run.bath_ends import end_after_s
from tankside.core.run.cues import Script
from tankside.core.run.standing import Standing
from tankside.core.run.state import Pass, RunState, TankfulState

Stage = Literal[
    "waiting", "filling", "running", "cue due", "draining", "overtime", "at least", "wash", "hang", "done",
]  # fmt: skip
BEFORE_FIRST_S = 60.0
"""A tankful that is still to begin waits until this long before its first pour."""


def stage_of(state: RunState, one: TankfulState, stands: Standing, script: Script, now_us: int) -> Stage:
    """The state of a tankful: what fills its screen."""
    if one.ended is not None or hung(one.letter) in script.anchors.known_us:
        return "done"
    if one.in_tank is not None:
        return _in_bath(one, one.in_tank, stands, script, now_us)
    if stands.next is None:
        return "hang"
    if not one.passes:
        first_us = script.anchors.at_us(f"{stands.next.id}:poured")
        soon = first_us is None or now_us >= first_us - round(BEFORE_FIRST_S * 1e6)
        return "filling" if soon else "waiting"
    left_us = one.passes[-1].ended_us or 0
    return "draining" if now_us < left_us + round(state.plan.hands.drain_s * 1e6) else "filling"


def _in_bath(one: TankfulState, there: Pass, stands: Standing, script: Script, now_us: int) -> Stage:
    if stands.stray is there:
        return "overtime"
    bath = one.bath(there.bath)
    if bath.kind == "wash":
        return "wash"
    had_s = (now_us - there.poured.at_us) / 1e6
    end_s, times = end_after_s(one, bath), bath.times
    if had_s > end_s:
        most_s = None if times.most_s is None else end_s + times.most_s - times.aim_s
        return "overtime" if most_s is not None and had_s > most_s else "at least"
    return "cue due" if _cue_now(one, script, now_us) else "running"


def _cue_now(one: TankfulState, script: Script, now_us: int) -> bool:
    """Whether hands are wanted at this very moment by a cue that is not yet done."""
    for cue in script.cues:
        at_us = script.at_us(cue)
        if cue.tankful != one.letter or at_us is None or script.done(cue):
            continue
        if at_us <= now_us < at_us + round(max(cue.lasts_s, 1.0) * 1e6):
            return True
    return False
