"""What is said of a fixer: its test pieces, what binds, and what a plan makes of it."""

from __future__ import annotations

from datetime import datetime

from tankside.core.permanence.clearing import ClearingAnswer, ClearingTest
from tankside.core.permanence.fixer_standing import FixerStanding
from tankside.core.planning.plan import Doubtful
from tankside.core.quantities.display import plain_number, temperature_text, time_text
from tankside.core.quantities.preferences import Preferences
from tankside.core.run.fixer_used import FixerUsed
from tankside.core.shelf.bath_tests import Tested
from tankside.core.shelf.ledger import BathTest

VOID = {
    "taken back": "taken back",
    "another film": "void: another film than the fresh one",
    "topped up since": "void: topped up since",
}


def fixer_doubt(one: Doubtful) -> str:
    """What a plan says first of its fixer.

    >>> fixer_doubt(Doubtful("fixer-passed-over", about="F9QD-2"))
    'F9QD-2 is not offered: its count or its test piece ends it. Fresh fixer is planned.'
    """
    match one.code:
        case "fixer-spent":
            left, brings = (plain_number(number or 0, 0.5) for number in (one.value, one.limit))
            return (
                f"By count {one.about} takes {left} more rolls and this session brings {brings}. "
                "A good test piece does not lengthen the count: mix fresh, or leave film out."
            )
        case "fixer-passed-over":
            return f"{one.about} is not offered: its count or its test piece ends it. Fresh fixer is planned."
        case "fixer-test-due":
            return f"Half of what {one.about} may take is used: test it on a piece of film before this film."
        case _:
            own, asked = (time_text(number or 0) for number in (one.value, one.limit))
            return f"You fix for {own}; by its test piece {one.about} needs {asked}."


def fix_sentence(
    test: ClearingTest, bottle: str, *, planned_s: float, by_test_s: float, own: Preferences
) -> str:
    """How long a plan fixes beside what the test piece asks: never less than the method unless accepted."""
    cleared = (
        f"{bottle} cleared a test piece in {short_time(test.seconds)} at {temperature_text(test.temp_c, own)}"
    )
    if by_test_s >= planned_s:
        return f"{time_text(planned_s)}: {cleared}."
    return f"{time_text(planned_s)}. {cleared}: by that alone {time_text(by_test_s)} would do."


def test_words(test: BathTest, preferences: Preferences) -> str:
    """One test as its ledger tells it.

    >>> test_words(BathTest("clearing", "river 100", 42.0, 20.0), Preferences())
    'cleared in 42 s at 20.0 °C, river 100'
    >>> test_words(BathTest("indicator", ph=5.4, spent=True), Preferences())
    'indicator turned, pH 5.4'
    """
    match test.kind:
        case "look":
            return "sulfur or cloud in it" if test.spent else "clear, no sulfur"
        case "indicator":
            turned = "indicator turned" if test.spent else "indicator not turned"
            return turned + (f", pH {test.ph:.1f}" if test.ph is not None else "")
        case "leader":
            fresh = ", while it was fresh" if test.fresh else ""
            return f"a leader was black in {test.seconds or 0:.0f} s{fresh}"
        case "clearing":
            at = "" if test.temp_c is None else f" at {temperature_text(test.temp_c, preferences)}"
            film = f", {test.film}" if test.film else ""
            return f"cleared in {short_time(test.seconds or 0.0)}{at}{film}{', fresh' if test.fresh else ''}"


def void_words(tested: Tested) -> str:
    """Why a test counts no more; nothing while it stands."""
    return VOID[tested.void] if tested.void else ""


def short_time(seconds: float) -> str:
    """A clearing time: seconds up to two minutes, then minutes.

    >>> short_time(42.0), short_time(125.0)
    ('42 s', '2:05')
    """
    return f"{seconds:.0f} s" if seconds < 120 else time_text(seconds)


def past_sentence(stands: FixerStanding) -> str:
    """What has ended a fixer, all of it; nothing while it may be used.

    >>> from tankside.core.permanence.fixer_standing import FixerKnown, judge_fixer
    >>> past_sentence(judge_fixer(FixerKnown(3.0, 1000.0, looks_bad=True)))
    'Sulfur or cloud: discard it, whatever the count says.'
    """
    said = {
        "look": "Sulfur or cloud: discard it, whatever the count says.",
        "test": "Its clearing time has doubled: discard it, whatever the count says.",
        "count": "Its count is past what the source planned on allows: discard it, whatever the test says.",
    }
    return " ".join(said[one] for one in ("look", "test", "count") if one in stands.past)


def cleared_sentence(
    test: BathTest,
    fresh: ClearingTest | None,
    judged: ClearingAnswer | None,
    *,
    on: datetime,
    own: Preferences,
) -> str:
    """The last test piece, what it was fresh, and how many times that is.

    >>> from tankside.core.permanence.clearing import judge_clearing
    >>> fresh, then = ClearingTest(30, 20), BathTest("clearing", "river 100", 42.0, 20.0)
    >>> judged = judge_clearing(fresh, ClearingTest(42, 20))
    >>> cleared_sentence(then, fresh, judged, on=datetime(2026, 11, 12), own=Preferences())
    'Cleared in 42 s on 12 Nov, fresh 30 s: 1.4 times.'
    """
    cleared = f"Cleared in {short_time(test.seconds or 0.0)}{_at(test, fresh, own)} on {on.day} {on:%b}"
    if test.fresh:
        return f"{cleared}, fresh."
    if fresh is None or judged is None:
        return f"{cleared}; what it took fresh is not kept, so nothing is judged by it."
    fresh_words = f"{short_time(fresh.seconds)}{_fresh_at(test, fresh, own)}"
    return f"{cleared}, fresh {fresh_words}: {judged.ratio:.1f} times."


def fixer_past_words(used: FixerUsed) -> tuple[str, str]:
    """A film fixed in a fixer past its limit: what ended it, and what that means for the film."""
    left = used.stands.left
    said = {
        "look": f"The fixer in {used.bottle} had sulfur or cloud in it.",
        "test": f"The fixer in {used.bottle} clears in twice its fresh time.",
        "count": f"With this film {used.bottle} has fixed {plain_number(left.used_units, 0.5)} rolls of "
        f"{plain_number(left.left_planned + left.used_units, 0.5)} to "
        f"{plain_number(left.left_named + left.used_units, 0.5)}.",
    }
    first = next(said[one] for one in ("look", "test", "count") if one in used.stands.past)
    return first, "What a wash comes to cannot be said of it: fix again in fresh fixer, then wash."


def _at(test: BathTest, fresh: ClearingTest | None, own: Preferences) -> str:
    """Its temperature, where it is not that of the fresh one."""
    alike = fresh is not None and test.temp_c == fresh.temp_c
    return "" if alike or test.temp_c is None else f" at {temperature_text(test.temp_c, own)}"


def _fresh_at(test: BathTest, fresh: ClearingTest, own: Preferences) -> str:
    """The fresh one's temperature, where the two differ."""
    return "" if test.temp_c == fresh.temp_c else f" at {temperature_text(fresh.temp_c, own)}"
