"""What the negatives of each tankful said."""

from __future__ import annotations

from sqlalchemy import TEXT, Column, Index

from tankside.store.columns import KeyText, Moment, holds, one_of
from tankside.store.tables.metadata import required, strict

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
