"""A QR code as one path of squares, dark on light in every theme, for that is what a camera reads."""

from __future__ import annotations

from dataclasses import dataclass

QUIET = 4
"""Modules of light around it that the standard asks for (ISO/IEC 18004, from memory)."""


@dataclass(frozen=True, slots=True)
class Qr:
    """Its side in modules, quiet zone included, and the path of its dark ones."""

    side: int
    path: str


def qr_code(text: str) -> Qr:
    """The QR code of `text`.

    >>> qr_code("http://192.168.1.20:8462").side
    33
    """
    import segno  # noqa: PLC0415 - only for the page that shows one

    rows = segno.make(text, error="m", micro=False).matrix
    squares = (
        f"M{across + QUIET} {down + QUIET}h1v1h-1z"
        for down, row in enumerate(rows)
        for across, dark in enumerate(row)
        if dark
    )
    return Qr(len(rows) + 2 * QUIET, "".join(squares))
