"""The screen as JSON: one shape for the page, its stream and whoever asks again."""

from __future__ import annotations

import json
from collections.abc import Mapping
from dataclasses import fields, is_dataclass
from typing import Any
from uuid import UUID

from tankside.web.screen.values import Screen


def as_json(screen: Screen) -> str:
    """The text that the browser parses."""
    return json.dumps(plain(screen), separators=(",", ":"), ensure_ascii=False)


def plain(value: Any) -> Any:
    """Values as JSON knows them."""
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
    return value.isoformat() if hasattr(value, "isoformat") else value
