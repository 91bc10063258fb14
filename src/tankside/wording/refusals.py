"""What a refusal says: what is wrong, with the numbers, and the ways on."""

from __future__ import annotations

from tankside.core.refusals import Refusal
from tankside.wording.sentences import machine, store

SPEAKERS = (machine, store)
SENTENCES = {code: text for speaker in SPEAKERS for code, text in speaker.SENTENCES.items()}
WAYS_ON = {code: text for speaker in SPEAKERS for code, text in speaker.WAYS_ON.items()}


def say(refusal: Refusal) -> str:
    """The refusal in one sentence, and each way on in one of its own.

    >>> say(Refusal("port-in-use", {"port": 8462}, ways_on=("other-port",)))
    'Port 8462 is taken by another program. Choose another with --port NUMBER, or any free one with --port 0.'
    """
    told = SENTENCES.get(refusal.code)
    sentence = told.format(**refusal.numbers) if told else _in_its_own_words(refusal)
    return " ".join([sentence, *(WAYS_ON.get(way, f"Way on: {_words(way)}.") for way in refusal.ways_on)])


def _in_its_own_words(refusal: Refusal) -> str:
    """A refusal that nobody has written a sentence for yet: its code and its numbers."""
    numbers = ", ".join(f"{_words(name)} {value}" for name, value in refusal.numbers.items())
    return f"No: {_words(refusal.code)}{f' ({numbers})' if numbers else ''}."


def _words(code: str) -> str:
    return code.replace("-", " ").replace("_", " ")
