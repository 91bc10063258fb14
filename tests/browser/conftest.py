"""The real Tankside on a free port, the real Chromium, and a watch on every page that is opened."""

from __future__ import annotations

from collections.abc import Callable, Iterator
from pathlib import Path

import pytest
from browser.live import CHROMIUM, SIZES, THEMES, served
from browser.taps import Taps
from browser.watch import Watch
from playwright.sync_api import Browser, Page, sync_playwright

from tankside.machine.clock import MachineClock
from tankside.machine.dice import MachineDice
from tankside.machine.port import LOOPBACK
from tankside.wiring import app_over, open_house

FLAGS = (
    "--disable-quic",
    "--no-first-run",
    "--disable-background-networking",
    "--disable-component-update",
    "--disable-sync",
    f"--host-resolver-rules=MAP bench.home {LOOPBACK}",
)
PATIENCE_MS = 10_000

OpenPage = Callable[..., Page]


def pytest_collection_modifyitems(items: list[pytest.Item]) -> None:
    """Whatever lies in this folder needs Chromium."""
    for item in items:
        if item.path.is_relative_to(Path(__file__).parent):
            item.add_marker("browser")


@pytest.fixture(scope="module")
def chromium() -> Iterator[Browser]:
    """One Chromium for the tests of a file; not for longer, for it holds an event loop of this thread."""
    if not CHROMIUM:
        pytest.skip("no Chromium on PATH or in TANKSIDE_BROWSER")
    with sync_playwright() as playwright:
        browser = playwright.chromium.launch(executable_path=CHROMIUM, args=list(FLAGS))
        yield browser
        browser.close()


@pytest.fixture
def address(tmp_path: Path) -> Iterator[str]:
    """Where a whole Tankside answers, over a database of its own."""
    house = open_house(tmp_path / "tankside.db", MachineClock(), MachineDice())
    with house as opened, served(app_over(opened)) as address:
        yield address


@pytest.fixture
def watch(address: str) -> Iterator[Watch]:
    """Fails the test if anything went wrong on a page that it did not say it expects."""
    watch = Watch(address)
    yield watch
    assert watch.unexpected() == []


@pytest.fixture
def open_page(chromium: Browser, address: str, watch: Watch) -> Iterator[OpenPage]:
    """Opens a path on a fresh device: `open_page("/rolls", size="phone", theme="dim")`."""
    contexts = []

    def opened(path: str = "/", *, size: str = "phone", theme: str | None = None) -> Page:
        width, height = SIZES[size]
        touched = size != "laptop"
        context = chromium.new_context(
            viewport={"width": width, "height": height},
            has_touch=touched,
            is_mobile=touched,
            base_url=address,
        )
        contexts.append(context)
        context.set_default_timeout(PATIENCE_MS)
        if theme:
            context.add_cookies([{"name": "tankside-theme", "value": theme, "url": address}])
        page = context.new_page()
        watch.put_on(page)
        page.goto(path)
        return page

    yield opened
    for context in contexts:
        context.close()


@pytest.fixture(params=SIZES)
def size(request: pytest.FixtureRequest) -> str:
    """Each of the three sizes in turn."""
    return str(request.param)


@pytest.fixture(params=THEMES)
def theme(request: pytest.FixtureRequest) -> str:
    """Each theme in turn."""
    return str(request.param)


@pytest.fixture
def taps(open_page: OpenPage) -> Taps:
    """The front page on a phone, with every tap and entry counted from here on."""
    return Taps(open_page("/", size="phone"))
