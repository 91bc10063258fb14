"""Batches, bottles and their ledger; tanks, thermometers and places."""

from __future__ import annotations

from typing import get_args

from sqlalchemy import INTEGER, REAL, TEXT, Column, ForeignKey, Index, UniqueConstraint

from tankside.core.methods.combinations import TankKind
from tankside.core.shelf.bottles import Strength
from tankside.core.shelf.ledger import LineKind
from tankside.core.solutions.kinds import SolutionKind
from tankside.store.columns import KeyText, Moment, YesNo, holds, one_of, yes_or_no
from tankside.store.tables.metadata import open_ended, required, strict

BATCHES = strict(
    "batches",
    Column("key", KeyText, primary_key=True, nullable=False),
    required("kind", TEXT),
    required("name", TEXT),
    required("strength", TEXT),
    required("parts", TEXT),
    required("made", Moment),
    required("made_ml", REAL),
    required("reusable", YesNo),
    open_ended("keeps_full_months", INTEGER),
    open_ended("keeps_part_months", INTEGER),
    open_ended("price_minor", INTEGER),
    one_of("kind", get_args(SolutionKind), table="batches"),
    one_of("strength", get_args(Strength), table="batches"),
    yes_or_no("reusable", table="batches"),
    holds("made_ml >= 0", name="batches_made_ml_not_negative"),
    holds("price_minor >= 0", name="batches_price_not_negative"),
)

BOTTLES = strict(
    "bottles",
    Column("key", KeyText, primary_key=True, nullable=False),
    required("code", TEXT, ForeignKey("codes.code")),
    required("batch", KeyText, ForeignKey("batches.key")),
    required("holds_ml", REAL),
    required("cap", TEXT),
    required("place", TEXT),
    open_ended("opened", Moment),
    open_ended("rolls_per_l", REAL),
    UniqueConstraint("code"),
    holds("holds_ml > 0", name="bottles_holds_ml_positive"),
)

# No foreign key to the bottles: what was poured at the sink is booked even if its code was misread.
LEDGER = strict(
    "ledger",
    Column("key", KeyText, primary_key=True, nullable=False),
    required("bottle", TEXT),
    required("kind", TEXT),
    required("ml", REAL),
    required("area_units", REAL),
    required("counted_units", REAL),
    required("because", TEXT),
    required("words", TEXT),
    open_ended("reverses", KeyText, ForeignKey("ledger.key")),
    open_ended("test", TEXT),
    open_ended("run", KeyText),
    required("event", TEXT),
    required("line", INTEGER),
    required("place", INTEGER),
    required("recorded", Moment),
    UniqueConstraint("event", "line"),
    UniqueConstraint("reverses"),
    one_of("kind", get_args(LineKind), table="ledger"),
    holds("test IS NULL OR (kind = 'tested' AND json_valid(test))", name="ledger_test_of_a_tested_line"),
    Index(None, "bottle"),
    Index(None, "run"),
)

TANKS = strict(
    "tanks",
    Column("key", KeyText, primary_key=True, nullable=False),
    required("name", TEXT),
    required("volume_ml", REAL),
    required("worth_ml", REAL),
    required("tau_min", REAL),
    required("kind", TEXT),
    one_of("kind", get_args(TankKind), table="tanks"),
    holds("volume_ml > 0", name="tanks_volume_positive"),
)

THERMOMETERS = strict(
    "thermometers",
    Column("key", KeyText, primary_key=True, nullable=False),
    required("name", TEXT),
    required("offset_c", REAL),
    required("step_c", REAL),
    holds("step_c > 0", name="thermometers_step_positive"),
)

PLACES = strict(
    "places",
    Column("key", KeyText, primary_key=True, nullable=False),
    required("name", TEXT),
    required("room_c", REAL),
    open_ended("hot_c", REAL),
    open_ended("cold_c", REAL),
    required("jug_worth_ml", REAL),
    required("zone", TEXT),
)
