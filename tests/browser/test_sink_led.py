"""The page leads whole evenings: by touch, by keyboard, over an outage, and on two screens at once."""

from __future__ import annotations

from collections.abc import Callable
from pathlib import Path

from browser.sink_evening import RUN, SinkEvening, press, settled, sink_evening
from browser.taps import Taps
from playwright.sync_api import Browser, Page, expect

# The button and the seconds after the beginning at which a pair of hands is there.
ONE_TANKFUL = (
    (0, "R5TN-6, pouring"),
    (530, "K7M4-T, measured"),
    (570, "Draining"),
    (585, "K7M4-T, pouring"),
    (640, "F9QD-2, measured"),
    (646, "Draining"),
    (661, "F9QD-2, pouring"),
    (962, "Draining"),
    (977, "Water, pouring"),
    (1278, "Water changed"),
    (1580, "Water changed"),
    (1882, "Water changed"),
    (2200, "Wetting bath, pouring"),
    (2262, "Draining"),
    (2280, "Hung"),
)
STEP_S = 12.0
LONGEST_S = 4500.0
WANTED = """() => {
  const button = document.querySelector("#main-act"), hint = document.querySelector("#main-hint").textContent;
  return !button.hidden && button.dataset.early !== "true" && !hint.startsWith("due in");
}"""


def _follow(evening: SinkEvening, page: Page, act: Callable[[], None]) -> None:
    """Hands that do what the page says when it says so, and nothing else, until everything hangs."""
    while evening.at_s < LONGEST_S:
        if page.evaluate(WANTED):
            evening.pass_s(0.5)
            act()
            settled(page)
        if page.locator("#plain-heading").inner_text() == "Everything hangs":
            return
        evening.pass_s(STEP_S)
    raise AssertionError("the evening did not end")


def _of(evening: SinkEvening, letter: str, kind: str) -> list[str]:
    return [one for one in evening.kinds() if one == f"{letter} {kind}"]


def test_a_tankful_by_touch_costs_fifteen_taps(chromium: Browser, tmp_path: Path) -> None:
    """From the first pour to the hung film the default method is led with at most 15 taps."""
    with sink_evening(chromium, tmp_path) as evening:
        taps = Taps(evening.open("phone"))
        for seconds, words in ONE_TANKFUL:
            evening.until_s(seconds - 0.5)
            evening.pass_s(0.5)
            press(taps, words)

        assert 15 >= taps.taps
        expect(taps.page.locator("#plain-heading")).to_have_text("Everything hangs")
        assert ["A film-hung"] == _of(evening, "A", "film-hung")
        _close(evening, taps.page)
        assert 3 == len(_of(evening, "A", "water-changed"))


def _close(evening: SinkEvening, page: Page) -> None:
    """The session is closed only in touch; then the journal is one press away."""
    close = page.get_by_role("button", name="Close the session")
    evening.stop()
    evening.pass_s(6)
    expect(page.locator("#touch")).to_have_text("out of touch")
    close.tap()
    evening.start()
    evening.pass_s(6)
    expect(page.locator("#touch")).to_have_text("in touch")
    evening.pass_s(1)
    assert "run-closed" not in evening.kinds()
    close.tap()
    settled(page)
    assert "run-closed" == evening.kinds()[-1]
    expect(close).to_have_count(0)
    page.get_by_role("button", name="To the journal").tap()
    page.wait_for_url(f"**/journal/{RUN}**")


def test_two_tankfuls_by_touch(chromium: Browser, tmp_path: Path) -> None:
    """A pair of hands that only does what the page asks for brings both tankfuls to the line."""
    with sink_evening(chromium, tmp_path, "AB") as evening:
        page = evening.open("phone")
        taps = Taps(page)
        _follow(evening, page, lambda: taps.tap(page.locator("#main-act")))

        assert 30 >= taps.taps
        for letter in "AB":
            assert 5 == len(_of(evening, letter, "bath-poured"))
            assert 1 == len(_of(evening, letter, "film-hung"))


def test_two_tankfuls_by_keyboard(chromium: Browser, tmp_path: Path) -> None:
    """Space, Enter and the page-down of a pedal do the same, and the thermometer is dipped by keys."""
    with sink_evening(chromium, tmp_path, "AB") as evening:
        page = evening.open("laptop")
        keys = ["Space", "Enter", "PageDown"]

        def act() -> None:
            page.keyboard.press(keys[0])
            keys.append(keys.pop(0))

        _dip_by_keys(evening, page, act)
        _follow(evening, page, act)

        assert "A reading-taken" in evening.kinds()
        page.keyboard.press("c")
        settled(page)
        assert "run-closed" == evening.kinds()[-1]
        page.keyboard.press("j")
        page.wait_for_url(f"**/journal/{RUN}**")
        for letter in "AB":
            assert 1 == len(_of(evening, letter, "film-hung"))


def _dip_by_keys(evening: SinkEvening, page: Page, act: Callable[[], None]) -> None:
    evening.until_s(0)
    act()
    settled(page)
    evening.pass_s(60)
    page.keyboard.press("t")
    expect(page.locator("#dip-value")).to_have_text("20.0 °C")
    page.locator('[data-step="-0.1"]').focus()
    page.keyboard.press("Enter")
    expect(page.locator("#dip-value")).to_have_text("19.9 °C")
    page.locator("#dip-note").focus()
    page.keyboard.press("Enter")
    settled(page)


def test_a_dead_server_stops_nothing(chromium: Browser, tmp_path: Path) -> None:
    """Cues, tones and the guard go on alone; what was noted meanwhile is stored once, at its own time."""
    with sink_evening(chromium, tmp_path) as evening:
        page = evening.open("phone")
        taps = Taps(page)
        evening.until_s(0)
        press(taps, "R5TN-6, pouring")
        evening.until_s(400)
        evening.stop()

        _two_cues_alone(evening, page)
        evening.until_s(574)
        evening.pass_s(1)
        taps.tap(page.locator("#main-act"))
        expect(page.locator("#guard-code")).to_have_text("K7M4-T")
        expect(page.locator("#notices")).to_contain_text("kept on this device")
        evening.pass_s(13)
        taps.tap(page.locator("#main-act"))
        expect(page.locator("#main-words")).to_have_text("Draining")

        evening.pass_s(20)
        evening.start()
        evening.pass_s(6)
        settled(page)
        expect(page.locator("#touch")).to_have_text("in touch")
        plate = page.locator("#notices .plate").first
        expect(plate).to_contain_text("Out of touch from ")
        expect(plate).to_contain_text("2 notes from then are kept.")
        stored = {one.kind: one for one in evening.events() if one.kind in ("bath-drained", "bath-poured")}
        assert 1 == evening.kinds().count("A bath-drained")
        assert 2 == evening.kinds().count("A bath-poured")
        assert [575, 588] == [_at_s(stored["bath-drained"]), _at_s(stored["bath-poured"])]


def _two_cues_alone(evening: SinkEvening, page: Page) -> None:
    for cue_s in (420, 480):
        page.evaluate("document.getElementById('spoken').textContent = ''; tones.length = 0")
        evening.until_s(cue_s - 1)
        assert 1 == page.evaluate("tones.length")
        evening.pass_s(1)
        expect(page.locator("#spoken")).to_have_text("A: Invert, 10 seconds")
    evening.pass_s(6)
    expect(page.locator("#touch")).to_have_text("out of touch")


def _at_s(event: object) -> int:
    return round((event.happened.wall_us - 1_772_913_600_000_000) / 1e6)  # type: ignore[attr-defined]


def test_a_second_screen_shows_an_act_without_reload(chromium: Browser, tmp_path: Path) -> None:
    """What one screen notes stands on the other as soon as it is stored; each counts the others."""
    with sink_evening(chromium, tmp_path) as evening:
        first, second = evening.open("phone"), evening.open("laptop")
        evening.until_s(0)
        press(Taps(first), "R5TN-6, pouring")

        expect(second.locator("#main-words")).to_have_text("Draining")
        second.evaluate("sinkTick.pass(1000)")
        expect(second.locator("#touch")).to_have_text("in touch, one other screen watching")
        first.goto("about:blank")
        expect(second.locator("body")).to_have_attribute("data-watching", "0")
        second.evaluate("sinkTick.pass(1000)")
        expect(second.locator("#touch")).to_have_text("in touch")


def test_early_draining_must_be_held(chromium: Browser, tmp_path: Path) -> None:
    """A touch before the least time ends nothing; a second's hold does; by key it is pressed twice."""
    with sink_evening(chromium, tmp_path) as evening:
        page = evening.open("phone")
        taps = Taps(page)
        evening.until_s(0)
        press(taps, "R5TN-6, pouring")
        evening.until_s(100)
        evening.pass_s(1)
        taps.tap(page.locator("#main-act"))
        assert "A bath-drained" not in evening.kinds()

        page.locator("#main-act").dispatch_event("pointerdown", {"button": 0})
        evening.pass_s(1)
        settled(page)
        expect(page.locator("#guard-code")).to_have_text("K7M4-T")
        assert "A bath-drained" in evening.kinds()


def test_a_press_right_after_a_change_is_not_taken(chromium: Browser, tmp_path: Path) -> None:
    """In the first 400 ms of a new main act nothing is noted."""
    with sink_evening(chromium, tmp_path) as evening:
        page = evening.open("phone")
        taps = Taps(page)
        evening.until_s(0)
        press(taps, "R5TN-6, pouring")
        evening.until_s(530)
        expect(page.locator("#main-words")).to_have_text("K7M4-T, measured")
        before = evening.kinds()
        taps.tap(page.locator("#main-act"))
        evening.pass_s(0.3)
        taps.tap(page.locator("#main-act"))
        settled(page)
        assert before == evening.kinds()

        evening.pass_s(0.2)
        press(taps, "K7M4-T, measured")
        assert len(before) + 1 == len(evening.kinds())
