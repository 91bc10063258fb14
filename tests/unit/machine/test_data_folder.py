"""The data folder: made for its owner alone, never on a network drive, served once."""

from __future__ import annotations

from pathlib import Path

import pytest

from tankside.core.refusals import Refused
from tankside.machine.data_folder import DataFolder, open_data_folder

LOCAL = "/dev/vda1 / ext4 rw,relatime 0 0\n"


def mounts(folder: Path, *rows: str) -> Path:
    """A table of mounts in the kernel's form, with a local disk at the root."""
    table = folder / "mounts"
    table.write_text(LOCAL + "".join(f"{row}\n" for row in rows), encoding="utf-8")
    return table


def test_a_folder_is_made_for_its_owner_alone(tmp_path: Path) -> None:
    """What one develops is nobody else's business."""
    folder = open_data_folder(tmp_path / "a" / "b", mounts=mounts(tmp_path))
    assert folder.path.stat().st_mode & 0o777 == 0o700


def test_own_and_demo_data_are_two_files(tmp_path: Path) -> None:
    """The demo can be thrown away without a look at what is one's own."""
    folder = open_data_folder(tmp_path / "data", mounts=mounts(tmp_path))
    assert folder.own != folder.demo
    assert {folder.path} == {folder.own.parent, folder.demo.parent}


@pytest.mark.parametrize("kind", ["nfs", "nfs4", "cifs", "smb3", "fuse.sshfs", "9p"])
def test_a_network_drive_is_refused_with_its_kind(tmp_path: Path, kind: str) -> None:
    """Nothing is made there."""
    table = mounts(tmp_path, f"nas:/share {tmp_path}/net {kind} rw 0 0")
    with pytest.raises(Refused) as no:
        open_data_folder(tmp_path / "net" / "data", mounts=table)
    assert ("data-folder-on-network", kind) == (
        no.value.refusal.code,
        no.value.refusal.numbers["file_system"],
    )
    assert not (tmp_path / "net").exists()


def test_a_network_drive_behind_a_link_is_found(tmp_path: Path) -> None:
    """The folder is looked up where it really lies."""
    (tmp_path / "net").mkdir()
    (tmp_path / "link").symlink_to(tmp_path / "net")
    with pytest.raises(Refused):
        open_data_folder(tmp_path / "link", mounts=mounts(tmp_path, f"nas:/x {tmp_path}/net nfs rw 0 0"))


def test_a_drive_beside_the_folder_does_not_matter(tmp_path: Path) -> None:
    """'net-work' does not lie under 'net'."""
    table = mounts(tmp_path, f"nas:/x {tmp_path}/net nfs rw 0 0")
    assert tmp_path / "net-work" == open_data_folder(tmp_path / "net-work", mounts=table).path


def test_a_local_disk_mounted_inside_a_network_drive_is_local(tmp_path: Path) -> None:
    """The deepest mount decides."""
    table = mounts(tmp_path, f"nas:/x {tmp_path} nfs rw 0 0", f"/dev/sdb1 {tmp_path}/disk ext4 rw 0 0")
    assert tmp_path / "disk" == open_data_folder(tmp_path / "disk", mounts=table).path


def test_a_file_in_the_way_is_refused_with_the_reason(tmp_path: Path) -> None:
    """The person is told what is wrong with the place, not shown a traceback."""
    (tmp_path / "file").write_text("", encoding="utf-8")
    with pytest.raises(Refused) as no:
        open_data_folder(tmp_path / "file" / "data", mounts=mounts(tmp_path))
    assert no.value.refusal.code == "no-data-folder"


def test_a_second_server_is_told_where_the_first_is(tmp_path: Path) -> None:
    """Two tabs by accident must not become two writers."""
    folder = DataFolder(tmp_path)
    with (
        folder.served_at("http://127.0.0.1:8462"),
        pytest.raises(Refused) as no,
        folder.served_at("http://127.0.0.1:9000"),
    ):
        pass
    assert no.value.refusal.numbers["address"] == "http://127.0.0.1:8462"


def test_a_folder_can_be_served_again_afterwards(tmp_path: Path) -> None:
    """The hold ends with the server."""
    folder = DataFolder(tmp_path)
    for address in ("one", "two"):
        with folder.served_at(address):
            assert (tmp_path / "served-at").read_text(encoding="utf-8") == f"{address}\n"
