"""The words of each act at the sink: on its mark, large as the next act, on its button, and aloud."""

from __future__ import annotations

from dataclasses import dataclass
from typing import assert_never

from tankside.core.methods.baths import BathKind
from tankside.core.quantities.display import volume_text
from tankside.core.quantities.preferences import Preferences
from tankside.core.run.anchors import BEGINS
from tankside.core.run.cue_script import Cue
from tankside.wording.cues import LIQUIDS
from tankside.wording.refusals import PLAIN


@dataclass(frozen=True, slots=True)
class ActWords:
    """`on_mark` beside the scale, `title` as the next act, `button` and `hint` to press.

    A hint has a place `{due}` for 'due in 6:42'. A voice says the title and its `detail`.
    """

    on_mark: str
    title: str
    button: str
    hint: str
    pictogram: str
    detail: str = ""


def act_words(cue: Cue, then: Cue | None = None, preferences: Preferences = PLAIN) -> ActWords:
    """The words of `cue`; `then` is what follows it in the same tankful."""
    match cue.kind:
        case "measure":
            return _measure(cue, preferences)
        case "pour":
            return _pour(cue)
        case "invert" | "rotate":
            return _agitate(cue)
        case "drain":
            return _drain(cue, then)
        case "water":
            last = "the last fill" if cue.n == cue.of else f"fill {cue.n} of {cue.of}"
            hint = f"{{due}}, {last}"
            return ActWords("new water", "New water", "Water changed", hint, "pour in", last)
        case "hang":
            return ActWords("hang the film", "Hang the film", "Hung", "{due}, press when it hangs", "hang")
        case _:
            assert_never(cue.kind)


def spoken_words(cue: Cue, words: ActWords) -> str:
    """An act aloud: its tankful first, units in full, a code spelt so that a voice makes no word of it."""
    seconds = words.title.replace(" s", " seconds") if words.title.endswith(" s") else words.title
    said = f"{cue.tankful}: {seconds}, {words.detail}".removesuffix(", ")
    code = cue.bottle or (cue.to if cue.to != "drain" else None)
    return said.replace(code, " ".join(code.replace("-", ""))) if code else said


def liquid_words(kind: BathKind | None) -> str:
    """What is poured for a bath of that kind."""
    return LIQUIDS[kind] if kind is not None else "bath"


def _measure(cue: Cue, preferences: Preferences) -> ActWords:
    what = liquid_words(cue.bath_kind)
    button = f"{cue.bottle}, measured" if cue.bottle else "Measured"
    hint = "it says so on the bottle in your hand" if cue.bottle else "press when it is measured"
    amount = f"{volume_text(cue.ml, preferences)}, " if cue.ml is not None else ""
    detail = f"{amount}{cue.bottle or ''}".removesuffix(", ")
    return ActWords(f"measure {what}", f"Measure {what}", button, hint, "measure", detail)


def _pour(cue: Cue) -> ActWords:
    what = liquid_words(cue.bath_kind)
    button = f"{cue.bottle}, pouring" if cue.bottle else f"{what.capitalize()}, pouring"
    at_once = cue.anchor == BEGINS or cue.bottle
    hint = "press as the liquid goes in" if at_once else "{due}, press as it goes in"
    return ActWords(f"pour {what}", f"Pour {what}", button, hint, "pour in", cue.bottle or "")


def _agitate(cue: Cue) -> ActWords:
    verb, noun = ("invert", "inversion") if cue.kind == "invert" else ("rotate", "rotation")
    title = f"{verb.capitalize()}, {cue.lasts_s:.0f} s"
    mark = f"last {noun}" if cue.n == cue.of else title.lower()
    button = "Inverted" if cue.kind == "invert" else "Rotated"
    return ActWords(mark, title, button, "{due}", "invert")


def _drain(cue: Cue, then: Cue | None) -> ActWords:
    follows = "" if then is None else f", then {_follows(then)}"
    where = "down the drain" if cue.to in (None, "drain") else f"back into {cue.to}"
    return ActWords(f"drain{follows}", "Drain", "Draining", f"{{due}}, {where}", "pour back", where)


def _follows(then: Cue) -> str:
    return "hang" if then.kind == "hang" else liquid_words(then.bath_kind)
