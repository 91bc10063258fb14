"""What cannot be true of film, negatives and contrast."""

from __future__ import annotations

SENTENCES = {
    "contrast-out-of-range": "A measured contrast lies between {least} and {most}.",
    "contrast-out-of-reach": (
        "A contrast of {contrast} is out of reach: the most this film gives in this developer is {c_inf}."
    ),
    "day-unreadable": "'{typed}' is no day; write year-month-day, as 2026-09-30.",
    "density-out-of-range": "A density of {density} is none that a negative has; it lies between 0 and 4.",
    "film-is-missing": "Say which film it is.",
    "film-length-out-of-range": "A length of {length_m} is none of 135 film; it lies between 0.1 and 30.5 m.",
    "index-is-missing": "Say which exposure index it was exposed at.",
    "name-missing": "Write the name of the {what}; your own will do.",
    "name-too-long": "A name has at most {most} letters.",
    "no-free-code": "{draws} codes were drawn and each is on a sticker already.",
    "no-such-roll": "There is no roll {roll_code}.",
    "shadow-above-highlight": "The shadow ({shadow}) must be thinner than the highlight ({highlight}).",
    "sheets-out-of-range": "{sheets} sheets do not go together; it is one to a dozen.",
    "slope-out-of-range": "A local slope of {slope} is none of a negative; it lies between 0.1 and 2.",
}
WAYS_ON = {
    "say-the-index": "Add --index NUMBER; the next roll takes it over.",
    "another-developer": "Take another developer.",
    "look-at-the-rolls": "Look at the list of rolls.",
    "lower-contrast": "Aim at a lower contrast.",
}
