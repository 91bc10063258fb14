"""Measure how far each model is from what it is checked against, and print the tables.

Run it: python tests/literature/deviations.py (a minute; it keeps the result, and writes it into
docs/science/README.md).
"""

from __future__ import annotations

import csv
import re
import sys
from pathlib import Path

import pytest

if __name__ == "__main__":
    sys.path[:0] = [str(Path(__file__).parents[2] / folder) for folder in ("tests", "src")]

from literature.apart import Kept, Line, lines, table
from literature.tables import DATA

PAGE = Path(__file__).parents[2] / "docs" / "science" / "README.md"
KINDS = ("outside", "arithmetic", "memory")


class Measuring:
    """Keeps the worst of each line while the tests run."""

    def __init__(self) -> None:
        self.worst = {line.number: Kept(0.0, "") for line in lines()}

    def note(self, line: Line, worst: float, nodeid: str) -> None:
        """One test that compared numbers has found this."""
        if worst >= self.worst[line.number].worst:
            self.worst[line.number] = Kept(worst, nodeid)


def measure() -> Measuring:
    """Run the literature tests and keep what they find."""
    found = Measuring()
    left_out = (
        "not agreement and not nine_truths and not held_less_often"  # these compare nothing, and are slow
    )
    args = [str(Path(__file__).parent), "-q", "-p", "no:cacheprovider", "-p", "no:xdist", "-k", left_out]
    ended = pytest.main(args, plugins=[_Named(found)])
    if ended != pytest.ExitCode.OK:
        raise SystemExit("the literature tests fail; nothing is kept")
    return found


class _Named:
    """Registers the measuring under its name, where the fixture looks for it."""

    def __init__(self, found: Measuring) -> None:
        self.found = found

    def pytest_configure(self, config: pytest.Config) -> None:
        """Before anything runs."""
        config.pluginmanager.register(self.found, "measuring")


def keep(found: Measuring) -> None:
    """Write data/agreement.csv."""
    with (DATA / "agreement.csv").open("w", encoding="utf-8", newline="") as file:
        writer = csv.writer(file, lineterminator="\n")
        writer.writerow(("line", "worst", "at"))
        writer.writerows((n, f"{one.worst:.3e}", one.at) for n, one in sorted(found.worst.items()))


def with_tables(text: str) -> str:
    """The page with its tables as they are kept."""
    for kind in KINDS:
        between = re.compile(rf"(<!-- {kind} -->\n).*?(\n<!-- end -->)", re.DOTALL)
        text = between.sub(lambda found, kind=kind: f"{found[1]}\n{table(kind)}\n{found[2]}", text)
    return text


if __name__ == "__main__":
    keep(measure())
    PAGE.write_text(with_tables(PAGE.read_text(encoding="utf-8")), encoding="utf-8")
    for kind in KINDS:
        print(f"\n{kind}\n\n{table(kind)}")
