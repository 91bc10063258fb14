"""Frozen dataclasses as JSON and back, validated by pydantic, which is loaded only when first needed."""

from __future__ import annotations

from functools import cache
from typing import TYPE_CHECKING, Any, TypeVar, cast

if TYPE_CHECKING:
    from pydantic import TypeAdapter

Value = TypeVar("Value")


@cache
def _adapter(kind: Any) -> TypeAdapter[Any]:
    from pydantic import TypeAdapter  # noqa: PLC0415 - half the start-up time of the program

    return TypeAdapter(kind)


def to_json(kind: type[Value], value: Value) -> str:
    """`value` as one line of JSON; floats come back digit for digit, a value of another type is a bug."""
    return _adapter(cast(Any, kind)).dump_json(value, warnings="error").decode()


def from_json(kind: type[Value], text: str) -> Value:
    """The value that `to_json` wrote."""
    value: Value = _adapter(cast(Any, kind)).validate_json(text)
    return value
