"""Plans, the run log, the answers given to commands, and samples of probes."""

from __future__ import annotations

from sqlalchemy import INTEGER, REAL, TEXT, Column, PrimaryKeyConstraint, UniqueConstraint

from tankside.store.columns import WHOLE, KeyText, Moment, holds
from tankside.store.tables.metadata import open_ended, required, strict

PLANS = strict(
    "plans",
    Column("key", KeyText, nullable=False),
    required("number", INTEGER),
    required("made", Moment),
    required("body", TEXT),
    PrimaryKeyConstraint("key", "number"),
    holds("json_valid(body)", name="plans_body_json"),
)

RUN_LOG = strict(
    "run_log",
    Column("run", KeyText, nullable=False),
    required("seq", INTEGER),
    required("event", TEXT),
    required("kind", TEXT),
    required("version", INTEGER),
    open_ended("tankful", TEXT),
    required("happened_wall_us", WHOLE),
    required("happened_elapsed_us", WHOLE),
    required("happened_boot", TEXT),
    required("recorded_wall_us", WHOLE),
    required("recorded_elapsed_us", WHOLE),
    required("recorded_boot", TEXT),
    required("device", TEXT),
    required("how", TEXT),
    required("within_s", REAL),
    required("body", TEXT),
    PrimaryKeyConstraint("run", "seq"),
    UniqueConstraint("event"),
    holds("seq >= 1", name="run_log_seq_from_one"),
    holds("json_valid(body)", name="run_log_body_json"),
)

ANSWERS = strict(
    "answers",
    Column("command", TEXT, primary_key=True, nullable=False),
    required("run", KeyText),
    open_ended("from_seq", INTEGER),
    open_ended("to_seq", INTEGER),
    required("answer", TEXT),
    holds("json_valid(answer)", name="answers_answer_json"),
    holds("(from_seq IS NULL) = (to_seq IS NULL)", name="answers_seqs_together"),
)

SAMPLES = strict(
    "samples",
    Column("run", KeyText, nullable=False),
    required("probe", TEXT),
    required("wall_us", WHOLE),
    required("temp_c", REAL),
    PrimaryKeyConstraint("run", "probe", "wall_us"),
)
