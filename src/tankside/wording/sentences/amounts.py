"""What cannot be read, and what can be read in two ways and is asked back."""

from __future__ import annotations

SENTENCES = {
    "code-character": "'{typed}' is no code: {character} never stands on a sticker.",
    "code-length": "'{typed}' is no code: it has {length} characters instead of five, as K7M4-T has.",
    "code-mistyped": "'{typed}' is no code: its last character does not go with the others, so one is wrong.",
    "dilution-of-two-stocks": (
        "'{typed}' names two stocks; give the parts of the two together, as 2+100 for 1+1+100."
    ),
    "dilution-too-weak": "'{typed}' has more than {most} parts.",
    "dilution-two-readings": "'{typed}' can be {first} or {second}, which differ in strength.",
    "dilution-unreadable": "'{typed}' is no dilution; write it as 1+4, as 1 in 5, or as stock.",
    "dilution-without-stock": "'{typed}' has no stock in it, or less of the whole than of the stock.",
    "index-not-readable": "{index} is no exposure index.",
    "index-scales-disagree": "'{typed}' says two different indices: {first} and {second}.",
    "index-unreadable": "'{typed}' is no exposure index; write it as 400 or as 27°.",
    "number-unreadable": "'{typed}' is no number.",
    "temperature-not-readable": "{temp_c} is outside {least_c} to {most_c}.",
    "temperature-two-readings": "'{typed}' can be {first} ({first_c}) or {second}.",
    "temperature-unreadable": "'{typed}' is no temperature; write it as 20.5 C or 69 F.",
    "time-not-readable": "{time_s} is no time to work by; it lies between 1 s and 24 hours.",
    "time-past-59": "'{typed}' has 60 or more behind a colon.",
    "time-two-readings": "'{typed}' can be {first} or {second}.",
    "time-unreadable": "'{typed}' is no time; write it as 9:30, 9 1/2 or 570 s.",
    "volume-not-readable": "{volume_ml} is no volume to work with; it lies between nothing and {most_ml}.",
    "volume-two-readings": "'{typed}' can be {first} or {second}.",
    "volume-unreadable": "'{typed}' is no volume; write it as 500 mL, 0.5 L or 17 US fl oz.",
}
WAYS_ON = {
    "read-as-first": "Write {first}.",
    "read-as-second": "Or write {second}.",
    "scan-label": "Scan its label.",
    "type-again": "Type it again.",
}
ENTRIES = {"read-as-first": "first", "read-as-second": "second"}
"""Ways on that put a text into the refused field, and the number of the refusal that holds it."""

READINGS = {
    "dilution-two-readings": {
        "read-as-first": "{stock_parts} and {other} of water ({first})",
        "read-as-second": "{stock_parts} in {other} ({second_parts})",
    },
    "index-scales-disagree": {"read-as-first": "{first}", "read-as-second": "{second}"},
    "temperature-two-readings": {"read-as-first": "{first} = {first_c}", "read-as-second": "{second}"},
    "time-two-readings": {"read-as-first": "{first}", "read-as-second": "{second}"},
    "volume-two-readings": {"read-as-first": "{first}", "read-as-second": "{second}"},
}
"""What stands on the two big choices of an amount that was asked back."""
