"""Why a bottle is good until its day."""

from __future__ import annotations

from datetime import date

from tankside.core.planning.why import Figure, Length, Why, narrowings, rule
from tankside.core.shelf.contents import Contents, bottle_good_until
from tankside.core.solutions.keeping import KeepingTime, months_after

KEEPING_PAGE = "docs/science/keeping"
DAYS_A_MONTH = 365.2425 / 12


def why_good_until(contents: Contents, keeping: KeepingTime, *, developer: bool) -> Why:
    """Why a bottle is good so many months from the day its solution was made.

    The keeping time of a full bottle and, once it stands part full, that of a part-full one: the first to end
    counts. A leader test narrows it for a `developer`.
    """
    until, origin = bottle_good_until(contents, keeping), keeping.provenance.told
    whole = float(keeping.full_months)
    lengths = [
        Length("keeps-full", rule(whole, "months", origin), (Figure("full", whole, "months", origin),))
    ]
    if contents.part_full_since is not None and keeping.part_full_months is not None:
        ends = months_after(contents.part_full_since, keeping.part_full_months)
        figures = (
            Figure("part", float(keeping.part_full_months), "months", origin),
            Figure("part_full_since", float(contents.part_full_since.toordinal()), "day", "ledger"),
        )
        lengths.append(Length("keeps-part", rule(_months(contents.made, ends), "months", origin), figures))
    return Why(
        "good-until",
        None,
        rule(_months(contents.made, until), "months", origin),
        tuple(lengths),
        (),
        narrowings("leader-test") if developer else (),
        (
            Figure("made", float(contents.made.toordinal()), "day", "ledger"),
            Figure("until", float(until.toordinal()), "day", "computed"),
            Figure("holds_ml", contents.holds_ml, "mL", "bottle"),
            Figure("left_ml", contents.ml, "mL", "ledger"),
        ),
        "the earlier of: made + months in a full bottle; part full since + months once part full",
        tuple(one for one in (KEEPING_PAGE, keeping.provenance.key) if one),
        spread="rule",
        leaves_out=("warmth", *(("dies-unseen",) if developer else ())),
    )


def _months(made: date, until: date) -> float:
    """Months between two days, counted by the mean month."""
    return (until - made).days / DAYS_A_MONTH
