"""Draw the plots of these pages again: python docs/science/draw_figures.py"""

from __future__ import annotations

from pathlib import Path

from tankside.figures.science_pages import PAGES, drawn

if __name__ == "__main__":
    for page in PAGES:
        Path(__file__).with_name("figures").joinpath(f"{page}.svg").write_text(drawn(page), encoding="utf-8")
