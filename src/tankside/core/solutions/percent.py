"""Percent of weight, of volume, or of weight in volume: three things, never taken for each other."""

from __future__ import annotations

import re
from dataclasses import dataclass
from typing import Literal, get_args

from tankside.core.quantities.typed import NUMBER, plain, unreadable
from tankside.core.refusals import refuse

PercentKind = Literal["w/v", "w/w", "v/v"]
KINDS: tuple[PercentKind, ...] = get_args(PercentKind)
_PERCENT = re.compile(rf"({NUMBER}) ?%(?: ?({'|'.join(KINDS)}))?")


@dataclass(frozen=True, slots=True)
class Percent:
    """`value` percent: g in 100 mL ('w/v'), g in 100 g ('w/w') or mL in 100 mL ('v/v')."""

    value: float
    kind: PercentKind

    def __post_init__(self) -> None:
        if not 0 < self.value <= (200 if self.kind == "w/v" else 100):
            raise refuse("percent-out-of-range", value=self.value, kind=self.kind)

    def __str__(self) -> str:
        """As it must be written, kind included.

        >>> str(Percent(28.0, "w/w"))
        '28 % w/w'
        """
        return f"{self.value:.12g} % {self.kind}"


def read_percent(text: str) -> Percent:
    """A percentage as typed, '28 % w/w'; without its kind it is asked back.

    Own model: docs/science/formulas. Doubt: none.

    >>> read_percent("2,5% w/v")
    Percent(value=2.5, kind='w/v')
    """
    found = _PERCENT.fullmatch(plain(text))
    if found is None:
        raise unreadable("percent-unreadable", text)
    kind = next((one for one in KINDS if one == found[2]), None)
    if kind is None:
        raise refuse("percent-kind-not-said", typed=text.strip(), ways_on=("say-percent-kind",))
    return Percent(float(found[1].replace(",", ".")), kind)


def grams_in(percent: Percent, *, volume_ml: float) -> float:
    """Grams of substance in `volume_ml` (mL) of a w/v solution.

    Source: definition of percent weight in volume. Doubt: none.

    >>> grams_in(Percent(10.0, "w/v"), volume_ml=250.0)
    25.0
    """
    if percent.kind != "w/v":
        raise refuse("percent-needs-density", percent=str(percent))
    return percent.value * volume_ml / 100


def by_weight_in_volume(percent: Percent, *, density_g_ml: float) -> Percent:
    """The same strength as w/v: `density_g_ml` is that of the solution for w/w, of the pure liquid for v/v.

    Source: definition of the three percentages. Doubt: that of the density.

    >>> str(by_weight_in_volume(Percent(28.0, "w/w"), density_g_ml=1.0363))
    '29.0164 % w/v'
    """
    if percent.kind == "w/v":
        return percent
    return Percent(round(percent.value * density_g_ml, 9), "w/v")


def strong_ml_for(volume_ml: float, *, strong: Percent, weak: Percent) -> float:
    """mL of a strong solution that, filled up with water to `volume_ml`, give the weak one.

    Source: c1 V1 = c2 V2, true for w/v and v/v alone. Doubt: none in the rule; w/w is refused, because equal
    volumes of it do not weigh the same.

    >>> round(strong_ml_for(32.0, strong=Percent(99.5, "v/v"), weak=Percent(28.0, "v/v")), 1)
    9.0
    """
    _same_kind(strong, weak)
    if strong.kind == "w/w":
        raise refuse("percent-by-weight-is-weighed", percent=str(strong))
    return volume_ml * _share(strong, weak)


def strong_g_for(mass_g: float, *, strong: Percent, weak: Percent) -> float:
    """Grams of a strong w/w solution in `mass_g` of the weak one; the rest is water, weighed too.

    Source: mass balance. Doubt: that of the strengths.

    >>> round(strong_g_for(100.0, strong=Percent(99.8, "w/w"), weak=Percent(28.0, "w/w")), 3)
    28.056
    """
    _same_kind(strong, weak)
    if strong.kind != "w/w":
        raise refuse("percent-by-volume-is-measured", percent=str(strong))
    return mass_g * _share(strong, weak)


def _same_kind(strong: Percent, weak: Percent) -> None:
    """Two kinds of percent are never set against each other."""
    if strong.kind != weak.kind:
        raise refuse("percent-kinds-differ", first=str(strong), second=str(weak))


def _share(strong: Percent, weak: Percent) -> float:
    """Share of the strong one; water makes nothing stronger."""
    if weak.value > strong.value:
        raise refuse("percent-too-weak", strong=str(strong), weak=str(weak))
    return weak.value / strong.value
