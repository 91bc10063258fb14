"""What fixer, wash and stock cannot do."""

from __future__ import annotations

SENTENCES = {
    "already-discarded": "{bottle} was poured away already.",
    "no-such-booking": "The ledger has no such line.",
    "no-such-bottle": "There is no bottle {bottle}.",
    "put-right-in-the-run": "That line follows a note of a run, and moves when the note is put right.",
    "taken-back-already": "That line was taken back already.",
    "clearing-temperature-out-of-range": (
        "A clearing test at {temp_c} says nothing here; test the fixer between {fixed_10_c} and {fixed_30_c}."
    ),
    "clearing-time-out-of-range": "A clearing time of {seconds} s is none; it lies between 5 s and 30:00.",
    "fixer-volume-out-of-range": (
        "{volume_ml} of working fixer cannot be counted; it lies between {fixed_50_ml} and {fixed_20000_ml}."
    ),
    "mark-too-coarse": (
        "{exact_ml} of stock cannot be taken with a measure marked every {mark_ml}: "
        "the strength would be {error_percent} off."
    ),
    "too-little-stock": ("{volume_ml} at {parts} hold {stock_ml} of stock, and {rolls} need {needed_ml}."),
    "wash-cannot-reach": (
        "{fills} fills of {fill_ml} wash no film clean, however fast it gives up its fixer."
    ),
    "wash-fill-out-of-range": (
        "A fill of {volume_ml} cannot be worked out; it lies between {fixed_50_ml} and {fixed_5000_ml}."
    ),
    "wash-half-life-out-of-range": (
        "A half-life of {half_life_s} in the wash cannot be worked out; it lies between 5 s and 10 minutes."
    ),
    "wash-soaks-out-of-range": (
        "{fills} fills of up to {longest_s} cannot be worked out; it is 1 to 40 fills of up to an hour."
    ),
}
WAYS_ON = {
    "look-at-the-shelf": "Look at the shelf.",
    "put-the-note-right": "Put the note right in its run.",
    "another-fill": "Give it one more fill.",
    "fewer-rolls": "Put only {fits_rolls} in.",
    "finer-measure": "Take a finer measure.",
    "larger-volume": "Make a larger volume.",
    "more-volume": "Take a tank filled with {needs_ml} or more.",
    "stronger-dilution": "Take {stronger} ({stronger_ml} of stock), with a time of its own.",
}
