"""Keys and draws of the machine."""

from __future__ import annotations

from tankside.machine.dice import MachineDice


def test_no_key_comes_twice() -> None:
    """A thousand keys are a thousand different ones."""
    dice = MachineDice()
    assert len({dice.key() for _ in range(1000)}) == 1000


def test_draws_reach_every_number_below_and_no_other() -> None:
    """The chance that one of three is missing from 500 fair draws is below 1e-80."""
    dice = MachineDice()
    assert {dice.below(3) for _ in range(500)} == {0, 1, 2}
