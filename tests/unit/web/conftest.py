"""The app over a plain desk, asked as one of its own pages would ask."""

from __future__ import annotations

from dataclasses import replace

import pytest
from fakes import memory_desk, memory_house
from fastapi import FastAPI
from fastapi.testclient import TestClient
from planned import TYPED

from tankside.web.app import make_app

ADDRESS = "http://localhost:8420"


@pytest.fixture
def app() -> FastAPI:
    """The web face over a desk that keeps its data nowhere."""
    house = memory_house(replace(memory_desk(), kept_at="~/tankside"))
    return make_app(house, say=lambda refusal: f"No: {refusal.code}.")


@pytest.fixture
def client(app: FastAPI) -> TestClient:
    """A browser on the same machine, on Tankside's own pages."""
    return TestClient(app, base_url=ADDRESS, headers={"origin": ADDRESS, "sec-fetch-site": "same-origin"})


@pytest.fixture
def planned(client: TestClient) -> TestClient:
    """A browser after the six answers of a first evening."""
    client.post("/begin", data=TYPED)
    return client


@pytest.fixture
def stranger(app: FastAPI) -> TestClient:
    """Whoever asks without saying from where; a test gives the headers it means."""
    return TestClient(app, base_url=ADDRESS)
