"""Why a stop bath may still take so many rolls, in words."""

from __future__ import annotations

from tankside.core.planning.why import Length, Why
from tankside.core.quantities.display import ROLLS_STEP, to_step
from tankside.core.quantities.preferences import Preferences
from tankside.wording.chemistry import whole_rolls
from tankside.wording.whys.words import PlotWords, WhyWords


def _headline(why: Why, _: Preferences) -> str:
    """'3 rolls'."""
    whole = whole_rolls(why.answer.value)
    return f"{whole} roll{'' if whole == 1 else 's'}"


def _sentence(why: Why, _: Preferences) -> str:
    """Whose count it is, or that its indicator ends it."""
    if why.input("turned").value > 0:
        return "Its indicator has turned: it is done, whatever the count."
    if why.lengths[0].code == "stop-label":
        return (
            "By the count on its label, which is the rule. Acid binds: an indicator or a strip is the test."
        )
    return (
        "By the one count published; that on its label goes before it. Acid binds: an indicator is the test."
    )


def _count(length: Length, _: Preferences) -> tuple[str, str]:
    """One count."""
    per_l, used = length.figure("per_l"), to_step(length.figure("used"), ROLLS_STEP)
    head = "Its label" if length.code == "stop-label" else "The one published count"
    return (
        head,
        f"{per_l:g} rolls a litre, less {used:g} used: {whole_rolls(length.estimate.value)}.",
    )


def _acid(length: Length, _: Preferences) -> tuple[str, str]:
    """What its acid would take."""
    strong, thin = (whole_rolls(length.figure(one)) for one in ("strong", "thin"))
    return "Acid explains", f"{strong} more after a strong developer as stock, {thin} more at 1+3."


WORDS = WhyWords(
    headlines={"stop-left": _headline},
    sentences={"stop-left": _sentence},
    lengths={"stop-label": _count, "stop-published": _count, "stop-acid": _acid},
    narrows={
        "look-at-indicator": "Look at its indicator, or dip a strip: turned, it is done whatever the count.",
        "note-label": "Note the count on its label; it goes before the published one.",
    },
    names={
        "put_in_ml": "working stop bath put in", "per_l_label": "a litre takes, by its label",
        "per_l_published": "a litre takes, as published", "turned": "indicator turned",
        "acid_mmol_l": "acid of the published bath", "sulfite_g_l": "sulfite carried in",
        "borax_g_l": "borax carried in", "carried_ml": "carried in by a roll and its tank",
        "ph_end": "done at pH",
    },
    leaves_out={
        "acid-explains": "The acid is that of the published bath and sets no count: the developer alone "
        "moves it up to fourfold, how much a roll carries in twofold.",
        "consistent-only": "Count and acid are consistent if a roll carries in about 10 mL; that "
        "validates neither.",
    },
    plots={
        "stop-acid": PlotWords(
            "Acid left in a litre", "rolls through a litre", "% of its acid", "as stock", "at 1+3", "at 1+1",
        ),
    },
)  # fmt: skip
