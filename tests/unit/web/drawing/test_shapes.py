"""Surface, stripe, rings."""

from __future__ import annotations

import re

from hypothesis import given
from hypothesis import strategies as st

from tankside.web.drawing.rings import rings
from tankside.web.drawing.shapes import liquid, stripe, surface


def test_a_surface_climbs_9_px_at_both_walls_and_is_flat_between() -> None:
    """It starts and ends 9 px higher than it is read."""
    numbers = [float(one) for one in re.findall(r"-?[\d.]+", surface(left=10, right=110, y=80))]

    assert (10.0, 71.0) == tuple(numbers[:2])
    assert (110.0, 71.0) == tuple(numbers[-2:])
    assert "H92" in surface(left=10, right=110, y=80)


def test_a_liquid_is_closed_under_its_surface() -> None:
    """Down the right wall, along the foot, and up."""
    assert liquid(left=0, right=40, y=10, bottom=90).endswith("V90H0Z")


@given(st.floats(-50, 650))
def test_both_parts_of_the_stripe_meet_at_the_surface(now: float) -> None:
    """One point of each lies on the surface, in the middle, and neither leaves the stripe."""
    one = stripe(x=74, top=0, surface_y=now, bottom=600)
    thin, broad = (
        [tuple(float(n) for n in pair.split(",")) for pair in points.split()]
        for points in (one.thin, one.broad)
    )

    held = float(f"{min(max(now, 0), 600):g}")
    assert (74.0, held) in thin
    assert (74.0, held) in broad
    assert all(0 <= y <= held + 0.01 for _, y in thin)
    assert all(held - 0.01 <= y <= 600 for _, y in broad)
    assert (66.0, 82.0) == (min(x for x, _ in broad), max(x for x, _ in broad))


def test_rings_nearer_than_8_px_lose_their_circle_and_keep_their_line() -> None:
    """The first of a crowd keeps its circle; another tankful's rings are judged apart."""
    found = rings([10, 15, 30], [12])

    assert [(10, True), (15, False), (30, True)] == [(r.at_px, r.circled) for r in found if not r.other]
    assert [(12, True)] == [(r.at_px, r.circled) for r in found if r.other]
