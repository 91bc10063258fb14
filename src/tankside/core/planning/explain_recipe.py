"""Why a formula comes to these amounts: published grams a litre, for a volume, by a scale."""

from __future__ import annotations

from tankside.core.doubt.estimate import Estimate
from tankside.core.planning.why import Figure, Length, Narrowing, Why
from tankside.core.solutions.formulas import Part, Recipe
from tankside.core.solutions.weighing import least_volume_ml, weighing_error_percent


def why_recipe(recipe: Recipe, *, scale_g: float, measure_ml: float) -> Why:
    """Why a recipe is what it is; its answer is the part that the scale knows least.

    Arguments: finest marks of scale (g) and measure (mL).
    """
    of = recipe.formula
    marks = {"g": scale_g, "mL": measure_ml}
    litres = recipe.volume_ml / 1000
    told = of.provenance.told
    least = max(recipe.parts, key=lambda part: weighing_error_percent(part.amount, mark=marks[part.unit]))
    weighed = [part for part in recipe.parts if part.unit == "g"]
    larger_ml = least_volume_ml(weighed, volume_ml=recipe.volume_ml, mark=scale_g) if weighed else None
    return Why(
        "recipe",
        None,
        _amount(least, marks[least.unit], told),
        tuple(
            Length(
                "part",
                _amount(part, marks[part.unit], told),
                (
                    Figure(part.substance, line.per_litre, f"{part.unit}/L", told),
                    Figure("substituted", float(part.substituted), "", part.form),
                ),
            )
            for part, line in zip(recipe.parts, of.constituents, strict=True)
        ),
        (),
        ()
        if larger_ml is None
        else (Narrowing("mix-more", (Figure("larger_ml", larger_ml, "mL", "ours"),)),),
        (
            Figure("recipe_ml", recipe.volume_ml, "mL", of.name),
            Figure("litres", litres, "L", "asked"),
            Figure("scale", scale_g, "g", "told"),
        ),
        "amount = grams a litre x litres x molar mass of the form in the jar / that of the form called for",
        ("docs/science/formulas", *((of.provenance.key,) if of.provenance.key else ())),
    )


def _amount(part: Part, mark: float, told: str) -> Estimate:
    """An amount as well as half a mark lets one measure it, which is all that a scale can be off."""
    off = min(mark / 2, part.amount)
    return Estimate(part.amount, part.amount - off, part.amount + off, part.unit, told)
