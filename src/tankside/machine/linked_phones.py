"""Which phones were linked, kept in the data folder as hashes, so that a restart does not lock one out."""

from __future__ import annotations

import os
from hashlib import sha256
from pathlib import Path

MOST = 20
"""The latest phones; an older one is linked again in half a minute."""


class KeptPhones:
    """Hashes of the tokens in the phones' cookies, one a line; no cookie can be made from them."""

    def __init__(self, file: Path) -> None:
        self._file = file

    def knows(self, token: str) -> bool:
        """Whether a phone with this token was linked."""
        return _hash(token) in self._hashes()

    def add(self, token: str) -> None:
        """Link one more; the file is whole under its name or as it was."""
        beside = self._file.with_name(f"{self._file.name}.new")
        kept = [*self._hashes(), _hash(token)][-MOST:]
        descriptor = os.open(beside, os.O_WRONLY | os.O_CREAT | os.O_TRUNC, 0o600)
        with os.fdopen(descriptor, "w", encoding="ascii") as stream:
            stream.write("".join(f"{one}\n" for one in kept))
        beside.replace(self._file)

    def number(self) -> int:
        """How many are linked."""
        return len(self._hashes())

    def forget_all(self) -> None:
        """Lock every phone out."""
        self._file.unlink(missing_ok=True)

    def _hashes(self) -> list[str]:
        try:
            return self._file.read_text(encoding="ascii").split()
        except FileNotFoundError:
            return []


def _hash(token: str) -> str:
    return sha256(token.encode()).hexdigest()
