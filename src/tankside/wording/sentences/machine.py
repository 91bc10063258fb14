"""What the machine refuses: its port, its folder."""

from __future__ import annotations

SENTENCES = {
    "already-served": "Tankside is already open at {address} over {folder}.",
    "data-folder-on-network": (
        "{folder} lies on a network drive ({file_system}), where a database is not safe: "
        "its locks may not hold and a lost connection can spoil it."
    ),
    "link-code-wrong": "{typed} is not the code that Tankside shows now.",
    "link-withdrawn": "After {tries} wrong codes no phone is linked any more.",
    "no-data-folder": "Nothing can be kept in {folder}: {reason}.",
    "no-home-network": "This machine is in no network now, so no phone can reach it.",
    "open-internet": (
        "This machine stands on the open internet as {address}, where everybody could knock; "
        "a phone is let in from a home network only."
    ),
    "own-film-not-paced": (
        "This Tankside runs the demo on a fast clock, and a film of your own develops no faster for it."
    ),
    "phone-not-paced": "A fast clock is for the demo on this machine; a phone at the sink needs the true.",
    "port-in-use": "Port {port} is taken by another program.",
    "port-not-allowed": "Port {port} may be taken by root alone.",
}
WAYS_ON = {
    "look-at-the-code": "Look at the code again; each works once.",
    "other-data-folder": "Choose a folder on this machine with --data-folder FOLDER.",
    "other-port": "Choose another with --port NUMBER, or any free one with --port 0.",
    "start-for-the-phone-again": "End Tankside and start it again with --phone.",
    "start-without-pace": "Start it without --pace.",
    "start-without-phone": "Start it without --phone.",
}
