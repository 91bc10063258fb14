"""Until when a bottle is good, what its leader said, and what speaks against it, in words."""

from __future__ import annotations

from datetime import date

from tankside.core.planning.plan import BottleDoubt, Plan
from tankside.core.planning.wish import FirstUse
from tankside.core.quantities.display import plain_number, temperature_text, volume_text
from tankside.core.quantities.preferences import Preferences
from tankside.core.shelf.contents import Contents
from tankside.core.shelf.fitness import Reason
from tankside.core.solutions.keeping import KeepingTime
from tankside.core.solutions.leader_test import LeaderAnswer, LeaderTest

HELD_FOR: dict[FirstUse | Reason, str] = {
    "leader-slow": "its developer failed its leader test",
    "past-its-date": "its developer is past its date",
    "test-due": "a leader of its developer is to be timed first",
    "contaminated": "something else got into its developer",
}
HEADINGS = {"passed over": "No", "to test": "Test first", "taken anyway": "Taken all the same"}


def day_text(day: date, today: date) -> str:
    """A day, with its year where that is not plain.

    >>> day_text(date(2027, 1, 14), date(2026, 11, 25)), day_text(date(2028, 1, 14), date(2026, 11, 25))
    ('14 Jan', '14 Jan 2028')
    """
    near = abs((day - today).days) < 300
    return f"{day.day} {day:%b}" if near else f"{day.day} {day:%b} {day.year}"


def until_sentence(until: date | None, today: date) -> str:
    """Until when a bottle is good; empty where nobody knows.

    >>> until_sentence(date(2027, 1, 14), date(2026, 11, 25))
    'Good until 14 Jan.'
    >>> until_sentence(date(2026, 6, 20), date(2026, 7, 1))
    'Past its date: it was good until 20 Jun.'
    """
    if until is None:
        return ""
    told = day_text(until, today)
    return f"Good until {told}." if today <= until else f"Past its date: it was good until {told}."


def age_sentence(contents: Contents, today: date, preferences: Preferences) -> str:
    """When what is in a bottle was made, and since when the bottle stands part full."""
    made = f"Made {day_text(contents.made, today)}"
    if contents.part_full_since is None:
        return f"{made}."
    holds = volume_text(contents.holds_ml, preferences)
    return f"{made}, part full since {day_text(contents.part_full_since, today)} in a bottle of {holds}."


def rule_sentence(keeping: KeepingTime | None) -> str:
    """How long a solution keeps, and who says so."""
    if keeping is None:
        return "How long it keeps is on its leaflet."
    part = keeping.part_full_months
    full = f"{_months(keeping.full_months)} in a full bottle" if part else _months(keeping.full_months)
    told = f"Keeps {full}{f', {_months(part)} once part full' if part else ''}"
    return f"{told}; {keeping.provenance.at if keeping.provenance.how == 'own' else keeping.provenance.told}."


def renewed_sentence(first_left: float) -> str:
    """How new a topped-up bath is.

    >>> renewed_sentence(0.484)
    '48 % of it is still the first filling; a control strip says what it does.'
    """
    return f"{first_left * 100:.0f} % of it is still the first filling; a control strip says what it does."


def leader_sentence(answer: LeaderAnswer) -> str:
    """What a leader test says.

    >>> leader_sentence(LeaderAnswer(120 / 35, "not for this batch"))
    'Its leader took 3.4 times its fresh time: not for this batch.'
    """
    if answer.verdict == "good":
        return f"Its leader took {plain_number(answer.ratio, 0.1)} times its fresh time: good."
    return f"Its leader took {plain_number(answer.ratio, 0.1)} times its fresh time: not for this batch."


def reference_sentence(fresh: LeaderTest, preferences: Preferences) -> str:
    """What the leader took while the batch was fresh."""
    at = temperature_text(fresh.temp_c, preferences)
    return f"Black in {fresh.seconds:.0f} s while it was fresh, at {at}."


def against_words(doubt: BottleDoubt, today: date) -> str:
    """What speaks against a bottle of developer."""
    told = {
        "leader-slow": f"its leader took {plain_number(doubt.leader_ratio or 0.0, 0.1)} times its fresh time",
        "past-its-date": f"it was good until {day_text(doubt.until, today) if doubt.until else 'earlier'}",
        "test-due": "it is due for a leader test",
        "contaminated": "something else got in",
    }
    return " and ".join(told[one] for one in doubt.reasons)


def doubt_heading(doubt: BottleDoubt) -> str:
    """What the plan made of a bottle that something speaks against, in a word."""
    return HEADINGS[doubt.standing]


def doubt_sentence(doubt: BottleDoubt, today: date) -> str:
    """A bottle that something speaks against, and what the plan does about it.

    >>> from uuid import UUID
    >>> dead = BottleDoubt("R5TN-6", "Umber", UUID(int=1), ("leader-slow",), "passed over", 3.43)
    >>> doubt_sentence(dead, date(2026, 4, 10))
    'Not R5TN-6 tonight: its leader took 3.4 times its fresh time. This plan counts on fresh stock.'
    """
    against = against_words(doubt, today)
    match doubt.standing:
        case "passed over":
            return f"Not {doubt.bottle} tonight: {against}. This plan counts on fresh stock."
        case "to test":
            return f"{doubt.bottle}, {doubt.name}: {against}. Time one before you mix."
        case "taken anyway":
            return f"{doubt.bottle} is taken though {against}."


def anyway_sentences(plan: Plan, letter: str, day: date) -> tuple[str, ...]:
    """What was taken against the advice for one tankful: a bottle, a precious roll."""
    tankful = next((one for one in plan.tankfuls if one.letter == letter), None)
    if tankful is None:
        return ()
    bottles = (
        doubt_sentence(one, day)
        for one in plan.bottles
        if one.standing == "taken anyway" and one.combination == tankful.combination
    )
    rolls = (
        f"{one.code} is precious and was released by its owner."
        for one in tankful.rolls
        if one.key in plan.released
    )
    return (*bottles, *rolls)


def _months(count: int) -> str:
    """A number of months."""
    return f"{count} month{'' if count == 1 else 's'}"
