"""Static files are kept for ever under their hash, and only there."""

from __future__ import annotations

import pytest
from fastapi.testclient import TestClient

from tankside.web.assets import FOLDER, static_url


def test_the_own_edition_is_kept_for_ever(client: TestClient) -> None:
    """Under the hash of its content a file never changes."""
    answer = client.get(static_url("css/tokens.css"))

    assert 200 == answer.status_code
    assert "public, max-age=31536000, immutable" == answer.headers["cache-control"]
    assert answer.headers["content-type"].startswith("text/css")


def test_another_edition_is_served_but_not_kept(client: TestClient) -> None:
    """A page left open over an upgrade still finds its styles."""
    answer = client.get("/static/0123456789ab/css/tokens.css")

    assert (200, "no-cache") == (answer.status_code, answer.headers["cache-control"])


@pytest.mark.parametrize("path", ["/static/x/../app.py", "/static/x/%2e%2e/app.py", "/static/tokens.css"])
def test_nothing_outside_the_folder(client: TestClient, path: str) -> None:
    """Only files under static/ are served."""
    assert 404 == client.get(path).status_code


def test_a_missing_name_is_a_fault_of_the_template() -> None:
    """A style that is not there fails the page, not the look."""
    with pytest.raises(LookupError, match=r"css/none\.css"):
        static_url("css/none.css")


def test_styles_and_scripts_stay_short() -> None:
    """CSS by thing up to 180 lines, scripts by behaviour up to 80."""
    limits = {".css": 180, ".js": 80}
    long = [
        path.name
        for path in FOLDER.rglob("*")
        if path.suffix in limits and len(path.read_text().splitlines()) > limits[path.suffix]
    ]

    assert [] == long
