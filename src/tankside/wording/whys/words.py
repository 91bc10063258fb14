"""What a family of numbers has to say, so that its why can be shown."""

from __future__ import annotations

from collections.abc import Callable, Mapping
from dataclasses import dataclass, field

from tankside.core.planning.why import About, Length, LengthCode, Narrowing, Why
from tankside.core.quantities.preferences import Preferences

SayWhy = Callable[[Why, Preferences], str]
SayLength = Callable[[Length, Preferences], tuple[str, str]]
SayNarrowing = Callable[[Narrowing, Preferences], str]


@dataclass(frozen=True, slots=True)
class PlotWords:
    """A plot's heading, its two scales, and its lines.

    `low` and `high` name the ends of the band, or two sources; `marks` what is marked, by code.
    """

    heading: str
    across: str
    up: str
    low: str
    high: str
    middle: str = ""
    level: str = ""
    marks: Mapping[str, str] = field(default_factory=dict)


@dataclass(frozen=True, slots=True)
class WhyWords:
    """One family's words, each by the code that its builder gives.

    `means` completes 'Nine times in ten ... lies between'. `headlines` and `sentences` stand for answers
    whose value alone does not say them. `names` are those of inputs.
    """

    means: Mapping[About, str] = field(default_factory=dict)
    headlines: Mapping[About, SayWhy] = field(default_factory=dict)
    sentences: Mapping[About, str | SayWhy] = field(default_factory=dict)
    lengths: Mapping[LengthCode, SayLength] = field(default_factory=dict)
    parts: Mapping[str, str] = field(default_factory=dict)
    narrows: Mapping[str, str | SayNarrowing] = field(default_factory=dict)
    names: Mapping[str, str] = field(default_factory=dict)
    leaves_out: Mapping[str, str] = field(default_factory=dict)
    plots: Mapping[str, PlotWords] = field(default_factory=dict)
