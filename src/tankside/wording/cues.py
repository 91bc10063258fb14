"""Baths and what is poured for them, by name, in every cue and sentence."""

from __future__ import annotations

from collections.abc import Mapping
from types import MappingProxyType

from tankside.core.methods.baths import BathKind

LANGUAGE = "en"
"""The one language that these sentences are written in."""

BATHS: Mapping[BathKind, str] = MappingProxyType(
    {
        "presoak": "Presoak",
        "develop": "Develop",
        "stop": "Stop bath",
        "fix": "Fix",
        "aid": "Washing aid",
        "wash": "Wash",
        "wetting": "Wetting bath",
    }
)
"""A bath is never shortened."""

LIQUIDS: Mapping[BathKind, str] = MappingProxyType(
    {
        "presoak": "water",
        "develop": "developer",
        "stop": "stop bath",
        "fix": "fixer",
        "aid": "washing aid",
        "wash": "water",
        "wetting": "wetting bath",
    }
)
