"""`tankside capacity`: what a fixer has taken and may take, and what its test piece says."""

from __future__ import annotations

from typing import TYPE_CHECKING, Literal

import click

from tankside.cli.amounts import (
    Typed,
    VolumeWord,
    as_number,
    at,
    degrees_option,
    json_option,
    tell,
    typed_in,
    volumes_option,
)
from tankside.cli.why import print_whys, why_option, with_whys

if TYPE_CHECKING:
    from tankside.core.permanence.capacity import CapacityLeft
    from tankside.core.permanence.clearing import ClearingAnswer, ClearingTest
    from tankside.core.planning.why import Why

COUNT = click.FloatRange(0, 10_000)


@click.command()
@click.option("--ml", required=True, help="Volume of working fixer.")
@click.option("--parts", help="How rapid fixer is diluted, as 1+9; 1+4 unless told.")
@click.option("--rolls", type=COUNT, default=0.0, help="Ordinary rolls of 135-36 or 120 that went through.")
@click.option("--tabular", type=COUNT, default=0.0, help="Rolls of tabular film that went through.")
@click.option("--sheets", type=COUNT, default=0.0, help="Sheets of 4x5 that went through.")
@click.option("--fresh", help="Time in which the test piece cleared when fresh, as 0:45.")
@click.option("--fresh-at", default="20 C", show_default=True, help="What the fixer read then.")
@click.option("--clears", help="Time in which the test piece clears now.")
@click.option("--clears-at", default="20 C", show_default=True, help="What the fixer reads now.")
@degrees_option
@volumes_option
@why_option
@json_option
def capacity(  # noqa: PLR0917 - one argument an option
    ml: str,
    parts: str | None,
    rolls: float,
    tabular: float,
    sheets: float,
    fresh: str | None,
    fresh_at: str,
    clears: str | None,
    clears_at: str,
    degrees: Literal["C", "F"],
    volumes: VolumeWord,
    *,
    asks_why: bool,
    as_json: bool,
) -> None:
    """What a fixer may still take, by film area and by its test piece."""
    from tankside.core.permanence.capacity import Fixed, capacity_left
    from tankside.core.permanence.clearing import judge_clearing

    if (fresh is None) != (clears is None):
        raise click.UsageError("A test piece needs both times: --fresh and --clears.")
    typed = typed_in(degrees, volumes)
    working_ml = typed.volume_ml("--ml", ml)
    fixed = [Fixed(rolls), Fixed(0.25 * sheets), Fixed(tabular, tabular=True)]
    water_parts = _water_parts(parts)
    left = capacity_left(fixed, working_ml=working_ml, water_parts=water_parts)
    test = now = None
    if fresh is not None and clears is not None:
        then, now = _test(typed, "--fresh", fresh, fresh_at), _test(typed, "--clears", clears, clears_at)
        test = judge_clearing(then, now)
    whys = _whys(left, working_ml, test, now) if asks_why else ()
    if as_json:
        tell(with_whys(_numbers(left, test), whys))
        return
    from tankside.wording.chemistry import capacity_sentences, clearing_sentences

    sentences = capacity_sentences(left, working_ml, typed.own)
    for sentence in (*sentences, *(clearing_sentences(test) if test else ())):
        click.echo(sentence)
    print_whys(whys, typed.own)


def _whys(
    left: CapacityLeft, working_ml: float, test: ClearingAnswer | None, now: ClearingTest | None
) -> tuple[Why, ...]:
    """Why so many rolls, and with a good test piece why so long in it."""
    from tankside.core.methods.baths import Times
    from tankside.core.permanence.fixing_time import CEILING_S
    from tankside.core.planning.explain_fixer import why_fixer_left
    from tankside.core.planning.explain_fixing import why_fix

    count = why_fixer_left(left, working_ml=working_ml)
    if test is None or test.verdict != "good":
        return (count,)
    times = Times(test.fix_s, test.fix_s, max(test.fix_s, CEILING_S))
    return count, why_fix(times, longer=False, clears=now)


def _water_parts(parts: str | None) -> float:
    """Parts of water to one of concentrate, as typed."""
    from tankside.core.permanence.capacity import COUNTED_WATER_PARTS
    from tankside.core.solutions.notation import read_dilution

    if parts is None:
        return COUNTED_WATER_PARTS
    return at("--parts", lambda: read_dilution(parts)).times - 1


def _test(typed: Typed, option: str, time: str, temperature: str) -> ClearingTest:
    """One test piece as typed."""
    from tankside.core.permanence.clearing import ClearingTest
    from tankside.core.quantities.entry import read_time

    temp_c = typed.temp_c(f"{option}-at", temperature)
    return at(option, lambda: ClearingTest(read_time(time), temp_c))


def _numbers(left: CapacityLeft, test: ClearingAnswer | None) -> dict[str, object]:
    """The answer as JSON tells it: two sources, never a mean."""
    from tankside.core.quantities.display import ROLLS_STEP
    from tankside.wording.chemistry import whole_rolls

    count, rule = "Anchell (2008) p. 108", "NAVEDTRA 14209 (1993) p. 249"
    told: dict[str, object] = {
        "used": as_number(left.used_units, "rolls", step=ROLLS_STEP, source="counted by area"),
        "left": {
            "planned": as_number(
                whole_rolls(left.left_planned), "rolls", step=1, source=f"{count}, 20 a litre"
            ),
            "named": as_number(whole_rolls(left.left_named), "rolls", step=1, source=f"{count}, 25 a litre"),
        },
        "offered": {"ordinary": left.ordinary_rolls, "tabular": left.tabular_rolls},
    }
    if test is not None:
        told["test_piece"] = {
            "times_fresh": as_number(test.ratio, "", step=0.1, source="TM 11-2323, para. 33c"),
            "verdict": test.verdict,
        }
    if test is not None and test.verdict == "good":
        told["fix"] = {
            "ordinary": as_number(test.fix_s, "s", step=5, source=rule),
            "tabular_or_unknown": as_number(test.fix_tabular_s, "s", step=5, source="common practice"),
        }
    return told
