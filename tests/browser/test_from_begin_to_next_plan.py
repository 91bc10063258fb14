"""The whole way once: begin with my own, plan, get ready, sink, journal, and a next plan that differs."""

from __future__ import annotations

import re
from collections.abc import Iterator
from dataclasses import dataclass
from pathlib import Path

import pytest
from browser.live import SIZES, served
from browser.sink_evening import TICK, settled
from browser.watch import Watch
from evening_clock import SetClock
from playwright.sync_api import Browser, Page, expect
from unit.core.run.evening import START_US

from tankside.machine.dice import MachineDice
from tankside.wiring import app_over, open_house

# What is asked for on the first evening, one screen after the other.
SIX_ANSWERS = (
    {"film": "Ferry 125"},
    {"index": "125"},
    {"developer": "Umber", "dilution": "1+1"},
    {"time": "9:30", "temp": "20"},
    {"tank": "500"},
    {"reads": "20"},
)
WANTED = """() => {
  const button = document.querySelector("#main-act"), hint = document.querySelector("#main-hint").textContent;
  return !button.hidden && button.dataset.early !== "true" && !hint.startsWith("due in");
}"""
STEP_S, LONGEST_STEPS = 12.0, 400


@dataclass
class Hands:
    """One person with one screen and one clock."""

    page: Page
    clock: SetClock

    def go(self, name: str) -> None:
        """Press what is called so, a link or a button."""
        what = self.page.get_by_role("link", name=name).or_(self.page.get_by_role("button", name=name))
        what.first.click()

    def main(self) -> str:
        """Press the one main act of a page that is no sink, and say what it was called."""
        button = self.page.locator(".acts-foot .act-main")
        words = button.inner_text()
        button.click()
        return words

    def wait(self, seconds: float) -> None:
        """Let time go by for server and screen alike."""
        self.clock.pass_s(seconds)
        self.page.evaluate("(ms) => globalThis.sinkTick?.pass(ms)", seconds * 1000)


@pytest.fixture(params=["phone", "laptop"])
def hands(chromium: Browser, tmp_path: Path, request: pytest.FixtureRequest) -> Iterator[Hands]:
    """A fresh house, opened on a phone, then on a laptop."""
    clock = SetClock(wall_us=START_US - 1_200_000_000, elapsed_us=4_000_000_000, boot="first")
    width, height = SIZES[request.param]
    with (
        open_house(tmp_path / "tankside.db", clock, MachineDice()) as house,
        served(app_over(house)) as address,
    ):
        touched = request.param == "phone"
        context = chromium.new_context(
            viewport={"width": width, "height": height},
            base_url=address,
            has_touch=touched,
            is_mobile=touched,
        )
        context.set_default_timeout(15_000)
        context.add_init_script(TICK)
        page = context.new_page()
        watch = Watch(address)
        watch.put_on(page)
        page.goto("/")
        yield Hands(page, clock)
        assert [] == watch.unexpected()
        context.close()


def begin(hands: Hands) -> str:
    """From the first page through six questions to the plan; the time that it tells."""
    hands.go("Begin with my own")
    for answers in SIX_ANSWERS:
        for name, text in answers.items():
            hands.page.locator(f"#{name}").fill(text)
        hands.main()
    expect(hands.page.locator("h1")).to_contain_text("Plan:")
    return hands.page.locator(".plan-answer").inner_text()


def get_ready(hands: Hands) -> None:
    """Each liquid mixed in order, then to the sink."""
    hands.go("Get ready: liquids")
    for _ in range(8):
        if hands.main() == "Go to the sink":
            break
        hands.page.wait_for_load_state()
    hands.page.wait_for_url(re.compile("/sink/"))


def develop(hands: Hands) -> None:
    """Do what the page at the sink says when it says so, until everything hangs."""
    for _ in range(LONGEST_STEPS):
        if hands.page.evaluate(WANTED):
            hands.wait(0.5)
            hands.page.locator("#main-act").click()
            settled(hands.page)
        if hands.page.locator("#plain-heading").inner_text() == "Everything hangs":
            return
        hands.wait(STEP_S)
    raise AssertionError("the evening did not end")


def test_begin_with_my_own_to_a_next_plan_that_differs(hands: Hands) -> None:
    """Harsh negatives, half a correction taken, and the next roll is planned shorter, with the reason."""
    first = begin(hands)
    get_ready(hands)
    develop(hands)
    hands.wait(12 * 3600.0)

    hands.page.goto("/journal")
    hands.go("Say how it came out")
    page = hands.page
    page.get_by_role("group", name="Shadows").get_by_text("Right").click()
    page.get_by_role("group", name="Contrast").get_by_text("Harsh").click()
    hands.go("Keep")
    expect(page.locator(".journal-verdict")).to_contain_text("Counts as")
    hands.go("Take half of it")
    expect(page.locator(".journal-proposal")).to_contain_text("The next plan uses it")

    page.goto("/rolls/add")
    expect(page.locator("#film")).to_have_value("Ferry 125")
    page.locator("main form button.act-main, .acts-foot .act-main").first.click()
    page.goto("/rolls")
    page.locator('input[name="roll"]').last.check(force=True)
    hands.go("Plan these for tonight")
    expect(page.locator("h1")).to_contain_text("Plan:")
    after = page.locator(".plan-answer").first.inner_text()

    assert first != after
    expect(page.locator(".plan-changed").first).to_contain_text(
        "instead of 9:30. You called the contrast harsh"
    )
