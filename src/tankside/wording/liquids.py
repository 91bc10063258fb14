"""Liquids to have ready, in words."""

from __future__ import annotations

from tankside.core.planning.get_ready import ToMake
from tankside.core.planning.liquids import mark_for
from tankside.core.planning.plan import Liquid
from tankside.core.quantities.display import temperature_text, volume_text
from tankside.core.quantities.preferences import Preferences


def amount_sentence(liquid: Liquid, preferences: Preferences) -> str:
    """What it is mixed of, to the marks.

    >>> amount_sentence(Liquid("fix", "fixer", "Fixer", "1+4", 500.0, 100.0, 400.0, True), Preferences())
    '500 mL of Fixer, 1+4: 100 mL and 400 mL of water.'
    """
    whole = volume_text(liquid.volume_ml, preferences)
    if liquid.water_ml <= 0:
        return f"{whole} of {liquid.name}, undiluted."
    stock = volume_text(liquid.stock_ml, preferences, mark_ml=mark_for(liquid.stock_ml))
    water = volume_text(liquid.water_ml, preferences, mark_ml=mark_for(liquid.stock_ml))
    return f"{whole} of {liquid.name}, {liquid.parts}: {stock} and {water} of water."


def make_sentences(item: ToMake, preferences: Preferences) -> tuple[str, ...]:
    """What to do for one liquid, step by step."""
    liquid = item.liquid
    if item.ready:
        return (f"{liquid.name} stands ready in {liquid.bottle}.",)
    if item.target_c is None:
        return (amount_sentence(liquid, preferences),)
    target = temperature_text(item.target_c, preferences)
    back = volume_text(item.hold_back_ml, preferences)
    read = f"Hold back the last {back}, read, then top up hot or cold to {target}."
    if item.tempered is None:
        return (amount_sentence(liquid, preferences), f"Mix to {target}.", read)
    waters = item.tempered
    stock, hot, cold = (
        volume_text(ml, preferences) for ml in (waters.stock_ml, waters.hot_ml, waters.cold_ml)
    )
    gives = temperature_text(waters.gives_c, preferences)
    return (
        f"{volume_text(liquid.volume_ml, preferences)} of {liquid.name}, {liquid.parts}.",
        f"{stock} of {liquid.name}, {hot} of hot water, {cold} of cold: {gives}.",
        read,
    )


def write_on_it(code: str) -> str:
    """What to do with a bottle that was just made.

    >>> write_on_it("F9QD-2")
    'Write F9QD-2 on it.'
    """
    return f"Write {code} on it."


def keeps(liquid: Liquid) -> str:
    """Whether it goes back or away."""
    return "Kept and used again." if liquid.reusable else "Used once, then down the drain."
