"""The map names what is there, and nothing that is not."""

from __future__ import annotations

import re

import pytest
from project import PACKAGE, ROOT, described

MAP = (ROOT / "docs" / "inside" / "map.md").read_text(encoding="utf-8")


def folders_there() -> set[str]:
    """Every folder of the package that holds a module, and those of the web face that hold what it serves."""
    holders = {file.parent for file in PACKAGE.rglob("*.py")}
    served = {PACKAGE / "web" / name for name in ("static", "templates")}
    folders = {folder for folder in holders | served if folder.is_dir() and folder != PACKAGE}
    return {f"{folder.relative_to(PACKAGE)}/" for folder in folders}


def test_every_folder_is_on_the_map_and_every_folder_of_the_map_is_there() -> None:
    """A new folder comes with its row."""
    assert folders_there() == set(re.findall(r"^\| `([a-z_/]+/)` \|", MAP, re.MULTILINE))


@pytest.mark.parametrize("container", ["tankside", "tankside.core"])
def test_the_layers_of_the_map_are_those_that_are_held(container: str) -> None:
    """The map shows the contracts as import-linter reads them."""
    contracts = described()["tool"]["importlinter"]["contracts"]
    (held,) = [one["layers"] for one in contracts if one.get("containers") == [container]]
    (drawn,) = re.findall(rf"^```layers {re.escape(container)}\n(.*?)^```", MAP, re.MULTILINE | re.DOTALL)
    assert held == drawn.splitlines()


def test_links_of_the_readme_lead_somewhere() -> None:
    """Every relative link of README.md and of the pages inside is a file."""
    for page in [ROOT / "README.md", *(ROOT / "docs").rglob("*.md")]:
        links = re.findall(r"\]\(([^)#:]+)(?:#[^)]*)?\)", page.read_text(encoding="utf-8"))
        assert [link for link in links if not (page.parent / link).exists()] == [], page
