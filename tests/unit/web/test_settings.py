"""Theme and units of a device, without any script."""

from __future__ import annotations

import pytest
from fastapi.testclient import TestClient


@pytest.mark.parametrize("theme", ["light", "dark", "dim"])
def test_a_chosen_theme_is_on_every_page(client: TestClient, theme: str) -> None:
    """Chosen once, every page of this device carries it."""
    client.post("/settings/theme", data={"theme": theme})

    assert f'<html lang="en" data-theme="{theme}">' in client.get("/rolls").text


def test_as_the_device_forgets_the_choice(client: TestClient) -> None:
    """Following the device is the absence of a choice."""
    client.post("/settings/theme", data={"theme": "dim"})
    client.post("/settings/theme", data={"theme": "device"})

    assert '<html lang="en">' in client.get("/rolls").text


def test_a_forged_theme_reaches_no_page(client: TestClient) -> None:
    """Only the three words are taken from a cookie."""
    client.cookies.set("tankside-theme", '"><script>')

    assert '<html lang="en">' in client.get("/").text


def test_units_are_kept_and_said_at_the_start(client: TestClient) -> None:
    """The first screen says which units stand."""
    client.post("/settings/units", data={"temperature": "F", "volume": "us_fl_oz"})

    assert "Fluid ounces and Fahrenheit" in client.get("/").text
    assert 'value="F" checked' in client.get("/settings").text


def test_the_cookie_is_out_of_reach_of_scripts_and_other_sites(client: TestClient) -> None:
    """It names a theme and nothing else, and travels to this site alone."""
    answer = client.post("/settings/theme", data={"theme": "dim"}, follow_redirects=False)

    assert {"httponly", "samesite=strict"} <= set(answer.headers["set-cookie"].lower().split("; "))


def test_chosen_degrees_are_those_of_every_page(client: TestClient) -> None:
    """What is chosen here is what a plan is read and written in: 68 is a temperature, and so is 69.8."""
    client.post("/settings/units", data={"temperature": "F", "volume": "ml"})
    six = {
        "film": "Ferry 200", "format": "135-36", "index": "200", "developer": "Umber", "dilution": "1+1",
        "time": "9:30", "temp": "68", "tank": "500", "reads": "69.8", "answered": "reads",
    }  # fmt: skip

    assert "69.8 °F in the jug" in client.post("/begin", data=six).text
