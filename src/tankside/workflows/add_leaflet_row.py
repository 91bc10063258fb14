"""One more printed time for a film in a developer: a new row, the old ones are kept."""

from __future__ import annotations

from dataclasses import replace
from uuid import UUID

from tankside.core.agitation.patterns import Agitation
from tankside.core.development.rate import TimeRule
from tankside.core.methods.combinations import Combination, RowSource, TimeRow
from tankside.core.methods.default_method import BY_HAND
from tankside.core.methods.known_time import find
from tankside.core.quantities.limits import INDEX
from tankside.core.refusals import refuse
from tankside.core.run.instants import Instant
from tankside.core.solutions.notation import Dilution
from tankside.workflows.moments import moment_of
from tankside.workflows.ports import Desk, Dice


def add_leaflet_row(
    desk: Desk,
    dice: Dice,
    combination: UUID,
    now: Instant,
    *,
    time_s: float,
    temp_c: float,
    index: float,
    source: RowSource = "leaflet",
    words: str = "leaflet",
) -> Combination:
    """Add a time as printed (s, C, exposure index), or one's own; returns the combination with it."""
    known = desk.combinations.by_key(combination)
    if known is None:
        raise refuse("no-such-combination", ways_on=("add-leaflet-row",))
    if not INDEX.hold(index):
        raise refuse("index-not-readable", at="index", index=index)
    row = TimeRow(dice.key(), time_s, temp_c, index, source, words, moment_of(now).date())
    return desk.combinations.keep(replace(known, rows=(*known.rows, row)))


def combination_for(
    desk: Desk,
    dice: Dice,
    *,
    film: str,
    developer: str,
    dilution: Dilution,
    least_stock_ml: float | None = None,
    agitation: Agitation = BY_HAND,
) -> Combination:
    """The combination of exactly these, begun empty where there is none.

    Neither a dilution nor an agitation is ever converted.
    """
    known = find(
        desk.combinations.all(), film=film, developer=developer, dilution=dilution, agitation=agitation
    )
    if known is not None:
        return known
    return desk.combinations.keep(
        Combination(
            dice.key(), film, developer, dilution, agitation, "plastic", "pour-in to pour-out", "rate", (),
            least_stock_ml,
        )
    )  # fmt: skip


def least_stock_told(desk: Desk, combination: UUID, least_stock_ml: float) -> Combination:
    """The least stock for one roll (mL, above 0) as the leaflet says it."""
    known = desk.combinations.by_key(combination)
    if known is None:
        raise refuse("no-such-combination", ways_on=("add-leaflet-row",))
    return desk.combinations.keep(replace(known, least_stock_ml=least_stock_ml))


def facts_told(
    desk: Desk, combination: UUID, *, time_rule: TimeRule, hydroquinone: bool | None
) -> Combination:
    """How the time goes with temperature, and whether the developer holds hydroquinone (None: not said)."""
    known = desk.combinations.by_key(combination)
    if known is None:
        raise refuse("no-such-combination", ways_on=("add-leaflet-row",))
    return desk.combinations.keep(replace(known, time_rule=time_rule, hydroquinone=hydroquinone))
