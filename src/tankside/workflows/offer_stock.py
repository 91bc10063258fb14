"""The bottles of developer on the shelf that the rolls of a plan can be developed from."""

from __future__ import annotations

from collections.abc import Iterable
from datetime import datetime
from zoneinfo import ZoneInfo

from tankside.core.methods.combinations import Combination
from tankside.core.planning.wish import DeveloperBottle, WantedRoll, Wish
from tankside.core.shelf.accounts import LEAST_ML
from tankside.workflows.look_at_shelf import BottleNow, bottles_now
from tankside.workflows.ports import Desk


def stocks_on_the_shelf(
    desk: Desk, wanted: Iterable[WantedRoll], zone: str, moment: datetime
) -> tuple[DeveloperBottle, ...]:
    """For each combination the bottles that hold its developer undiluted, neither spoilt nor poured away."""
    there = ZoneInfo(zone)
    bottles = bottles_now(desk, there, moment.astimezone(there).date())
    combinations = {one.combination.key: one.combination for one in wanted}.values()
    return tuple(
        DeveloperBottle(of.key, one.bottle.code, one.batch.name, one.contents, one.until, one.leader)
        for of in combinations
        for one in bottles
        if _is_stock_of(one, of)
    )


def stocks_again(desk: Desk, wish: Wish, moment: datetime) -> tuple[DeveloperBottle, ...]:
    """The same as the shelf is now; what is taken against the advice stays taken."""
    anyway = {one.code for one in wish.stocks if one.anyway}
    return with_anyway(stocks_on_the_shelf(desk, wish.rolls, wish.place.zone, moment), anyway)


def with_anyway(stocks: Iterable[DeveloperBottle], codes: Iterable[str]) -> tuple[DeveloperBottle, ...]:
    """The bottles of these codes taken against the advice."""
    told = frozenset(codes)
    return tuple(
        DeveloperBottle(
            one.combination, one.code, one.name, one.contents, one.until, one.leader, one.code in told
        )
        for one in stocks
    )


def _is_stock_of(one: BottleNow, of: Combination) -> bool:
    """Whether a bottle holds the developer of a combination as it is before it is diluted."""
    return (
        one.batch.kind == "developer"
        and one.batch.strength != "working"
        and one.batch.name.strip().casefold() == of.developer.strip().casefold()
        and one.contents.ml > LEAST_ML
        and not (one.account.contaminated or one.account.discarded)
    )
