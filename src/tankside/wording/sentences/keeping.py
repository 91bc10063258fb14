"""What kept solutions, fixing times and planned washes cannot do."""

from __future__ import annotations

SENTENCES = {
    "batch-contaminated": "Something else went into this batch; it is not used again.",
    "batch-held-for-precious": "A precious roll is not developed in a batch that something speaks against.",
    "batch-not-tonight": "Not this batch tonight: its test or its date speaks against it.",
    "bottle-empty": "{bottle_code} is empty.",
    "bottles-not-alike": "{other_code} and {bottle_code} do not hold the same; they are not poured together.",
    "bottle-too-small": "{volume_ml} do not go into a bottle of {holds_ml}.",
    "bottle-volume-out-of-range": "A bottle of {volume_ml} cannot be counted; up to {fixed_20000_ml} can.",
    "developer-past-its-table": (
        "The leaflet's table ends at {most_rolls} in this volume; {used_rolls} have been through."
    ),
    "fix-past-its-ceiling": (
        "This fixer would need {needed_s}, and more than {most_s} begins to bleach fine silver."
    ),
    "fixer-done": (
        "The fixer in {bottle} is done by its test or its look: discard it, whatever the count says."
    ),
    "fixer-dilution-out-of-range": "1+{parts} is no fixer that can be worked out; 1+0 to 1+20 are.",
    "fixer-strength-out-of-range": "{strength_g_l} g of crystals a litre is no fixer; 0 to 700 are.",
    "fixer-too-thin": "Film is not fixed at 1+{parts}; 1+{most} is the thinnest.",
    "layer-out-of-range": "A layer {depth_m} deep is no gelatin of a film.",
    "fresh-no-longer": "This batch is more than {days} days old; its leader is no measure of a fresh one.",
    "keeping-out-of-range": "{months} months cannot be kept; 1 to {most} can.",
    "leader-in-no-developer": "{bottle_code} holds no developer, so no leader turns black in it.",
    "leader-temperature-out-of-range": (
        "A leader test at {temp_c} says nothing here; test between {fixed_14_c} and {fixed_28_c}."
    ),
    "leader-tests-not-alike": (
        "Tonight's leader was timed at {tonight_c} and the fresh one at {fresh_c}; they cannot be compared."
    ),
    "leader-time-out-of-range": "A leader is not black after {seconds} s; it takes 3 s to 15 minutes.",
    "leader-without-a-fresh-one": (
        "No leader was timed while this batch was fresh, so there is nothing to compare tonight's with."
    ),
    "more-bottles-than-needed": "There is enough for {enough} of {count} bottles.",
    "more-than-is-there": "{wanted_ml} cannot be poured from {volume_ml}.",
    "no-film-of-test-piece": "Say of which film the test piece is: every test is of the same one.",
    "nothing-tested": "Nothing was noted: a clearing time, a look, or what the indicator showed.",
    "no-wash-reaches": "No {fills} fills of {volume_ml} up to 10 minutes each reach the limit with a margin.",
    "residual-limit-out-of-range": "A limit of {limit} g/m² is not below what the film starts with.",
    "reuse-out-of-range": "{volume_ml} of used developer cannot be counted.",
    "reuse-without-a-table": (
        "This developer is not offered again: no table of its leaflet says by how much the time grows."
    ),
    "rinse-out-of-range": "{rinses} rinses of {volume_ml} cannot be worked out.",
    "used-since": "Some of what went into {bottle} was used since; it cannot be taken back.",
    "wash-too-cold": "Water of {temp_c} washes too badly to be planned with; {fixed_10_c} is the least.",
    "wash-too-warm": "Water of {temp_c} is too warm for wet gelatin; {fixed_30_c} is the most.",
    "wash-void-fixer-spent": (
        "No wash can be told: the fixer was past its limit, and what it left in the film does not wash out."
    ),
}
WAYS_ON = {
    "fix-again-in-fresh": "Fix again in fresh fixer, then wash.",
    "larger-fill": "Take a larger fill.",
    "mix-fresh": "Mix fresh.",
    "temper-the-wash": "Temper the wash water.",
    "test-at-the-same-temperature": "Test again at the temperature of the fresh one.",
    "use-it-once": "Use it once.",
}
