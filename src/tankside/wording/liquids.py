"""Liquids to have ready, in words."""

from __future__ import annotations

from tankside.core.planning.get_ready import ToMake
from tankside.core.planning.liquids import mark_for
from tankside.core.planning.plan import Liquid
from tankside.core.quantities.display import temperature_text, to_step, volume_text
from tankside.core.quantities.preferences import Preferences

LEAST_SEEN_ML = 0.05
"""Half the finest mark of any measure: less is what sums of floats leave behind."""


def amount_sentence(liquid: Liquid, preferences: Preferences) -> str:
    """What it is mixed of, to the marks; a reused bath that stands in its bottle is mixed already.

    Water that falls between the marks of its own measure is not measured but filled up to.

    >>> amount_sentence(Liquid("fix", "fixer", "Fixer", "1+4", 500.0, 100.0, 400.0, True), Preferences())
    '500 mL of Fixer, 1+4: 100 mL and 400 mL of water.'
    >>> stop = Liquid("stop", "stop bath", "Stop", "1+19", 1250.0, 63.0, 1187.0, True)
    >>> amount_sentence(stop, Preferences())
    '1250 mL of Stop, 1+19: 63 mL, then water up to 1250 mL.'
    """
    whole = volume_text(liquid.volume_ml, preferences)
    drawn = drawn_words(liquid)
    if liquid.water_ml <= 0:
        return f"{whole} of {liquid.name}, undiluted{drawn}."
    named = f"{whole} of {liquid.name}, {liquid.parts}"
    if liquid.reusable and liquid.bottle is not None:
        return f"{named}."
    mark_ml = mark_for(liquid.stock_ml)
    stock = volume_text(liquid.stock_ml, preferences, mark_ml=mark_ml) + drawn
    if abs(to_step(liquid.water_ml, mark_for(liquid.water_ml)) - liquid.water_ml) > LEAST_SEEN_ML:
        return f"{named}: {stock}, then water up to {whole}."
    return f"{named}: {stock} and {volume_text(liquid.water_ml, preferences, mark_ml=mark_ml)} of water."


def drawn_words(liquid: Liquid) -> str:
    """The bottle that its stock is drawn from, where the shelf has one."""
    return f" from {liquid.stock_from}" if liquid.stock_from else ""


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
        f"{stock} of {liquid.name}{drawn_words(liquid)}, {hot} of hot water, {cold} of cold: {gives}.",
        read,
    )


def write_on_it(code: str) -> str:
    """What to do with a bottle that was just made.

    >>> write_on_it("F9QD-2")
    'Write F9QD-2 on it.'
    """
    return f"Write {code} on it."


def cost_sentence(minor: int) -> str:
    """What a liquid costs a roll, in the person's own currency, whose name nobody asked.

    >>> cost_sentence(313)
    '3.13 a roll.'
    """
    return f"{minor // 100}.{minor % 100:02d} a roll."


def keeps(liquid: Liquid) -> str:
    """Whether it goes back or away."""
    return "Kept and used again." if liquid.reusable else "Used once, then down the drain."
