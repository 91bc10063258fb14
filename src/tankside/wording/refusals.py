"""What a refusal says: what is wrong, with the numbers, and a way on."""

from __future__ import annotations

from tankside.core.refusals import Refusal

SENTENCES = {
    "already-served": "Tankside is already open at {address} over {folder}.",
    "data-folder-on-network": (
        "{folder} lies on a network drive ({file_system}), where a database is not safe: "
        "its locks may not hold and a lost connection can spoil it."
    ),
    "no-data-folder": "Nothing can be kept in {folder}: {reason}.",
    "port-in-use": "Port {port} is taken by another program.",
    "port-not-allowed": "Port {port} may not be taken without being root.",
}
WAYS_ON = {
    "other-data-folder": "Choose a folder on this machine with --data-folder FOLDER.",
    "other-port": "Choose another with --port NUMBER, or any free one with --port 0.",
}


def say(refusal: Refusal) -> str:
    """The refusal in one sentence, and each way on in one of its own.

    >>> say(Refusal("port-in-use", {"port": 8462}, ways_on=("other-port",)))
    'Port 8462 is taken by another program. Choose another with --port NUMBER, or any free one with --port 0.'
    """
    sentence = SENTENCES[refusal.code].format(**refusal.numbers)
    return " ".join([sentence, *(WAYS_ON[way] for way in refusal.ways_on)])
