"""Plans in the database: a plan is kept whole, as it was shown."""

from __future__ import annotations

import json
from typing import Any
from uuid import UUID

from sqlalchemy import Select, insert, select

from tankside.core.planning.plan import Plan
from tankside.core.planning.stored_plans import with_rates
from tankside.store.connection import Database
from tankside.store.frozen_json import from_json, to_json
from tankside.store.tables.run import PLANS
from tankside.workflows.records import Conflict


class StoredPlans:
    """Plans by key and number."""

    def __init__(self, database: Database) -> None:
        self._database = database

    def keep(self, plan: Plan) -> None:
        """Write down a plan or its next number; raises `Conflict` where that number says otherwise."""
        body = to_json(Plan, plan)
        with self._database.writing() as connection:
            which = (PLANS.c.key == plan.key) & (PLANS.c.number == plan.number)
            kept = connection.execute(select(PLANS.c.body).where(which)).scalar_one_or_none()
            if kept is not None and _plan(kept) != plan:
                raise Conflict(f"plan {plan.key} number {plan.number}")
            if kept is None:
                row = {"key": plan.key, "number": plan.number, "made": plan.made, "body": body}
                connection.execute(insert(PLANS).values(row))

    def by_key(self, key: UUID, number: int | None = None) -> Plan | None:
        """The plan under `key`, its highest number unless told."""
        found = select(PLANS.c.body).where(PLANS.c.key == key)
        if number is not None:
            found = found.where(PLANS.c.number == number)
        return self._first(found.order_by(PLANS.c.number.desc()))

    def latest(self) -> Plan | None:
        """The plan made last."""
        return self._first(select(PLANS.c.body).order_by(PLANS.c.made.desc(), PLANS.c.number.desc()))

    def _first(self, found: Select[Any]) -> Plan | None:
        with self._database.reading() as connection:
            body = connection.execute(found.limit(1)).scalar_one_or_none()
        return None if body is None else _plan(body)


def _plan(body: str) -> Plan:
    """The plan that was written down, by this version or an older one."""
    return from_json(Plan, json.dumps(with_rates(json.loads(body))))
