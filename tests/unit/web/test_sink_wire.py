"""The sink as a phone meets it: arrays of commands in, one answer each, the screen back."""

from __future__ import annotations

import asyncio
import json
from typing import Any

import pytest
from bench import RUN, lay_out
from evening import PLAN
from evening_clock import SetClock, at
from fakes import memory_desk, memory_house
from fastapi.testclient import TestClient

from tankside.core.refusals import refuse
from tankside.web.app import make_app
from tankside.web.pages.sink_wire import known_run, stream
from tankside.workflows.house import House
from tankside.workflows.open_run import open_run

ADDRESS = "http://localhost:8420"


@pytest.fixture
def house() -> House:
    """A house in memory, the evening's run opened at 0 s."""
    house = memory_house(memory_desk())
    lay_out(house.desk)
    open_run(house.desk, house.live_runs, RUN, PLAN.key, at(0.0))
    return house


@pytest.fixture
def phone(house: House) -> TestClient:
    """A phone on Tankside's own page."""
    app = make_app(house, say=lambda refusal: f"No: {refusal.code}.")
    return TestClient(app, base_url=ADDRESS, headers={"origin": ADDRESS, "accept": "application/json"})


def sent(number: int, asked: dict[str, Any], **more: Any) -> dict[str, Any]:
    """One element of the array."""
    return {"id": f"phone:{number}", "asked": asked, "device": "phone", **more}


def notes(phone: TestClient, *queue: dict[str, Any]) -> Any:
    """What is answered to a queue."""
    answer = phone.post(f"/sink/{RUN}/notes", json=list(queue))
    assert 200 == answer.status_code, answer.text
    return answer.json()


POUR = {"kind": "pour-bath", "bath": "A.develop"}


def test_a_tap_is_noted_at_its_own_time(phone: TestClient, house: House) -> None:
    """It should count back the age that the phone's own clock gives."""
    clock = house.clock
    assert isinstance(clock, SetClock)
    clock.seconds = 100.0
    told = notes(phone, sent(1, POUR, age_ms=15_000))
    event = house.desk.run_log.after(RUN)[1]
    assert at(85.0) == event.happened
    assert at(100.0) == event.recorded
    assert ["phone:1"] == [one["id"] for one in told["answers"]]
    assert "noted" == told["answers"][0]["code"]
    assert told["trouble"] is None
    assert told["screen"]["seq"] == event.seq


def test_a_queue_sent_twice_is_answered_alike(phone: TestClient, house: House) -> None:
    """It should answer each command again as before and write nothing, refusals too."""
    queue = (sent(1, POUR), sent(2, {"kind": "close-run"}), sent(3, {"kind": "write-note", "text": "fan on"}))
    first = notes(phone, *queue)
    events = house.desk.run_log.after(RUN)
    assert first["answers"] == notes(phone, *queue)["answers"]
    assert events == house.desk.run_log.after(RUN)
    assert "No: tankfuls-open." == first["answers"][1]["refusal"]["sentence"]


def test_the_same_pour_from_two_phones_says_already_noted(phone: TestClient) -> None:
    """It should name the time of the first, in the zone of the place."""
    notes(phone, sent(1, POUR))
    told = notes(phone, {**sent(1, POUR), "id": "tablet:1"})
    assert "Already noted 20:30:00." == told["answers"][0]["said"]


@pytest.mark.parametrize(
    "asked",
    [
        {"kind": "make-tea"},
        {"kind": "open-run"},
        {"kind": "pour-bath"},
        {"kind": "pour-bath", "bath": "A.stop", "ml": "much"},
        {"kind": "restate-note", "about": "phone:1/0", "body": {"kind": "run-closed", "how": "x"}},
        {"kind": "restate-note", "about": "phone:1/0"},
        {},
    ],
)
def test_what_cannot_be_read_holds_up_no_other(
    phone: TestClient, house: House, asked: dict[str, Any]
) -> None:
    """It should answer it with a refusal, so that it is not sent for ever, and note what came after."""
    told = notes(phone, sent(1, asked), sent(2, POUR))
    assert "command-unreadable" == told["answers"][0]["refusal"]["code"]
    assert "noted" == told["answers"][1]["code"]
    assert "bath-poured" == house.desk.run_log.after(RUN)[1].kind


@pytest.mark.parametrize("text", ["1e999", "NaN", "-Infinity"])
def test_a_number_that_is_none_is_not_noted(phone: TestClient, house: House, text: str) -> None:
    """It should refuse infinity and not-a-number wherever they stand."""
    raw = f'[{{"id": "phone:1", "asked": {{"kind": "pour-bath", "bath": "A.stop", "ml": {text}}}}}]'
    answer = phone.post(f"/sink/{RUN}/notes", content=raw)
    assert "not-a-number" == answer.json()["answers"][0]["refusal"]["code"]
    assert 1 == len(house.desk.run_log.after(RUN))


@pytest.mark.parametrize(
    "raw", ["", "{}", "[1]", '[{"asked": {}}]', '[{"id": "", "asked": {}}]', "[[]]", "\xff"]
)
def test_what_is_no_array_of_commands_is_refused_whole(phone: TestClient, raw: str) -> None:
    """It should answer 422 with one refusal."""
    answer = phone.post(f"/sink/{RUN}/notes", content=raw.encode("latin-1"))
    assert 422 == answer.status_code
    assert "commands-unreadable" == answer.json()["refusals"][0]["code"]


def test_too_much_at_once_is_refused_whole(phone: TestClient) -> None:
    """It should not read a megabyte."""
    answer = phone.post(f"/sink/{RUN}/notes", content=b"[" + b" " * 1_000_001 + b"]")
    assert "too-much-sent" == answer.json()["refusals"][0]["code"]


def test_a_restated_note_keeps_its_kind(phone: TestClient, house: House) -> None:
    """It should read the inner body by the kind it names, for two kinds have the same fields."""
    notes(phone, sent(1, POUR))
    body = {"kind": "bath-poured", "bath": "A.stop", "bottle": "K7M4-T", "ml": None, "took_s": None}
    told = notes(phone, sent(2, {"kind": "restate-note", "about": "phone:1/0", "body": body}))
    assert "put-right" == told["answers"][0]["code"], told
    assert "note-restated" == house.desk.run_log.after(RUN)[2].kind


def test_a_run_that_nobody_opened_is_not_there(phone: TestClient) -> None:
    """It should answer 404 to screen, notes and stream."""
    nobody = "00000000-0000-0000-0000-0000000000ff"
    assert 404 == phone.get(f"/sink/{nobody}/screen").status_code
    assert 404 == phone.post(f"/sink/{nobody}/notes", json=[]).status_code
    assert 404 == phone.get(f"/sink/{nobody}/stream").status_code


def test_the_screen_is_the_view_of_the_run(phone: TestClient) -> None:
    """It should hold its number, its tankfuls and acts with the commands that note them."""
    told = phone.get(f"/sink/{RUN}/screen").json()
    assert (str(RUN), 1, False) == (told["run"], told["seq"], told["closed"])
    assert ["A"] == [one["letter"] for one in told["tankfuls"]]
    assert "pour-bath" in json.dumps(told)


def test_another_site_may_not_note(house: House) -> None:
    """It should refuse a post that comes from elsewhere or does not say whence."""
    app = make_app(house, say=lambda refusal: refusal.code)
    for headers in ({}, {"origin": "http://elsewhere.example"}):
        stranger = TestClient(app, base_url=ADDRESS, headers=headers)
        assert 403 == stranger.post(f"/sink/{RUN}/notes", json=[sent(1, POUR)]).status_code
    assert 1 == len(house.desk.run_log.after(RUN))


def test_a_disk_that_is_full_is_said(
    phone: TestClient, house: House, monkeypatch: pytest.MonkeyPatch
) -> None:
    """It should answer 200 with the trouble in one sentence, and no answer to what was not kept."""

    def full(_answer: object) -> None:
        raise refuse("disk-full", file="tankside.db")

    monkeypatch.setattr(house.desk.answers, "keep", full)
    told = notes(phone, sent(1, POUR))
    assert ([], "No: disk-full.") == (told["answers"], told["trouble"]["sentence"])
    assert 1 == len(house.desk.run_log.after(RUN))


def test_the_stream_tells_each_change_and_ends_when_the_house_closes(house: House) -> None:
    """It should give the screen at once, again after a note, and stop when streams are ended."""

    async def watched() -> list[tuple[str | None, int]]:
        heard = []
        async for event in stream(known_run(RUN, house), house):
            heard.append((event.id, event.data["seq"]))
            if 1 == len(heard):
                await asyncio.to_thread(tap)
            else:
                house.broadcast.close()
        return heard

    def tap() -> None:
        app = make_app(house, say=lambda refusal: refusal.code)
        notes(TestClient(app, base_url=ADDRESS, headers={"origin": ADDRESS}), sent(1, POUR))

    heard = asyncio.run(asyncio.wait_for(watched(), 10))
    last = len(house.desk.run_log.after(RUN))
    assert [("1", 1), (str(last), last)] == heard


def test_the_working_at_the_sink_is_that_of_its_own_plan(phone: TestClient) -> None:
    """Each tankful names this run's plan in the door to its working, and the way back."""
    notes(phone, sent(1, POUR))
    first = phone.get(f"/sink/{RUN}/screen").json()["tankfuls"][0]

    assert f"/plan/why/time?tankful=A&plan={PLAN.key}&back=sink" == first["working"] == first["why"]["page"]
