"""What one device remembers for itself, in cookies: its theme."""

from __future__ import annotations

from typing import Literal, cast, get_args

from starlette.requests import Request
from starlette.responses import Response

Theme = Literal["light", "dark", "dim"]
THEME_COOKIE = "tankside-theme"
TEN_YEARS_S = 10 * 365 * 24 * 3600


def theme_of(request: Request) -> Theme | None:
    """The theme chosen on this device; None follows the device."""
    return read_theme(request.cookies.get(THEME_COOKIE, ""))


def read_theme(word: str) -> Theme | None:
    """The theme that `word` names, or None.

    >>> read_theme("dim"), read_theme("device")
    ('dim', None)
    """
    return cast(Theme, word) if word in get_args(Theme) else None


def keep(response: Response, name: str, value: str | None) -> None:
    """Keep `value` on the device under `name`, or forget it where there is none."""
    if value is None:
        response.delete_cookie(name, path="/")
        return
    response.set_cookie(name, value, max_age=TEN_YEARS_S, path="/", httponly=True, samesite="strict")
