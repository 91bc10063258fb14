"""Cues as acts of the page: the words of each, what it notes, when it is offered, and what stands by it."""

from __future__ import annotations

from collections.abc import Iterable
from dataclasses import fields
from typing import Any

from tankside.core.quantities.display import to_step
from tankside.core.run.commands import Asked as Command
from tankside.core.run.commands import NoteAgitation, Request
from tankside.core.run.cue_script import Cue
from tankside.core.run.state import RunState
from tankside.web.screen.guards import guard_of
from tankside.web.screen.values import Act, Button
from tankside.wording.cues import LANGUAGE
from tankside.wording.sink_acts import act_words, spoken_words

MORE = Button("More", "m", sheet="more")
DIP = Button("Dip the thermometer", "t", sheet="dip")
EACH_S = 15.0
"""How long after its end an inversion can still be noted, where each is (ours)."""
EARLIER = Button("I did it earlier", "e", sheet="earlier")


def whole_s(time_s: float) -> float:
    """A time as the page counts it: an end is kept to the second."""
    return to_step(time_s, 1.0)


def asked(command: Command) -> dict[str, Any]:
    """A command as it is sent, without what it leaves to the plan."""
    given = {one.name: getattr(command, one.name) for one in fields(command)}
    return {"kind": command.kind, **{name: value for name, value in given.items() if value is not None}}


def acts(state: RunState, cues: Iterable[Cue]) -> tuple[Act, ...]:
    """The acts of a run, those of a tankful in the order in which the hands meet them."""
    order = _hands_order(list(cues))
    return tuple(_act(state, cue, _following(order, at)) for at, cue in enumerate(order))


def _hands_order(cues: list[Cue]) -> list[Cue]:
    """The next bath is measured while the one before it is still in the tank."""
    order: list[Cue] = []
    for cue in cues:
        at = len(order)
        if cue.kind == "measure":
            while at > 0 and order[at - 1].tankful == cue.tankful and order[at - 1].kind == "drain":
                at -= 1
        order.insert(at, cue)
    return order


def _following(order: list[Cue], at: int) -> Cue | None:
    """What is noted next in the same tankful, measuring aside."""
    return next(
        (
            cue
            for cue in order[at + 1 :]
            if cue.tankful == order[at].tankful and cue.gives and cue.kind != "measure"
        ),
        None,
    )


def _act(state: RunState, cue: Cue, then: Cue | None) -> Act:
    words = act_words(cue, then)
    routine = cue.kind in ("invert", "rotate") and cue.n != cue.of
    measuring = cue.kind == "measure"
    plain = words.title[0].lower() + words.title[1:]
    return Act(
        id=cue.id,
        tankful=cue.tankful,
        anchor=cue.anchor,
        after_s=whole_s(cue.after_s),
        for_s=whole_s(cue.lasts_s),
        words=words.on_mark if cue.command else plain,
        title=words.title,
        mark_words=words.on_mark,
        spoken=spoken_words(cue, words),
        lang=LANGUAGE,
        pictogram=words.pictogram,
        named=not routine,
        patient=_patient(cue),
        code=_code(cue, then),
        sets=cue.gives or "",
        until=f"{cue.bath}:poured" if measuring else "",
        button=words.button,
        hint=words.hint,
        command=asked(cue.command) if cue.command else None,
        asks=isinstance(cue.command, Request),
        each=_each(cue),
        each_s=whole_s(cue.lasts_s + EACH_S),
        opens_s=whole_s(cue.after_s) if measuring else None,
        closes_s=whole_s(max(cue.after_s + cue.lasts_s, cue.most_s or 0.0)) if measuring else None,
        held_before_s=whole_s(cue.least_s) if cue.kind == "drain" else None,
        guard=guard_of(state, cue),
        others=_others(cue),
    )


def _each(cue: Cue) -> dict[str, Any] | None:
    """What notes this very inversion as done."""
    if cue.bath is None or cue.kind not in ("invert", "rotate"):
        return None
    return asked(NoteAgitation(cue.bath, cue.n, done=True))


def _patient(cue: Cue) -> bool:
    """New water, hanging and the pour after a wash do no harm by waiting; an empty tank may not wait."""
    return cue.most_s is None and (cue.kind != "pour" or cue.least_s > 0)


def _code(cue: Cue, then: Cue | None) -> str:
    """The bottle that the act leads to: its own, or after draining that of the next pour."""
    if cue.kind == "drain":
        return (then.bottle or "") if then is not None else ""
    return cue.bottle or "" if cue.command else ""


def _others(cue: Cue) -> tuple[Button, ...]:
    """What stands beside the main act while no bath decides it."""
    if cue.kind == "measure":
        other = Button("Another bottle is in my hand", "b", sheet="bottle")
        return (Button("Scan its label", "s", sheet="scan"), other, MORE)
    if cue.kind == "pour" and cue.bottle:
        other = Button("Another jug is in my hand", "b", sheet="bottle")
        return (Button("I poured it earlier", "e", sheet="earlier"), other, MORE)
    if cue.kind in ("pour", "hang"):
        return (EARLIER, MORE)
    return ()


def beside_bath(bath: str, *, agitated: bool) -> tuple[Button, ...]:
    """The three others while a bath is in the tank."""
    missed = Button("I missed one", "i", command=asked(NoteAgitation(bath)), said="Noted: one missed.")
    return (DIP, missed if agitated else EARLIER, MORE)
