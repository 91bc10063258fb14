"""Photographs without what they tell of place and device; judged by another library that reads pictures."""

from __future__ import annotations

from io import BytesIO
from struct import pack
from zlib import crc32

import numpy as np
import pytest
from hypothesis import given
from hypothesis import strategies as st
from PIL import Image, ImageOps

from tankside.core.refusals import Refused
from tankside.workflows.photograph_tags import MOST_BYTES, without_tags

PLACE = b"GPS 52 31 12 N 13 24 18 E"
RNG = np.random.default_rng(7)
PIXELS = RNG.integers(0, 255, (24, 36, 3), dtype=np.uint8)


def encoded(kind: str, **options: int) -> bytes:
    """The pixels as a file of that kind."""
    file = BytesIO()
    Image.fromarray(PIXELS).save(file, kind, **options)
    return file.getvalue()


JPEG = encoded("jpeg")
PROGRESSIVE = encoded("jpeg", progressive=1, restart_marker_blocks=2)
PNG = encoded("png")


def segment(kind: int, body: bytes) -> bytes:
    """A marked part of a JPEG."""
    return bytes((0xFF, kind)) + pack(">H", 2 + len(body)) + body


def exif(order: str, orientation: int) -> bytes:
    """A camera's own notes: which way is up, and a pointer to where it was taken."""
    first = {"<": b"II", ">": b"MM"}[order]
    entries = pack(f"{order}HHIHH", 0x0112, 3, 1, orientation, 0) + pack(f"{order}HHII", 0x8825, 4, 1, 38)
    return (
        b"Exif\0\0"
        + first
        + pack(f"{order}HI", 42, 8)
        + pack(f"{order}H", 2)
        + entries
        + pack("I", 0)
        + PLACE
    )


def chunk(kind: bytes, body: bytes) -> bytes:
    """A chunk of a PNG."""
    return pack(">I", len(body)) + kind + body + pack(">I", crc32(kind + body))


def pixels(picture: bytes) -> np.ndarray:
    """What a picture shows, as another program reads it, as it was coded."""
    return np.asarray(Image.open(BytesIO(picture)).convert("RGB"))


@pytest.mark.parametrize("picture", [JPEG, PROGRESSIVE])
@pytest.mark.parametrize("order", ["<", ">"])
def test_a_jpeg_loses_its_place_and_keeps_its_picture(picture: bytes, order: str) -> None:
    """Camera notes, captions, remarks and what stands behind the end go; every pixel and the upright stay."""
    tagged = (
        picture[:2] + segment(0xE1, exif(order, 6)) + segment(0xED, b"caption\0" + PLACE)
        + segment(0xE1, b"packet\0" + PLACE) + segment(0xFE, PLACE) + picture[2:] + PLACE
    )  # fmt: skip
    media, clean = without_tags(tagged)

    assert "image/jpeg" == media
    assert PLACE in tagged
    assert PLACE not in clean
    assert np.array_equal(pixels(picture), pixels(clean))
    turned = ImageOps.exif_transpose(Image.open(BytesIO(clean)))
    assert (24, 36) == turned.size


def test_a_colour_profile_stays() -> None:
    """Without it the picture would be drawn in other colours."""
    profile = segment(0xE2, b"ICC_PROFILE\0\x01\x01profile")
    _, clean = without_tags(JPEG[:2] + profile + segment(0xE2, b"MPF\0" + PLACE) + JPEG[2:])

    assert profile in clean
    assert PLACE not in clean


def test_a_png_loses_its_texts() -> None:
    """Texts, camera notes and times go; the picture stays."""
    head = PNG[: 8 + 25]
    more = b"".join(chunk(kind, PLACE) for kind in (b"tEXt", b"iTXt", b"zTXt", b"eXIf", b"tIME"))
    media, clean = without_tags(head + more + PNG[33:] + PLACE)

    assert "image/png" == media
    assert PLACE not in clean
    assert np.array_equal(PIXELS, pixels(clean))


def test_clean_is_clean_already() -> None:
    """Cleaning twice changes nothing."""
    for picture in (JPEG, PROGRESSIVE, PNG):
        once = without_tags(picture)[1]
        assert once == without_tags(once)[1]


@pytest.mark.parametrize(
    ("picture", "code"),
    [
        (b"", "photograph-missing"),
        (b"GIF89a" + bytes(40), "photograph-unknown"),
        (b"<svg xmlns='http://www.w3.org/2000/svg'/>", "photograph-unknown"),
        (b"\0\0\0\x18ftypheic" + bytes(40), "photograph-heic"),
        (JPEG[:200], "photograph-damaged"),
        (PNG[:60], "photograph-damaged"),
        (b"\xff\xd8\xff" + bytes(MOST_BYTES), "photograph-too-large"),
    ],
)
def test_what_is_no_photograph_is_refused(picture: bytes, code: str) -> None:
    """By its first bytes and its size, never by its name."""
    with pytest.raises(Refused) as no:
        without_tags(picture)

    assert code == no.value.refusal.code


@given(st.sampled_from([JPEG, PROGRESSIVE, PNG]), st.integers(0, 2000), st.integers(0, 255))
def test_a_damaged_picture_is_refused_or_read(picture: bytes, at: int, byte: int) -> None:
    """Any one byte changed: a refusal or a picture, never a fault."""
    place = at % len(picture)
    told = "no refusal"
    try:
        without_tags(picture[:place] + bytes((byte,)) + picture[place + 1 :])
    except Refused as no:
        told = no.refusal.code

    assert told in ("no refusal", "photograph-damaged", "photograph-unknown")
