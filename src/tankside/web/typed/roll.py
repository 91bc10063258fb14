"""The form of one roll: read as a roll, and filled from one."""

from __future__ import annotations

from collections.abc import Callable
from dataclasses import replace
from datetime import date
from typing import Any, cast, get_args
from uuid import UUID

from tankside.core.quantities.entry import read_index
from tankside.core.refusals import Refusal, Refused, refuse
from tankside.core.rolls.roll import Film, Grain, Roll
from tankside.web.forms import Form
from tankside.web.typed.first_evening import format_of, name_of
from tankside.workflows.keep_rolls import NewRoll, find_roll
from tankside.workflows.ports import Desk

FIELDS = (
    "film",
    "format",
    "length_m",
    "sheets",
    "index",
    "camera",
    "exposed",
    "grain",
    "piece_of",
    "owner",
    "notes",
)


def new_roll(form: Form, desk: Desk) -> NewRoll:
    """What the form says of a roll; every field that cannot be read is refused at its own place."""
    told: dict[str, Any] = {}
    refusals: list[Refusal] = []
    readers: dict[str, Callable[[], object]] = {
        "film": lambda: name_of(form, "film"),
        "format": lambda: format_of(form),
        "index": lambda: read_index(form.text("index")),
        "exposed": lambda: _day(form),
        "piece_of": lambda: _piece_of(form, desk),
    }
    for field, read in readers.items():
        try:
            told[field] = read()
        except Refused as refused:
            at = refused.refusal.at
            refusals.append(refused.refusal.placed(at if at in FIELDS else field))
    if refusals:
        raise Refused(*refusals)
    return NewRoll(
        film=Film(told["film"], _grain(form)),
        format=told["format"],
        index=told["index"],
        camera=form.text("camera"),
        owner=form.text("owner"),
        precious=form.holds("precious", "yes"),
        exposed=told["exposed"],
        notes=form.text("notes"),
        piece_of=told["piece_of"],
    )


def over(roll: Roll, new: NewRoll) -> Roll:
    """The roll with everything that the form says of it."""
    return replace(
        roll,
        film=new.film,
        format=new.format,
        index=new.index,
        camera=new.camera.strip(),
        owner=new.owner.strip(),
        precious=new.precious,
        exposed=new.exposed,
        notes=new.notes.strip(),
        piece_of=new.piece_of,
    )


def filled(last: NewRoll | None, today: date) -> Form:
    """The form for a roll out of the camera: like the last one, exposed today."""
    if last is None:
        return Form.filled(format="135-36", exposed=today.isoformat(), grain="unknown")
    return _filled(last.film, last, camera=last.camera, exposed=today.isoformat())


def of_roll(roll: Roll, desk: Desk) -> Form:
    """The form of a known roll."""
    whole = desk.rolls.by_key(roll.piece_of) if roll.piece_of else None
    form = _filled(
        roll.film,
        roll,
        camera=roll.camera,
        exposed=roll.exposed.isoformat() if roll.exposed else "",
        owner=roll.owner,
        notes=roll.notes,
        piece_of=whole.code if whole else "",
    )
    return form if not roll.precious else Form({**form.typed, "precious": ("yes",)})


def _filled(film: Film, of: Roll | NewRoll, **more: str) -> Form:
    length_m = of.format.length_m
    return Form.filled(
        film=film.name,
        grain=film.grain,
        format=of.format.kind,
        length_m=f"{length_m:g}" if length_m else "",
        sheets=str(of.format.sheets),
        index=f"{of.index:g}",
        **more,
    )


def _grain(form: Form) -> Grain:
    """The grain told, or unknown."""
    told = form.text("grain")
    return cast(Grain, told) if told in get_args(Grain) else "unknown"


def _day(form: Form) -> date | None:
    """The day it was exposed, if anybody knows."""
    typed = form.text("exposed")
    try:
        return date.fromisoformat(typed) if typed else None
    except ValueError:
        raise refuse("day-unreadable", ways_on=("type-again",), typed=typed[:20]) from None


def _piece_of(form: Form, desk: Desk) -> UUID | None:
    """The roll it was cut from, by its code."""
    return find_roll(desk, form.text("piece_of")).key if form.text("piece_of") else None
