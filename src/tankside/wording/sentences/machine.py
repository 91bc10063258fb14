"""What the machine refuses: its port, its folder."""

from __future__ import annotations

SENTENCES = {
    "already-served": "Tankside is already open at {address} over {folder}.",
    "data-folder-on-network": (
        "{folder} lies on a network drive ({file_system}), where a database is not safe: "
        "its locks may not hold and a lost connection can spoil it."
    ),
    "no-data-folder": "Nothing can be kept in {folder}: {reason}.",
    "port-in-use": "Port {port} is taken by another program.",
    "port-not-allowed": "Port {port} may be taken by root alone.",
}
WAYS_ON = {
    "other-data-folder": "Choose a folder on this machine with --data-folder FOLDER.",
    "other-port": "Choose another with --port NUMBER, or any free one with --port 0.",
}
