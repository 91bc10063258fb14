"""What no plan can be made of."""

from __future__ import annotations

SENTENCES = {
    "no-such-change": "That cannot be changed here.",
    "clock-unreadable": "'{typed}' is no time of day; write it as 20:15.",
    "number-out-of-range": "That lies between {least} and {most}.",
    "no-plan-yet": "Nothing is planned yet.",
    "thermometer-too-far-off": "A thermometer that is {offset_k} off is not one to trust.",
    "room-out-of-range": "A room at {temp_c} is not worked in; it lies between {fixed_5_c} and {fixed_40_c}.",
    "no-time-for-film": "No time is known for {film} in any developer.",
    "no-tank-kept": "No tank, thermometer or place is kept yet.",
    "no-such-tank": "That tank is not kept here.",
    "no-such-place": "That place is not kept here.",
    "no-such-liquid": "This plan has no liquid called {liquid}.",
    "no-such-combination": "That film and developer are not kept here.",
    "bottle-holds-too-little": "The bottle holds {volume_ml} and this evening needs {needed_ml}.",
    "again-nothing-before": "Nothing was planned here before, so there is no last time.",
    "again-roll-taken": "{roll_code} is in a run or done already.",
    "again-roll-held": "{roll_code} is precious and would be held back from a first use.",
    "again-no-bottle": "No bottle of {liquid} on the shelf holds the {needed_ml} of this evening.",
    "again-bottle-too-small": "A bottle holds {volume_ml} and both tanks at once need {needed_ml}.",
    "again-fixer-spent": (
        "The fixer in {bottle_code} takes {left} more, counted as ordinary rolls, and these come to {wanted}."
    ),
    "again-other-liquid": "{liquid} {parts} was not made last time.",
    "again-second-mix": "The second tankful needs a mix of its own, at its own temperature.",
    "again-look-first": "This plan has something to look at that last time had not.",
    "already-mixed": "Tankful {letter} is timed by what its developer reads: {reads_c}.",
    "no-rolls-chosen": "No roll is chosen.",
    "no-such-plan": "That plan is not kept here.",
    "no-such-tankful": "There is no tankful {letter} in it.",
    "no-time-at-index": "No time is known at index {index}; it is known at {known}.",
    "no-why": "There is no working for {about} here.",
    "precious-roll-held": (
        "{roll_code} is precious and would be the first through a new {first_uses}, so it is held back."
    ),
    "sheet-film-not-planned": "{roll_code} is sheet film, which is not planned yet.",
    "tank-too-small": "The largest tank takes {volume_ml}, and one roll of this film needs {needed_ml}.",
    "taps-not-read": "Hot and cold water are not read yet.",
}
WAYS_ON = {
    "mix-more": "Mix more.",
    "get-ready": "Look at what is to be made.",
    "begin-first-evening": "Answer the six questions of a first evening.",
    "add-a-tank": "Add a tank.",
    "add-leaflet-row": "Add the leaflet's time at this index.",
    "plan-step-by-step": "Plan it step by step.",
    "another-roll-first": "Send another roll first.",
    "choose-rolls": "Choose a roll.",
    "larger-tank": "Take a larger tank.",
    "leave-out": "Leave it out.",
    "other-index": "Plan it at an index whose time is known.",
    "read-taps": "Read both taps.",
    "take-it-anyway": "Take it all the same.",
}
