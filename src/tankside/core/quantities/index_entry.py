"""Exposure indices as people write them."""

from __future__ import annotations

import re
from math import log10

from tankside.core.quantities.limits import INDEX
from tankside.core.quantities.typed import NUMBER, number, plain, unreadable
from tankside.core.refusals import refuse

_TYPED = re.compile(rf"(?:ei|e\.i\.|iso|asa)? ?(?P<index>{NUMBER}) ?(?:/ ?(?P<degrees>\d{{1,2}}) ?°?)?")
_DEGREES_ONLY = re.compile(r"(?:din ?(\d{1,2}) ?°?|(\d{1,2}) ?°(?: ?din)?|(?:iso|ei) ?(\d{1,2}) ?°)")
_DECADE = (100.0, 125.0, 160.0, 200.0, 250.0, 320.0, 400.0, 500.0, 640.0, 800.0)
"""Names of the steps of a third of a stop from 21 degrees (100) to 30 degrees (800)."""


def read_index(text: str) -> float:
    """The exposure index of '200', 'EI 1600', 'ISO 100/21°' or '24°', on the arithmetic scale.

    Result: index, 0.5 to 409,600; two scales that contradict each other are refused.
    Source: ISO 6 (S = 100 is 21 degrees, ten degrees are a factor of ten; from memory). Doubt: none.

    >>> read_index("EI 1600"), read_index("ISO 100/21"), read_index("24°")
    (1600.0, 100.0, 200.0)
    """
    typed = plain(text)
    bare = _DEGREES_ONLY.fullmatch(typed)
    if bare is not None:
        return index_of_degrees(int(next(one for one in bare.groups() if one)))
    found = _TYPED.fullmatch(typed)
    if found is None:
        raise unreadable("index-unreadable", text)
    index, degrees = number(found["index"]), found["degrees"]
    if not INDEX.hold(index):
        raise refuse("index-not-readable", index=index)
    if degrees is not None and abs(10 * log10(index) + 1 - int(degrees)) > 0.5:
        raise refuse(
            "index-scales-disagree",
            ways_on=("read-as-first", "read-as-second"),
            typed=text.strip(),
            first=f"EI {index:g}",
            second=f"EI {index_of_degrees(int(degrees)):g}",
        )
    return index


def index_of_degrees(degrees: int) -> float:
    """The arithmetic index that goes with `degrees` (0-57) of the logarithmic scale.

    Source: ISO 6 (from memory). Doubt: none; the names are those of the steps of a third of a stop.

    >>> index_of_degrees(21), index_of_degrees(31)
    (100.0, 1000.0)
    """
    decades, step = divmod(degrees - 21, 10)
    return _DECADE[step] * 10.0**decades
