"""The zone of the machine, by name."""

from __future__ import annotations

from pathlib import Path

import pytest

from tankside.machine.zone import zone_of_machine


def test_the_environment_decides(monkeypatch: pytest.MonkeyPatch, tmp_path: Path) -> None:
    """TZ names the zone."""
    monkeypatch.setenv("TZ", "Asia/Kolkata")

    assert "Asia/Kolkata" == zone_of_machine(tmp_path / "none")


@pytest.mark.parametrize(("told", "zone"), [("Nowhere/Alderwick", "UTC"), ("", "UTC"), ("../etc", "UTC")])
def test_what_is_no_zone_is_not_taken(
    monkeypatch: pytest.MonkeyPatch, tmp_path: Path, told: str, zone: str
) -> None:
    """A name that the database does not know falls back."""
    monkeypatch.setenv("TZ", told)

    assert zone == zone_of_machine(tmp_path / "none")


def test_the_link_of_the_local_time_is_read(monkeypatch: pytest.MonkeyPatch, tmp_path: Path) -> None:
    """Where nothing is set, the local time's link names the zone."""
    monkeypatch.delenv("TZ", raising=False)
    target = tmp_path / "zoneinfo" / "Europe" / "Berlin"
    target.parent.mkdir(parents=True)
    target.touch()
    link = tmp_path / "localtime"
    link.symlink_to(target)

    assert "Europe/Berlin" == zone_of_machine(link)
