"""The watch, the count of taps and axe notice what they are there to notice."""

from __future__ import annotations

from browser.accessible import shortcomings
from browser.conftest import OpenPage
from browser.taps import Taps
from browser.watch import Watch


def test_the_front_page_opens_without_trouble(open_page: OpenPage, size: str, watch: Watch) -> None:
    """At each size: no error, no breach of its policy, nothing asked from elsewhere."""
    page = open_page("/", size=size)
    assert "Tankside" in page.title()
    assert watch.troubles == []


def test_an_inline_script_is_a_trouble(open_page: OpenPage, watch: Watch) -> None:
    """The content policy stops it, and the watch hears of it."""
    page = open_page("/")
    page.evaluate("document.body.append(Object.assign(document.createElement('script'), {text: 'x = 1'}))")
    assert page.evaluate("typeof x") == "undefined"
    assert any("Content Security Policy" in trouble for trouble in watch.troubles)
    watch.expected.append("Content Security Policy")


def test_an_error_and_a_lost_page_are_troubles(open_page: OpenPage, watch: Watch) -> None:
    """An error thrown later, and an answer of 404."""
    page = open_page("/")
    page.evaluate("setTimeout(() => { throw new Error('dry reel') })")
    page.goto("/static/no-such-file.css")
    assert any("dry reel" in trouble for trouble in watch.troubles)
    assert any("answered 404" in trouble for trouble in watch.troubles)
    watch.expected += ["dry reel", "404"]


def test_a_request_to_another_host_is_a_trouble(open_page: OpenPage, watch: Watch) -> None:
    """Nothing answers there, and nothing may ask."""
    page = open_page("/")
    page.goto("about:blank")
    page.evaluate("fetch('http://bench.home:9/').catch(() => 0)")
    assert any("another host" in trouble for trouble in watch.troubles)
    watch.expected += ["bench.home"]


def test_axe_finds_a_picture_without_words(open_page: OpenPage) -> None:
    """The page stands until a picture without a text comes in."""
    page = open_page("/")
    assert shortcomings(page) == []
    page.evaluate("document.querySelector('main').append(document.createElement('img'))")
    assert any(one.startswith("image-alt") for one in shortcomings(page))


def test_taps_and_entries_are_counted(taps: Taps) -> None:
    """Two taps and one entry, a list two taps more."""
    taps.page.set_content(
        "<button>Pour</button><input aria-label=Degrees>"
        "<select aria-label=Film><option>slow<option>fast</select>"
    )
    taps.tap(taps.page.get_by_role("button"))
    taps.enter(taps.page.get_by_label("Degrees"), "20.5")
    taps.choose(taps.page.get_by_label("Film"), "fast")
    assert taps.spent == (3, 1)
