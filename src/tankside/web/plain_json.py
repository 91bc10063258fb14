"""Frozen values as plain JSON, each with its kind where it has one."""

from __future__ import annotations

from collections.abc import Mapping
from dataclasses import fields, is_dataclass
from datetime import date
from typing import Any
from uuid import UUID


def plain(value: Any) -> Any:
    """Dataclasses as objects, tuples as arrays, keys and moments as texts."""
    if is_dataclass(value) and not isinstance(value, type):
        named = {one.name: plain(getattr(value, one.name)) for one in fields(value)}
        kind = getattr(type(value), "kind", None)
        return {"kind": kind, **named} if isinstance(kind, str) else named
    if isinstance(value, Mapping):
        return {str(name): plain(one) for name, one in value.items()}
    if isinstance(value, tuple | list | frozenset):
        return [plain(one) for one in value]
    if isinstance(value, UUID):
        return str(value)
    return value.isoformat() if isinstance(value, date) else value
