"""A sink in the browser whose time is set by hand: the server's clock and each page's tick together."""

from __future__ import annotations

from collections.abc import Iterator
from contextlib import ExitStack, contextmanager
from dataclasses import dataclass, field
from pathlib import Path

from browser.live import SIZES, served
from browser.taps import Taps
from browser.watch import Watch
from evening_clock import SetClock
from fastapi import FastAPI
from playwright.sync_api import Browser, BrowserContext, Page, expect
from unit.core.run.evening import BENCH, RUN, START_US, plan

from tankside.core.run.commands import Command, OpenRun
from tankside.core.run.envelope import Event
from tankside.machine.dice import MachineDice
from tankside.wiring import app_over, open_house
from tankside.workflows.house import House

# Time of the page: stands still until a test lets it go by. Tones are heard as events.
TICK = """
globalThis.tones = [];
document.addEventListener("tone", (event) => tones.push(event.detail.ms));
globalThis.sinkTick = {
  ms: 1000, steps: [], timers: [],
  now() { return this.ms; },
  wall() { return 1772913540000 + this.ms + (this.jump ?? 0); },
  every(step) { this.steps.push(step); },
  after(ms, step) {
    const timer = { at: this.ms + ms, step };
    this.timers.push(timer);
    return () => (this.timers = this.timers.filter((one) => one !== timer));
  },
  pass(ms) {
    this.ms += ms;
    const due = this.timers.filter((timer) => timer.at <= this.ms);
    this.timers = this.timers.filter((timer) => timer.at > this.ms);
    for (const timer of due) timer.step();
    for (const step of this.steps) step();
  },
};
"""


@dataclass
class SinkEvening:
    """A served house with one run, its clock, and the pages that look at it."""

    clock: SetClock
    folder: Path
    chromium: Browser
    letters: str = "A"
    pages: list[Page] = field(default_factory=list)
    contexts: list[BrowserContext] = field(default_factory=list)
    stack: ExitStack = field(default_factory=ExitStack)
    house: House | None = None
    address: str = ""
    port: int = 0

    def start(self) -> None:
        """Serve the house; the run is opened the first time."""
        self.house = self.stack.enter_context(
            open_house(self.folder / "tankside.db", self.clock, MachineDice())
        )
        if self.house.live_runs.look(RUN) is None:
            asked = OpenRun(plan(self.letters), "Europe/Oslo", bench=BENCH)
            self.house.live_runs.note(RUN, Command("phone:0", asked, "phone", run=RUN), self.clock.now())
        app: FastAPI = app_over(self.house)
        self.address = self.stack.enter_context(served(app, self.port))
        self.port = int(self.address.rpartition(":")[2])

    def stop(self) -> None:
        """The program dies; what is on the disk stays."""
        self.stack.close()
        self.stack = ExitStack()

    def open(self, size: str = "phone", watch: Watch | None = None) -> Page:
        """A fresh device at the sink."""
        width, height = SIZES[size]
        touched = size != "laptop"
        context = self.chromium.new_context(
            viewport={"width": width, "height": height}, has_touch=touched, is_mobile=touched
        )
        self.contexts.append(context)
        context.set_default_timeout(10_000)
        context.add_init_script(TICK)
        page = context.new_page()
        if watch:
            watch.put_on(page)
        page.goto(f"{self.address}/sink/{RUN}")
        expect(page.locator("#clock")).not_to_have_text("")
        self.pages.append(page)
        return page

    def pass_s(self, seconds: float) -> None:
        """Let time go by for pages and server alike.

        The pages first: news of a server that is already ahead would move a page on, and then its own time
        would pass on top of that.
        """
        for page in self.pages:
            page.evaluate("(ms) => sinkTick.pass(ms)", seconds * 1000)
        self.clock.pass_s(seconds)

    def until_s(self, seconds: float) -> None:
        """Let time go by until so many seconds after the planned beginning."""
        self.pass_s(seconds - self.at_s)

    @property
    def at_s(self) -> float:
        """Seconds since the planned beginning."""
        return (self.clock.wall_us - START_US) / 1e6

    def events(self) -> tuple[Event, ...]:
        """What is on the disk."""
        assert self.house is not None
        return self.house.desk.run_log.after(RUN)

    def kinds(self) -> list[str]:
        """What happened, in the order in which it was stored."""
        return [f"{one.tankful or ''} {one.kind}".strip() for one in self.events()]


@contextmanager
def sink_evening(chromium: Browser, folder: Path, letters: str = "A") -> Iterator[SinkEvening]:
    """An evening that begins a minute before its first pour."""
    clock = SetClock(wall_us=START_US - 60_000_000, elapsed_us=4_940_000_000, boot="first")
    evening = SinkEvening(clock, folder, chromium, letters)
    evening.start()
    try:
        yield evening
    finally:
        for context in evening.contexts:
            context.close()
        evening.stop()


def settled(page: Page) -> None:
    """Wait until nothing noted here is still without an answer."""
    page.wait_for_selector('body[data-kept="0"]', state="attached")


def press(taps: Taps, words: str) -> None:
    """Press the main act, which must be the one that is meant."""
    button = taps.page.locator("#main-act")
    expect(button.locator("#main-words")).to_have_text(words)
    taps.tap(button)
    settled(taps.page)
