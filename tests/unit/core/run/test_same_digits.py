"""The same question has the same digits: asked again, and asked in another process."""

from __future__ import annotations

import subprocess
import sys

from project import ROOT, SOURCE, bare_surroundings
from unit.core.run.evening import opened, plan

from tankside.core.run.advise import advise_end
from tankside.core.run.commands import PourBath, TakeReading
from tankside.core.thermal.drift import tau_from_two_readings


def digits() -> str:
    """All digits of an end with two readings, and of one's own time constant: both are drawn for."""
    sink = opened(plan("A"))
    sink.do(PourBath("A.develop"), 0)
    sink.do(TakeReading("tank", "A", 19.2), 60)
    sink.do(TakeReading("tank", "A", 18.9), 300)
    end = advise_end(sink.run.state, "A")
    assert end is not None
    return f"{end.end_s!r} {tau_from_two_readings(19.2, 18.9, apart_s=240, room_c=16)!r}"


def in_another_process(hash_seed: int) -> str:
    """The same, in a fresh Python whose hashes fall otherwise."""
    paths = f"{SOURCE}:{ROOT / 'tests'}"
    told = subprocess.run(
        [sys.executable, "-c", "from unit.core.run.test_same_digits import digits; print(digits())"],
        env={**bare_surroundings(), "PYTHONPATH": paths, "PYTHONHASHSEED": str(hash_seed)},
        capture_output=True, text=True, check=True, timeout=120,
    )  # fmt: skip
    return told.stdout.strip()


def test_asked_again() -> None:
    """Every digit, not only those that are shown; and they are of doubt, so the interval has a width."""
    assert digits() == digits()
    assert "low=" in digits()


def test_asked_in_another_process() -> None:
    """Neither the process nor its hashes take part in the seed."""
    here = digits()

    assert here == in_another_process(1) == in_another_process(77)
