"""What went otherwise and what is doubtful, as plates on the page with their ways on."""

from __future__ import annotations

from tankside.core.run.consequences import Consequence
from tankside.core.run.doubts import Doubt
from tankside.core.run.sink_view import SinkView
from tankside.core.run.state import RunState
from tankside.web.screen.acts import asked
from tankside.web.screen.values import Button, Notice
from tankside.wording.sink_acts import BATHS
from tankside.wording.sink_notices import WAYS, what_happened, what_is_doubtful

FRESH_US = 60_000_000
"""How long what cannot be helped any more stays on the page."""


def notices(state: RunState, view: SinkView) -> tuple[Notice, ...]:
    """The urgent first; what cannot be helped only while it is fresh."""
    names = {bath.id: BATHS[bath.kind] for one in state.tankfuls for bath in (*one.plan.baths, *one.former)}
    told = [one for one in view.consequences if one.urgent or view.now_us - one.at_us < FRESH_US]
    return (*(_happened(one, names) for one in told), *(_doubtful(one, names) for one in view.doubts))


def _happened(one: Consequence, names: dict[str, str]) -> Notice:
    heading, sentence = what_happened(one, names)
    ways = () if one.best is None else (Button(WAYS[one.best_words], "", command=asked(one.best)),)
    return Notice("refusal" if one.urgent else "warning", heading, sentence.strip(), ways)


def _doubtful(one: Doubt, names: dict[str, str]) -> Notice:
    ways = tuple(Button(WAYS[way.words], "", command=asked(way.asked)) for way in one.ways)
    return Notice("warning", "Doubtful", what_is_doubtful(one, names), ways)
