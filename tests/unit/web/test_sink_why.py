"""The door at the sink to the working of what is in the tank."""

from __future__ import annotations

from uuid import UUID

import pytest
from evening_clock import at
from season import Season

from tankside.core.run.commands import DrainBath, PourBath
from tankside.web.screen.compose import screen
from tankside.workflows.open_run import open_run

RUN = UUID(int=700)
ACTS = (
    (PourBath("A.develop"), 0.0),
    (DrainBath("A.develop", "drain", held=True), 570.0),
    (PourBath("A.stop"), 585.0),
    (DrainBath("A.stop", "drain"), 645.0),
    (PourBath("A.fix"), 660.0),
    (DrainBath("A.fix", "drain", held=True), 960.0),
    (PourBath("A.wash"), 975.0),
)


@pytest.mark.parametrize(
    ("acts", "about", "heading", "said"),
    [
        (1, "time", "Why 9:30?", "Planned: 9:30"),
        (5, "fix", "Why 5:00?", "A rule: enough while a test piece clears in 2:30 or less."),
        (7, "wash", "Why 4 fills of 5:00?", "Enough if half of the fixer in the film leaves in"),
    ],
)
def test_each_bath_has_its_own_working(acts: int, about: str, heading: str, said: str) -> None:
    """Developer, fixer and wash water each say why, and lead to that number of this run's plan."""
    season = Season()
    open_run(season.house.desk, season.house.live_runs, RUN, season.first.key, at(840.0))
    for asked, seconds in ACTS[:acts]:
        season.tap(RUN, asked, 900.0 + seconds)
    run = season.house.live_runs.look(RUN)
    assert run is not None
    (face,) = screen(run, at(901.0 + ACTS[acts - 1][1])).tankfuls

    assert face.why is not None
    assert (heading, f"/plan/why/{about}?tankful=A&plan={season.first.key}&back=sink") == (
        face.why.heading,
        face.why.page,
    )
    assert face.why.sentences[0].startswith(said)


def test_no_working_where_there_is_none() -> None:
    """An empty tank and a stop bath offer none; the time's own stays under More."""
    season = Season()
    open_run(season.house.desk, season.house.live_runs, RUN, season.first.key, at(840.0))
    for asked, seconds in ACTS[:3]:
        season.tap(RUN, asked, 900.0 + seconds)
    run = season.house.live_runs.look(RUN)
    assert run is not None
    (face,) = screen(run, at(1500.0)).tankfuls

    assert face.why is None
    assert f"/plan/why/time?tankful=A&plan={season.first.key}&back=sink" == face.working
