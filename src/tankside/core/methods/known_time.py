"""Which rows of a combination are used for a roll, and what they tell: accepted over own over leaflet."""

from __future__ import annotations

from collections.abc import Iterable
from dataclasses import dataclass, replace

from tankside.core.agitation.patterns import Agitation
from tankside.core.development.printed_rows import Row, printed_step_s
from tankside.core.development.rate import Rate, TimeRule, rate_of
from tankside.core.doubt.estimate import Estimate
from tankside.core.methods.combinations import Combination, RowSource, TimeRow
from tankside.core.refusals import refuse
from tankside.core.solutions.notation import Dilution

IN_TRUST: tuple[RowSource, ...] = ("accepted", "own", "leaflet")
"""Sources of rows, the one that is used first first."""


@dataclass(frozen=True, slots=True)
class KnownTime:
    """The row that gives the time, the rows beside it, and the rate that they tell.

    `rule` says whether a rate holds for it at all, `hydroquinone` whether the developer holds any (None:
    nobody has said).
    """

    row: TimeRow
    rows: tuple[TimeRow, ...]
    rate: Rate
    rule: TimeRule = "rate"
    hydroquinone: bool | None = None

    @property
    def source(self) -> RowSource:
        """Where the time comes from."""
        return self.row.source


def find(
    combinations: Iterable[Combination],
    *,
    film: str,
    developer: str,
    dilution: Dilution,
    agitation: Agitation | None = None,
) -> Combination | None:
    """The combination of exactly this film, developer and dilution; a dilution nobody noted is not there.

    With `agitation` that too must be the one its times were printed for. A time is never computed at one
    dilution from another: an unknown dilution is a combination of its own.
    """
    same = (film.casefold(), developer.casefold(), dilution)
    return next(
        (
            one
            for one in combinations
            if (one.film.casefold(), one.developer.casefold(), one.dilution) == same
            and agitation in (None, one.agitation)
        ),
        None,
    )


def rows_in_use(combination: Combination, index: float) -> tuple[TimeRow, ...]:
    """Rows at exactly the exposure index asked for that no later row replaces; the most trusted first."""
    replaced = {row.replaces for row in combination.rows}
    at_index = [row for row in combination.rows if row.index == index and row.key not in replaced]
    return tuple(sorted(at_index, key=lambda row: (IN_TRUST.index(row.source), -row.noted.toordinal())))


def known_time(combination: Combination, index: float) -> KnownTime:
    """The time that is known for this index, and how it changes with temperature.

    Arguments: `index` above 0, looked up, never computed from another; refused where no row stands there.
    Result: the time at its row's own temperature. The newest accepted row, else the newest own one, gives
    the time and the leaflet's rows only the factor; leaflet rows alone give both, several of them a line.
    Own model: docs/science/planning. Doubt: that of the factor; whether the leaflet's time suits one's own
    film, tank and hands only step strips can tell.
    """
    rows = rows_in_use(combination, index)
    if not rows:
        known = sorted({row.index for row in combination.rows})
        raise refuse(
            "no-time-at-index", at="index", ways_on=("add-leaflet-row", "other-index"),
            index=index, known=", ".join(f"{one:g}" for one in known),
        )  # fmt: skip
    leaflet = [row for row in rows if row.source == "leaflet"]
    best = rows[0]
    if best.source == "leaflet":
        best = min(leaflet, key=lambda row: (abs(row.temp_c - 20.0), row.temp_c))
        rate = rate_of(_rows(leaflet), ref_c=best.temp_c)
    else:
        rate = _beside(best, leaflet)
    return KnownTime(best, rows, rate, combination.time_rule, combination.hydroquinone)


def _beside(best: TimeRow, leaflet: list[TimeRow]) -> Rate:
    """A time of one's own with the factor, or the table, that the leaflet's rows tell where they reach it."""
    rate = rate_of(_rows(leaflet or [best]), ref_c=best.temp_c)
    if rate.ref_c != best.temp_c:
        rate = rate_of(_rows([best]), ref_c=best.temp_c)
    return replace(rate, time_s=Estimate(best.time_s, best.time_s, best.time_s, "s", best.source), line=None)


def _rows(rows: list[TimeRow]) -> list[Row]:
    """Rows as the science of rates reads them, printed in the step that they show together."""
    step_s = printed_step_s([row.time_s for row in rows])
    return [Row(row.temp_c, row.time_s, step_s) for row in rows]
