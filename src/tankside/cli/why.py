"""`--why` of every calculation: the same working as the page, as lines or as JSON."""

from __future__ import annotations

from collections.abc import Mapping, Sequence
from typing import TYPE_CHECKING

import click

from tankside.cli.amounts import as_estimate

if TYPE_CHECKING:
    from tankside.core.planning.why import Figure, Length, Plot, Why
    from tankside.core.quantities.preferences import Preferences

why_option = click.option(
    "--why", "asks_why", is_flag=True,
    help="Add sources, doubt in parts, what would narrow it, inputs and formula.",
)  # fmt: skip


def print_whys(whys: Sequence[Why], own: Preferences) -> None:
    """Each working as a person reads it, after the answer; nothing where none was asked for."""
    if not whys:
        return
    from tankside.wiring import known_sources
    from tankside.wording.why_text import why_lines

    for why in whys:
        click.echo()
        for line in why_lines(why, own, known_sources()):
            click.echo(line)


def with_whys(answer: Mapping[str, object], whys: Sequence[Why]) -> dict[str, object]:
    """An answer as JSON tells it, with its workings beside it where they were asked for."""
    return {**answer, "why": [_why(one) for one in whys]} if whys else dict(answer)


def _why(why: Why) -> dict[str, object]:
    """One working; sentences in C."""
    from tankside.wording.refusals import PLAIN
    from tankside.wording.why import answer_sentence, leaves_out_sentences, narrows_sentences, step_of_answer

    step = step_of_answer(why)
    return {
        "about": why.about,
        "answer": as_estimate(why.answer, step=step),
        "interval_is": {"interval": "5-95 %", "sources": "two sources", "rule": "a rule"}[why.spread],
        "says": answer_sentence(why, PLAIN),
        "sources": [_length(one, step) for one in why.lengths],
        "doubt": [{"part": one.code, "half_width": _short(one.half_width)} for one in why.parts],
        "narrows": list(narrows_sentences(why, PLAIN)),
        "leaves_out": list(leaves_out_sentences(why)),
        "inputs": [_figure(one) for one in why.inputs],
        "formula": why.formula,
        "plot": None if why.plot is None else _plot(why.plot),
        "references": list(why.references),
    }


def _length(length: Length, step: float) -> dict[str, object]:
    """One source with its interval and the numbers of its sentence."""
    figures = [_figure(one) for one in length.figures]
    return {"of": length.code, **as_estimate(length.estimate, step=step), "figures": figures}


def _figure(figure: Figure) -> dict[str, object]:
    """One input."""
    return {"name": figure.code, "value": _short(figure.value), "unit": figure.unit, "source": figure.origin}


def _plot(plot: Plot) -> dict[str, object]:
    """What the page draws, at the rows of its table; a value of null is well below the limit."""

    def at_rows(values: Sequence[float | None]) -> list[float | None]:
        return [None if values[at] is None else _short(values[at] or 0.0) for at in plot.rows]

    return {
        "across": at_rows(plot.across),
        "across_unit": plot.across_unit,
        "low": at_rows(plot.low),
        "middle": at_rows(plot.middle) if plot.middle else None,
        "high": at_rows(plot.high),
        "unit": plot.up_unit,
        "limit": plot.level,
    }


def _short(value: float) -> float:
    """Three figures: no input or part is known better."""
    return float(f"{value:.3g}") if abs(value) < 1000 else round(value)
