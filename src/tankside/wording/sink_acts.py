"""The words of each act at the sink: on its mark, large as the next act, on its button, and spoken."""

from __future__ import annotations

from dataclasses import dataclass
from typing import assert_never

from tankside.core.methods.baths import BathKind
from tankside.core.run.cue_script import Cue

BATHS: dict[BathKind, str] = {
    "presoak": "Presoak",
    "develop": "Develop",
    "stop": "Stop bath",
    "fix": "Fix",
    "aid": "Washing aid",
    "wash": "Wash",
    "wetting": "Wetting bath",
}
POURED: dict[BathKind, str] = {
    "presoak": "water",
    "develop": "developer",
    "stop": "stop bath",
    "fix": "fixer",
    "aid": "washing aid",
    "wash": "water",
    "wetting": "wetting bath",
}


@dataclass(frozen=True, slots=True)
class ActWords:
    """`on_mark` beside the scale, `title` as the next act, `button` and `hint` to press, `spoken` aloud.

    A hint has a place `{due}` for 'due in 6:42'.
    """

    on_mark: str
    title: str
    button: str
    hint: str
    spoken: str
    pictogram: str


def act_words(cue: Cue, then: Cue | None) -> ActWords:
    """The words of `cue`; `then` is what follows it in the same tankful."""
    match cue.kind:
        case "measure":
            return _measure(cue)
        case "pour":
            return _pour(cue)
        case "invert" | "rotate":
            return _agitate(cue)
        case "drain":
            return _drain(cue, then)
        case "water":
            return _water(cue)
        case "hang":
            return ActWords("hang the film", "Hang the film", "Hung", "{due}, press when it hangs",
                            "hang the film", "hang")  # fmt: skip
        case _:
            assert_never(cue.kind)


def liquid_words(kind: BathKind | None) -> str:
    """What is poured for a bath of that kind."""
    return POURED[kind] if kind is not None else "bath"


def _measure(cue: Cue) -> ActWords:
    what = liquid_words(cue.bath_kind)
    button = f"{cue.bottle}, measured" if cue.bottle else "Measured"
    hint = "it says so on the bottle in your hand" if cue.bottle else "press when it is measured"
    return ActWords(
        f"measure {what}", f"Measure {what}", button, hint, f"measure {what}, {_spelt(cue)}", "measure"
    )


def _pour(cue: Cue) -> ActWords:
    what = liquid_words(cue.bath_kind)
    button = f"{cue.bottle}, pouring" if cue.bottle else f"{what.capitalize()}, pouring"
    hint = (
        "press as the liquid goes in"
        if cue.anchor == "run:begins" or cue.bottle
        else "{due}, press as it goes in"
    )
    return ActWords(f"pour {what}", f"Pour {what}", button, hint, f"pour {what}{_from(cue)}", "pour in")


def _agitate(cue: Cue) -> ActWords:
    verb = "invert" if cue.kind == "invert" else "rotate"
    on_mark = f"{verb}, {cue.lasts_s:.0f} s"
    mark = f"last {'inversion' if cue.kind == 'invert' else 'rotation'}" if cue.n == cue.of else on_mark
    return ActWords(
        mark, on_mark.capitalize(), "Inverted", "{due}", f"{verb} for {cue.lasts_s:.0f} seconds", "invert"
    )


def _drain(cue: Cue, then: Cue | None) -> ActWords:
    back = cue.to is not None and cue.to != "drain"
    follows = f", then {_follows(then)}" if then is not None else ""
    hint = f"{{due}}, back into {cue.to}" if back else "{due}, down the drain"
    spoken = f"drain{', back into the bottle' if back else ''}{follows}"
    return ActWords(f"drain{follows}", "Drain", "Draining", hint, spoken, "pour back")


def _follows(then: Cue) -> str:
    return "hang" if then.kind == "hang" else liquid_words(then.bath_kind)


def _water(cue: Cue) -> ActWords:
    last = ", the last fill" if cue.n == cue.of else f", fill {cue.n} of {cue.of}"
    return ActWords("new water", "New water", "Water changed", f"{{due}}{last}",
                    f"new water, fill {cue.n} of {cue.of}", "pour in")  # fmt: skip


def _from(cue: Cue) -> str:
    return f", {_spelt(cue)}" if cue.bottle else ""


def _spelt(cue: Cue) -> str:
    """A code letter by letter, so that a voice does not make a word of it."""
    return " ".join((cue.bottle or "").replace("-", ""))
