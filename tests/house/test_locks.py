"""The locks pin what the project asks for, by hash, and name no index."""

from __future__ import annotations

import re

import pytest
from project import ROOT, described

LOCKS = ["installer", "run", "test"]
PIN = re.compile(r"^([a-z0-9.-]+)(?:\[[^]]*\])?==(\S+?)(?: ; .*)? \\$")
HASH = re.compile(r"^    --hash=sha256:[0-9a-f]{64}(?: \\)?$")


def lines_of(lock: str) -> list[str]:
    """The lines of one lock."""
    return (ROOT / "setup" / f"{lock}.lock").read_text(encoding="utf-8").splitlines()


def pins_of(lock: str) -> dict[str, set[str]]:
    """Each package with the versions pinned for it; platforms may differ."""
    pins: dict[str, set[str]] = {}
    for line in lines_of(lock):
        if found := PIN.match(line):
            pins.setdefault(found[1], set()).add(found[2])
    return pins


def asked(*requirements: str) -> set[str]:
    """The names of requirements as locks write them."""
    return {re.split(r"[\[<>=!~; ]", one)[0].lower().replace("_", "-") for one in requirements}


@pytest.mark.parametrize("lock", LOCKS)
def test_a_lock_holds_pins_and_hashes_and_nothing_else(lock: str) -> None:
    """No address, no option, no path: it works with any index."""
    strange = [line for line in lines_of(lock) if not PIN.match(line) and not HASH.match(line)]
    assert strange == []
    assert pins_of(lock) != {}


def test_what_the_project_needs_to_run_is_pinned() -> None:
    """A dependency added to pyproject.toml comes with its lock: run setup/make_locks.py."""
    project = described()
    wanted = asked(*project["project"]["dependencies"], *project["dependency-groups"]["editable"])
    assert wanted - set(pins_of("run")) == set()


def test_what_the_tests_need_is_pinned() -> None:
    """The same for the group of the tests."""
    assert asked(*described()["dependency-groups"]["test"]) - set(pins_of("test")) == set()


def test_tests_run_with_the_versions_that_people_run() -> None:
    """Every pin of the run stands in the lock of the tests, the same."""
    tests = pins_of("test")
    assert {name: versions for name, versions in pins_of("run").items() if tests.get(name) != versions} == {}
