"""The pages around a plan in a real browser: size, theme, WCAG 2.2 AA, and what they cost the hands."""

from __future__ import annotations

from browser.accessible import shortcomings
from browser.conftest import OpenPage
from browser.taps import Taps
from browser.test_ground import sideways_px
from playwright.sync_api import Page

SIX = {
    "film": "Ferry 200", "format": "135-36", "index": "200", "developer": "Umber", "dilution": "1+1",
    "time": "9:30", "temp": "20", "tank": "500", "reads": "", "answered": "reads",
}  # fmt: skip
FIXER = {"kind": "fixer", "name": "Fixer", "parts": "1+4", "volume": "1000", "used": "15", "cap": "white"}
STOCK = {"kind": "developer", "name": "Umber", "parts": "stock", "volume": "1000", "full": "6", "part": "2"}
SLOW = ({"seconds": "35", "temp_c": "20", "fresh": "yes"}, {"seconds": "120", "temp_c": "20"})
PATHS = (
    "/plan/ready?made=fix", "/plan/ready?liquid=develop-A&jug=19.5", "/plan/why/time", "/plan/why/hot",
    "/plan/why/end", "/plan/change", "/leaflets", "/leaflets/new", "/place", "/shelf", "/shelf/mix",
)  # fmt: skip
SCREENS = (
    ("Which film", {"Film, your own name will do": "Ferry 200"}),
    ("At what index", {"Exposure index": "200"}),
    ("Which developer", {"Developer, your own": "Umber", "Dilution": "1+1"}),
    ("What time and temperature", {"Time, as printed": "9:30", "Temperature, as printed": "20"}),
    ("How much does your tank", {"What the tank takes": "500"}),
    ("What does the developer read", {"The thermometer in the developer": "21.0"}),
)
CUT = """() => [...document.querySelectorAll('main *, .acts *')]
    .filter(one => one.clientWidth && one.scrollWidth > one.clientWidth + 1
        && !one.closest('.unseen, thead, svg') && getComputedStyle(one).overflowX !== 'visible')
    .map(one => one.outerHTML.slice(0, 80))"""


def post(page: Page, path: str, form: dict[str, str]) -> str:
    """Send a form as a page of the house would; where it leads is the answer."""
    address = page.evaluate("location.origin")
    sent = page.request.post(path, form=form, headers={"origin": address, "sec-fetch-site": "same-origin"})
    assert sent.ok, (path, sent.status)
    return sent.url


def test_every_page_around_the_plan_fits_and_is_clean(open_page: OpenPage, size: str, theme: str) -> None:
    """No sideways scroll, no cut text and nothing that axe finds, at each size and in each theme."""
    page = open_page("/", size=size, theme=theme)
    post(page, "/begin", SIX)
    post(page, "/plan/ready/made", {"liquid": "fix", "how": "mixed", "cap": "white"})
    post(page, "/plan/ready/taps", {"liquid": "develop-A", "hot": "52", "cold": "14"})
    post(page, "/shelf/mix", FIXER)
    bottle = "/shelf/" + post(page, "/shelf/mix", STOCK).split("/shelf/")[1].split("?")[0]
    for leader in SLOW:
        post(page, f"{bottle}/leader", leader)
    found = {}
    paths = (*PATHS, bottle, f"{bottle}/why/good-until", f"{bottle}/why/developer-left")
    for path in paths:
        page.goto(path)
        page.evaluate("document.querySelectorAll('.shelf-acts details').forEach(one => { one.open = true })")
        found[path] = (sideways_px(page), page.evaluate(CUT), shortcomings(page))

    assert {path: (0, [], []) for path in paths} == found


def test_a_first_evening_costs_six_answers_and_no_more(taps: Taps) -> None:
    """From the first screen to the plan: seven taps, and eight things typed on six screens."""
    page = taps.page
    taps.tap(page.get_by_role("link", name="Begin with my own"))
    for asked, fields in SCREENS:
        page.get_by_role("heading", name=asked).wait_for()
        for label, text in fields.items():
            taps.enter(page.get_by_label(label), text)
        taps.tap(page.locator(".acts-foot .act-main"))
    page.wait_for_url("**/plan")

    assert page.get_by_text("9:00 (8:45 to 9:15)").first.is_visible()
    assert (7, 8) == taps.spent


def test_getting_ready_costs_a_tap_a_liquid(open_page: OpenPage) -> None:
    """From the plan to the sink: one tap a liquid, one for the taps' two numbers, one in, one out."""
    page = open_page("/")
    post(page, "/begin", SIX)
    page.goto("/plan")
    taps = Taps(page)
    taps.tap(page.get_by_role("link", name="Get ready: liquids"))
    for liquid in ("Fixer", "Stop bath", "Wetting agent"):
        taps.tap(page.get_by_role("button", name=f"{liquid} is mixed"))
    taps.enter(page.get_by_label("Hot tap reads"), "52")
    taps.enter(page.get_by_label("Cold tap reads"), "14")
    taps.tap(page.get_by_role("button", name="Give me the amounts"))
    taps.tap(page.get_by_role("button", name="Umber is mixed"))
    taps.enter(page.get_by_label("What the developer reads now"), "20.5")
    taps.tap(page.get_by_role("button", name="Go to the sink"))
    page.wait_for_url("**/sink/*")

    assert (7, 3) == taps.spent


def test_forms_work_without_any_script(open_page: OpenPage) -> None:
    """A taken bottle, a changed plan and a leaflet's row are forms and links alone."""
    page = open_page("/")
    context = page.context.browser.new_context(java_script_enabled=False, base_url=page.url)  # type: ignore[union-attr]
    post(page, "/begin", SIX)
    plain = context.new_page()
    plain.goto("/plan/ready")
    plain.get_by_text("I have one already").click()
    plain.get_by_label("What the bottle of fixer holds").fill("1000")
    plain.get_by_role("button", name="Take this bottle").click()

    assert plain.locator(".ready-code-letters").is_visible()
    plain.goto("/plan/change")
    plain.get_by_role("button", name="Another roll like this").click()
    assert plain.get_by_text("B is added.").is_visible()
    context.close()
