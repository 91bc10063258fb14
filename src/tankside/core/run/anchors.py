"""Acts by name, 'B.develop:poured', and when each was done or is expected."""

from __future__ import annotations

from collections.abc import Iterable, Mapping
from dataclasses import dataclass
from types import MappingProxyType

from tankside.core.run.standing import Standing, standing
from tankside.core.run.state import Confirmed, Pass, RunState, TankfulState

BEGINS = "run:begins"


def poured(bath: str) -> str:
    """The pour of a bath."""
    return f"{bath}:poured"


def drained(bath: str) -> str:
    """The draining of a bath."""
    return f"{bath}:drained"


def measured(bath: str) -> str:
    """The measuring out of a bath."""
    return f"{bath}:measured"


def filled(bath: str, n: int) -> str:
    """Fill `n` of a wash; the first is its pour."""
    return poured(bath) if n == 1 else f"{bath}:filled-{n}"


def hung(letter: str) -> str:
    """The hanging of a whole tankful."""
    return f"{letter}:hung"


def stray(letter: str) -> str:
    """The pour of a bath that has to come out again."""
    return f"{letter}:stray"


@dataclass(frozen=True, slots=True)
class Anchors:
    """Known acts and expected ones, in microseconds on the run's timeline."""

    known_us: Mapping[str, int]
    expected_us: Mapping[str, int]

    @classmethod
    def of(cls, state: RunState) -> Anchors:
        """What is known of a run; its beginning is planned, or its opening."""
        starts = state.plan.starts
        known = {BEGINS: state.opened.at_us if starts is None else round(starts.timestamp() * 1e6)}
        for one in state.tankfuls:
            known.update(_of_tankful(state, one))
        return cls(MappingProxyType(known), MappingProxyType({}))

    def at_us(self, name: str) -> int | None:
        """When an act was done, else when it is expected, else None."""
        return self.known_us.get(name, self.expected_us.get(name))

    def expecting(
        self, links: Iterable[tuple[str, float, str | None]], *, from_us: int | None = None
    ) -> Anchors:
        """With every act that follows from the known ones: anchor, seconds after it, what it gives.

        What is not done is not expected before `from_us`.
        """
        wanted = list(links)
        expected: dict[str, int] = {}
        for _ in range(2):
            for anchor, after_s, gives in wanted:
                anchor_us = self.known_us.get(anchor, expected.get(anchor))
                if gives is not None and anchor_us is not None and gives not in self.known_us:
                    due_us = anchor_us + round(after_s * 1e6)
                    expected[gives] = due_us if from_us is None else max(due_us, from_us)
        return Anchors(self.known_us, MappingProxyType(expected))


def _of_tankful(state: RunState, one: TankfulState) -> dict[str, int]:
    known: dict[str, int] = {}
    stands = standing(state, one)
    for confirmed in one.confirmed:
        if not _used_up(one, stands, confirmed):
            known.setdefault(measured(confirmed.bath), confirmed.mark.at_us)
    for counted in stands.counted:
        known.update(_of_pass(counted.bath, counted.there))
    if stands.stray is not None:
        known[stray(one.letter)] = stands.stray.poured.at_us
    if one.hung and {was.roll for was in one.hung} >= {roll.code for roll in one.plan.rolls}:
        known[hung(one.letter)] = max(was.mark.at_us for was in one.hung)
    return known


def _used_up(one: TankfulState, stands: Standing, confirmed: Confirmed) -> bool:
    """Whether what was measured out then went into a pass that does not count."""
    return any(
        there.bath == confirmed.bath
        and there.poured.at_us >= confirmed.mark.at_us
        and not stands.counts(there)
        for there in one.passes
    )


def _of_pass(bath: str, there: Pass) -> dict[str, int]:
    known = {poured(bath): there.poured.at_us}
    for fill in there.fills:
        for n in range(2, fill.n + 1):
            known.setdefault(filled(bath, n), fill.mark.at_us)
    if there.ended_us is not None:
        known[drained(bath)] = there.ended_us
    return known
