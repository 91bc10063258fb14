"""How many reference rows were published, made by us, or quoted from memory.

Run it: python tests/literature/counting.py
"""

from __future__ import annotations

import sys
from collections import Counter
from pathlib import Path

if __name__ == "__main__":
    sys.path.insert(0, str(Path(__file__).parents[1]))

from literature.tables import DATA, rows_of

BY_SEEN = {"seen": "published", "memory": "from memory", "derived": "ours"}
TABLES = (
    "capacity.csv", "chemistry.csv", "dilution.csv", "fixing.csv", "formulas.csv", "hazards.csv",
    "hydrates.csv", "jcgm101.csv", "thermal.csv", "time-temperature.csv", "washing.csv",
)  # fmt: skip
PUBLISHED_WORDS = ("EN 25814", "NAVEDTRA", "pint", "CoolProp", "IAPWS", "handbook")


def kind_of(table: str, row: dict[str, str]) -> str:
    """Published (a library's value too), ours (arithmetic on a stated model), or from memory."""
    if "seen" in row:
        seen = row["seen"]
        return BY_SEEN.get(seen, "from memory" if "memory" in seen or not seen else "published")
    if "status" in row:
        return {"exact": "ours", "memory": "from memory"}[row["status"]]
    if table == "hydrates.csv":
        return "published"
    reference = row.get("reference", "")
    if "memory" in reference:
        return "from memory"
    return "published" if any(word in reference for word in PUBLISHED_WORDS) else "ours"


def counted() -> dict[str, Counter[str]]:
    """Rows of each kind by table."""
    return {
        table: Counter(kind_of(table, row) for row in rows_of(table))
        for table in TABLES
        if (DATA / table).exists()
    }


def told() -> str:
    """The counts as a table."""
    kinds = ("published", "ours", "from memory")
    lines = [f"{'table':<24}" + "".join(f"{kind:>13}" for kind in kinds)]
    total: Counter[str] = Counter()
    for table, counts in counted().items():
        total += counts
        lines.append(f"{table:<24}" + "".join(f"{counts[kind]:>13}" for kind in kinds))
    return "\n".join([*lines, f"{'all':<24}" + "".join(f"{total[kind]:>13}" for kind in kinds)])


if __name__ == "__main__":
    print(told())
