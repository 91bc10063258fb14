"""Bodies stored by older versions come back as this one writes them."""

from __future__ import annotations

import json

from unit.core.run.evening import plan

from tankside.core.planning.plan import Plan
from tankside.core.planning.stored_plans import with_rates
from tankside.core.run.events import EVENTS
from tankside.core.run.upcast import STEPS, upcast
from tankside.store.frozen_json import from_json, to_json


def as_once_stored(made: Plan) -> dict[str, object]:
    """The same plan as it was written when a development carried a factor and its reference apart."""
    stored = json.loads(to_json(Plan, made))
    for one in stored["tankfuls"]:
        rate = one["development"].pop("rate")
        one["development"] |= {"ref_c": rate["ref_c"], "q10": rate["q10"]}
    return dict(stored)


def test_a_factor_becomes_a_rate() -> None:
    """A plan stored with a factor and a reference is the plan of today, its default range with it."""
    again = from_json(Plan, json.dumps(with_rates(as_once_stored(plan()))))

    assert plan() == again


def test_a_plan_of_today_stays() -> None:
    """What carries a rate already is left alone."""
    stored = json.loads(to_json(Plan, plan()))

    assert stored == with_rates(stored)


def test_an_opened_run_is_brought_up() -> None:
    """Its plan is; all else in the body stays."""
    body = upcast("run-opened", 1, {"plan": as_once_stored(plan()), "zone": "Europe/Oslo"})

    assert "Europe/Oslo" == body["zone"]
    assert plan() == from_json(Plan, json.dumps(body["plan"]))


def test_every_older_version_has_its_step() -> None:
    """From one version to the next there is a way for each kind."""
    wanted = {(kind, older) for kind, body in EVENTS.items() for older in range(1, body.version)}

    assert wanted == set(STEPS)
