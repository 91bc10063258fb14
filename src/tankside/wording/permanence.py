"""What a wash came to by plan, in words: never passed, never failed, a plan until it is tested."""

from __future__ import annotations

from tankside.core.permanence.wash_plan import told_residual
from tankside.core.review.differed import VoidWash, Washed
from tankside.core.run.advise_wash import Left, WashAdvice
from tankside.wording.timetable import number_word

WELL_BELOW = "well below"
VOID: dict[VoidWash, str] = {
    "fix": "the fix was too short or left out",
    "fixer": "the fixer was past its limit",
}


def wash_verdict(came_to: WashAdvice) -> str:
    """The wash of a tankful in one sentence."""
    limit = f"limit {came_to.limit_g_m2:.3f} g/m²"
    return f"Fixer left by plan: {left_words(came_to.now)}, {limit}. A plan, not a test."


def left_words(left: Left) -> str:
    """Fixer left between the quick and the slow end; nothing under 0.002 is ever told.

    >>> left_words(Left(4, None, None)), left_words(Left(3, None, 0.0061))
    ('well below', 'well below to 0.006 g/m²')
    """
    quick, slow = (_told(one) for one in (left.quick_g_m2, left.slow_g_m2))
    if slow == WELL_BELOW:
        return slow
    return f"{slow} g/m²" if quick == slow else f"{quick} to {slow} g/m²"


def _told(residual_g_m2: float | None) -> str:
    told = None if residual_g_m2 is None else told_residual(residual_g_m2)
    return WELL_BELOW if told is None else f"{told:g}"


def washed_words(washed: Washed) -> tuple[str, str]:
    """Fewer or more fills than planned, or shorter soaks: what is, and what it means."""
    head = f"Washed with {number_word(washed.fills)} fills, planned {number_word(washed.planned)}."
    if washed.fills == washed.planned:
        head = f"The shortest soak of the wash was {washed.shortest_s / 60:.1f} min."
    if washed.void:
        return head, f"What the wash came to cannot be said: {VOID[washed.void]}."
    confirmed = washed.left.slow_g_m2 is None or washed.left.slow_g_m2 <= washed.limit_g_m2
    if confirmed:
        return head, f"Left by plan: {left_words(washed.left)}. Enough."
    if washed.enough_if_s is None:
        return head, "No model confirms it. One more 5-minute soak costs one fill."
    return head, (
        f"Enough if half leaves in {washed.enough_if_s:.0f} s or less; sources say 15 and 60. "
        "The pessimistic model does not confirm it: one more 5-minute soak costs one fill."
    )
