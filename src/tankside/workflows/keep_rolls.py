"""Adding, changing and finding rolls."""

from __future__ import annotations

from dataclasses import dataclass, replace
from datetime import date
from uuid import UUID

from tankside.core.codes import COUNT, code_from, read_code
from tankside.core.quantities.limits import INDEX
from tankside.core.refusals import refuse
from tankside.core.rolls.formats import Format
from tankside.core.rolls.roll import Film, Roll
from tankside.core.run.instants import Instant
from tankside.workflows.moments import moment_of
from tankside.workflows.ports import Desk, Dice
from tankside.workflows.records import CodeTaken

DRAWS = 20
"""With a thousand stickers in use, twenty draws that all hit a taken one have a chance under 1e-59."""


@dataclass(frozen=True, slots=True)
class NewRoll:
    """What a person says of a roll out of the camera; the rest may come later."""

    film: Film
    format: Format
    index: float
    camera: str = ""
    owner: str = ""
    precious: bool = False
    exposed: date | None = None
    notes: str = ""
    piece_of: UUID | None = None


def preset(desk: Desk) -> NewRoll | None:
    """Film, format, index and camera of the roll added last, for the next one is mostly like it."""
    last = next(iter(desk.rolls.all()), None)
    return None if last is None else NewRoll(last.film, last.format, last.index, last.camera)


def add_roll(desk: Desk, dice: Dice, new: NewRoll, now: Instant) -> Roll:
    """Add a roll under a fresh key and a fresh code; a code that is taken is drawn again."""
    film = _known_by_name(desk, new.film)
    roll = Roll(
        key=dice.key(),
        code="",
        film=film,
        format=new.format,
        index=_real_index(new.index),
        camera=new.camera.strip(),
        owner=new.owner.strip(),
        precious=new.precious,
        exposed=new.exposed,
        notes=new.notes.strip(),
        piece_of=new.piece_of,
    )
    for _ in range(DRAWS):
        coded = replace(roll, code=str(code_from(dice.below(COUNT))))
        try:
            desk.rolls.add(coded, moment_of(now))
        except CodeTaken:
            continue
        return coded
    raise refuse("no-free-code", draws=DRAWS, ways_on=("try-again",))


def edit_roll(desk: Desk, roll: Roll) -> None:
    """Write over what is known of a roll, but for its code."""
    if desk.rolls.by_key(roll.key) is None:
        raise refuse("no-such-roll", roll_code=roll.code, ways_on=("look-at-the-rolls",))
    _real_index(roll.index)
    desk.rolls.keep(replace(roll, film=_known_by_name(desk, roll.film)))


def find_roll(desk: Desk, typed: str) -> Roll:
    """The roll whose code was typed, in any case and with or without its dash."""
    code = str(read_code(typed))
    roll = desk.rolls.by_code(code)
    if roll is None:
        raise refuse("no-such-roll", roll_code=code, ways_on=("look-at-the-rolls",))
    return roll


def _known_by_name(desk: Desk, film: Film) -> Film:
    """The film with its blanks tidied; a grain nobody told now is the one told before."""
    name = " ".join(film.name.split())
    if not name:
        raise refuse("film-is-missing", at="film")
    known = desk.films.called(name)
    if known is not None and film.grain == "unknown":
        return known
    return Film(name, film.grain)


def _real_index(index: float) -> float:
    if not INDEX.hold(index):
        raise refuse("index-not-readable", at="index", index=index)
    return index
