"""A step strip, and a tablet, as they were typed."""

from __future__ import annotations

from collections.abc import Sequence
from dataclasses import dataclass
from uuid import UUID

from tankside.core.methods.step_strips import (
    USUAL_STEP,
    USUAL_STEPS,
    Exposed,
    StepStrip,
    Tablet,
    even_tablet,
)
from tankside.core.quantities.entry import read_index, read_temperature, read_time
from tankside.core.quantities.preferences import Preferences
from tankside.core.quantities.readings import read_readings
from tankside.core.refusals import refuse
from tankside.core.solutions.notation import read_dilution
from tankside.web.forms import Form, number_of, read_all
from tankside.web.typed.first_evening import name_of
from tankside.workflows.add_leaflet_row import combination_for
from tankside.workflows.house import House
from tankside.workflows.read_journal import Which
from tankside.workflows.read_step_strip import Alone, Typed

USUAL = "usual"
USUAL_NAME = f"{USUAL_STEPS} steps of {USUAL_STEP}"
STRIP = (
    "film", "developer", "dilution", "time", "temp", "readings", "tablet", "base_fog", "reading_sd",
    "instrument", "log_h0", "metered_index", "words",
)  # fmt: skip
TABLET = ("name", "steps", "step", "patches")
LONGEST_WORDS, LONGEST_NAME = 200, 60


@dataclass(frozen=True, slots=True)
class Read:
    """What was typed, and which development it belongs to."""

    typed: Typed
    of: Which | Alone


def read_strip(
    form: Form, house: House, preferences: Preferences, which: Which | None, attached: str
) -> Read:
    """The whole form read; every field that cannot be read is refused at its own place.

    A file that was attached stands in the place of what was typed.
    """
    alone = which is None
    known = form.text("combination")
    told = read_all(
        {
            **({} if not alone or known else {
                "film": lambda: name_of(form, "film"),
                "developer": lambda: name_of(form, "developer"),
                "dilution": lambda: read_dilution(form.text("dilution")),
            }),
            **({} if not alone else {
                "time": lambda: read_time(form.text("time")),
                "temp": lambda: read_temperature(form.text("temp"), preferences),
            }),
            "tablet": lambda: tablet_of(form, house.desk.tablets.all()),
            "base_fog": lambda: _maybe(form, "base_fog"),
            "reading_sd": lambda: _reading_sd(form),
            "log_h0": lambda: _maybe(form, "log_h0"),
            "metered_index": lambda: _metered(form),
        }
    )  # fmt: skip
    name, patches = told["tablet"]
    typed = Typed(
        attached or form.text("readings"),
        name,
        patches,
        told["base_fog"],
        told["reading_sd"],
        form.text("instrument")[:LONGEST_NAME],
        Exposed(told["log_h0"], form.holds("stated_light", "yes"), told["metered_index"]),
        form.holds("control", "yes"),
        form.text("words")[:LONGEST_WORDS],
    )
    if which is not None:
        return Read(typed, which)
    combination = _key(known) if known else combination_for(
        house.desk, house.dice, film=told["film"], developer=told["developer"], dilution=told["dilution"]
    ).key  # fmt: skip
    return Read(typed, Alone(combination, told["time"], told["temp"]))


def tablet_of(form: Form, tablets: Sequence[Tablet]) -> tuple[str, tuple[float, ...]]:
    """The tablet that was chosen; the common one unless another was."""
    chosen = form.text("tablet") or USUAL
    if chosen == USUAL:
        return USUAL_NAME, even_tablet()
    found = next((one for one in tablets if str(one.key) == chosen), None)
    if found is None:
        raise refuse("no-such-tablet", ways_on=("other-tablet",))
    return found.name, found.densities


def read_tablet(form: Form, house: House) -> Tablet:
    """A tablet as it was typed: its patches, or how many steps and how far apart."""
    told = read_all({"name": lambda: name_of(form, "name"), "patches": lambda: _patches(form)})
    return Tablet(house.dice.key(), told["name"], told["patches"])


def filled_from(strip: StepStrip, tablets: Sequence[Tablet]) -> Form:
    """The form with what was typed of a strip, to put it right."""
    tablet = next((str(one.key) for one in tablets if one.densities == strip.patches), USUAL)
    values = {
        "readings": strip.typed,
        "tablet": tablet,
        "base_fog": "" if strip.base_fog is None else f"{strip.base_fog:g}",
        "reading_sd": f"{strip.reading_sd:g}",
        "instrument": strip.instrument,
        "log_h0": "" if strip.exposed.log_h0 is None else f"{strip.exposed.log_h0:g}",
        "metered_index": "" if strip.exposed.metered_index is None else f"{strip.exposed.metered_index:g}",
        "words": strip.words,
        **({"stated_light": "yes"} if strip.exposed.stated_light else {}),
        **({"control": "yes"} if strip.control else {}),
    }
    return Form.filled(**values)


def _patches(form: Form) -> tuple[float, ...]:
    """Known patches, or an even tablet."""
    if form.text("patches"):
        read = read_readings(form.text("patches")).densities
        return tuple(sorted(one for one in read if one is not None))
    return even_tablet(int(number_of(form, "steps", USUAL_STEPS)), step=number_of(form, "step", USUAL_STEP))


def _reading_sd(form: Form) -> float:
    """How well one density is read."""
    found = number_of(form, "reading_sd", 0.02)
    if not 0.001 <= found <= 0.2:
        raise refuse("reading-error-out-of-range", at="reading_sd", sd=found)
    return found


def _maybe(form: Form, name: str) -> float | None:
    """A number that need not be told."""
    return number_of(form, name) if form.text(name) else None


def _metered(form: Form) -> float | None:
    """The index that a meter was set to, where one told the exposure."""
    return read_index(form.text("metered_index")) if form.text("metered_index") else None


def _key(text: str) -> UUID:
    """The key of a known combination."""
    try:
        return UUID(text)
    except ValueError:
        raise refuse("no-such-combination", ways_on=("look-at-densities",)) from None
