"""What went otherwise and what is doubtful, as plates on the page with their ways on."""

from __future__ import annotations

from collections.abc import Mapping
from typing import Any

from tankside.core.quantities.preferences import Preferences
from tankside.core.refusals import Refusal
from tankside.core.run.commands import Asked as Command
from tankside.core.run.commands import Request
from tankside.core.run.consequences import Consequence
from tankside.core.run.doubts import Doubt
from tankside.core.run.sink_view import SinkView
from tankside.core.run.state import Run, RunState
from tankside.web.screen.acts import asked
from tankside.web.screen.values import Button, Notice
from tankside.wording.consequences import WAYS, say_consequence, say_doubt

FRESH_US = 60_000_000
"""How long what cannot be helped any more stays on the page."""


def notices(state: RunState, view: SinkView, preferences: Preferences) -> tuple[Notice, ...]:
    """The urgent first; what cannot be helped only while it is fresh."""
    told = [one for one in view.consequences if one.urgent or view.now_us - one.at_us < FRESH_US]
    return (
        *(happened(one, state, preferences) for one in told),
        *(_doubtful(one, state) for one in view.doubts),
        *_closing(view),
    )


def _closing(view: SinkView) -> tuple[Notice, ...]:
    """What is left for the hands once nothing is left to do."""
    if view.closed:
        return (Notice("fact", "", "The session is closed."),)
    if view.close is None:
        return ()
    return (Notice("fact", "", "Bottles back in their places, waste in its can."),)


def endings(run: Run, view: SinkView) -> tuple[Button, ...]:
    """The ways on once nothing is left to do: close the session, go to its journal."""
    if view.close is None and not view.closed:
        return ()
    journal = Button("To the journal", "j", page=f"/journal/{run.key}")
    if view.close is None:
        return (journal,)
    return (Button("Close the session", "c", command=asked(view.close), asks=True), journal)


def happened(one: Consequence, state: RunState, preferences: Preferences) -> Notice:
    """One consequence, with the command that is best now."""
    said = say_consequence(one, state, preferences)
    ways = () if one.best is None else (_best(said.best, one.best),)
    heading = f"{one.tankful}: {said.head[:1].lower()}{said.head[1:]}"
    return Notice("refusal" if one.urgent else "warning", heading, said.more, ways, about_of(one))


def _best(words: str, best: Command) -> Button:
    return Button(words, "", command=asked(best), asks=isinstance(best, Request))


def about_of(one: Consequence) -> str:
    """What tells one consequence from another."""
    return f"{one.code} {one.bath}"


def _doubtful(one: Doubt, state: RunState) -> Notice:
    said = say_doubt(one, state)
    ways = tuple(Button(WAYS[way.words], "", command=asked(way.asked)) for way in one.ways)
    return Notice("warning", "Doubtful", f"{said.head} {said.more}".strip(), ways)


def refused(refusal: Refusal, sentence: str, command: Mapping[str, Any]) -> Notice:
    """A refused command as a plate; a bottle taken knowingly is the same command, said once more."""
    ways: tuple[Button, ...] = ()
    if "take-it-knowingly" in refusal.ways_on:
        ways = (Button("Take it all the same", "", command={**command, "knowingly": True}),)
    return Notice("refusal", "", sentence, ways)
