"""What raw chemicals, formulas and money cannot do."""

from __future__ import annotations

SENTENCES = {
    "air-over-it-out-of-range": "{volume_ml} of air, renewed {openings} times, cannot be worked out.",
    "carried-out-of-range": (
        "{carried_ml} carried in with each roll cannot be right; it is {fixed_1_ml} to {fixed_50_ml}."
    ),
    "element-not-weighed": "{typed} holds {element}, whose weight is not in the table.",
    "form-not-known": "Nothing is known of the forms of {substance}, so none can stand in for another.",
    "form-unknown": "There is no {substance} as {form} in the catalogue; it has {known}.",
    "formula-unknown": "There is no formula {name} in the catalogue; it has {known}.",
    "formula-unreadable": "'{typed}' cannot be read as a chemical formula.",
    "have-unreadable": "'{typed}' cannot be read; write SUBSTANCE=FORM, as borax=pentahydrate.",
    "not-in-the-formula": "{formula} holds no {substance}.",
    "not-the-same-salt": "{have} cannot stand in for {called_for}: it does something else.",
    "nothing-to-share-over": "There is no film to share the cost over.",
    "packet-is-mixed-whole": (
        "A packet for {packet_ml} cannot make {wanted_ml}: its powders have settled apart, "
        "so that a part of it is not what the whole is."
    ),
    "price-unreadable": "'{typed}' is no price; write it as 12.50.",
    "percent-by-volume-is-measured": "{percent} is measured by volume, not weighed out.",
    "percent-by-weight-is-weighed": "{percent} is weighed: equal volumes of it do not weigh the same.",
    "percent-kind-not-said": "'{typed}' does not say percent of what.",
    "percent-kinds-differ": "{first} and {second} are two kinds of percent; they cannot be compared.",
    "percent-needs-density": "{percent} says no grams in a volume without a density.",
    "percent-out-of-range": "{value} % {kind} cannot be.",
    "percent-too-weak": "{weak} cannot make {strong}: water makes nothing stronger.",
    "percent-unreadable": "'{typed}' cannot be read as percent; write it as 28 % w/w.",
    "price-out-of-range": "{minor} for {amount} is no price.",
    "recipe-volume-out-of-range": (
        "{volume_ml} of a formula cannot be worked out; it lies between {least_ml} and {most_ml}."
    ),
    "room-size-out-of-range": "A room of {room_m3} cannot be worked out; it holds 1 to 500 cubic metres.",
    "scale-mark-out-of-range": "A scale marked every {mark_g} weighs nothing out here; 0.0001 to 50 g do.",
    "scale-too-coarse": "A scale marked every {mark_g} is too coarse for this formula at any usual volume.",
    "stop-strength-out-of-range": (
        "A stop bath of {acid_mol_l} mol of acid a litre cannot be worked out; it lies between 0.02 and 1."
    ),
    "stop-volume-out-of-range": (
        "{volume_ml} of stop bath cannot be worked out; it lies between {fixed_50_ml} and {fixed_20000_ml}."
    ),
    "substance-unknown": "There is no {name} in the catalogue.",
    "top-up-out-of-range": "{top_up_ml} cannot top up a bath of {bath_ml}; it is less than the bath.",
    "water-oxygen-out-of-range": (
        "Oxygen in water at {temp_c} is not worked out; it is between {fixed_0_c} and {fixed_40_c}."
    ),
}
WAYS_ON = {
    "finer-scale": "Take a finer scale.",
    "mix-the-packet-whole": "Mix the packet whole and keep the rest in full bottles.",
    "raw-chemicals": "Weigh raw chemicals by the formula instead.",
    "say-percent-kind": "Write w/v (grams in 100 mL), w/w (grams in 100 g) or v/v (mL in 100 mL) after it.",
}
