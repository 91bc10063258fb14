"""`tankside time`: how long to develop at what the developer reads."""

from __future__ import annotations

from typing import TYPE_CHECKING, Literal

import click

from tankside.cli.amounts import (
    Typed,
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
from tankside.cli.meant_time import Meant, meant, push_option, relabelled, with_option
from tankside.cli.why import print_whys, why_option, with_whys

if TYPE_CHECKING:
    from tankside.core.methods.known_time import KnownTime
    from tankside.core.planning.development import Setting, WithParts
    from tankside.core.planning.why import Why


@click.command()
@click.option("--time", "printed", required=True, help="The time of the leaflet, as 9:30 or '9 1/2'.")
@click.option("--at", "printed_at", required=True, help="The temperature it is printed for.")
@click.option("--tank-ml", required=True, help="Volume of the tank.")
@click.option("--reads", required=True, help="What the mixed developer reads now.")
@click.option(
    "--tank-of", type=click.Choice(["plastic", "steel"]), default="plastic", help="What the tank is made of."
)
@click.option("--tank-at", help="What the empty tank reads; as the room unless told.")
@click.option("--tank-worth", help="What the empty tank is worth in water; by its material unless told.")
@click.option("--room", help="What the room reads.  [default: 20 C]")
@click.option("--tau", type=click.FloatRange(3, 300), help="Your tank's own time constant, in minutes.")
@click.option("--q10", type=click.FloatRange(1.1, 5), help="Your developer's own factor per 10 K.")
@click.option(
    "--row",
    "rows",
    multiple=True,
    metavar="TIME@TEMP",
    help="Another row of the same leaflet, as '8:00@22'; as often as it has rows.",
)
@click.option(
    "--hydroquinone/--no-hydroquinone",
    default=None,
    help="Whether the developer holds any; asked below 16 C only.",
)
@push_option
@with_option
@thermometer_option
@degrees_option
@volumes_option
@why_option
@json_option
def time(  # noqa: PLR0917 - one argument an option
    printed: str,
    printed_at: str,
    tank_ml: str,
    reads: str,
    tank_of: Literal["plastic", "steel"],
    tank_at: str | None,
    tank_worth: str | None,
    room: str | None,
    tau: float | None,
    q10: float | None,
    rows: tuple[str, ...],
    stops: float | None,
    others: tuple[str, ...],
    thermometer: str,
    degrees: Literal["C", "F"],
    volumes: VolumeWord,
    *,
    hydroquinone: bool | None,
    asks_why: bool,
    as_json: bool,
) -> None:
    """How long to develop in this tank, at what the developer reads now."""
    from tankside.core.planning.development import mix_to, time_for
    from tankside.core.quantities.entry import read_time

    typed = typed_in(degrees, volumes)
    time_s = at("--time", lambda: read_time(printed))
    printed_rows = [(time_s, typed.temp_c("--at", printed_at)), *(_row(typed, one) for one in rows)]
    asked = meant(typed_rows(printed_rows, q10=q10, hydroquinone=hydroquinone), stops=stops, others=others)
    known, meant_s = asked.known, asked.known.row.time_s
    setting = _setting(
        typed, tank_ml=tank_ml, tank_of=tank_of, tank_at=tank_at, tank_worth=tank_worth, room=room, tau=tau
    )
    reads_c = typed.temp_c("--reads", reads)
    end = time_for(known, setting, reads_c, thermometer_step_c=float(thermometer))
    end = relabelled(end) if stops else end
    mixed = mix_to(known, setting, meant_s)
    whys = _whys(known, setting, end, reads_c) if asks_why else ()
    if as_json:
        told = _numbers(end, mixed, asked, setting, reads_c=reads_c, mark_k=float(thermometer))
        tell(with_whys(told, whys))
        return
    from tankside.wording.developing import setting_sentence, time_sentences

    said = time_sentences(
        end.estimate, mixed.estimate, setting, typed.own,
        reads_c=reads_c, time_s=meant_s, mark=float(thermometer),
    )  # fmt: skip
    for sentence in (*asked.sentences, *said, "", setting_sentence(setting, typed.own, q10=known.rate.q10)):
        click.echo(sentence)
    print_whys(whys, typed.own)


def _whys(known: KnownTime, setting: Setting, end: WithParts, reads_c: float) -> tuple[Why, ...]:
    """Why this time, and what contrast it will make."""
    from tankside.core.planning.explain_contrast import why_contrast
    from tankside.core.planning.explain_timing import why_time
    from tankside.core.planning.one_tankful import TimedTankful

    found = TimedTankful(known, setting, end, None)
    return (
        why_time(found, jug_c=reads_c, answer=end.estimate),
        why_contrast(found, start_c=setting.start_c(reads_c), end_s=end.estimate.value),
    )


def _setting(
    typed: Typed,
    *,
    tank_ml: str,
    tank_of: Literal["plastic", "steel"],
    tank_at: str | None,
    tank_worth: str | None,
    room: str | None,
    tau: float | None,
) -> Setting:
    """The tank and the room, assumed where nothing was told."""
    from tankside.core.planning.development import Setting
    from tankside.core.planning.first_evening import ROOM_C
    from tankside.core.quantities import limits
    from tankside.core.thermal.tank import tau_by_volume_min, worth_by_volume_ml

    volume_ml = typed.volume_ml("--tank-ml", tank_ml)
    room_c = ROOM_C if room is None else typed.temp_c("--room", room, limits=limits.ROOM_C)
    return Setting(
        volume_ml=volume_ml,
        worth_ml=worth_by_volume_ml(tank_of, volume_ml)
        if tank_worth is None
        else typed.volume_ml("--tank-worth", tank_worth),
        tank_c=room_c if tank_at is None else typed.temp_c("--tank-at", tank_at),
        room_c=room_c,
        tau_min=tau_by_volume_min(tank_of, volume_ml) if tau is None else tau,
        material=tank_of,
    )


def _numbers(
    end: WithParts, mixed: WithParts, asked: Meant, setting: Setting, *, reads_c: float, mark_k: float
) -> dict[str, object]:
    """The answer as JSON tells it."""
    from tankside.core.quantities.display import FACTOR_STEP, time_step_s

    doubt_s = end.estimate.high - end.estimate.low
    return {
        "pour_out_after": as_estimate(end.estimate, step=time_step_s(doubt_s)),
        "doubt_from": [one.code for one in end.parts],
        "starts_at": as_number(setting.start_c(reads_c), "C", step=mark_k, source="tank and liquid met"),
        "mix_to_keep_the_time": as_estimate(mixed.estimate, step=mark_k),
        "factor_per_10_k": as_estimate(asked.known.rate.q10, step=FACTOR_STEP),
        "tank_worth": as_number(setting.worth_ml, "mL", step=1, source="told or by volume"),
        **(asked.numbers or {}),
    }


def _row(typed: Typed, text: str) -> tuple[float, float]:
    """A row typed as TIME@TEMP: seconds and C."""
    from tankside.core.quantities.entry import read_time

    time, _, temp = text.partition("@")
    return at("--row", lambda: read_time(time.strip())), typed.temp_c("--row", temp.strip())


def typed_rows(
    printed: list[tuple[float, float]], *, q10: float | None, hydroquinone: bool | None
) -> KnownTime:
    """Printed times (s, C) as a combination would know them; kept nowhere, so without keys and dates."""
    from dataclasses import replace
    from datetime import date
    from uuid import UUID

    from tankside.core.development.printed_rows import Row, printed_step_s
    from tankside.core.development.rate import rate_of
    from tankside.core.doubt.estimate import Estimate
    from tankside.core.methods.combinations import TimeRow
    from tankside.core.methods.known_time import KnownTime

    rows = tuple(
        TimeRow(UUID(int=0), time_s, temp_c, 1.0, "leaflet", "as typed", date.min)
        for time_s, temp_c in printed
    )
    step_s = printed_step_s([one.time_s for one in rows])
    rate = rate_of([Row(one.temp_c, one.time_s, step_s) for one in rows], ref_c=rows[0].temp_c)
    if q10 is not None:
        rate = replace(rate, q10=Estimate(q10, q10, q10, "per 10 K", "told"))
    return KnownTime(rows[0], rows, rate, hydroquinone=hydroquinone)
