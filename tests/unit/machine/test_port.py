"""Taking a port of this machine."""

from __future__ import annotations

import pytest

from tankside.core.refusals import Refused
from tankside.machine.port import take_port


def test_a_free_port_is_taken_on_this_machine_alone() -> None:
    """Nobody on the network can reach it."""
    with take_port(0) as taken:
        host, port = taken.getsockname()
    assert host == "127.0.0.1"
    assert port > 0


def test_a_port_in_use_is_refused_with_its_number() -> None:
    """The number is what the person typed."""
    with take_port(0) as first:
        port = first.getsockname()[1]
        with pytest.raises(Refused) as no:
            take_port(port)
    assert (no.value.refusal.code, no.value.refusal.numbers["port"]) == ("port-in-use", port)
