"""Why so many fills: the wash asked the other way round."""

from __future__ import annotations

from tankside.core.planning.why import Length, Why
from tankside.core.quantities.display import temperature_text, time_text
from tankside.core.quantities.preferences import Preferences
from tankside.wording.whys.amounts import two_figures
from tankside.wording.whys.words import PlotWords, WhyWords

SHOWN_MOST_S = 600.0


def _headline(why: Why, _: Preferences) -> str:
    """'4 fills of 5:00'."""
    fills = f"{why.input('fills').value:g}"
    return f"{fills} fill{'' if fills == '1' else 's'} of {time_text(why.input('soak_s').value)}"


def _sentence(why: Why, _: Preferences) -> str:
    """Enough if half leaves in so many seconds; the sources beside it, and what the slow one says of it."""
    quick, slow = (one.estimate.value for one in why.lengths[:2])
    enough = f"Enough if half of the fixer in the film leaves in {_seconds(why.answer.value)} or less"
    sources = f"sources say {quick:.0f} s and {slow:.0f} s"
    these = why.lengths[2]
    if these.figure("confirmed") > 0:
        return f"{enough}; {sources}."
    more_s = these.figure("one_more_s")
    on = f" One more soak of {time_text(more_s)} costs one fill." if more_s else " Take larger fills."
    return f"{enough}; {sources}, and the slower does not confirm it.{on}"


def _seconds(value: float) -> str:
    """Seconds as a half-life is told; beyond ten minutes nobody has measured one."""
    return f"{SHOWN_MOST_S:.0f} s" if value > SHOWN_MOST_S else f"{value:.0f} s"


def _leaves(length: Length) -> str:
    """What a source leaves in the film."""
    if not length.figures or length.figures[0].code != "left":
        return "These fills come to well below the limit."
    return f"These fills come to {two_figures(length.figures[0].value)} g/m²."


def _named(length: Length, _: Preferences) -> tuple[str, str]:
    """The quick source."""
    return "The quicker source", f"Half leaves in {length.estimate.value:.0f} s. {_leaves(length)}"


def _planned(length: Length, preferences: Preferences) -> tuple[str, str]:
    """The slow source, which is planned on."""
    warm = temperature_text(length.figure("temp_c"), preferences)
    return (
        "The slower source",
        f"Planned on: half leaves in {length.estimate.value:.0f} s at {warm}. {_leaves(length)}",
    )


def _these(length: Length, _: Preferences) -> tuple[str, str]:
    """How slow it might be."""
    return "These fills", f"Still enough where half leaves in {_seconds(length.estimate.value)}."


WORDS = WhyWords(
    headlines={"wash": _headline},
    sentences={"wash": _sentence},
    lengths={"half-life-named": _named, "half-life-planned": _planned, "these-fills": _these},
    narrows={"residual-test": "A residual test of the washed film settles it; this is a plan."},
    names={
        "fills": "fills", "soak_s": "soak of a fill", "fill_ml": "water of a fill", "wash_c": "wash water",
        "units": "film", "film_ml": "held by the film", "clings_ml": "held by tank and reels",
        "start_g_l": "thiosulfate in the fixer", "limit": "limit for long keeping",
    },
    leaves_out={
        "last-traces": "The model is too good: manuals ask for 20 to 30 minutes of running water, and it "
        "is content after far less, because the last traces leave more slowly. Nothing under 0.002 g/m² is "
        "told.",
        "fixer-within-limit": "It holds only while the fixer is within its own limit.",
    },
    plots={
        "wash": PlotWords(
            "Fixer left in the film", "after fill", "left", "quicker", "slower", level="limit 0.014"
        ),
    },
)  # fmt: skip
