"""An independent judge of a timetable: it knows nothing of how the acts were placed."""

from __future__ import annotations

from collections.abc import Sequence
from dataclasses import dataclass
from itertools import combinations
from typing import Literal

from tankside.core.planning.acts import Act

FaultKind = Literal["overlap", "too near", "out of reach"]


@dataclass(frozen=True, slots=True)
class Fault:
    """What is wrong: two acts that want the hands at once or too near, or one act out of its reach."""

    kind: FaultKind
    one: Act
    other: Act | None = None


def faults(acts: Sequence[Act], *, between_s: float) -> tuple[Fault, ...]:
    """Everything wrong with a timetable for one pair of hands; nothing if it can be done.

    Arguments: acts on one clock; `between_s` (0 s or more) asked between two acts of different tankfuls.
    Every pair is compared, so no order and no earlier result is relied on.
    Source: two intervals are apart when one ends before the other begins. Doubt: none.

    >>> pour = Act("A", "develop", "pour", 0.0, 15.0, 0.0, 0.0)
    >>> late = Act("B", "develop", "pour", 20.0, 15.0, 20.0, 20.0)
    >>> [one.kind for one in faults([pour, late], between_s=10.0)]
    ['too near']
    """
    found = [Fault("out of reach", act) for act in acts if not act.earliest_s <= act.start_s <= act.latest_s]
    for one, other in combinations(acts, 2):
        apart_s = max(other.start_s - one.end_s, one.start_s - other.end_s)
        if apart_s < 0:
            found.append(Fault("overlap", one, other))
        elif one.tankful != other.tankful and apart_s < between_s:
            found.append(Fault("too near", one, other))
    return tuple(found)
