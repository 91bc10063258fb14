"""What tonight's plan takes from the shelf, while it has not been begun."""

from __future__ import annotations

from collections.abc import Sequence
from dataclasses import dataclass
from datetime import datetime, timedelta

from tankside.core.planning.plan import Plan
from tankside.workflows.open_run import run_for
from tankside.workflows.ports import Desk

STILL_TONIGHT = timedelta(hours=12)
"""A plan that was to begin longer ago than this is not tonight's."""


@dataclass(frozen=True, slots=True)
class Tonight:
    """A plan that is still to be begun, None without one."""

    plan: Plan | None = None

    @property
    def bottles(self) -> frozenset[str]:
        """Bottles that it takes its liquids from."""
        return frozenset(one.bottle for one in self.plan.liquids if one.bottle) if self.plan else frozenset()

    def after_ml(self, code: str, ml: float) -> float | None:
        """What is left in a bottle (mL) after it; None where it takes nothing away for good."""
        once = [one for one in self.plan.liquids if not one.reusable] if self.plan else []
        taken = sum(one.volume_ml for one in once if one.bottle == code)
        taken += sum(one.stock_ml for one in once if one.stock_from == code and one.bottle is None)
        return max(0.0, ml - taken) if taken else None


def tonight_of(desk: Desk, now: datetime) -> Tonight:
    """The plan made last, if it was not begun and its time has not long gone."""
    plan = desk.plans.latest()
    if plan is None or plan.starts is None or plan.starts < now - STILL_TONIGHT:
        return Tonight()
    return Tonight() if desk.run_log.after(run_for(plan.key)) else Tonight(plan)


def shelf_sentence(tonight: Tonight, doubtful: Sequence[bool]) -> str:
    """What the shelf is good for tonight, in one sentence; empty where nothing is planned and all is well."""
    said = _enough(tonight)
    count = sum(doubtful)
    if not count:
        return f"{said}." if said else ""
    doubt = "one is doubtful" if count == 1 else f"{count} are doubtful"
    return f"{said}; {doubt}." if said else f"{doubt.capitalize()}."


def _enough(tonight: Tonight) -> str:
    """Whether everything stands ready for tonight."""
    if tonight.plan is None:
        return ""
    to_mix = [one for one in tonight.plan.liquids if one.bottle is None]
    if not to_mix:
        return "Enough for tonight"
    return f"{len(to_mix)} liquid{'' if len(to_mix) == 1 else 's'} still to be made for tonight"
