"""A phone at the sink is let in by a code that works once, and known by a cookie afterwards."""

from __future__ import annotations

import threading
from collections.abc import Callable
from typing import Protocol

from tankside.core.codes import ALPHABET
from tankside.core.refusals import refuse
from tankside.workflows.ports import Dice

LENGTH = 8
"""31 to the eighth: nobody guesses it in the tries below."""

TRIES = 20
DASHES = str.maketrans("", "", "- ")


class LinkedPhones(Protocol):
    """Remembers which phones were linked, by what their cookie holds."""

    def knows(self, token: str) -> bool:
        """Whether a phone with this token was linked."""

    def add(self, token: str) -> None:
        """Link one more."""

    def number(self) -> int:
        """How many are linked."""

    def forget_all(self) -> None:
        """Lock every phone out."""


class PhoneLink:
    """The code that links the next phone; a fresh one takes its place as soon as it is used.

    `address` is the one to open on the phone; `told` hears the address of each fresh code.
    """

    def __init__(
        self, address: str, phones: LinkedPhones, dice: Dice, told: Callable[[str], None] = lambda _: None
    ) -> None:
        self.address = address
        self._phones = phones
        self._dice = dice
        self._told = told
        self._turn = threading.Lock()
        self._draw()

    def _draw(self) -> None:
        self.code = "".join(ALPHABET[self._dice.below(len(ALPHABET))] for _ in range(LENGTH))
        self._tries = TRIES

    @property
    def open_on_phone(self) -> str:
        """The whole address with the code, as the QR code holds it."""
        return f"{self.address}/link/{self.code}"

    def knows(self, token: str) -> bool:
        """Whether this is the cookie of a linked phone."""
        return bool(token) and self._phones.knows(token)

    @property
    def linked(self) -> int:
        """How many phones are linked now."""
        return self._phones.number()

    def lock_out(self) -> None:
        """Forget every phone; each needs a code again."""
        self._phones.forget_all()

    def link(self, typed: str) -> str:
        """Use the code up; returns the token for the phone's cookie, and draws the next code.

        After twenty wrong ones no code is taken until Tankside is started again.
        """
        with self._turn:
            if self._tries <= 0:
                raise refuse("link-withdrawn", ways_on=("start-for-the-phone-again",), tries=TRIES)
            if typed.upper().translate(DASHES) != self.code:
                self._tries -= 1
                raise refuse("link-code-wrong", at="code", ways_on=("look-at-the-code",), typed=typed[:20])
            token = self._dice.key().hex + self._dice.key().hex
            self._phones.add(token)
            self._draw()
        self._told(self.open_on_phone)
        return token
