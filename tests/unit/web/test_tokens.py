"""The three themes keep the contrast that reading needs.

Contrast by WCAG 2.2 (W3C Recommendation, 2023), definition of relative luminance and success criteria
1.4.3 (text, 4.5:1) and 1.4.11 (graphics, 3:1): published.
"""

from __future__ import annotations

import re
from itertools import product

import pytest

from tankside.web.assets import FOLDER
from tankside.web.drawing.kinds import SIGNS

CSS = (FOLDER / "css" / "tokens.css").read_text()
BLOCKS = {
    "light": CSS.split(":root {", 1)[1].split("}", 1)[0],
    "device dark": CSS.split(":root:not([data-theme]) {", 1)[1].split("}", 1)[0],
    "dark": CSS.split(':root[data-theme="dark"] {', 1)[1].split("}", 1)[0],
    "dim": CSS.split(':root[data-theme="dim"] {', 1)[1].split("}", 1)[0],
}


def tokens(theme: str) -> dict[str, str]:
    """The raw colours of a theme."""
    return dict(re.findall(r"--([\w-]+): (#[0-9a-f]{6});", BLOCKS[theme]))


def luminance(colour: str) -> float:
    """Relative luminance by WCAG."""
    channels = [int(colour[at : at + 2], 16) / 255 for at in (1, 3, 5)]
    red, green, blue = (c / 12.92 if c <= 0.04045 else ((c + 0.055) / 1.055) ** 2.4 for c in channels)
    return 0.2126 * red + 0.7152 * green + 0.0722 * blue


def contrast(one: str, other: str) -> float:
    """Contrast ratio by WCAG."""
    lighter, darker = sorted((luminance(one), luminance(other)), reverse=True)
    return (lighter + 0.05) / (darker + 0.05)


def test_the_ratio_agrees_with_its_definition() -> None:
    """Black on white is 21:1 by definition; #767676 on white is the well-known lightest grey at 4.5:1."""
    assert 21.0 == pytest.approx(contrast("#000000", "#ffffff"))
    assert 4.54 == pytest.approx(contrast("#767676", "#ffffff"), abs=0.005)


@pytest.mark.parametrize("theme", ["light", "dark", "dim"])
def test_text_reads_on_everything(theme: str) -> None:
    """Both inks reach 4.5:1 on ground, plate and all six liquids."""
    has = tokens(theme)
    grounds = ["ground", "plate", *(f"{sign}-liquid" for sign in SIGNS)]

    poor = [(ink, on) for ink, on in product(("ink", "ink2"), grounds) if contrast(has[ink], has[on]) < 4.5]
    assert [] == poor


@pytest.mark.parametrize("theme", ["light", "dark", "dim"])
def test_lines_and_hatches_show(theme: str) -> None:
    """Rule and kinds reach 3:1 on the ground, each kind on its own liquid too."""
    has = tokens(theme)

    assert [] == [name for name in ("rule", *SIGNS) if contrast(has[name], has["ground"]) < 3]
    assert [] == [sign for sign in SIGNS if contrast(has[sign], has[f"{sign}-liquid"]) < 3]


def test_dark_is_the_same_by_device_and_by_hand() -> None:
    """The values stand twice in the file and must not drift apart."""
    assert tokens("device dark") == tokens("dark")
    assert BLOCKS["device dark"].split() == BLOCKS["dark"].split()


def test_every_theme_has_every_token() -> None:
    """No theme forgets one."""
    assert {frozenset(tokens("light"))} == {frozenset(tokens(theme)) for theme in BLOCKS}


def test_dim_lights_nothing() -> None:
    """Ground and liquids stay under one part in a hundred of white."""
    has = tokens("dim")

    assert max(luminance(has[name]) for name in ("ground", "plate", *(f"{s}-liquid" for s in SIGNS))) < 0.01
