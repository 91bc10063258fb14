"""`tankside curve`: what a step strip tells, from a file of readings or from pairs."""

from __future__ import annotations

from typing import TYPE_CHECKING, TextIO

import click

from tankside.cli.amounts import as_estimate, json_option, tell
from tankside.cli.why import print_whys, why_option, with_whys

if TYPE_CHECKING:
    from tankside.core.doubt.estimate import Estimate
    from tankside.core.refusals import Refusal
    from tankside.core.sensitometry.findings import Finding, Findings
    from tankside.core.sensitometry.speed import Speed

Pairs = list[tuple[float, float]]


@click.command()
@click.argument("readings", type=click.File("r", encoding="utf-8"), required=False)
@click.option("--pair", "pairs", type=(float, float), multiple=True, metavar="LOG_H DENSITY",
              help="One reading instead of a file; again for each step.")  # fmt: skip
@click.option(
    "--step", default=0.15, show_default=True, help="Log exposure from step to step, for files of steps."
)
@click.option(
    "--base-fog", type=float, help="Density of unexposed, developed film; the curve's foot unless told."
)
@click.option("--reading-sd", default=0.02, show_default=True, help="Standard deviation of one reading.")
@click.option(
    "--lux-seconds", is_flag=True, help="Exposures are log10 lux-seconds in the light of the standard."
)
@click.option("--metered-index", type=float, help="Index at which a meter told the exposure of log H 0.")
@why_option
@json_option
def curve(  # noqa: PLR0917 - one argument an option
    readings: TextIO | None,
    pairs: tuple[tuple[float, float], ...],
    step: float,
    base_fog: float | None,
    reading_sd: float,
    lux_seconds: bool,
    metered_index: float | None,
    *,
    asks_why: bool,
    as_json: bool,
) -> None:
    """Base and fog, speed, contrast index, gamma and useful range of one step strip.

    READINGS is a CSV file with the columns log_h and density, or step and density ('-': piped in).
    """
    import numpy as np

    from tankside.core.doubt.estimate import Estimate
    from tankside.core.methods.step_strips import Exposed
    from tankside.core.planning.explain_curve import why_curve
    from tankside.core.planning.explain_speed import why_speed
    from tankside.core.sensitometry.curve import Strip
    from tankside.core.sensitometry.findings import findings_of
    from tankside.core.sensitometry.speed import Speed
    from tankside.wording.refusals import PLAIN

    if (readings is None) == (not pairs):
        raise click.UsageError("Name a file of readings, or tell them with --pair.")
    read = list(pairs) if readings is None else _read(readings, step)
    log_h, density = np.array(sorted(read)).T if read else (np.empty(0), np.empty(0))
    found = findings_of(Strip(log_h, density, base_fog, reading_sd))
    speed = found.speed(stated_light=True) if lux_seconds else None
    index = None if metered_index is None else found.index(metered_index=metered_index, metered_log_h=0.0)
    whys = []
    if asks_why:
        whys.append(why_curve(found, reading_sd=reading_sd))
        if isinstance(speed, Speed) or isinstance(index, Estimate):
            exposed = Exposed(0.0 if lux_seconds else None, lux_seconds, metered_index)
            whys.append(why_speed(found, exposed, reading_sd=reading_sd))
    if as_json:
        tell(with_whys(_numbers(found, speed, index), whys))
        return
    _print(found, speed, index)
    print_whys(whys, PLAIN)


def _read(readings: TextIO, step: float) -> Pairs:
    """Log exposures and densities of a CSV file."""
    from tankside.core.quantities.readings import read_table

    read = read_table(readings.read())
    along = read.log_h or [step * number for number in read.steps or ()]
    return [(x, density) for x, density in zip(along, read.densities, strict=True) if density is not None]


def _numbers(found: Findings, speed: Speed | Refusal | None, index: Finding | None) -> dict[str, object]:
    """The answer as JSON tells it."""
    from tankside.core.doubt.estimate import Estimate
    from tankside.core.sensitometry.speed import Speed
    from tankside.wording.curves import NAMES

    told: dict[str, object] = {"base_fog": _number(found.curve.base_fog)}
    told |= {name: _number(getattr(found, name)) for name in NAMES}
    told["scatter"] = round(found.curve.scatter, 3)
    if isinstance(speed, Speed):
        told["speed"] = {
            "kind": speed.kind, "arithmetic": speed.arithmetic, "degrees": speed.degrees,
            "condition": speed.condition, **_standard(speed.value),
        }  # fmt: skip
    elif speed is not None:
        told["speed"] = _number(speed)
    if isinstance(index, Estimate):
        told["exposure_index"] = _standard(index)
    elif index is not None:
        told["exposure_index"] = _number(index)
    return told


def _standard(of: Estimate) -> dict[str, object]:
    """An index in standard steps, which are a third of a stop."""
    from tankside.wording.curves import standard_index

    return {"value": standard_index(of.value), "interval": [standard_index(of.low), standard_index(of.high)]}


def _number(found: Finding) -> dict[str, object]:
    """One finding, or why there is none."""
    from tankside.core.refusals import Refusal
    from tankside.wording.curves import step_of
    from tankside.wording.refusals import say

    if isinstance(found, Refusal):
        return {"refused": say(found)}
    return as_estimate(found, step=step_of(found.high - found.low))


def _print(found: Findings, speed: Speed | Refusal | None, index: Finding | None) -> None:
    """The answer as a person reads it."""
    from tankside.core.refusals import Refusal
    from tankside.core.sensitometry.speed import Speed
    from tankside.wording.curves import curve_lines, speed_text, standard_index
    from tankside.wording.refusals import say

    for line in curve_lines(found):
        click.echo(line)
    if isinstance(speed, Speed):
        click.echo(speed_text(speed))
    elif isinstance(speed, Refusal):
        click.echo(say(speed))
    if isinstance(index, Refusal):
        click.echo(say(index))
    elif index is not None:
        low, value, high = (standard_index(one) for one in (index.low, index.value, index.high))
        click.echo(f"Exposure index {value:g} ({low:g} to {high:g}); from a camera, so it is no ISO speed.")
