"""What is typed of a bottle: its size, how long its leaflet says it keeps, its price, a leader's time."""

from __future__ import annotations

from collections.abc import Callable, Mapping
from typing import Any

from tankside.core.quantities.entry import read_temperature, read_volume
from tankside.core.quantities.preferences import Preferences
from tankside.core.quantities.time_entry import read_time
from tankside.core.refusals import refuse
from tankside.core.shelf.bottles import Batch, Bottle
from tankside.core.solutions.keeping import KeepingTime, by_leaflet
from tankside.core.solutions.leader_test import LeaderTest
from tankside.web.forms import Form, number_of, read_all
from tankside.workflows.pour_over import Empties
from tankside.workflows.time_leader import Timed

MINOR = 100
"""Minor units in one: cents, pence."""

MOST_ROLLS_PER_L = 100


def typed_readers(form: Form) -> dict[str, Callable[[], Any]]:
    """The readers of how long a batch keeps and what it cost; each refuses at its own field."""
    return {
        "full": lambda: by_leaflet(_whole(form, "full"), None) if form.text("full") else None,
        "part": lambda: _with_part(form) if form.text("full") and form.text("part") else None,
        "price": lambda: price_of(form),
    }


def keeping_of(told: Mapping[str, Any]) -> KeepingTime | None:
    """The keeping time that those readers found; None where no months were typed."""
    keeping: KeepingTime | None = told["part"] or told["full"]
    return keeping


def _with_part(form: Form) -> KeepingTime:
    """Months in a full bottle and once part full."""
    return by_leaflet(_whole(form, "full"), _whole(form, "part"))


def price_of(form: Form) -> int | None:
    """A price in whole minor units: '12.50' is 1250; None where nothing was typed."""
    if not form.text("price"):
        return None
    minor = number_of(form, "price") * MINOR
    if minor < 0 or abs(minor - round(minor)) > 1e-6:
        raise refuse("price-unreadable", typed=form.text("price")[:20])
    return round(minor)


def typed_of(batch: Batch) -> dict[str, tuple[str, ...]]:
    """What was typed of a batch, as it stands in the fields."""
    keeping, minor = batch.keeping, batch.price_minor
    told = {
        "full": str(keeping.full_months) if keeping else "",
        "part": str(keeping.part_full_months) if keeping and keeping.part_full_months else "",
        "price": "" if minor is None else f"{minor / MINOR:.2f}",
    }
    return {name: (text,) for name, text in told.items() if text}


def size_of(form: Form, preferences: Preferences) -> float | None:
    """What a bottle holds when full, in mL; None where it is just as large as what is in it."""
    return read_volume(form.text("holds"), preferences) if form.text("holds") else None


def empties_of(form: Form, preferences: Preferences) -> Empties:
    """So many bottles of such a size."""
    told = read_all(
        {
            "count": lambda: _whole(form, "count"),
            "holds": lambda: read_volume(form.text("holds"), preferences),
        }
    )
    return Empties(told["count"], told["holds"])


def leader_of(form: Form, preferences: Preferences) -> Timed:
    """A leader's time and the developer's temperature."""
    told = read_all(
        {
            "seconds": lambda: _seconds(form.text("seconds")),
            "temp_c": lambda: read_temperature(form.text("temp_c"), preferences),
        }
    )
    return Timed(
        LeaderTest(told["seconds"], told["temp_c"]), form.text("fresh") == "yes", form.text("film")[:60]
    )


def _seconds(typed: str) -> float:
    """Seconds as one counts them: a bare number is seconds here, for no leader takes an hour."""
    return float(typed) if typed.isdigit() else read_time(typed)


def _whole(form: Form, name: str) -> int:
    """A whole number."""
    told = number_of(form, name)
    if told != int(told):
        raise refuse("number-unreadable", ways_on=("type-again",), typed=form.text(name)[:20])
    return int(told)


def label_count_of(form: Form) -> float | None:
    """Rolls that a litre takes by its label, None where that was left empty."""
    if not form.text("label"):
        return None
    count = number_of(form, "label")
    if not 0 < count <= MOST_ROLLS_PER_L:
        raise refuse("number-out-of-range", at="label", least=1, most=MOST_ROLLS_PER_L)
    return count


def label_typed(bottle: Bottle) -> dict[str, tuple[str, ...]]:
    """What is known by the label, as it is typed."""
    return {} if bottle.rolls_per_l is None else {"label": (f"{bottle.rolls_per_l:g}",)}
