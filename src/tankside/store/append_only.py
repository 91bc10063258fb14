"""Triggers that make the run log, the ledger, the rows of a combination and step strips append-only.

The rule stands in the database itself, so that no program and no person with a database browser breaks it
by accident. A migration in Alembic's batch mode drops triggers silently: create them again there.
"""

from __future__ import annotations

from sqlalchemy import DDL, Table, event

from tankside.store.tables.review import STEP_STRIPS
from tankside.store.tables.rolls import TIME_ROWS
from tankside.store.tables.run import RUN_LOG
from tankside.store.tables.shelf import LEDGER

APPEND_ONLY: tuple[Table, ...] = (RUN_LOG, LEDGER, TIME_ROWS, STEP_STRIPS)


def trigger_ddl(table: str, act: str) -> str:
    """The trigger that stops `act` (UPDATE or DELETE) on `table`."""
    return (
        f"CREATE TRIGGER {table}_no_{act.lower()} BEFORE {act} ON {table} "
        f"BEGIN SELECT RAISE(ABORT, '{table} is append-only'); END"
    )


def guard(table: Table) -> None:
    """See to it that creating `table` creates its triggers too."""
    for act in ("UPDATE", "DELETE"):
        ddl = DDL(trigger_ddl(table.name, act)).execute_if(dialect="sqlite")  # type: ignore[no-untyped-call]
        event.listen(table, "after_create", ddl)


for _table in APPEND_ONLY:
    guard(_table)
