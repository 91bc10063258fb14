"""What cannot be read, fitted or told of a step strip and its curve."""

from __future__ import annotations

SENTENCES = {
    "base-fog-not-read": ("The lowest steps still rise, so they cannot stand for base and fog."),
    "count-out-of-range": "{count} values at a time are not worked out here; it is {least} to {most}.",
    "curve-does-not-rise": "These readings do not rise with exposure.",
    "density-not-reached": (
        "The curve has densities of {least} to {most} above base and fog; {density} is not among them."
    ),
    "exposure-not-reached": "The readings end at {most} of log exposure, and {log_h} would be needed.",
    "index-out-of-range": "An index of {index} is none.",
    "never-levels-off": "These readings do not level off, or do so at once: where they lead cannot be told.",
    "no-grade-for-range": (
        "No paper grade takes a density range of {density}; the grades here take {least} to {most}."
    ),
    "no-readings-in-file": (
        "The file has the columns {typed}; it needs density, and log_h or step, in its first line."
    ),
    "no-spread": "All these values are alike, so nothing tells what is odd.",
    "push-out-of-range": "A push of {stops} stops is not worked out here; it is -2 (a pull) to 3.",
    "push-out-of-reach": (
        "A push of {stops} stops asks for more contrast than this film gives in this developer, {c_inf}."
    ),
    "reading-beyond-calibration": "A reading of {reading} is beyond what was calibrated, {least} to {most}.",
    "reading-unreadable": "Reading {row} of the file is not two numbers.",
    "reading-error-out-of-range": "A reading error of {sd} is none of a density; it is 0.001 to 0.2.",
    "speed-out-of-range": "A speed of {speed} is none of a film; it lies between 0.8 and 6400.",
    "step-density-out-of-range": "A density of {density} is none of a step; it lies between 0 and {most}.",
    "subject-range-out-of-range": (
        "A subject range of {log_range} (log) is none of a photograph; it lies between 0.6 and 4."
    ),
    "too-few-readings": "{count} readings are too few; it takes {least}.",
    "too-short-for-contrast": (
        "The curve ends at {most} above base and fog, before the outer point of the contrast index."
    ),
    "transmittance-out-of-range": "A transmittance of {share} is none; it lies above 0 and is at most 1.",
    "weight-out-of-range": "A weight of {weight} is none; it lies above 0 and is at most 1.",
}
WAYS_ON = {
    "check-the-readings": "Check the order of the readings.",
    "expose-more-steps": "Give the strip more exposure, or read more steps.",
    "push-less": "Push less, and let the shadows go.",
    "read-later": "Add a strip developed for much longer.",
    "read-more": "Read more.",
    "read-unexposed-film": "Read a piece of unexposed, developed film too.",
}
