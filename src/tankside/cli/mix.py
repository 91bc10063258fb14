"""`tankside mix`: a published formula for the volume, the salts and the scale that one has."""

from __future__ import annotations

from typing import TYPE_CHECKING

import click

from tankside.cli.amounts import VolumeWord, as_number, at, json_option, tell, typed_in, volumes_option
from tankside.cli.why import print_whys, why_option, with_whys

if TYPE_CHECKING:
    from tankside.core.quantities.preferences import Preferences
    from tankside.core.safety.cautions import Caution
    from tankside.core.solutions.formulas import Formula, Part, Recipe
    from tankside.core.solutions.hydrates import Form

MEASURE_MARK_ML = 1.0


@click.command()
@click.argument("formula", required=False)
@click.option("--ml", default="1000", show_default=True, help="Volume to mix.")
@click.option("--have", multiple=True, help="A salt in another form, as borax=pentahydrate.")
@click.option("--scale", type=click.FloatRange(0.0001, 50), default=0.1, show_default=True,
              help="Finest mark of the scale, in g.")  # fmt: skip
@click.option("--packet-ml", help="It comes as a powder packet for this volume.")
@volumes_option
@why_option
@json_option
def mix(  # noqa: PLR0917 - one argument an option
    formula: str | None,
    ml: str,
    have: tuple[str, ...],
    scale: float,
    packet_ml: str | None,
    volumes: VolumeWord,
    *,
    asks_why: bool,
    as_json: bool,
) -> None:
    """Work out a FORMULA for a volume; without one, list those of the catalogue."""
    from tankside.core.planning.explain_recipe import why_recipe
    from tankside.core.solutions.formulas import recipe_for
    from tankside.core.solutions.weighing import check_packet
    from tankside.wiring import published_formula, published_formulas

    typed = typed_in("C", volumes)
    volume_ml = typed.volume_ml("--ml", ml)
    if packet_ml is not None:
        check_packet(packet_ml=typed.volume_ml("--packet-ml", packet_ml), wanted_ml=volume_ml)
    if formula is None:
        _list(published_formulas(), as_json=as_json)
        return
    forms = dict(at("--have", lambda text=one: _form(text)) for one in have)  # type: ignore[misc]
    recipe = recipe_for(published_formula(formula), volume_ml=volume_ml, have=forms)
    whys = (why_recipe(recipe, scale_g=scale, measure_ml=MEASURE_MARK_ML),) if asks_why else ()
    if as_json:
        tell(with_whys(_numbers(recipe, scale), whys))
        return
    _print(recipe, typed.own, scale)
    print_whys(whys, typed.own)


def _form(text: str) -> tuple[str, Form]:
    """SUBSTANCE=FORM as the catalogue knows it."""
    from tankside.core.refusals import refuse
    from tankside.wiring import published_form

    substance, equals, form = (part.strip() for part in text.partition("="))
    if not equals:
        raise refuse("have-unreadable", typed=text)
    return substance, published_form(substance, form)


def _mark(part: Part, scale: float) -> float:
    """Mark of what a part is measured with."""
    return scale if part.unit == "g" else MEASURE_MARK_ML


def _cautions(recipe: Recipe) -> tuple[Caution, ...]:
    """What to say before the jars are opened: by liquid, then by substance as it comes, each once."""
    from tankside.core.safety.cautions import cautions
    from tankside.core.safety.hazards import said_once
    from tankside.core.solutions.acetic import STOCK
    from tankside.wiring import hazards_of

    told = [*cautions(recipe.formula.kind, moment="mix", hot_c=recipe.formula.start_c)]
    for part in recipe.parts:
        told += hazards_of(part.substance, STOCK.value if part.unit == "mL" else 100.0)
    return said_once(told)


def _numbers(recipe: Recipe, scale: float) -> dict[str, object]:
    """The recipe as JSON tells it."""
    from tankside.core.quantities.display import to_step
    from tankside.core.solutions.dissolving import steps_for
    from tankside.core.solutions.weighing import least_volume_ml, shown_step, weighing_error_percent

    of = recipe.formula.provenance
    weighed = [part for part in recipe.parts if part.unit == "g"]
    larger_ml = least_volume_ml(weighed, volume_ml=recipe.volume_ml, mark=scale) if weighed else None
    steps = steps_for([part.substance for part in recipe.parts], filled_up=recipe.formula.filled_up)
    return {
        "formula": recipe.formula.name,
        "how": of.how,
        "source": of.at,
        "start_with_water": as_number(recipe.start_ml, "mL", step=1, source="formula or common practice"),
        "parts": [
            {
                "substance": part.substance,
                "form": part.form,
                "amount": as_number(
                    part.amount, part.unit, step=shown_step(_mark(part, scale)), source=of.told
                ),
                "scale_error_percent": to_step(
                    weighing_error_percent(part.amount, mark=_mark(part, scale)), 1.0
                ),
                "substituted": part.substituted,
            }
            for part in recipe.parts
        ],
        "steps": [{"step": one.code, "substance": one.substance} for one in steps],
        "mix_at_least": None if larger_ml is None else as_number(larger_ml, "mL", step=1, source="ours: 5 %"),
        "cautions": [{"code": one.code, "how": one.how, "source": one.source} for one in _cautions(recipe)],
    }


def _print(recipe: Recipe, own: Preferences, scale: float) -> None:
    """The recipe as a person mixes it."""
    from tankside.core.quantities.display import volume_text
    from tankside.core.solutions.dissolving import steps_for
    from tankside.wording.cautions import caution_sentence
    from tankside.wording.chemistry import part_words, provenance_words, recipe_advice, step_words

    rows = [("water to start with", volume_text(recipe.start_ml, own), "")]
    rows += [part_words(part, _mark(part, scale)) for part in recipe.parts]
    widths = [max(len(row[column]) for row in rows) for column in (0, 1)]
    for what, much, error in rows:
        click.echo(f"{what:<{widths[0]}}  {much:>{widths[1]}}  {error}".rstrip())
    click.echo()
    steps = steps_for([part.substance for part in recipe.parts], filled_up=recipe.formula.filled_up)
    for number, step in enumerate(steps, start=1):
        click.echo(f"{number}. {step_words(step)}")
    click.echo()
    for sentence in (
        *recipe_advice(recipe, own, mark=scale),
        *(caution_sentence(one) for one in _cautions(recipe)),
        provenance_words(recipe.formula.provenance),
    ):
        click.echo(sentence)


def _list(known: tuple[Formula, ...], *, as_json: bool) -> None:
    """Every formula with its kind and how it came."""
    if as_json:
        tell({"formulas": [{"name": of.name, "kind": of.kind, "how": of.provenance.how} for of in known]})
        return
    width = max(len(of.name) for of in known)
    for of in known:
        click.echo(f"{of.name:<{width}}  {of.kind:<9}  {of.provenance.how}")
