"""Recipes, washes and counts of a fixer in words."""

from __future__ import annotations

from math import floor

from tankside.core.permanence.capacity import CapacityLeft
from tankside.core.permanence.clearing import ClearingAnswer
from tankside.core.permanence.wash_plan import WashAnswer
from tankside.core.permanence.washing import HALF_LIFE_NAMED_S, HALF_LIFE_PLANNED_S, LIMIT_G_M2
from tankside.core.quantities.display import ROLLS_STEP, plain_number, time_text, to_step, volume_text
from tankside.core.quantities.preferences import Preferences
from tankside.core.solutions.dissolving import Step
from tankside.core.solutions.formulas import Part, Recipe
from tankside.core.solutions.weighing import least_volume_ml, shown_step, weighing_error_percent
from tankside.core.sources import Provenance

STEPS = {
    "water-first": "Start with the water.",
    "pinch-of-sulfite": "A pinch of the sulfite first: it keeps the air from the metol.",
    "dissolve": "Dissolve the {substance} until clear.",
    "acid-slowly": "Pour the {substance} in slowly, stirring.",
    "alkali-slowly": "Add the {substance} slowly to the cold water, stirring.",
    "fill-up": "Fill up with cold water to the mark.",
}
SHOWN_ERROR_PERCENT = 1.0
"""What the scale does is told from here on."""


def amount_words(part: Part, mark: float) -> str:
    """How much of one part, to what its scale or measure can tell.

    >>> amount_words(Part("borax", "pentahydrate", 0.9168, "g"), 0.1)
    '0.92 g'
    """
    number = plain_number(part.amount, shown_step(mark))
    return f"{number.rstrip('0').rstrip('.') if '.' in number else number} {part.unit}"


def part_words(part: Part, mark: float) -> tuple[str, str, str]:
    """What, how much, and what the scale does to it."""
    what = f"{part.substance}, {part.form}" if part.form else part.substance
    error = weighing_error_percent(part.amount, mark=mark)
    told = f"±{error:.0f} %" if error >= SHOWN_ERROR_PERCENT else ""
    return what, amount_words(part, mark), told


def step_words(step: Step) -> str:
    """One step of mixing.

    >>> step_words(Step("dissolve", "metol"))
    'Dissolve the metol until clear.'
    """
    return STEPS[step.code].format(substance=step.substance)


def recipe_advice(recipe: Recipe, own: Preferences, *, mark: float) -> tuple[str, ...]:
    """What the scale asks for, and which salts stand in for others."""
    told = [
        f"The {part.substance} is weighed as {part.form}, in place of the form of the formula."
        for part in recipe.parts
        if part.substituted
    ]
    weighed = [part for part in recipe.parts if part.unit == "g"]
    larger_ml = least_volume_ml(weighed, volume_ml=recipe.volume_ml, mark=mark) if weighed else None
    if larger_ml is not None:
        told.append(f"Your scale is too coarse for this little: mix {volume_text(larger_ml, own)}.")
    return tuple(told)


def provenance_words(of: Provenance) -> str:
    """Where a formula comes from; one from memory says so first."""
    return f"From memory, check before you use it: {of.at}" if of.how == "from memory" else f"From: {of.at}"


def residual_words(residual_g_m2: float | None) -> str:
    """A residual as it may be told.

    >>> residual_words(0.006), residual_words(None)
    ('0.006 g/m²', 'well below 0.002 g/m²')
    """
    return "well below 0.002 g/m²" if residual_g_m2 is None else f"{residual_g_m2:g} g/m²"


def wash_sentences(answer: WashAnswer, own: Preferences) -> tuple[str, ...]:
    """A wash as a plan: the fills, the question the other way round, and what it leaves."""
    soaks = ", ".join(time_text(one) for one in answer.soaks_s)
    told = [
        f"{len(answer.soaks_s)} fills of {volume_text(answer.fill_ml, own)}: {soaks}. "
        f"{volume_text(answer.water_ml, own)} of water, about {answer.time_s / 60:.0f} minutes.",
        f"Enough if half leaves in {to_step(answer.enough_if_s, 1.0):.0f} s or less; "
        f"sources say {HALF_LIFE_NAMED_S:.0f} and {HALF_LIFE_PLANNED_S:.0f}{_in_the_cold(answer)}.",
        f"Left in the film: {residual_words(answer.quick_g_m2)} to {residual_words(answer.slow_g_m2)}, "
        f"limit {LIMIT_G_M2:.3f} g/m².",
    ]
    if not answer.confirmed:
        told.append(_not_confirmed(answer))
    return (*told, "A plan, not a test: a residual test settles it.")


def _in_the_cold(answer: WashAnswer) -> str:
    """What cold water makes of the slow half-life."""
    slow_s = answer.slow_half_life_s
    return f", which this cold water makes {slow_s:.0f}" if slow_s > HALF_LIFE_PLANNED_S else ""


def _not_confirmed(answer: WashAnswer) -> str:
    """Never 'you fail'."""
    if answer.one_more_s is None:
        return "The pessimistic model does not confirm it, nor with one more fill: plan it anew."
    return (
        "The pessimistic model does not confirm it; "
        f"one more soak of {time_text(answer.one_more_s)} costs one fill."
    )


def whole_rolls(units: float) -> int:
    """Whole rolls that still fit: a part of one is no roll.

    >>> whole_rolls(6.55), whole_rolls(5.0), whole_rolls(-0.5)
    (6, 5, 0)
    """
    return max(0, floor(units + 1e-9))


def capacity_sentences(left: CapacityLeft, working_ml: float, own: Preferences) -> tuple[str, ...]:
    """What a fixer has taken and may take, by the source planned on and the one named."""
    planned, named = (whole_rolls(one) for one in (left.left_planned, left.left_named))
    told = (
        f"{volume_text(working_ml, own)} have taken {to_step(left.used_units, ROLLS_STEP):g} rolls.",
        f"Left: {planned} to {named} by two sources. "
        f"Offered: {left.ordinary_rolls} ordinary or {left.tabular_rolls} tabular.",
    )
    return told if left.ordinary_rolls else (*told, "Mix fresh before the next roll.")


def clearing_sentences(answer: ClearingAnswer) -> tuple[str, ...]:
    """The test piece: what it says of the bath, and how long to fix."""
    ratio = f"The test piece took {answer.ratio:.1f} times its fresh time"
    if answer.verdict == "discard":
        return (f"{ratio}: discard the fixer, whatever the count says.",)
    fix, tabular = (time_text(one) for one in (answer.fix_s, answer.fix_tabular_s))
    return (f"{ratio}: good. Fix {fix}; tabular or unknown film {tabular}.",)
