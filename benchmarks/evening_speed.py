"""How fast a live run and the order of an evening are, as ratios within one run: speed.py prints them too.

1. One more note on a run of 2,000 against the same run replayed from its rows, which is what it would take
   without adding in place; and a replay of 8,000 rows against one of 1,000, row for row: 1 is linear.
2. The start of a second tankful against the plain search of plain_order.py, where the times of two tankfuls
   do not mesh: 600 and 330 s by the default method.
"""

from __future__ import annotations

from dataclasses import replace
from datetime import UTC, datetime
from uuid import UUID

from plain_order import plainly_joined
from speed import seconds

from tankside.core.methods.baths import Times
from tankside.core.planning.first_evening import Keys, SixAnswers, first_evening
from tankside.core.planning.order import Coming, in_order
from tankside.core.planning.plan import Plan, PlannedTankful
from tankside.core.planning.work_out import work_out
from tankside.core.rolls.formats import Format
from tankside.core.run.envelope import Event
from tankside.core.run.events import AgitationNoted, BathPoured, Body, ReadingTaken, RunOpened
from tankside.core.run.instants import Instant
from tankside.core.run.replay import follow, replay
from tankside.core.solutions.notation import Dilution

STARTS = datetime(2026, 10, 3, 19, 10, tzinfo=UTC)
ANSWERS = SixAnswers(
    "Ferry 125", Format("135-36"), 125.0, "Umber", Dilution(1, 1), 570.0, 20.0, 500.0, 21.0, "cubic"
)
"""An invented film in an invented developer."""


def planned() -> Plan:
    """One tankful worked out."""
    keys = Keys(UUID(int=1), "7MPA-4", *(UUID(int=number) for number in range(2, 7)))
    wish = first_evening(ANSWERS, keys=keys, starts=STARTS, zone="Europe/Berlin").wish
    return work_out(wish, key=UUID(int=9), number=1, made=STARTS)


def rows(count: int) -> list[Event]:
    """An evening's rows: the opening, one pour, then readings and inversions in turn, 3 s apart."""
    plan = planned()
    bodies: list[Body] = [RunOpened(plan, "Europe/Berlin"), BathPoured("A.develop")]
    for number in range(count - len(bodies)):
        even = number % 2 == 0
        bodies.append(
            ReadingTaken("room", "", "glass", 20.0) if even else AgitationNoted("A.develop", number, True)
        )
    return [_row(number, body) for number, body in enumerate(bodies)]


def _row(number: int, body: Body) -> Event:
    """A row of the log."""
    at = Instant(number * 3_000_000, number * 3_000_000, "boot")
    tankful = None if isinstance(body, RunOpened | ReadingTaken) else "A"
    return Event(
        UUID(int=1), number + 1, f"phone:{number}/0", tankful, at, at, "phone", "tapped", 1.0, body
    )  # fmt: skip


def tankful(letter: str, develop_s: float) -> PlannedTankful:
    """A tankful of the default method, developed for `develop_s`."""
    (one,) = planned().tankfuls
    exact = Times(develop_s, develop_s, develop_s)
    baths = tuple(replace(bath, times=exact) if bath.kind == "develop" else bath for bath in one.baths)
    return replace(one, letter=letter, baths=baths)


def note_ratio(count: int = 2000) -> tuple[float, float]:
    """How many times faster one more note is than a replay of them all, and the ms that the replay took."""
    log = rows(count)
    run = replay(log[:-1])
    whole_s = seconds(lambda: replay(log), times=15)
    return whole_s / seconds(lambda: follow(run, log[-1:]), times=50), whole_s * 1e3


def replay_ratio(few: int = 1000, many: int = 8000) -> float:
    """What a row costs in a long log, over what it costs in a short one."""
    long, short = rows(many), rows(few)
    return (seconds(lambda: replay(long), times=9) / many) / (seconds(lambda: replay(short), times=15) / few)


def order_ratio(a_s: float = 600.0, b_s: float = 330.0) -> tuple[float, float]:
    """How many times faster the search is than the plain one, and the start that both found, in s."""
    hands = planned().hands
    first, own = tankful("A", a_s), tankful("B", b_s)
    one = Coming(own, own)
    ordered = in_order(first, [one], hands)
    if plainly_joined(first, one, hands, until_s=1e5) != ordered.tankfuls:
        raise AssertionError("two searches, two answers")
    plain_s = seconds(lambda: plainly_joined(first, one, hands, until_s=1e5), times=1)
    return plain_s / seconds(lambda: in_order(first, [one], hands), times=3), ordered.tankfuls[1].starts_s


def told() -> None:
    """Print the ratios."""
    faster, ms = note_ratio()
    print(f"one more note on a run of 2,000: {faster:,.0f} x faster than a replay, which took {ms:.0f} ms")
    print(f"a row of 8,000 replayed: {replay_ratio():.2f} x a row of 1,000")
    faster, starts_s = order_ratio()
    print(f"start of a second tankful, {starts_s:.0f} s: {faster:,.0f} x faster than the plain search")


if __name__ == "__main__":
    told()
