"""What cannot be read, fitted or told of a step strip and its curve."""

from __future__ import annotations

SENTENCES = {
    "base-fog-not-read": ("The lowest steps still rise, so they cannot stand for base and fog."),
    "count-out-of-range": "{count} values at a time are not worked out here; it is {least} to {most}.",
    "curve-does-not-rise": "These readings do not rise with exposure.",
    "density-falls": (
        "{density} comes after {before} in order of exposure: it falls by {by}, and two such readings "
        "may differ by {limit}."
    ),
    "density-not-reached": (
        "The curve has densities of {least} to {most} above base and fog; {density} is not among them."
    ),
    "density-unreadable": "Reading {number}, '{typed}', is no density.",
    "exposure-not-reached": "The readings end at {most} of log exposure, and {log_h} would be needed.",
    "file-of-readings-no-text": "That file is no text; a table of readings is.",
    "file-of-readings-too-long": "That file has more than {most} kB; a table of readings has less.",
    "index-out-of-range": "An index of {index} is none.",
    "log-exposure-out-of-range": (
        "A log exposure of {log_h} through clear is none of a strip; it lies between {least} and {most}."
    ),
    "never-levels-off": "These readings do not level off, or do so at once: where they lead cannot be told.",
    "no-grade-for-range": (
        "No paper grade takes a density range of {density}; the grades here take {least} to {most}."
    ),
    "no-readings-in-file": (
        "The file has the columns {typed}; it needs density, and log_h or step, in its first line."
    ),
    "no-strip-to-judge": "No step strip of it tells a contrast yet.",
    "no-such-step": "The tablet has the steps 1 to {steps}; {step} is none of them.",
    "no-such-strip": "This step strip is not known here.",
    "no-control-strip": "No control strip of it is kept yet.",
    "no-like-steps": "These control strips have no two steps in common that lie apart in density.",
    "no-such-tablet": "That tablet is not kept here.",
    "no-spread": "All these values are alike, so nothing tells what is odd.",
    "push-out-of-range": "A push of {stops} stops is not worked out here; it is -2 (a pull) to 3.",
    "push-out-of-reach": (
        "A push of {stops} stops asks for more contrast than this film gives in this developer, {c_inf}."
    ),
    "rate-not-known-there": (
        "What a minute is worth at {temp_c} is not known of it; it is from {least_c} to {most_c}."
    ),
    "reading-beyond-calibration": "A reading of {reading} is beyond what was calibrated, {least} to {most}.",
    "reading-unreadable": "Reading {row} of the file is not two numbers.",
    "reading-error-out-of-range": "A reading error of {sd} is none of a density; it is 0.001 to 0.2.",
    "speed-out-of-range": "A speed of {speed} is none of a film; it lies between 0.8 and 6400.",
    "step-density-out-of-range": "A density of {density} is none of a step; it lies between 0 and {most}.",
    "subject-range-out-of-range": (
        "A subject range of {log_range} (log) is none of a photograph; it lies between 0.6 and 4."
    ),
    "strip-read-again": "This step strip was put right since; the newer reading stands in its place.",
    "tablet-not-rising": "The patches of a tablet rise in density from the first to the last; these do not.",
    "tablet-step-out-of-range": "A step of {step} is none of a tablet; it lies between 0.02 and 0.6.",
    "tablet-steps-out-of-range": "A tablet of {count} steps is not read here; it has {least} to {most}.",
    "too-few-readings": "{count} readings are too few; it takes {least}.",
    "too-many-readings": "{count} readings are more than a strip has; it is at most {most}.",
    "too-short-for-contrast": (
        "The curve ends at {most} above base and fog, before the outer point of the contrast index."
    ),
    "transmittance-out-of-range": "A transmittance of {share} is none; it lies above 0 and is at most 1.",
    "weight-out-of-range": "A weight of {weight} is none; it lies above 0 and is at most 1.",
    "wrong-count-of-steps": "{count} readings for a tablet of {steps} steps.",
}
WAYS_ON = {
    "check-the-readings": "Check the order of the readings.",
    "expose-more-steps": "Give the strip more exposure, or read more steps.",
    "look-at-densities": "Look at the Densities.",
    "other-tablet": (
        "Type one for each step, '-' where you left one out, or choose the tablet they were read with."
    ),
    "push-less": "Push less, and let the shadows go.",
    "read-a-strip": "Read a step strip.",
    "read-again-or-widen": "Read it again, or tell a larger error of one reading.",
    "read-later": "Add a strip developed for much longer.",
    "read-more": "Read more.",
    "read-unexposed-film": "Read a piece of unexposed, developed film too.",
}
