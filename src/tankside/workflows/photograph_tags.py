"""A photograph without what it tells of place, time and device, by taking its own parts apart.

Only what draws the picture is kept: which way is up is written back alone, for without it phones' pictures
lie on their side. What stands behind the end of the picture goes too.
"""

from __future__ import annotations

import struct
from collections.abc import Iterator
from struct import pack, unpack_from

from tankside.core.refusals import refuse
from tankside.workflows.records import Media

MOST_BYTES = 15 * 1024 * 1024
JPEG, PNG = b"\xff\xd8\xff", b"\x89PNG\r\n\x1a\n"
HEIC_BRANDS = (b"heic", b"heix", b"hevc", b"heim", b"heis", b"mif1", b"msf1")
ORIENTATION = 0x0112
DRAWING_CHUNKS = frozenset(
    (
        b"IHDR",
        b"PLTE",
        b"IDAT",
        b"IEND",
        b"tRNS",
        b"gAMA",
        b"cHRM",
        b"sRGB",
        b"iCCP",
        b"sBIT",
        b"bKGD",
        b"pHYs",
    )
)


def without_tags(picture: bytes) -> tuple[Media, bytes]:
    """The kind of a picture, told by its first bytes, and the picture without its tags; refused otherwise."""
    if not picture:
        raise refuse("photograph-missing", at="photograph")
    if len(picture) > MOST_BYTES:
        raise refuse("photograph-too-large", at="photograph", megabytes=round(len(picture) / 1048576, 1))
    if picture[4:8] == b"ftyp" and picture[8:12] in HEIC_BRANDS:
        raise refuse("photograph-heic", at="photograph", ways_on=("save-as-jpeg",))
    try:
        if picture.startswith(JPEG):
            return "image/jpeg", b"".join(_jpeg(picture))
        if picture.startswith(PNG):
            return "image/png", b"".join(_png(picture))
    except (IndexError, struct.error) as error:
        raise refuse("photograph-damaged", at="photograph") from error
    raise refuse("photograph-unknown", at="photograph", ways_on=("save-as-jpeg",))


def _jpeg(picture: bytes) -> Iterator[bytes]:
    """The parts of a JPEG that draw it, its colour profile, and which way is up."""
    yield picture[:2]
    upright = next((up for kind, body in _segments(picture) if (up := _upright(kind, body))), None)
    if upright is not None:
        yield _only_upright(upright)
    for kind, body in _segments(picture):
        keep = kind not in range(0xE0, 0xF0) and kind != 0xFE
        if keep or kind in (0xE0, 0xEE) or (kind == 0xE2 and body[4:].startswith(b"ICC_PROFILE\0")):
            yield body


def _segments(picture: bytes) -> Iterator[tuple[int, bytes]]:
    """Each marked part of a JPEG with its kind, a scan with the coded picture that follows it."""
    at = 2
    while True:
        while picture[at] == 0xFF and picture[at + 1] == 0xFF:
            at += 1
        if picture[at] != 0xFF:
            raise IndexError(at)
        kind = picture[at + 1]
        if kind == 0xD9:
            yield kind, picture[at : at + 2]
            return
        (length,) = unpack_from(">H", picture, at + 2)
        end = at + 2 + length
        if kind == 0xDA:
            end = _end_of_scan(picture, end)
        if length < 2 or end > len(picture):
            raise IndexError(end)
        yield kind, picture[at:end]
        at = end


def _end_of_scan(picture: bytes, at: int) -> int:
    """Where coded data end: at the first marker that is neither stuffed nor a restart."""
    while True:
        at = picture.find(b"\xff", at)
        if at < 0:
            raise IndexError(len(picture))
        following = picture[at + 1]
        if following != 0x00 and not 0xD0 <= following <= 0xD7:
            return at
        at += 2


def _upright(kind: int, body: bytes) -> int | None:
    """Which way is up, 2 to 8, where a part says so and it is not upright already."""
    if kind != 0xE1 or body[4:10] != b"Exif\0\0":
        return None
    tiff = body[10:]
    order = {b"II": "<", b"MM": ">"}.get(tiff[:2])
    if order is None:
        return None
    try:
        (first,) = unpack_from(f"{order}I", tiff, 4)
        (count,) = unpack_from(f"{order}H", tiff, first)
        for entry in range(count):
            tag, _, _, value = unpack_from(f"{order}HHIH", tiff, first + 2 + 12 * entry)
            if tag == ORIENTATION:
                return value if 2 <= value <= 8 else None
    except struct.error:
        return None
    return None


def _only_upright(value: int) -> bytes:
    """A part that says which way is up and nothing else."""
    tiff = pack(">2sHIHHHIHHI", b"MM", 42, 8, 1, ORIENTATION, 3, 1, value, 0, 0)
    return pack(">BBH", 0xFF, 0xE1, 2 + 6 + len(tiff)) + b"Exif\0\0" + tiff


def _png(picture: bytes) -> Iterator[bytes]:
    """The chunks of a PNG that draw it."""
    yield PNG
    at = len(PNG)
    while True:
        length, kind = unpack_from(">I4s", picture, at)
        end = at + 12 + length
        if end > len(picture):
            raise IndexError(end)
        if kind in DRAWING_CHUNKS:
            yield picture[at:end]
        if kind == b"IEND":
            return
        at = end
