"""Photograph every page in every theme at every size into one folder, for a person to look at.

    PYTHONPATH=src:tests python -m browser.contact_sheet FOLDER [PATH ...]

Writes one picture for each page, theme and size, and `index.html` that lays them side by side. With
TANKSIDE_DATABASE it looks at that file instead of an empty desk.
"""

from __future__ import annotations

import itertools
import os
import sys
from collections.abc import Iterable, Iterator
from contextlib import ExitStack, contextmanager
from pathlib import Path

from browser.live import CHROMIUM, SIZES, THEMES, served
from browser.specimen import add_specimen
from fakes import memory_house
from playwright.sync_api import Browser, sync_playwright

from tankside.machine.clock import MachineClock
from tankside.machine.dice import MachineDice
from tankside.wiring import app_over, open_house

PAGES = (
    "/",
    "/contents",
    "/rolls",
    "/shelf",
    "/plan",
    "/sink",
    "/journal",
    "/densities",
    "/negatives",
    "/place",
    "/leaflets",
    "/leaflets/new",
    "/shelf/mix",
    "/settings",
    "/start/demo",
    "/start/restore",
    "/start/phone",
    "/nowhere",
    "/specimen",
)


@contextmanager
def serving() -> Iterator[str]:
    """The address of an app with its specimen, up while the block runs."""
    file = os.environ.get("TANKSIDE_DATABASE")
    with ExitStack() as house:
        opened = (
            house.enter_context(open_house(Path(file), MachineClock(), MachineDice()))
            if file
            else memory_house()
        )
        yield house.enter_context(served(add_specimen(app_over(opened))))


def photograph(browser: Browser, address: str, folder: Path, paths: Iterable[str]) -> list[str]:
    """One picture for each page, theme and size; their names."""
    names = []
    for theme, (size, (width, height)) in itertools.product(THEMES, SIZES.items()):
        context = browser.new_context(viewport={"width": width, "height": height})
        context.add_cookies([{"name": "tankside-theme", "value": theme, "url": address}])
        page = context.new_page()
        for path in paths:
            page.goto(address + path)
            name = f"{path.strip('/').replace('/', '-') or 'start'}-{size}-{theme}.png"
            page.screenshot(path=folder / name, full_page=True)
            wide = page.evaluate("document.documentElement.scrollWidth - innerWidth")
            if wide > 0:
                print(f"{name}: scrolls sideways by {wide} px")
            names.append(name)
        context.close()
    return names


def lay_out(folder: Path, names: Iterable[str]) -> None:
    """One plain page with all pictures."""
    figures = "\n".join(
        f'<figure><img src="{name}" height="480"><figcaption>{name}</figcaption></figure>' for name in names
    )
    style = "body{display:flex;flex-wrap:wrap;gap:12px;font:12px sans-serif}figure{margin:0}"
    (folder / "index.html").write_text(f"<!doctype html><style>{style}</style>\n{figures}\n")


def main(folder: str, *paths: str) -> None:
    """Serve, photograph, lay out."""
    target = Path(folder)
    target.mkdir(parents=True, exist_ok=True)
    with serving() as address, sync_playwright() as playwright:
        browser = playwright.chromium.launch(executable_path=CHROMIUM)
        names = photograph(browser, address, target, paths or PAGES)
        browser.close()
    lay_out(target, names)
    print(f"{len(names)} pictures in {target}")


if __name__ == "__main__":
    main(*sys.argv[1:])
