"""Each literature test tells how far apart it found things, and is held to what the contents page says."""

from __future__ import annotations

from collections.abc import Iterator

import pytest
from literature import apart as agreement

OF = {test: line for line in agreement.lines() for test in line.tests}


@pytest.fixture(autouse=True)
def apart(request: pytest.FixtureRequest, monkeypatch: pytest.MonkeyPatch) -> Iterator[agreement.Apart]:
    """Pairs that the test compares; after it they are measured, or held against the kept worst."""
    seen = agreement.Apart()
    monkeypatch.setattr(pytest, "approx", seen.approx)
    yield seen
    line = agreement.line_of(request.node.nodeid, OF)
    if line is None:
        assert seen.pairs == [], "this test is on no line of tests/literature/agreement.toml"
        return
    worst = seen.worst(line.unit)
    measuring = request.config.pluginmanager.get_plugin("measuring")
    if measuring is not None and seen.pairs:
        measuring.note(line, worst, request.node.nodeid)
    elif measuring is None:
        told = agreement.kept()[line.number]
        assert not agreement.stale(worst, told, nodeid=request.node.nodeid), (
            f"{worst:.3g} apart where the page says {told.worst:.3g}: python tests/literature/deviations.py"
        )
