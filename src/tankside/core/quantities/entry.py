"""Text to amounts: the doors through which everything typed comes in.

A parts text ('1+4', '1 in 50') is read by `solutions.notation.read_dilution`, a code by `codes.read_code`.
"""

from __future__ import annotations

from tankside.core.quantities.index_entry import read_index
from tankside.core.quantities.temperature_entry import read_temperature
from tankside.core.quantities.time_entry import read_time
from tankside.core.quantities.volume_entry import read_volume

__all__ = ["read_index", "read_temperature", "read_time", "read_volume"]
