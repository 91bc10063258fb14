"""Films, rolls, combinations with their rows, and what a review proposed."""

from __future__ import annotations

from typing import get_args

from sqlalchemy import INTEGER, REAL, TEXT, Column, ForeignKey, UniqueConstraint

from tankside.core.development.rate import TimeRule
from tankside.core.methods.combinations import RowSource, TankKind, TimingConvention
from tankside.core.rolls.formats import KINDS
from tankside.core.rolls.roll import Grain, Standing
from tankside.store.columns import Day, KeyText, Moment, YesNo, holds, one_of, yes_or_no
from tankside.store.tables.metadata import open_ended, required, strict
from tankside.workflows.records import ProposalStanding

FILMS = strict(
    "films",
    Column("name", TEXT, primary_key=True, nullable=False),
    required("grain", TEXT),
    one_of("grain", get_args(Grain), table="films"),
)

ROLLS = strict(
    "rolls",
    Column("key", KeyText, primary_key=True, nullable=False),
    required("code", TEXT, ForeignKey("codes.code")),
    required("film", TEXT, ForeignKey("films.name")),
    required("format", TEXT),
    open_ended("length_m", REAL),
    required("sheets", INTEGER),
    required("exposure_index", REAL),
    required("camera", TEXT),
    required("owner", TEXT),
    required("precious", YesNo),
    open_ended("piece_of", KeyText, ForeignKey("rolls.key")),
    open_ended("exposed", Day),
    required("notes", TEXT),
    required("standing", TEXT),
    required("added", Moment),
    UniqueConstraint("code"),
    one_of("format", KINDS, table="rolls"),
    one_of("standing", get_args(Standing), table="rolls"),
    yes_or_no("precious", table="rolls"),
    holds("exposure_index > 0", name="rolls_exposure_index_positive"),
    holds("sheets BETWEEN 1 AND 12", name="rolls_sheets_in_range"),
)

COMBINATIONS = strict(
    "combinations",
    Column("key", KeyText, primary_key=True, nullable=False),
    required("film", TEXT),
    required("developer", TEXT),
    required("stock_parts", INTEGER),
    required("water_parts", INTEGER),
    required("agitation", TEXT),
    required("tank", TEXT),
    required("convention", TEXT),
    required("time_rule", TEXT),
    open_ended("least_stock_ml", REAL),
    open_ended("hydroquinone", YesNo),
    UniqueConstraint(
        "film", "developer", "stock_parts", "water_parts", "agitation", "tank", "convention",
        name="combinations_once",
    ),
    one_of("tank", get_args(TankKind), table="combinations"),
    one_of("convention", get_args(TimingConvention), table="combinations"),
    one_of("time_rule", get_args(TimeRule), table="combinations"),
    yes_or_no("hydroquinone", table="combinations"),
    holds("stock_parts >= 1 AND water_parts >= 0", name="combinations_parts_in_range"),
)  # fmt: skip

TIME_ROWS = strict(
    "time_rows",
    Column("key", KeyText, primary_key=True, nullable=False),
    required("combination", KeyText, ForeignKey("combinations.key")),
    required("time_s", REAL),
    required("temp_c", REAL),
    required("exposure_index", REAL),
    required("source", TEXT),
    required("words", TEXT),
    required("noted", Day),
    open_ended("contrast", REAL),
    open_ended("replaces", KeyText, ForeignKey("time_rows.key")),
    one_of("source", get_args(RowSource), table="time_rows"),
    holds("time_s > 0", name="time_rows_time_positive"),
)

PROPOSALS = strict(
    "proposals",
    Column("key", KeyText, primary_key=True, nullable=False),
    required("made", Moment),
    open_ended("run", KeyText),
    open_ended("combination", KeyText, ForeignKey("combinations.key")),
    open_ended("old_row", KeyText, ForeignKey("time_rows.key")),
    required("body", TEXT),
    required("standing", TEXT),
    open_ended("decided", Moment),
    open_ended("tankful", TEXT),
    holds("json_valid(body)", name="proposals_body_json"),
    one_of("standing", get_args(ProposalStanding), table="proposals"),
    holds("(standing = 'offered') = (decided IS NULL)", name="proposals_decided_when_answered"),
)
