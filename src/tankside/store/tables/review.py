"""What the negatives of each tankful said, and the step strips that were read with them."""

from __future__ import annotations

from sqlalchemy import TEXT, Column, ForeignKey, Index, UniqueConstraint

from tankside.store.columns import KeyText, Moment, holds, one_of
from tankside.store.tables.metadata import open_ended, required, strict

SAID = ("answers", "densities", "strips", "not asked")

EVIDENCE = strict(
    "evidence",
    Column("key", KeyText, primary_key=True, nullable=False),
    required("run", KeyText),
    required("tankful", TEXT),
    required("said", TEXT),
    required("noted", Moment),
    required("body", TEXT),
    one_of("said", SAID, table="evidence"),
    holds("json_valid(body)", name="evidence_body_json"),
    Index(None, "run"),
)

TABLETS = strict(
    "tablets",
    Column("key", KeyText, primary_key=True, nullable=False),
    required("name", TEXT),
    required("body", TEXT),
    holds("json_valid(body)", name="tablets_body_json"),
)

STEP_STRIPS = strict(
    "step_strips",
    Column("key", KeyText, primary_key=True, nullable=False),
    required("combination", KeyText, ForeignKey("combinations.key")),
    open_ended("run", KeyText),
    open_ended("tankful", TEXT),
    required("noted", Moment),
    open_ended("replaces", KeyText, ForeignKey("step_strips.key")),
    required("body", TEXT),
    UniqueConstraint("replaces"),
    holds("(run IS NULL) = (tankful IS NULL)", name="step_strips_run_with_tankful"),
    holds("json_valid(body)", name="step_strips_body_json"),
    Index(None, "combination"),
)
