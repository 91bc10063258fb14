"""Chance and identity, from the machine's own source."""

from __future__ import annotations

import secrets
import uuid


class MachineDice:
    """Keys nobody can guess and draws nobody can foresee."""

    def key(self) -> uuid.UUID:
        """A fresh key."""
        return uuid.uuid4()

    def below(self, count: int) -> int:
        """A whole number from 0 to `count` - 1, each as likely; short codes are made from it."""
        return secrets.randbelow(count)
