"""Short codes on stickers of rolls, bottles, tanks and sleeves: four characters and a check, 'K7M4-T'."""

from __future__ import annotations

from dataclasses import dataclass

from tankside.core.refusals import refuse

ALPHABET = "23456789ABCDEFGHJKMNPQRSTUVWXYZ"
"""Digits 2-9 and capitals without I, L and O: 31 characters, a prime."""

LENGTH = 4
COUNT = len(ALPHABET) ** LENGTH
"""How many codes there are: 923,521."""

_WEIGHTS = (2, 3, 4, 5)
_DASHES = "-‐‑‒–—−_.·"


@dataclass(frozen=True, slots=True)
class Code:
    """One short code: four `characters`; the check follows from them."""

    characters: str

    def __post_init__(self) -> None:
        if len(self.characters) != LENGTH or not set(self.characters) <= set(ALPHABET):
            raise ValueError(f"a code is four characters of {ALPHABET}, not {self.characters!r}")

    @property
    def check(self) -> str:
        """The check character.

        Own model: docs/science/codes, a weighted sum modulo 31. Doubt: none; every single wrong character
        and every swap of two is caught, because the weights 2, 3, 4, 5 and 1 differ and 31 is prime.

        >>> Code("K7M4").check
        'T'
        """
        weighted = zip(_WEIGHTS, self.characters, strict=True)
        return ALPHABET[-sum(weight * ALPHABET.index(one) for weight, one in weighted) % len(ALPHABET)]

    def __str__(self) -> str:
        return f"{self.characters}-{self.check}"


def code_from(entropy: int) -> Code:
    """The code that a whole number from the dice stands for, 0 or more; taken modulo 923,521.

    Own model: docs/science/codes. Doubt: none.

    >>> str(code_from(0)), str(code_from(923_520))
    ('2222-2', 'ZZZZ-G')
    """
    characters = ""
    for _ in range(LENGTH):
        entropy, place = divmod(entropy, len(ALPHABET))
        characters = ALPHABET[place] + characters
    return Code(characters)


def read_code(text: str) -> Code:
    """The code a person typed: any case, dash and spaces as they like; a mistyped one is refused.

    Own model: docs/science/codes. Doubt: none.

    >>> str(read_code(" k7m4t "))
    'K7M4-T'
    """
    typed = "".join(one for one in text.upper() if not one.isspace() and one not in _DASHES)
    if len(typed) != LENGTH + 1:
        raise refuse("code-length", ways_on=("type-again",), typed=text.strip(), length=len(typed))
    strange = next((one for one in typed if one not in ALPHABET), None)
    if strange is not None:
        raise refuse("code-character", ways_on=("type-again",), typed=text.strip(), character=strange)
    code = Code(typed[:LENGTH])
    if code.check != typed[LENGTH]:
        raise refuse("code-mistyped", ways_on=("type-again", "scan-label"), typed=text.strip())
    return code
