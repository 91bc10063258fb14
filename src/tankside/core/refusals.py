"""A refusal is a plain 'no' to the user: what is wrong, with the numbers, and a way on.

Refusals are values, so that every face can say the same one in the person's own units. They travel as
`Refused`; anything else that is raised is a bug and stays an exception.
"""

from __future__ import annotations

from collections.abc import Mapping
from dataclasses import dataclass, field
from types import MappingProxyType

Number = float | int | str


@dataclass(frozen=True, slots=True)
class Refusal:
    """What is wrong (`code`), the numbers that say it, the field it belongs to, and the ways on.

    `code` is a stable kebab-case name that `wording.refusals` turns into one sentence. `numbers` carry
    their unit in their key (`temp_c`, `volume_ml`). `ways_on` are codes of what can be done next.
    """

    code: str
    numbers: Mapping[str, Number] = field(default_factory=dict)
    at: str | None = None
    ways_on: tuple[str, ...] = ()

    def __post_init__(self) -> None:
        object.__setattr__(self, "numbers", MappingProxyType(dict(self.numbers)))

    def placed(self, at: str) -> Refusal:
        """The same refusal, told at the field named `at`."""
        return Refusal(self.code, self.numbers, at, self.ways_on)


class Refused(Exception):  # noqa: N818 - the word of the house, not an error of the program
    """Carries one refusal, or several of one form, to whoever asked."""

    def __init__(self, refusal: Refusal, *others: Refusal) -> None:
        super().__init__(refusal.code)
        self.refusal = refusal
        self.refusals = (refusal, *others)


def refuse(code: str, *, at: str | None = None, ways_on: tuple[str, ...] = (), **numbers: Number) -> Refused:
    """A ready `Refused`; write `raise refuse("too-warm", temp_c=104.0)`."""
    return Refused(Refusal(code, numbers, at, ways_on))
