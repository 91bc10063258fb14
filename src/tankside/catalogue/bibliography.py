"""The works that numbers are taken from, by the key that stands beside each number."""

from __future__ import annotations

import tomllib
from collections.abc import Mapping
from functools import cache
from importlib.resources import files
from types import MappingProxyType
from typing import Any, get_args

from tankside.core.sources import How, Source

FIELDS = ("title", "number", "date", "place", "how")
_HOW: Mapping[str, How] = {one: one for one in get_args(How)}


@cache
def bibliography() -> Mapping[str, Source]:
    """Every shipped source by its key."""
    text = files("tankside.catalogue").joinpath("bibliography.toml").read_text(encoding="utf-8")
    return MappingProxyType({key: _source(key, told) for key, told in tomllib.loads(text).items()})


def _source(key: str, told: Mapping[str, Any]) -> Source:
    """One entry; a field too many or too few is a fault of the file."""
    if set(told) != set(FIELDS) or told["how"] not in _HOW:
        raise ValueError(f"bibliography: [{key}] has {sorted(told)}, how={told.get('how')!r}")
    title, number, date, place = (str(told[name]) for name in FIELDS[:-1])
    return Source(key, title, number, date, place, _HOW[told["how"]])
