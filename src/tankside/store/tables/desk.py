"""What belongs to the desk as a whole: preferences and photographs."""

from __future__ import annotations

from typing import get_args

from sqlalchemy import TEXT, Column, PrimaryKeyConstraint

from tankside.store.columns import WHOLE, KeyText, Moment, holds, one_of
from tankside.store.tables.metadata import required, strict
from tankside.workflows.records import Media

PREFERENCES = strict(
    "preferences",
    Column("name", TEXT, primary_key=True, nullable=False),
    required("value", TEXT),
)

# The picture itself lies in photographs/<sha256> beside the database; one picture may show several things.
PHOTOGRAPHS = strict(
    "photographs",
    Column("sha256", TEXT, nullable=False),
    required("noun", TEXT),
    required("about", KeyText),
    required("media", TEXT),
    required("size_bytes", WHOLE),
    required("kept", Moment),
    required("words", TEXT),
    PrimaryKeyConstraint("sha256", "noun", "about"),
    one_of("media", get_args(Media), table="photographs"),
    holds("length(sha256) = 64", name="photographs_sha256_whole"),
    holds("size_bytes BETWEEN 1 AND 15728640", name="photographs_size_in_range"),
)

# A code is on one sticker only, whatever it is stuck to: what is typed at the sink must name one thing.
CODES = strict(
    "codes",
    Column("code", TEXT, primary_key=True, nullable=False),
    required("noun", TEXT),
    one_of("noun", ("roll", "bottle", "tank", "sleeve"), table="codes"),
)
