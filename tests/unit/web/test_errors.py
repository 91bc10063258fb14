"""Refusals, lost pages and faults."""

from __future__ import annotations

import logging

import pytest
from fastapi import FastAPI
from fastapi.testclient import TestClient

from tankside.core.refusals import Refusal, Refused

JSON = {"accept": "application/json"}


@pytest.fixture
def refusing(app: FastAPI) -> FastAPI:
    """The app with one page that refuses and one that has a fault."""

    def refuse() -> None:
        raise Refused(Refusal("too-warm", {"temp_c": 104.0}, at="temp"))

    def fail() -> None:
        raise ZeroDivisionError("a bug")

    app.add_api_route("/refuse", refuse)
    app.add_api_route("/fail", fail)
    return app


@pytest.mark.usefixtures("refusing")
def test_page_and_json_say_the_same_sentence(client: TestClient) -> None:
    """422 either way, with the one sentence of wording."""
    as_page, as_json = client.get("/refuse"), client.get("/refuse", headers=JSON)

    assert (422, 422) == (as_page.status_code, as_json.status_code)
    assert "No: too-warm." in as_page.text
    told = {"code": "too-warm", "at": "temp", "sentence": "No: too-warm."}
    assert {"refusals": [told]} == as_json.json()


def test_a_lost_page_is_said_plainly(client: TestClient) -> None:
    """404 in the look, and as JSON to whoever asks for JSON."""
    assert "This address leads to no page." in client.get("/nowhere").text
    assert "Nothing stands here" == client.get("/nowhere", headers=JSON).json()["error"]


@pytest.mark.usefixtures("refusing")
def test_a_fault_is_a_bound_page_and_is_logged(client: TestClient, caplog: pytest.LogCaptureFixture) -> None:
    """A bug shows no innards, still carries the policy, and leaves its trace in the log."""
    with caplog.at_level(logging.ERROR):
        answer = client.get("/fail")

    assert 500 == answer.status_code
    assert "A fault in Tankside" in answer.text
    assert "ZeroDivisionError" not in answer.text
    assert "default-src 'none'" in answer.headers["content-security-policy"]
    assert "a bug" in caplog.text
