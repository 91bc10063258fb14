"""What was typed can be read two ways: both as big choices, a dilution with its vessel and its amounts."""

from __future__ import annotations

from dataclasses import dataclass

from tankside.core.quantities.display import volume_text
from tankside.core.quantities.preferences import Preferences
from tankside.core.refusals import Refusal
from tankside.core.solutions.dilution import stock_and_water
from tankside.core.solutions.notation import read_dilution
from tankside.web.drawing.vessel import Cylinder, cylinder
from tankside.web.forms import Form

USUAL_ML = 300.0
"""The volume a dilution is shown for while nobody has said what the tank takes."""


@dataclass(frozen=True, slots=True)
class Choice:
    """One reading: `value` is the text that says it without doubt."""

    value: str
    words: str
    amounts: str = ""
    stock: str = ""
    vessel: Cylinder | None = None


@dataclass(frozen=True, slots=True)
class Readings:
    """Both readings of what stands in `field`."""

    field: str
    heading: str
    rest: str
    choices: tuple[Choice, Choice]


def as_meant(form: Form) -> Form:
    """What was chosen of two readings stands in the place of what was typed."""
    typed = {name: values for name, values in form.typed.items() if not name.startswith("meant-")}
    chosen = {
        name.removeprefix("meant-"): form.typed[name] for name in form.typed if name.startswith("meant-")
    }
    return Form({**typed, **chosen})


def readings_of(refusal: Refusal, preferences: Preferences, *, tank_ml: float | None) -> Readings | None:
    """The two readings that a refusal carries, or None where it carries none."""
    if "first" not in refusal.numbers or refusal.at is None:
        return None
    typed, first, second = (str(refusal.numbers[key]) for key in ("typed", "first", "second"))
    if refusal.code != "dilution-two-readings":
        choices = (Choice(first, first), Choice(second, second))
        return Readings(refusal.at, f"{typed} can be read two ways.", "Which is it?", choices)
    volume_ml = tank_ml or USUAL_ML
    stock, other = refusal.numbers["stock_parts"], refusal.numbers["other"]
    words = (f"{_parts(stock)} and {other} of water", f"{_parts(stock)} in {other}")
    return Readings(
        refusal.at,
        f"{typed} is printed for two things.",
        f"For {volume_text(volume_ml, preferences)}:",
        (
            _dilution_choice(first, words[0], volume_ml, preferences),
            _dilution_choice(second, words[1], volume_ml, preferences),
        ),
    )


def _parts(count: object) -> str:
    """'1 part', '2 parts'."""
    return f"{count} part" if count == 1 else f"{count} parts"


def _dilution_choice(entry: str, words: str, volume_ml: float, preferences: Preferences) -> Choice:
    """One dilution with its measuring cylinder, stock up to its level."""
    made = stock_and_water(volume_ml, read_dilution(entry))
    stock = volume_text(made.stock_ml, preferences).split()[0]
    vessel = cylinder(high=volume_ml, unit=volume_ml / 20, holds=made.stock_ml, left=52, top=24, width_px=52)
    return Choice(entry, words, f"{stock} + {volume_text(made.water_ml, preferences)}", stock, vessel)
