"""Why a step strip tells this speed, this exposure index, or a speed point and no speed."""

from __future__ import annotations

from math import log10

from tankside.core.doubt.estimate import Estimate
from tankside.core.methods.step_strips import Exposed
from tankside.core.planning.explain_curve import curve_plot
from tankside.core.planning.why import Figure, Length, LengthCode, Mark, Narrowing, PartOfDoubt, Plot, Why
from tankside.core.refusals import Refusal, Refused
from tankside.core.sensitometry.findings import Finding, Findings
from tankside.core.sensitometry.shape import SPEED_POINT_D
from tankside.core.sensitometry.speed import (
    ISO_LOG_H,
    ISO_RISE,
    ISO_RISE_LIMIT,
    METERED_OVER_SPEED_POINT,
    Speed,
    degrees_of,
)

SPEED_PAGE = "docs/science/speed-and-contrast-index"


def why_speed(found: Findings, exposed: Exposed, *, reading_sd: float) -> Why:
    """Why a strip has its speed; refused where the curve tells none.

    Arguments: how it was `exposed`, standard deviation of one reading in density. Result: in degrees where
    the exposure was known or metered, else the speed point in log exposure.
    Source: ISO 6:1993 and `exposure_index`. Doubt: that of the readings alone.
    """
    answer, length = _answer(found, exposed)
    return Why(
        "speed",
        None,
        answer,
        (length,),
        (PartOfDoubt("densities", (answer.high - answer.low) / 2),),
        _narrows(length.code),
        (
            *_point(found.speed_point),
            *length.figures,
            Figure("base_fog", found.curve.base_fog.value, "density", found.curve.base_fog.source),
            Figure("reading_sd", reading_sd, "density", "told"),
        ),
        "speed point: where density stands 0.10 above base and fog. S = 0.8 / Hm, Hm in lux seconds; by a "
        "meter index = metered index x 10 ^ (metered log H - log Hm - 1.01); degrees = 1 + 10 log S",
        (SPEED_PAGE, "docs/science/curves", "iso-6"),
        leaves_out=_leaves_out(length.code),
        plot=_plot(found),
    )


def _answer(found: Findings, exposed: Exposed) -> tuple[Estimate, Length]:
    """The speed in degrees, or the speed point, as the one source there is."""
    if exposed.log_h0 is not None:
        speed = _told(found.speed(stated_light=exposed.stated_light))
        figures = (
            *_rise(found.rise),
            Figure("iso_rise", ISO_RISE, "density", "ISO 6"),
            Figure("iso_limit", ISO_RISE_LIMIT, "density", "ISO 6, from memory"),
            Figure("stated_light", float(exposed.stated_light), "yes", "told"),
            Figure("iso", float(speed.kind == "ISO speed"), "yes", "computed"),
        )
        return _as_length("speed-absolute", _in_degrees(speed.value), figures)
    if exposed.metered_index is not None:
        index = _told_finding(found.index(metered_index=exposed.metered_index, metered_log_h=0.0))
        metered = (
            Figure("metered_index", exposed.metered_index, "", "told"),
            Figure("metered_over", float(METERED_OVER_SPEED_POINT), "log H", "ISO 2720, from memory"),
        )
        return _as_length("speed-metered", _in_degrees(index), metered)
    point = _told_finding(found.speed_point)
    return _as_length(
        "speed-relative", Estimate(point.value, point.low, point.high, "log H", point.source), ()
    )


def _as_length(code: LengthCode, told: Estimate, figures: tuple[Figure, ...]) -> tuple[Estimate, Length]:
    """An answer and the same as a length."""
    return told, Length(code, told, figures)


def _told(speed: Speed | Refusal) -> Speed:
    """The speed, or its refusal raised."""
    if isinstance(speed, Refusal):
        raise Refused(speed)
    return speed


def _told_finding(one: Finding) -> Estimate:
    """The finding, or its refusal raised."""
    if isinstance(one, Refusal):
        raise Refused(one)
    return one


def _in_degrees(speed: Estimate) -> Estimate:
    """A speed in degrees, each a third of a stop; refused outside the standard speeds."""
    degrees_of(speed.value)
    value, low, high = (1 + 10 * log10(one) for one in (speed.value, speed.low, speed.high))
    return Estimate(value, low, high, "degrees", speed.source)


def _point(point: Finding) -> tuple[Figure, ...]:
    """The speed point as an input."""
    return () if isinstance(point, Refusal) else (Figure("speed_point", point.value, "log H", point.source),)


def _rise(rise: Finding) -> tuple[Figure, ...]:
    """How far density rises over 1.30, with its interval."""
    if isinstance(rise, Refusal):
        return ()
    named = (("rise", rise.value), ("rise_low", rise.low), ("rise_high", rise.high))
    return tuple(Figure(code, value, "density", rise.source) for code, value in named)


def _narrows(code: LengthCode) -> tuple[Narrowing, ...]:
    """What would narrow it, or make a speed of it."""
    told = ("read-twice",) if code == "speed-absolute" else ("read-twice", "known-exposure")
    return tuple(Narrowing(one) for one in told)


def _leaves_out(code: LengthCode) -> tuple[str, ...]:
    """What the interval does not hold."""
    return ("light-and-roll", "third-of-a-stop" if code == "speed-metered" else "one-strip")


def _plot(found: Findings) -> Plot:
    """The curve with its speed point, where it stands 1.30 further on, and where ISO 6 asks it to stand."""
    marks = []
    if isinstance(found.speed_point, Estimate):
        log_h = found.speed_point.value
        marks.append(Mark("speed-point", log_h, SPEED_POINT_D))
        if isinstance(found.rise, Estimate):
            marks.append(Mark("further-on", log_h + ISO_LOG_H, SPEED_POINT_D + found.rise.value))
    return curve_plot(found.curve, code="speed", marks=marks, level=SPEED_POINT_D + ISO_RISE)
