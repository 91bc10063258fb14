"""No tracked file ties the project to a machine or to a package index."""

from __future__ import annotations

import re

from project import ROOT, tracked

# Written apart, so that this file does not find itself.
HOSTS = ["pypi" + ".org", "python" + "hosted", "registry." + "npmjs", "deb." + "debian"]
MACHINE_PATHS = ["/" + name + "/" for name in ("root", "work", "farm", "home")]
TIES = re.compile("|".join([*map(re.escape, HOSTS), *(rf"(?<![\w.$}}/]){path}" for path in MACHINE_PATHS)]))


def ties_of(text: str) -> list[str]:
    """What in `text` holds only here."""
    return TIES.findall(text)


def test_no_tracked_file_names_an_index_or_a_path_of_a_machine() -> None:
    """Everything works from any index and any folder."""
    found = {}
    for file in tracked():
        try:
            ties = ties_of(file.read_text(encoding="utf-8"))
        except UnicodeDecodeError:
            continue
        if ties:
            found[str(file.relative_to(ROOT))] = ties
    assert found == {}


def test_a_tie_would_be_found() -> None:
    """The pattern bites on a host and on a path, and lets an address of the project's own pass."""
    assert len(ties_of(f"--index-url https://{HOSTS[0]}/simple, see {MACHINE_PATHS[0]}notes")) == 2
    assert ties_of(" ".join(f"{own}{MACHINE_PATHS[1]}sink.js" for own in ("/static", "tests", "$HOME"))) == []


def test_no_lock_of_a_kind_that_holds_addresses_is_tracked() -> None:
    """Such locks name a host on every line."""
    assert {"uv" + ".lock", "pylock" + ".toml"} & {file.name for file in tracked()} == set()
