"""What the screen between Plan and Sink shows: the bench, the liquid in hand, what comes after it."""

from __future__ import annotations

from collections.abc import Sequence
from dataclasses import dataclass

from tankside.core.planning.get_ready import ToMake, taps_of, to_make
from tankside.core.planning.liquids import mark_for
from tankside.core.planning.plan import Plan
from tankside.core.planning.tempering import top_up
from tankside.core.quantities.display import temperature_text, volume_text
from tankside.core.quantities.preferences import Preferences
from tankside.core.refusals import Refusal, Refused
from tankside.core.shelf.bottles import Bottle
from tankside.web.drawing.kinds import Sign, sign_of_solution
from tankside.web.drawing.vessel import Bottle as DrawnBottle
from tankside.web.drawing.vessel import Cylinder, bottle, cylinder
from tankside.web.shown.minded import Said, at_all_times, at_the_shelf, minded
from tankside.wording.liquids import keeps, make_sentences
from tankside.wording.plan import time_sentence

BOTTLE_PX, FOOT_PX, LEFT_PX = 60.0, 150.0, 8.0
LEAST_PICTURED_SHARE = 0.02
"""A smaller share of stock has no level that anybody could see."""


@dataclass(frozen=True, slots=True)
class OnBench:
    """One liquid as a bottle on the bench: `standing` is made, open or coming."""

    key: str
    name: str
    sign: Sign
    standing: str
    code: str
    cap: str
    drawn: DrawnBottle


@dataclass(frozen=True, slots=True)
class InHand:
    """The liquid that is made now.

    `measure` are its parts as rows; `tops_up` what the water held back is to be, once the jug was read.
    """

    key: str
    name: str
    sign: Sign
    steps: tuple[str, ...]
    keeps: str
    vessel: Cylinder | None
    stock: str
    measure: tuple[tuple[str, str], ...]
    asks_taps: bool
    asks_jug: bool
    cannot: Refusal | None
    tops_up: str
    doors: tuple[tuple[str, str], ...]
    cautions: tuple[Said, ...]
    on_pouring: tuple[Said, ...]


@dataclass(frozen=True, slots=True)
class Ready:
    """The whole screen."""

    bench: tuple[OnBench, ...]
    hand: InHand | None
    made: OnBench | None
    left: int
    asks_reading: bool
    times: tuple[str, ...]
    always: tuple[Said, ...]


def ready(
    plan: Plan,
    bottles: Sequence[Bottle],
    preferences: Preferences,
    *,
    wanted: str = "",
    made: str = "",
    jug_c: float | None = None,
) -> Ready:
    """A plan's liquids in order; `wanted` is the one asked for, `made` the one just put into its bottle."""
    items = to_make(plan, plan.place)
    waiting = [one for one in items if not one.ready]
    asked = [one for one in waiting if one.liquid.key == wanted]
    first = next(iter(asked or waiting), None)
    caps = {one.code: one.cap for one in bottles}
    bench = tuple(_on_bench(one, first, caps) for one in items)
    return Ready(
        bench,
        _in_hand(first, plan, preferences, jug_c) if first else None,
        next((one for one in bench if one.key == made and one.code), None),
        len(waiting),
        plan.wish is not None,
        tuple(time_sentence(one) for one in plan.tankfuls),
        at_all_times(),
    )


def _on_bench(item: ToMake, first: ToMake | None, caps: dict[str, str]) -> OnBench:
    """One bottle of the row."""
    code = item.liquid.bottle or ""
    standing = "made" if item.ready else "open" if item is first else "coming"
    drawn = bottle(left=LEFT_PX, foot=FOOT_PX, width_px=BOTTLE_PX, height_px=112.0, full=0.8 if code else 0.0)
    return OnBench(
        item.liquid.key,
        item.liquid.name,
        sign_of_solution(item.liquid.kind),
        standing,
        code,
        caps.get(code, ""),
        drawn,
    )


def _in_hand(item: ToMake, plan: Plan, preferences: Preferences, jug_c: float | None) -> InHand:
    """Everything said of the liquid that is made now."""
    liquid = item.liquid
    tempers = item.target_c is not None and liquid.water_ml > 0
    tops_up, cannot = "", item.cannot
    if tempers and jug_c is not None:
        try:
            tops_up = _top_up(item, plan, preferences, jug_c)
        except Refused as refused:
            cannot = refused.refusal
    return InHand(
        liquid.key,
        liquid.name,
        sign_of_solution(liquid.kind),
        make_sentences(item, preferences),
        keeps(liquid),
        _vessel(item),
        volume_text(liquid.stock_ml, preferences, mark_ml=mark_for(liquid.stock_ml)).split()[0],
        _measure(item, preferences),
        tempers,
        tempers and item.tempered is not None,
        cannot,
        tops_up,
        _doors(item),
        minded(item.cautions),
        at_the_shelf(liquid.kind, "pour"),
    )


def _vessel(item: ToMake) -> Cylinder | None:
    """The measure with the stock up to its level, where that can be seen."""
    whole, stock = item.liquid.volume_ml, item.liquid.stock_ml
    if not LEAST_PICTURED_SHARE <= stock / whole < 1:
        return None
    return cylinder(high=whole, unit=whole / 20, holds=stock, left=46, top=24, width_px=56, height_px=120)


def _measure(item: ToMake, preferences: Preferences) -> tuple[tuple[str, str], ...]:
    """Stock, hot and cold water, and what they come to."""
    waters = item.tempered
    if waters is None:
        return ()
    amounts = ((item.liquid.name, waters.stock_ml), ("hot water", waters.hot_ml), ("cold", waters.cold_ml))
    whole = volume_text(item.liquid.volume_ml, preferences)
    rows = ((name, volume_text(ml, preferences)) for name, ml in amounts if ml > 0)
    return (*rows, ("together", f"{whole} at {temperature_text(waters.gives_c, preferences)}"))


def _top_up(item: ToMake, plan: Plan, preferences: Preferences, jug_c: float) -> str:
    """The water held back, hot and cold, from what the jug reads."""
    taps = taps_of(plan.place)
    if taps is None or item.target_c is None:
        return ""
    last = top_up(
        in_jug_ml=item.liquid.volume_ml - item.hold_back_ml,
        reads_c=jug_c,
        volume_ml=item.liquid.volume_ml,
        target_c=item.target_c,
        taps=taps,
        mark_ml=1.0,
    )
    hot, cold, held = (
        volume_text(ml, preferences) for ml in (last.hot_ml, last.cold_ml, last.hot_ml + last.cold_ml)
    )
    return f"The last {held}: {hot} hot and {cold} cold."


def _doors(item: ToMake) -> tuple[tuple[str, str], ...]:
    """The doors to the working of each number: words and path."""
    letter = item.liquid.key.removeprefix("develop-")
    if item.liquid.kind == "fixer":
        return (("Why so long in it?", "/plan/why/fix?back=ready"),)
    if item.target_c is None:
        return ()
    target = ("Why this temperature?", f"/plan/why/mix-to?tankful={letter}&back=ready")
    enough = ("Why is this enough for the film?", f"/plan/why/least-stock?tankful={letter}&back=ready")
    if item.tempered is None:
        return target, enough
    return (target, enough, ("Why so much hot water?", f"/plan/why/hot?tankful={letter}&back=ready"))
