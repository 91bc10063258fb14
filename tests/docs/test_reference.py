"""The reference is what the program says of itself today."""

from __future__ import annotations

import importlib.util

from project import ROOT

WRITER = ROOT / "docs" / "reference" / "write_commands.py"


def test_the_reference_of_commands_is_not_stale() -> None:
    """After a change of a command: python docs/reference/write_commands.py."""
    found = importlib.util.spec_from_file_location("write_commands", WRITER)
    assert found is not None
    assert found.loader is not None
    writer = importlib.util.module_from_spec(found)
    found.loader.exec_module(writer)

    assert writer.PAGE.read_text(encoding="utf-8") == writer.written()
