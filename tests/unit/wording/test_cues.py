"""Cues, consequences and doubts in the words of the sink."""

from __future__ import annotations

import pytest
from unit.core.run.evening import DEVELOPER, STOP, Sink, at, opened, plan

from tankside.core.run.commands import DrainBath, PourBath, SettleClock
from tankside.core.run.cue_script import cue_script
from tankside.core.run.cues import Cue
from tankside.core.run.sink_view import sink_view
from tankside.wording.consequences import WAYS, say_consequence, say_doubt
from tankside.wording.sink_acts import act_words, spoken_words


def cue_of(name: str) -> Cue:
    """One cue of a plan of one tankful."""
    return next(cue for cue in cue_script(opened(plan("A")).state).cues if cue.id == name)


@pytest.mark.parametrize(
    ("name", "title", "button"),
    [
        ("A.develop.invert-1", "Invert, 10 s", "Inverted"),
        ("A.stop.measure", "Measure stop bath", "K7M4-T, measured"),
        ("A.stop.pour", "Pour stop bath", "K7M4-T, pouring"),
        ("A.stop.drain", "Drain", "Draining"),
        ("A.wash.pour", "Pour water", "Water, pouring"),
        ("A.wash.water-2", "New water", "Water changed"),
        ("A.wetting.pour", "Pour wetting bath", "Wetting bath, pouring"),
        ("A.hang", "Hang the film", "Hung"),
    ],
)
def test_cues_in_words(name: str, title: str, button: str) -> None:
    """What stands as the next act and what on the button."""
    said = act_words(cue_of(name))
    assert (title, button) == (said.title, said.button)


@pytest.mark.parametrize(
    ("name", "spoken"),
    [
        ("A.develop.invert-1", "A: Invert, 10 seconds"),
        ("A.stop.measure", "A: Measure stop bath, 500 mL, K 7 M 4 T"),
        ("A.stop.pour", "A: Pour stop bath, K 7 M 4 T"),
        ("A.stop.drain", "A: Drain, back into K 7 M 4 T"),
        ("A.develop.drain", "A: Drain, down the drain"),
        ("A.wash.water-2", "A: New water, fill 2 of 4"),
        ("A.hang", "A: Hang the film"),
    ],
)
def test_a_voice_spells_codes_and_says_units(name: str, spoken: str) -> None:
    """'K 7 M 4 T' and 'seconds', with the tankful first and the words of the page."""
    cue = cue_of(name)
    assert spoken == spoken_words(cue, act_words(cue))


def first_said(sink: Sink, seconds: float) -> tuple[str, str, str]:
    """What the sink says first."""
    view = sink_view(sink.state, at(seconds))
    said = say_consequence(view.consequences[0], sink.state)
    return said.head, said.more, said.best


def test_what_is_said_after_an_outage() -> None:
    """How long over, what it means, what is best now."""
    sink = opened(plan("A"))
    sink.do(PourBath("A.develop"), 0)
    head, more, best = first_said(sink, 700)
    assert head == "2:10 over. Pour out now."
    assert more.startswith("Contrast +13 % (10 to 17). Print it on paper up to one grade softer.")
    assert best == "Draining now"


def test_what_is_said_of_a_wrong_order() -> None:
    """The film first, then the way on."""
    sink = opened(plan("A"))
    sink.do(PourBath("A.stop"), 0)
    head, more, _ = first_said(sink, 5)
    assert head == "Film unharmed."
    assert more.endswith("Drain, three fills of water, developer for its full time.")
    sink = opened(plan("A"))
    sink.do(PourBath("A.fix"), 0)
    assert first_said(sink, 5)[0] == "The image is gone."


def test_what_is_said_of_a_spoilt_bottle() -> None:
    """Which bottle, what went in, what is left of it."""
    sink = opened(plan("A"))
    sink.do(PourBath("A.develop", jug=True, ml=300.0), 0)
    sink.do(DrainBath("A.develop", to=DEVELOPER), 570)
    head, more, _ = first_said(sink, 571)
    assert head == "R5TN-6 is contaminated and not used again."
    assert more == (
        "300 mL of developer went into it. It is at most 81 % of its strength. This film is unaffected."
    )


def test_every_doubt_is_a_sentence_with_named_ways() -> None:
    """A pour noted twice, a pour never noted, a clock that jumped."""
    sink = opened()
    sink.do(PourBath("A.develop"), 0)
    sink.do(PourBath("A.develop"), 100)
    sink.do(DrainBath("B.stop", to=STOP), 130)
    sink.wall_jump_s = 3600
    sink.do(DrainBath("A.develop", held=True), 200)
    found = sink_view(sink.state, at(210)).doubts
    assert [one.code for one in found] == ["poured-twice", "pour-not-noted", "clock"]
    said = [say_doubt(one, sink.state).head for one in found]
    assert said[0] == "Develop was noted as poured twice, 1:40 apart. Which is right?"
    assert said[2] == "The clock of this machine jumped by 60:00."
    assert {way.words for one in found for way in one.ways} <= set(WAYS)
    sink.do(SettleClock("elapsed"), 220)
    assert len(sink_view(sink.state, at(230)).doubts) == 2
