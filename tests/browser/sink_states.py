"""An invented evening brought into every state that the page at the sink can show."""

from __future__ import annotations

from collections.abc import Callable
from dataclasses import replace

from unit.core.run.evening import FIXER, STOP, Sink, at, opened, plan

from tankside.core.run.commands import (
    ChangeWater,
    Command,
    ConfirmBottle,
    DrainBath,
    EndTankful,
    HangFilm,
    PourBath,
    TakeReading,
    WriteNote,
)
from tankside.core.run.decide import decide
from tankside.core.run.replay import follow
from tankside.web.screen.compose import screen
from tankside.web.screen.values import Screen

Moment = tuple[Sink, float]


def _filling() -> Moment:
    return opened(plan("A")), -20.0


def _running() -> Moment:
    sink = opened(plan("AB"))
    sink.do(PourBath("A.develop"), 0)
    sink.do(TakeReading("tank", "A", 19.2), 60)
    return sink, 158.0


def _cue_due() -> Moment:
    sink, _ = _running()
    return sink, 182.0


def _measure() -> Moment:
    sink, _ = _running()
    return sink, 550.0


def _last_minute() -> Moment:
    sink, _ = _measure()
    sink.do(ConfirmBottle("A.stop", STOP), 555)
    return sink, 590.0


def _overtime() -> Moment:
    sink, _ = _last_minute()
    return sink, 640.0


def _outage() -> Moment:
    sink = opened(plan("A"))
    sink.do(PourBath("A.develop"), 0)
    return sink, 700.0


def _doubted() -> Moment:
    """The machine began anew three minutes slow, so the bath may have less left than is counted."""
    sink = opened(plan("A"))
    sink.do(PourBath("A.develop"), 0)
    sink.do(WriteNote("fan on"), 340)
    back = Command("desk:1", WriteNote("back"), "desk")
    sink.run = follow(sink.run, decide(sink.run, back, at(160, boot="second")).events)
    return sink, 162.0


def _pour() -> Moment:
    sink, _ = _last_minute()
    sink.do(DrainBath("A.develop"), 614)
    return sink, 623.0


def _stop() -> Moment:
    sink, _ = _pour()
    sink.do(PourBath("A.stop"), 625)
    return sink, 650.0


def _fix() -> Moment:
    sink, _ = _stop()
    sink.do(ConfirmBottle("A.fix", FIXER), 660)
    sink.do(DrainBath("A.stop"), 690)
    sink.do(PourBath("A.fix"), 705)
    return sink, 800.0


def _two() -> Moment:
    sink, _ = _fix()
    sink.do(PourBath("B.develop"), 730)
    return sink, 812.0


def _at_least() -> Moment:
    sink, _ = _fix()
    return sink, 1040.0


def _wash() -> Moment:
    sink, _ = _fix()
    sink.do(DrainBath("A.fix"), 1010)
    sink.do(PourBath("A.wash"), 1025)
    sink.do(ChangeWater("A.wash", 2, temp_c=15.4), 1330)
    sink.do(ChangeWater("A.wash", 3, temp_c=15.4), 1635)
    return sink, 1805.0


def _hang() -> Moment:
    sink, _ = _wash()
    sink.do(ChangeWater("A.wash", 4), 1940)
    sink.do(PourBath("A.wetting"), 2260)
    sink.do(DrainBath("A.wetting"), 2320)
    return sink, 2340.0


def _done() -> Moment:
    sink, _ = _hang()
    sink.do(HangFilm("A"), 2350)
    sink.do(EndTankful("B", "given up"), 2352)
    return sink, 2360.0


def _wrong_bottle() -> Moment:
    sink, _ = _pour()
    sink.do(PourBath("A.stop", FIXER), 628)
    return sink, 633.0


STATES: dict[str, Callable[[], Moment]] = {
    "filling": _filling,
    "running": _running,
    "cue-due": _cue_due,
    "measure": _measure,
    "last-minute": _last_minute,
    "overtime": _overtime,
    "outage": _outage,
    "doubted-clock": _doubted,
    "pour": _pour,
    "stop": _stop,
    "fix": _fix,
    "two-tankfuls": _two,
    "at-least": _at_least,
    "wash": _wash,
    "hang": _hang,
    "done": _done,
    "wrong-bottle": _wrong_bottle,
}

LOOKED_S = {"outage": 370.0}
"""When the page of a state last looked, where that was not just now."""


def state_screen(name: str) -> Screen:
    """The screen of one state, one tankful where one is meant."""
    sink, seconds = STATES[name]()
    one = "B" not in name and name not in ("two-tankfuls", "running", "cue-due")
    since = LOOKED_S.get(name)
    since_us = None if since is None else at(since).wall_us
    boot = "second" if name == "doubted-clock" else "first"
    found = screen(sink.run, at(seconds, boot=boot), watching=1, since_us=since_us)
    return replace(found, tankfuls=found.tankfuls[:1], acts=_own(found)) if one else found


def _own(found: Screen) -> tuple[object, ...]:
    return tuple(act for act in found.acts if act.tankful == "A")  # type: ignore[return-value]
