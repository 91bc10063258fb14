"""Reads the shipped tables and gives each row its provenance; a fault in them is a fault of the file."""

from __future__ import annotations

import tomllib
from collections.abc import Mapping
from functools import cache
from importlib.resources import files
from types import MappingProxyType
from typing import Any, get_args

from tankside.core.sources import How, Provenance

_HOW: Mapping[str, How] = {one: one for one in get_args(How)}


@cache
def table(name: str) -> Mapping[str, Any]:
    """One shipped table as it stands in its file."""
    text = files("tankside.catalogue").joinpath(f"{name}.toml").read_text(encoding="utf-8")
    return MappingProxyType(tomllib.loads(text))


def provenance_of(row: Mapping[str, Any]) -> Provenance:
    """How a row came: the key of its source in the bibliography, and the source as its table names it."""
    return Provenance(_HOW[row["how"]], str(row["source_key"]), str(row["source"]))
