"""What a decision is made of: bodies before they have their envelope, and the answer that goes back."""

from __future__ import annotations

from collections.abc import Mapping, Sequence
from dataclasses import dataclass, field
from types import MappingProxyType
from typing import Literal
from uuid import UUID

from tankside.core.refusals import Number, refuse
from tankside.core.run.commands import Command
from tankside.core.run.envelope import Event, How
from tankside.core.run.events import Body
from tankside.core.run.instants import Instant
from tankside.core.run.state import Run, TankfulState

AnswerCode = Literal["opened", "noted", "already-noted", "put-right", "agreed", "closed"]
FUTURE_S = 2.0
FRESH_S = 2.0
"""A touch on its way for no longer than this is of now."""


@dataclass(frozen=True, slots=True)
class Draft:
    """A body with its tankful and, where it differs from the command's, when it happened and how."""

    body: Body
    tankful: str | None = None
    happened: Instant | None = None
    how: How | None = None


@dataclass(frozen=True, slots=True)
class Answer:
    """What goes back to whoever asked: `about` is the event it speaks of, `at_us` when that happened."""

    code: AnswerCode
    about: str = ""
    at_us: int = 0
    numbers: Mapping[str, Number] = field(default_factory=lambda: MappingProxyType({}))


@dataclass(frozen=True, slots=True)
class Decision:
    """The rows to append, in order, and the answer."""

    events: tuple[Event, ...]
    answer: Answer


def enveloped(
    drafts: Sequence[Draft],
    command: Command,
    now: Instant,
    *,
    run: UUID,
    after_seq: int,
    from_index: int = 0,
) -> tuple[Event, ...]:
    """Drafts as rows: ids counted on from `from_index`, sequence numbers from the last."""
    happened = now.before(seconds=command.age_s)
    return tuple(
        Event(
            run=run,
            seq=after_seq + 1 + at,
            id=f"{command.id}/{from_index + at}",
            tankful=draft.tankful,
            happened=draft.happened or happened,
            recorded=now,
            device=command.device,
            how=draft.how or command.how,
            within_s=command.within_s if draft.happened is None else 0.0,
            body=draft.body,
        )
        for at, draft in enumerate(drafts)
    )


def letter_of(bath: str) -> str:
    """The tankful that a bath id belongs to.

    >>> letter_of("B.fix")
    'B'
    """
    return bath.partition(".")[0]


def tankful_of(run: Run, letter: str) -> TankfulState:
    """The tankful of that letter, or a refusal that names those there are."""
    for one in run.state.tankfuls:
        if one.letter == letter:
            return one
    known = ", ".join(one.letter for one in run.state.tankfuls)
    raise refuse("unknown-tankful", tankful=letter, known=known, ways_on=("look-again",))


def with_bath(run: Run, bath: str) -> TankfulState:
    """The tankful of a bath id, or a refusal if no plan of this run ever held that bath."""
    one = tankful_of(run, letter_of(bath))
    if all(bath != planned.id for planned in (*one.plan.baths, *one.former)):
        raise refuse("unknown-bath", bath=bath, ways_on=("look-again",))
    return one


def is_fresh(command: Command) -> bool:
    """Whether it is a touch of this very moment, which may be a slip, and not told of what has happened."""
    return command.how != "queued" and command.age_s <= FRESH_S


def readable_age(age_s: float) -> None:
    """Refuse what would happen more than 2 s from now."""
    if not -FUTURE_S <= age_s < float("inf"):
        raise refuse("in-the-future", age_s=age_s, ways_on=("note-it-when-it-happens",))
