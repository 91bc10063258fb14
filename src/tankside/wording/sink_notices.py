"""What went otherwise at the sink, and what does not fit together: a heading and one or two sentences."""

from __future__ import annotations

from tankside.core.run.consequences import Consequence, ConsequenceCode
from tankside.core.run.doubts import Doubt, DoubtCode
from tankside.wording.sink_baths import minutes

WAYS = {
    "pour-out-now": "Draining",
    "end-tankful": "End this tankful",
    "rinse-then-develop": "Rinse, then develop",
    "the-first-is-right": "The first is right",
    "the-second-is-right": "The second is right",
    "take-it-back": "Take the note back",
    "let-it-stand": "Let it stand",
    "elapsed-is-right": "The stopwatch is right",
    "wall-is-right": "The clock is right",
}
HAPPENED: dict[ConsequenceCode, tuple[str, str]] = {
    "over-time": ("{bath} {over} over", "{contrast} Pour out now."),
    "image-gone": (
        "the image is gone",
        "Fixer was in the tank before the developer. Developing longer brings nothing back.",
    ),
    "before-developer": (
        "{bath} before the developer",
        "The film is unharmed. Drain, three fills of water, then developer for its full time.",
    ),
    "unfixed": ("not fixed", "{bath} came before the fix. Drain it, fix, then wash anew."),
    "unwashed": ("not washed", "{bath} came before the wash. Drain it and wash."),
    "wrong-bottle": ("another bottle", "{poured} was poured where {owed} was due. Drain it."),
}
DOUBTFUL: dict[DoubtCode, str] = {
    "poured-twice": "{bath}: poured was noted twice, {apart} apart.",
    "pour-not-noted": "{bath}: its pour was never noted, so its time is not known.",
    "drain-not-noted": "{bath}: where it went was never noted.",
    "drained-again": "{bath}: drained was noted again.",
    "fate-again": "{bath}: noted as gone from the tank, but it was not in it.",
    "fate-of-nothing": "{bath}: noted as gone from the tank, but it was not in it.",
    "reading-odd": "Tank {tankful} was read {by_k} °C from what was expected.",
    "clock": "The clock of this machine jumped by {by_s} s. Which is right?",
    "clock-across": "The clock of this machine jumped by {by_s} s. Which is right?",
}


def what_happened(one: Consequence, names: dict[str, str]) -> tuple[str, str]:
    """Heading and sentence; `names` gives the word of each bath."""
    if one.code == "contaminated":
        return _contaminated(one)
    bath = names.get(one.bath, one.bath)
    heading, sentence = HAPPENED[one.code]
    figures = {
        "bath": bath,
        "poured": names.get(one.poured or "", "Another bath"),
        "owed": names.get(one.owed or "", bath),
        "over": minutes(one.over_s),
        "contrast": _contrast(one),
    }
    return f"{one.tankful}: {heading.format(**figures)}", sentence.format(**figures).strip()


def what_is_doubtful(one: Doubt, names: dict[str, str]) -> str:
    """The sentence of a doubt."""
    return DOUBTFUL[one.code].format(
        bath=f"{one.tankful}, {names.get(one.bath or '', 'the bath').lower()}",
        tankful=one.tankful,
        apart=minutes(one.by_s or 0),
        by_k=f"{abs(one.by_k or 0):.0f}",
        by_s=f"{abs(one.by_s or 0):.0f}",
    )


def _contrast(one: Consequence) -> str:
    if one.contrast is None:
        return ""
    percent = one.contrast.percent
    seen = {"too small to see": "Too small to see.", "just": "It will just show."}.get(
        one.contrast.size, "It will show."
    )
    return f"Contrast {percent.value:+.0f} % ({percent.low:.0f} to {percent.high:.0f}). {seen}"


def _contaminated(one: Consequence) -> tuple[str, str]:
    found = one.contamination
    if found is None:
        return "A bottle is contaminated", "It is not offered again."
    strength = (
        "" if found.most_strength is None else f" It has at most {100 * found.most_strength:.0f} % left."
    )
    return (
        f"{found.bottle} is contaminated",
        f"{found.poured_ml:.0f} mL of {found.kind or 'another liquid'} went into it.{strength} "
        "It is not offered again; the film in this tank is unaffected.",
    )
