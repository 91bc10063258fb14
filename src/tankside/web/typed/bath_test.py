"""What was typed on the page of a bath's test, read as tests of its bottle."""

from __future__ import annotations

from collections.abc import Callable, Iterator, Sequence
from typing import Any

from tankside.core.quantities.entry import read_temperature
from tankside.core.quantities.preferences import Preferences
from tankside.core.refusals import refuse
from tankside.core.shelf.bath_tests import Tested
from tankside.core.shelf.ledger import BathTest
from tankside.web.forms import Form, number_of, read_all

FIELDS = ("film", "clears", "temp", "fresh", "fresh_temp", "look", "turned", "ph")
LONGEST_FILM = 60


def fixer_tests_of(form: Form, preferences: Preferences, *, asked: FreshAsked) -> tuple[BathTest, ...]:
    """A look, the fresh time where it is asked for, and tonight's test piece, in that order."""
    clears, fresh = bool(form.text("clears")), bool(form.text("fresh"))
    readers: dict[str, Callable[[], Any]] = {}
    if clears:
        readers |= _piece(form, preferences, "clears", "temp")
    if fresh:
        readers |= _piece(form, preferences, "fresh", "fresh_temp")
    if clears or fresh:
        readers["film"] = lambda: _film(form)
    return tuple(_tests(form, read_all(readers), as_fresh=asked == "tonight"))


def stop_tests_of(form: Form) -> tuple[BathTest, ...]:
    """What the indicator or a strip showed."""
    told = form.text("turned")
    if told not in ("yes", "no"):
        raise refuse("nothing-tested", at="turned")
    ph = read_all({"ph": lambda: number_of(form, "ph")})["ph"] if form.text("ph") else None
    return (BathTest("indicator", spent=told == "yes", ph=ph),)


FreshAsked = str
"""Whether a fresh time is 'kept', to be told 'besides', or is what is timed 'tonight'."""


def fresh_asked(tests: Sequence[Tested], counted_units: float) -> FreshAsked:
    """A bath without film behind it is fresh itself; one that was never timed fresh asks for it besides.

    >>> fresh_asked([], 0.0), fresh_asked([], 3.0)
    ('tonight', 'besides')
    """
    if any(one.void is None and one.test.kind == "clearing" and one.test.fresh for one in tests):
        return "kept"
    return "besides" if counted_units > 0 else "tonight"


def _tests(form: Form, told: dict[str, Any], *, as_fresh: bool) -> Iterator[BathTest]:
    """Each test that was told of."""
    if form.text("look"):
        yield BathTest("look", spent=form.text("look") == "bad")
    if "fresh" in told:
        yield BathTest("clearing", told["film"], told["fresh"], told["fresh_temp"], fresh=True)
    if "clears" in told:
        yield BathTest("clearing", told["film"], told["clears"], told["temp"], fresh=as_fresh)


def _piece(form: Form, preferences: Preferences, seconds: str, temp: str) -> dict[str, Callable[[], Any]]:
    """How the two fields of one test piece are read."""
    return {
        seconds: lambda: number_of(form, seconds),
        temp: lambda: read_temperature(form.text(temp), preferences),
    }


def _film(form: Form) -> str:
    """The film of the test piece, always the same one."""
    told = form.text("film")[:LONGEST_FILM]
    if not told:
        raise refuse("no-film-of-test-piece", at="film")
    return told
