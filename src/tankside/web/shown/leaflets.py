"""What the leaflet pages show: combinations with their rows, each with where it comes from."""

from __future__ import annotations

from dataclasses import dataclass

from tankside.core.methods.combinations import Combination, TimeRow
from tankside.core.quantities.display import index_text, temperature_text, time_text, volume_text
from tankside.core.quantities.preferences import Preferences
from tankside.wording.agitation import pattern_words

SOURCES = {"leaflet": "leaflet", "own": "your own", "accepted": "accepted from a review"}


@dataclass(frozen=True, slots=True)
class Row:
    """One time as it is kept; `replaced` once a later row took its place."""

    time: str
    warm: str
    index: str
    source: str
    noted: str
    replaced: bool


@dataclass(frozen=True, slots=True)
class Leaflet:
    """A film in a developer at one dilution."""

    key: str
    film: str
    developer: str
    agitation: str
    rows: tuple[Row, ...]
    least: str
    special: bool = False
    """Whether its time follows no rate, or it is known what its developer holds."""


def leaflet(one: Combination, preferences: Preferences) -> Leaflet:
    """A combination as its page shows it, rows by index, then by temperature."""
    replaced = {row.replaces for row in one.rows}
    ordered = sorted(one.rows, key=lambda row: (row.index, row.temp_c, row.noted))
    pattern = one.agitation
    return Leaflet(
        str(one.key),
        one.film,
        f"{one.developer} {one.dilution}",
        pattern_words(pattern),
        tuple(_row(row, preferences, replaced=row.key in replaced) for row in ordered),
        volume_text(one.least_stock_ml, preferences) if one.least_stock_ml is not None else "",
        special=one.time_rule != "rate" or one.hydroquinone is not None,
    )


def facts_of(one: Combination) -> dict[str, tuple[str, ...]]:
    """What is known of its developer and rule, as its form holds it."""
    holds = {True: "yes", False: "no", None: "unknown"}[one.hydroquinone]
    return {"rule": (one.time_rule,), "hydroquinone": (holds,)}


def _row(row: TimeRow, preferences: Preferences, *, replaced: bool) -> Row:
    """A row in words; the person's own words stand where they say more than the source."""
    source = SOURCES[row.source]
    words = row.words if row.words not in ("", "leaflet", "own time") else ""
    return Row(
        time_text(row.time_s),
        temperature_text(row.temp_c, preferences),
        index_text(row.index),
        f"{source}, {words}" if words else source,
        row.noted.isoformat(),
        replaced,
    )
