"""This machine in its home network, and the phones that were linked there."""

from __future__ import annotations

from pathlib import Path

import pytest

from tankside.core.refusals import Refused
from tankside.machine.home_network import home_address, own_names
from tankside.machine.linked_phones import MOST, KeptPhones


@pytest.mark.parametrize("address", ["192.168.1.20", "10.0.0.7", "172.16.3.4"])
def test_private_addresses_are_those_of_a_home(address: str) -> None:
    """The three ranges of RFC 1918."""
    assert address == home_address(address)


@pytest.mark.parametrize(
    ("address", "code"),
    [
        ("127.0.0.1", "no-home-network"),
        ("0.0.0.0", "no-home-network"),
        ("169.254.3.4", "no-home-network"),
        ("8.8.8.8", "open-internet"),
    ],
)
def test_others_are_refused(address: str, code: str) -> None:
    """No network, or the whole world."""
    with pytest.raises(Refused) as no:
        home_address(address)
    assert code == no.value.refusal.code


def test_it_goes_by_its_name_with_and_without_local() -> None:
    """Both are on the Host list."""
    names = own_names()
    assert [f"{names[0]}.local"] == list(names[1:])


def test_a_linked_phone_is_known_after_a_restart(tmp_path: Path) -> None:
    """The file holds no token, only what it hashes to, and nobody else may read it."""
    file = tmp_path / "linked-phones"
    KeptPhones(file).add("a-token")
    again = KeptPhones(file)
    assert again.knows("a-token")
    assert not again.knows("another")
    assert "a-token" not in file.read_text(encoding="ascii")
    assert 0o600 == file.stat().st_mode & 0o777


def test_only_the_latest_phones_are_kept(tmp_path: Path) -> None:
    """The oldest is linked again."""
    phones = KeptPhones(tmp_path / "linked-phones")
    for number in range(MOST + 1):
        phones.add(str(number))
    assert [False, True, True] == [phones.knows(one) for one in ("0", "1", str(MOST))]


def test_phones_are_counted_and_locked_out(tmp_path: Path) -> None:
    """Nobody is known after that, and it may be done again."""
    phones = KeptPhones(tmp_path / "linked-phones")
    phones.add("one")
    phones.add("another")
    assert 2 == phones.number()
    phones.forget_all()
    phones.forget_all()
    assert (0, False) == (phones.number(), phones.knows("one"))
