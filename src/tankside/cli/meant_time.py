"""`tankside time` where the film was pushed or pulled, or shares its tank: the time then meant."""

from __future__ import annotations

from dataclasses import dataclass, replace
from functools import partial
from typing import TYPE_CHECKING

import click

from tankside.cli.amounts import at

if TYPE_CHECKING:
    from tankside.core.development.one_tank import Together
    from tankside.core.development.push import Pushed
    from tankside.core.doubt.estimate import Estimate
    from tankside.core.methods.known_time import KnownTime
    from tankside.core.planning.development import WithParts

STEP_S = 15.0

push_option = click.option(
    "--push", "stops", type=float,
    help="Stops that the film was given too little light; below 0: too much, a pull.",
)  # fmt: skip
with_option = click.option(
    "--with", "others", multiple=True, metavar="TIME",
    help="Another film's own time at the same temperature, to go in the same tank; again for each.",
)  # fmt: skip


@dataclass(frozen=True, slots=True)
class Meant:
    """What is known once the time is meant otherwise, and what is told of it."""

    known: KnownTime
    sentences: tuple[str, ...] = ()
    numbers: dict[str, object] | None = None


def meant(known: KnownTime, *, stops: float | None, others: tuple[str, ...]) -> Meant:
    """The known time, or what it becomes by a push or beside other films."""
    if stops and others:
        raise click.UsageError("--push and --with ask for two times: leave one of them out.")
    if stops:
        return _pushed(known, stops)
    return _together(known, others) if others else Meant(known)


def _pushed(known: KnownTime, stops: float) -> Meant:
    """The time that brings the mid-tones back."""
    from tankside.core.development.push import push
    from tankside.wording.developing import push_sentences

    came_to = at("--push", lambda: push(stops, time_s=known.row.time_s))
    return Meant(
        _meant(known, came_to.time, f"pushed by {stops:g}" if stops > 0 else f"pulled by {-stops:g}"),
        push_sentences(came_to),
        _push_numbers(came_to),
    )


def _together(known: KnownTime, others: tuple[str, ...]) -> Meant:
    """The time whose worst miss of contrast is least."""
    from tankside.core.development.one_tank import Due, fairest_together, made_together
    from tankside.core.doubt.estimate import Estimate
    from tankside.core.quantities.display import to_step
    from tankside.core.quantities.entry import read_time
    from tankside.wording.developing import together_sentences

    own_s = (known.row.time_s, *(at("--with", partial(read_time, text)) for text in others))
    films = [Due(one) for one in own_s]
    time_s = to_step(fairest_together(films).time_s, STEP_S)
    came_to = made_together(films, time_s=time_s)
    shared = Estimate(time_s, time_s, time_s, "s", "shared by the films of a tank")
    return Meant(
        _meant(known, shared, "shared"), together_sentences(came_to, own_s), _together_numbers(came_to)
    )


def _meant(known: KnownTime, time: Estimate, words: str) -> KnownTime:
    """The same rate with another time at the printed temperature, on a step that a clock is set by."""
    from tankside.core.quantities.display import to_step

    time = replace(time, value=to_step(time.value, STEP_S))
    row = replace(known.row, time_s=time.value, source="own", words=words)
    return replace(known, row=row, rate=replace(known.rate, time_s=time))


def relabelled(end: WithParts) -> WithParts:
    """The same answer with its doubt of rows under its own name: here it is that of the push."""
    parts = tuple(replace(one, code="push") if one.code == "rows" else one for one in end.parts)
    return replace(end, parts=parts)


def _push_numbers(came_to: Pushed) -> dict[str, object]:
    """A push as JSON tells it."""
    from tankside.cli.amounts import as_estimate
    from tankside.core.quantities.display import time_step_s

    width_s = came_to.time.high - came_to.time.low
    return {
        "time_at_printed_temperature": as_estimate(came_to.time, step=time_step_s(width_s)),
        "contrast": as_estimate(came_to.contrast, step=0.01),
        "shadows_short": as_estimate(came_to.shadows_short_stops, step=0.1),
        "sure_to_be_reached": came_to.sure,
    }


def _together_numbers(came_to: Together) -> dict[str, object]:
    """A shared tank as JSON tells it: by how much each contrast misses, in the order asked."""
    from tankside.cli.amounts import as_estimate

    return {"contrast_off": [as_estimate(one, step=1) for one in came_to.deviations]}
