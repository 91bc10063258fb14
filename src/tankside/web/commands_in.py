"""Commands as a phone sends them: read one by one, so that one that cannot be read holds up no other."""

from __future__ import annotations

import json
from collections.abc import Mapping
from dataclasses import dataclass
from functools import cache
from math import isfinite
from typing import TYPE_CHECKING, Any, Literal, cast

from tankside.core.refusals import Refused, refuse
from tankside.core.run.commands import COMMANDS, Asked, Command, OpenRun, RestateNote
from tankside.core.run.events import EVENTS, NoteRestated, Observed

if TYPE_CHECKING:
    from pydantic import TypeAdapter

MOST_BYTES = 1_000_000
MOST_COMMANDS = 1_000
SentHow = Literal["tapped", "queued", "said", "scanned", "probe"]


@dataclass(frozen=True, slots=True)
class Sent:
    """One command on the wire; `age_ms` is counted on the steady clock of the device until it was sent."""

    id: str
    asked: Mapping[str, Any]
    age_ms: float = 0.0
    within_s: float = 1.0
    how: SentHow = "tapped"
    saw_seq: int | None = None
    device: str = ""


@cache
def _adapter(kind: Any) -> TypeAdapter[Any]:
    from pydantic import TypeAdapter  # noqa: PLC0415 - half the start-up time of the program

    return TypeAdapter(kind)


def read_queue(raw: bytes) -> list[Sent]:
    """The array that was sent; refused as a whole only if it is no array of commands with an id each."""
    if len(raw) > MOST_BYTES:
        raise refuse("too-much-sent", size_bytes=len(raw), most_bytes=MOST_BYTES)
    try:
        found: list[Sent] = _adapter(list[Sent]).validate_python(json.loads(raw))
    except ValueError as error:
        raise refuse("commands-unreadable") from error
    if len(found) > MOST_COMMANDS or any(not one.id for one in found):
        raise refuse("commands-unreadable")
    return found


def read_command(sent: Sent) -> Command:
    """The command of one element; refused by itself where it cannot be read."""
    return Command(
        id=sent.id,
        asked=_asked(sent.asked),
        device=sent.device,
        how=sent.how,
        age_s=_finite(sent.age_ms) / 1000.0,
        within_s=abs(_finite(sent.within_s)),
        saw_seq=sent.saw_seq,
    )


def _asked(told: Mapping[str, Any]) -> Asked:
    _finite(told)
    fields = dict(told)
    kind = COMMANDS.get(str(fields.pop("kind", "")))
    if kind is None or kind is OpenRun:
        raise refuse("command-unreadable", kind=str(told.get("kind", "")))
    try:
        if kind is RestateNote:
            fields["body"] = _observed(fields["body"])
        return cast(Asked, _adapter(cast(Any, kind)).validate_python(fields))
    except Refused:
        raise
    except (ValueError, TypeError, KeyError) as error:
        raise refuse("command-unreadable", kind=str(told["kind"])) from error


def _observed(told: Mapping[str, Any]) -> Observed:
    """The body of a restated note, told apart by its kind; what is no observation fails in the restating."""
    fields = dict(told)
    kind = EVENTS[str(fields.pop("kind"))]
    if kind is NoteRestated:
        raise ValueError("a note is not restated as a restating")
    return cast(Observed, _adapter(cast(Any, kind)).validate_python(fields))


def _finite(value: Any) -> Any:
    """Refuse numbers that are none, however deep they stand."""
    if isinstance(value, float) and not isfinite(value):
        raise refuse("not-a-number")
    if isinstance(value, Mapping):
        for one in value.values():
            _finite(one)
    elif isinstance(value, list | tuple):
        for one in value:
            _finite(one)
    return value
