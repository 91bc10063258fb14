"""What goes otherwise at the sink is said in two presses: another bottle, a miss, an earlier time."""

from __future__ import annotations

from pathlib import Path

from browser.sink_evening import SinkEvening, press, settled, sink_evening
from browser.taps import Taps
from playwright.sync_api import Browser, Page, expect

FIXER = "F9QD-2"


def _developing(evening: SinkEvening) -> Taps:
    taps = Taps(evening.open("phone"))
    evening.until_s(0)
    press(taps, "R5TN-6, pouring")
    return taps


def _at_measuring(evening: SinkEvening) -> Taps:
    taps = _developing(evening)
    evening.until_s(530)
    evening.pass_s(0.5)
    expect(taps.page.locator("#guard-code")).to_have_text("K7M4-T")
    return taps


def _last(evening: SinkEvening, kind: str) -> object:
    return [one for one in evening.events() if one.kind == kind][-1].body


def _choose(page: Page, code: str) -> None:
    page.locator('[data-other="1"]').tap()
    page.locator(f'[data-bottle="{code}"]').tap()
    settled(page)


def test_another_bottle_at_measuring_is_refused_first(chromium: Browser, tmp_path: Path) -> None:
    """The refusal names both bottles, nothing is noted, and the right one confirms afterwards."""
    with sink_evening(chromium, tmp_path) as evening:
        page = _at_measuring(evening).page
        before = evening.kinds()
        _choose(page, FIXER)

        plate = page.locator("#notices .plate-refusal")
        expect(plate).to_contain_text(FIXER)
        expect(plate).to_contain_text("K7M4-T")
        assert before == evening.kinds()
        page.locator("#main-act").tap()
        settled(page)
        expect(plate).to_have_count(0)
        assert "K7M4-T" == _last(evening, "bottle-confirmed").bottle  # type: ignore[attr-defined]


def test_a_label_that_nobody_knows_is_asked_again(chromium: Browser, tmp_path: Path) -> None:
    """A code that stands on no bottle of the bench says so at its field; the right one confirms."""
    with sink_evening(chromium, tmp_path) as evening:
        page = _at_measuring(evening).page
        page.locator('[data-other="0"]').tap()
        page.locator("#scan-code").fill("ZZZZ-9")
        page.locator("#scan-form button").tap()
        expect(page.locator("#scan-refusal")).to_have_text("No bottle on this bench has that code.")
        page.locator("#scan-code").fill("k7m4-t")
        page.locator("#scan-form button").tap()
        settled(page)
        assert "K7M4-T" == _last(evening, "bottle-confirmed").bottle  # type: ignore[attr-defined]


def test_i_missed_one_opens_its_bead(chromium: Browser, tmp_path: Path) -> None:
    """A missed inversion is noted in one press and stands open on the stripe."""
    with sink_evening(chromium, tmp_path) as evening:
        page = _developing(evening).page
        evening.until_s(75)
        page.locator('[data-other="1"]').tap()
        settled(page)
        assert not _last(evening, "agitation-noted").done  # type: ignore[attr-defined]
        evening.pass_s(1)
        expect(page.locator(".bead.missed")).to_have_count(1)


def test_an_act_done_earlier_has_its_own_time(chromium: Browser, tmp_path: Path) -> None:
    """Drained 20 s ago is stored as having happened 20 s ago."""
    with sink_evening(chromium, tmp_path) as evening:
        page = _developing(evening).page
        evening.until_s(590)
        evening.pass_s(0.5)
        page.locator('[data-other="2"]').tap()
        page.locator('#sheet-more [data-sheet="earlier"]').tap()
        page.locator('[data-ago="20"]').tap()
        settled(page)
        drained = [one for one in evening.events() if one.kind == "bath-drained"][-1]
        assert 20.0 == drained.recorded.seconds_since(drained.happened)


def test_an_earlier_note_is_put_right(chromium: Browser, tmp_path: Path) -> None:
    """A pour noted ten seconds late is moved by a new note that points at it."""
    with sink_evening(chromium, tmp_path) as evening:
        page = _developing(evening).page
        evening.until_s(30)
        page.locator('[data-other="2"]').tap()
        page.locator('#sheet-more [data-sheet="right"]').tap()
        page.locator("[data-later]").first.tap()
        settled(page)
        retimed = next(one for one in evening.events() if one.kind == "note-retimed")
        poured = [one for one in evening.events() if one.kind == "bath-poured"][-1]
        assert poured.id == retimed.body.about  # type: ignore[union-attr]
        assert -10.0 == retimed.body.happened.seconds_since(poured.happened)  # type: ignore[union-attr]


def test_what_must_be_agreed_to_waits_for_the_server(chromium: Browser, tmp_path: Path) -> None:
    """Out of touch the measuring is not offered, one sentence says so, and skipping is off."""
    with sink_evening(chromium, tmp_path) as evening:
        page = _developing(evening).page
        evening.until_s(500)
        evening.stop()
        evening.pass_s(6)
        evening.until_s(530)
        expect(page.locator("#main-words")).to_have_text("Draining")
        expect(page.locator("#notices")).to_contain_text("Out of touch.")
        page.locator('[data-other="2"]').tap()
        expect(page.locator('#sheet-more [data-sheet="skip"]')).to_be_disabled()


def test_a_reload_forgets_nothing(chromium: Browser, tmp_path: Path) -> None:
    """What was noted out of touch outlives the page, and is stored once at its own time."""
    with sink_evening(chromium, tmp_path) as evening:
        page = _developing(evening).page
        evening.until_s(565)
        evening.pass_s(0.5)
        page.route("**/notes", lambda route: route.abort())
        page.locator("#main-act").tap()
        expect(page.locator("#guard-code")).to_have_text("K7M4-T")
        evening.pass_s(4.5)
        page.unroute("**/notes")
        page.evaluate("sessionStorage.setItem('ms', sinkTick.ms)")
        page.reload()
        settled(page)
        assert 1 == evening.kinds().count("A bath-drained")


def test_who_notes_each_inversion_presses_once_for_it(chromium: Browser, tmp_path: Path) -> None:
    """Switched on under More, 'Inverted' is the main act while fresh; noted, draining stands there again."""
    with sink_evening(chromium, tmp_path) as evening:
        taps = _developing(evening)
        page = taps.page
        evening.until_s(61)
        expect(page.locator("#main-words")).to_have_text("Draining")
        page.locator('[data-other="2"]').tap()
        page.locator("#note-each").tap()
        page.locator("#sheet-more [data-close]").tap()
        evening.pass_s(1)
        press(taps, "Inverted")
        assert (1, True) == _cycle(evening)
        expect(page.locator("#main-words")).to_have_text("Draining")
        evening.until_s(122)
        expect(page.locator("#main-words")).to_have_text("Inverted")
        evening.until_s(150)
        expect(page.locator("#main-words")).to_have_text("Draining")
        expect(page.locator(".bead.missed")).to_have_count(0)


def _cycle(evening: SinkEvening) -> tuple[int, bool]:
    noted = _last(evening, "agitation-noted")
    return noted.cycle, noted.done  # type: ignore[attr-defined]
