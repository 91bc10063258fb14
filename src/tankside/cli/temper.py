"""`tankside temper`: hot and cold water for a jug at a wanted temperature."""

from __future__ import annotations

from collections.abc import Sequence
from typing import TYPE_CHECKING, Literal

import click

from tankside.cli.amounts import (
    VolumeWord,
    as_estimate,
    as_number,
    at,
    degrees_option,
    json_option,
    tell,
    thermometer_option,
    typed_in,
    volumes_option,
)
from tankside.cli.why import print_whys, why_option, with_whys

if TYPE_CHECKING:
    from tankside.core.doubt.estimate import Estimate
    from tankside.core.planning.tempering import Taps, Tempered
    from tankside.core.quantities.preferences import Preferences

HOT_AND_COLD: tuple[Literal["hot"], Literal["cold"]] = ("hot", "cold")


@click.command()
@click.option("--ml", required=True, help="Volume of the whole, as 500 or '17 fl oz'.")
@click.option("--to", required=True, help="What the jug shall read.")
@click.option("--hot", required=True, help="What the hot water reads.")
@click.option("--cold", required=True, help="What the cold water reads.")
@click.option("--stock-ml", help="Stock in it.")
@click.option("--parts", help="The same by parts, as 1+1 or '1 in 50'.")
@click.option("--stock-at", help="What the stock reads.")
@click.option("--jug", help="What the jug is worth in water; none unless told.")
@click.option("--jug-at", help="What the empty jug reads; as the stock unless told.")
@click.option("--mark", default="1 ml", show_default=True, help="Finest mark of the measure.")
@thermometer_option
@degrees_option
@volumes_option
@why_option
@json_option
def temper(  # noqa: PLR0917 - one argument an option
    ml: str,
    to: str,
    hot: str,
    cold: str,
    stock_ml: str | None,
    parts: str | None,
    stock_at: str | None,
    jug: str | None,
    jug_at: str | None,
    mark: str,
    thermometer: str,
    degrees: Literal["C", "F"],
    volumes: VolumeWord,
    *,
    asks_why: bool,
    as_json: bool,
) -> None:
    """How much hot and how much cold water bring a jug to temperature."""
    from tankside.core.planning.explain_waters import why_waters
    from tankside.core.planning.tempering import Taps, tempered
    from tankside.core.planning.tempering_doubt import jug_will_read

    _enough_told(stock_ml, parts, stock_at, jug, jug_at)
    typed = typed_in(degrees, volumes)
    whole_ml, mark_ml = typed.volume_ml("--ml", ml), typed.volume_ml("--mark", mark)
    cold_c = typed.temp_c("--cold", cold)
    taps = Taps(
        hot_c=typed.temp_c("--hot", hot),
        cold_c=cold_c,
        stock_c=cold_c if stock_at is None else typed.temp_c("--stock-at", stock_at),
        jug_worth_ml=0.0 if jug is None else typed.volume_ml("--jug", jug),
        jug_c=None if jug_at is None else typed.temp_c("--jug-at", jug_at),
    )
    held_ml = 0.0 if stock_ml is None else typed.volume_ml("--stock-ml", stock_ml)
    stock, target_c = held_ml if parts is None else _by_parts(parts, whole_ml), typed.temp_c("--to", to)
    out = tempered(stock_ml=stock, volume_ml=whole_ml, target_c=target_c, taps=taps, mark_ml=mark_ml)
    reads = jug_will_read(out, taps, mark_ml=mark_ml, mark_k=float(thermometer))
    whys = [
        why_waters(which, taps, stock_ml=stock, volume_ml=whole_ml, target_c=target_c, mark_ml=mark_ml)
        for which in HOT_AND_COLD
    ]
    if as_json:
        waters = [one.answer for one in whys]
        told = _numbers(out, reads, waters, mark_ml, mark_k=float(thermometer))
        tell(with_whys(told, whys if asks_why else ()))
        return
    _print(out, taps, typed.own, reads, mark_ml, mark=float(thermometer))
    print_whys(whys if asks_why else (), typed.own)


def _enough_told(
    stock_ml: str | None, parts: str | None, stock_at: str | None, jug: str | None, jug_at: str | None
) -> None:
    """Say which option is missing, or one too many."""
    has_stock = stock_ml is not None or parts is not None
    if stock_ml is not None and parts is not None:
        raise click.UsageError("Tell the stock by --stock-ml or by --parts, not by both.")
    if has_stock and stock_at is None:
        raise click.UsageError("What does the stock read? Tell it with --stock-at.")
    if jug is not None and jug_at is None and not has_stock:
        raise click.UsageError("What does the empty jug read? Tell it with --jug-at.")


def _by_parts(parts: str, whole_ml: float) -> float:
    """Stock in mL for the whole, by parts as typed."""
    from tankside.core.solutions.dilution import stock_and_water
    from tankside.core.solutions.notation import read_dilution

    return stock_and_water(whole_ml, at("--parts", lambda: read_dilution(parts))).stock_ml


def _numbers(
    out: Tempered, reads: Estimate, waters: Sequence[Estimate], mark_ml: float, *, mark_k: float
) -> dict[str, object]:
    """The answer as JSON tells it; hot and cold water with what the readings leave of doubt."""
    source = "enthalpy balance of water"
    hot, cold = waters
    return {
        "stock": as_number(out.stock_ml, "mL", step=mark_ml, source="told"),
        "hot_water": as_estimate(hot, step=mark_ml),
        "cold_water": as_estimate(cold, step=mark_ml),
        "hot_and_cold_together": as_number(out.water_c, "C", step=mark_k, source=source),
        "jug_will_read": as_estimate(reads, step=mark_k),
        "hold_back": as_number(out.hold_back_ml, "mL", step=mark_ml, source="ours"),
    }


def _print(
    out: Tempered, taps: Taps, own: Preferences, reads: Estimate, mark_ml: float, *, mark: float
) -> None:
    """The answer as a person reads it: what to measure, then what to do."""
    from tankside.wording.tempering import measured, tempering_sentences

    rows = measured(out, taps, own, mark_ml=mark_ml)
    widths = [max(len(row[column]) for row in rows) for column in range(3)]
    for what, much, warm in rows:
        click.echo(f"{what:<{widths[0]}}  {much:>{widths[1]}}  at {warm:>{widths[2]}}")
    click.echo()
    for sentence in tempering_sentences(out, taps, own, jug=reads, mark_ml=mark_ml, mark=mark):
        click.echo(sentence)
