"""Kinds of liquid, as methods ask for them and the shelf holds them."""

from __future__ import annotations

from typing import Literal

SolutionKind = Literal["developer", "stop bath", "fixer", "washing aid", "wetting agent", "water"]
