"""What water, tank and thermometer cannot do."""

from __future__ import annotations

SENTENCES = {
    "hot-not-above-cold": "The hot water ({hot_c}) is no warmer than the cold ({cold_c}).",
    "hydroquinone-not-told": (
        "At {temp_c} a developer that holds hydroquinone hardly works: below {least_c} it must be known "
        "that yours holds none."
    ),
    "hydroquinone-too-cold": (
        "At {temp_c} hydroquinone hardly works; such a developer needs {least_c} or more."
    ),
    "no-room-for-water": "What is measured out already fills {volume_ml}: there is no room for water.",
    "no-start-makes-it-right": "No start between {least_c} and {most_c} makes {time_s} worth {needed_s}.",
    "no-water-bath-does-it": (
        "It would take water of {bath_c} around the tank, which leaves what times are known for: "
        "{least_c} to {most_c}."
    ),
    "no-time-known": "No developing time is known for this film in this developer.",
    "nothing-read-yet": "Nothing has been read yet, so there is no temperature to go by.",
    "nothing-to-mix": "There is nothing to mix.",
    "readings-show-no-drift": (
        "{first_c} and {second_c} show no drift towards a room of {room_c}, so no time constant follows."
    ),
    "tank-test-not-between": (
        "A tank at {tank_c} and water at {liquid_c} cannot give {read_c}: it must lie between the two."
    ),
    "tank-test-too-near": "Water at {liquid_c} is too near to the tank's {tank_c} to tell the tank's worth.",
    "too-cold-to-time": "{temp_c} is below what times are known for: {least_c} to {most_c}.",
    "too-cold-for-table": (
        "{temp_c} is too cold: this time follows no rate and its rows hold from {least_c} to {most_c}."
    ),
    "too-warm-for-table": (
        "{temp_c} is too warm: this time follows no rate and its rows hold from {least_c} to {most_c}."
    ),
    "too-much-ice": "{ice_g} of ice would not all melt.",
    "too-warm-to-time": "{temp_c} is above what times are known for: {least_c} to {most_c}.",
    "volume-below-zero": "A volume of {volume_ml} is less than nothing.",
    "water-temperature-out-of-range": (
        "Water at {temp_c} is outside what is worked out here: {fixed_0_c} to {fixed_65_c}."
    ),
    "water-too-cold": (
        "For {target_c} the water must be {needed_c}, and the hot is {hot_c}; the nearest is {nearest_c}."
    ),
    "water-too-warm": (
        "For {target_c} the water must be {needed_c}, and the cold is {cold_c}; the nearest is {nearest_c}."
    ),
}
WAYS_ON = {
    "another-time": "Take another time.",
    "colder-water": "Cool the water in a jug first.",
    "cool": "Cool it.",
    "cool-the-stock": "Cool the stock.",
    "enter-a-time": "Enter the time of the leaflet.",
    "hotter-water": "Heat some water.",
    "ice": "Mix with the cold alone, then {ice_g} of ice in a sealed bag brings it there.",
    "less-ice": "Take less ice.",
    "read-again": "Read again.",
    "say-the-agent": "Say on its leaflet page what it holds.",
    "read-the-tank": "Read the tank.",
    "wait-longer": "Wait longer between the two readings.",
    "warm": "Warm it.",
    "warm-the-stock": "Warm the stock.",
    "warmer-water": "Take warmer water.",
}
