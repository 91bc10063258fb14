"""Forms that keep what was typed and put one sentence at each field.

A framework's own reading of form fields answers a bad one with JSON and throws the rest away; here a page
reads the text itself, hands it to a workflow, and shows the same text again under the refusals.
"""

from __future__ import annotations

from collections.abc import Callable, Mapping, Sequence
from dataclasses import dataclass, field, replace
from types import MappingProxyType
from typing import Annotated, Any

from fastapi import Depends
from starlette.datastructures import UploadFile
from starlette.requests import Request

from tankside.core.refusals import Refusal, Refused, refuse
from tankside.web.errors import Say

WHOLE_FORM = ""
LONGEST_TOLD = 60


@dataclass(frozen=True, slots=True)
class Form:
    """What was typed, by field, and the sentence that refuses a field; `""` is the form as a whole."""

    typed: Mapping[str, tuple[str, ...]] = field(default_factory=dict)
    refusals: Mapping[str, str] = field(default_factory=dict)

    def __post_init__(self) -> None:
        object.__setattr__(self, "typed", MappingProxyType(dict(self.typed)))
        object.__setattr__(self, "refusals", MappingProxyType(dict(self.refusals)))

    @classmethod
    def filled(cls, **values: str) -> Form:
        """A form as it stands before anyone typed: with the values it begins with."""
        return cls({name: (value,) for name, value in values.items()})

    def text(self, name: str, default: str = "") -> str:
        """What was typed in a field, without the spaces around it.

        >>> Form.filled(volume=" 300 ").text("volume")
        '300'
        """
        return next(iter(self.typed.get(name, ())), default).strip()

    def all(self, name: str) -> tuple[str, ...]:
        """Every value of a field that may be ticked more than once."""
        return self.typed.get(name, ())

    def holds(self, name: str, value: str) -> bool:
        """Whether `value` was ticked or chosen in a field."""
        return value in self.typed.get(name, ())

    def refusal(self, name: str) -> str | None:
        """The sentence at a field, or None."""
        return self.refusals.get(name)

    @property
    def first_refused(self) -> str | None:
        """The refused field that stands first on the page; it takes the focus."""
        return next((name for name in self.refusals if name != WHOLE_FORM), None)

    def refused_by(self, refused: Refused, *, say: Say, fields: Sequence[str]) -> Form:
        """The same form with one sentence at each refused field, in the order of `fields` on the page.

        A refusal that names none of them stands over the form as a whole.
        """
        told: dict[str, str] = {}
        for refusal in refused.refusals:
            told.setdefault(_place_of(refusal, fields), say(refusal))
        order = (WHOLE_FORM, *fields)
        return replace(self, refusals={name: told[name] for name in order if name in told})


def _place_of(refusal: Refusal, fields: Sequence[str]) -> str:
    """The field a refusal belongs to, or the whole form."""
    return refusal.at if refusal.at is not None and refusal.at in fields else WHOLE_FORM


def read_all(readers: Mapping[str, Callable[[], Any]]) -> dict[str, Any]:
    """Every field read; where some cannot be, all of those are refused together, each at its own place."""
    told: dict[str, Any] = {}
    refusals: list[Refusal] = []
    for name, read in readers.items():
        try:
            told[name] = read()
        except Refused as refused:
            refusals.append(refused.refusal.placed(name))
    if refusals:
        raise Refused(*refusals)
    return told


def number_of(form: Form, name: str, default: float = 0.0) -> float:
    """A plain number of a field, `default` where nothing was typed."""
    typed = form.text(name)
    try:
        return float(typed.replace(",", ".")) if typed else default
    except ValueError:
        raise refuse("number-unreadable", ways_on=("type-again",), typed=typed[:LONGEST_TOLD]) from None


async def read_form(request: Request) -> Form:
    """The text fields of a posted form; files are read by the page that asks for them."""
    async with request.form() as posted:
        typed: dict[str, tuple[str, ...]] = {}
        for name, value in posted.multi_items():
            if not isinstance(value, UploadFile):
                typed[name] = (*typed.get(name, ()), value)
    return Form(typed)


async def read_form_and_file(request: Request, name: str, *, most_bytes: int) -> tuple[Form, bytes]:
    """The text fields of a posted form, and its file, read no further than a byte beyond `most_bytes`."""
    async with request.form() as posted:
        sent = posted.get(name)
        attached = await sent.read(most_bytes + 1) if isinstance(sent, UploadFile) else b""
        typed = {name: (value,) for name, value in posted.items() if isinstance(value, str)}
    return Form(typed), attached


TypedForm = Annotated[Form, Depends(read_form)]
