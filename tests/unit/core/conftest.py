"""The unit tests of the core run while it is watched for reaching out of itself."""

from __future__ import annotations

from collections.abc import Iterator

import pytest
from pure_core import watched


@pytest.fixture(autouse=True)
def _the_core_keeps_to_itself() -> Iterator[None]:
    """Fails a test in which the core opened, connected or started anything."""
    with watched() as caught:
        yield
    assert caught == []
