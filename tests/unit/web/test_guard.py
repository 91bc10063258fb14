"""Who may ask, and what binds every answer."""

from __future__ import annotations

import pytest
from fakes import memory_house
from fastapi import FastAPI
from fastapi.testclient import TestClient

from tankside.web.app import make_app
from tankside.web.guard import POLICY

OWN = "http://localhost:8420"


@pytest.mark.parametrize("host", ["localhost:8420", "127.0.0.1:8420", "[::1]:8420", "LOCALHOST"])
def test_loopback_names_are_answered(stranger: TestClient, host: str) -> None:
    """The machine's own names open the first page."""
    assert 200 == stranger.get("/", headers={"host": host}).status_code


@pytest.mark.parametrize(
    "host", ["evil.example", "localhost.evil.example", "127.0.0.1.evil.example:8420", ""]
)
def test_a_rebound_name_is_turned_away(stranger: TestClient, host: str) -> None:
    """A name that was pointed at this machine from elsewhere gets nothing, not even a read."""
    answer = stranger.get("/", headers={"host": host})

    assert 421 == answer.status_code
    assert "Tankside answers to" in answer.text


def test_a_named_host_is_answered() -> None:
    """A name given at the start is answered beside the loopback ones, without its port."""
    app = make_app(memory_house(), say=lambda refusal: refusal.code, hosts=["192.168.1.20:8420"])

    assert 200 == TestClient(app, base_url="http://192.168.1.20:8420").get("/").status_code


@pytest.mark.parametrize("path", ["/", "/nowhere", "/static/none/nothing.css", "/settings"])
def test_every_answer_carries_the_binding_headers(stranger: TestClient, path: str) -> None:
    """Pages, lost pages and files alike."""
    headers = stranger.get(path).headers

    assert POLICY == headers["content-security-policy"]
    assert "nosniff" == headers["x-content-type-options"]
    assert "same-origin" == headers["referrer-policy"]
    assert "same-origin" == headers["cross-origin-opener-policy"]


def test_the_policy_lets_in_no_inline_and_no_other_host() -> None:
    """Nothing but the app itself is a source, and nothing may frame it."""
    rules = dict(rule.split(" ", 1) for rule in POLICY.split("; "))

    assert {"'none'"} == {rules[name] for name in ("default-src", "base-uri", "frame-ancestors")}
    assert {"'self'"} == {rules[name] for name in ("script-src", "style-src", "connect-src", "form-action")}
    assert "unsafe" not in POLICY


def post_theme(client: TestClient, **headers: str) -> int:
    """Status of choosing a theme with these headers."""
    sent = {name.replace("_", "-"): value for name, value in headers.items()}
    return client.post(
        "/settings/theme", data={"theme": "dim"}, headers=sent, follow_redirects=False
    ).status_code


def test_own_pages_may_write(stranger: TestClient) -> None:
    """Either sign of the own origin is enough; plain addresses of a home network send no fetch metadata."""
    assert 303 == post_theme(stranger, origin=OWN, sec_fetch_site="same-origin")
    assert 303 == post_theme(stranger, origin=OWN)
    assert 303 == post_theme(stranger, sec_fetch_site="same-origin")


@pytest.mark.parametrize(
    "headers",
    [
        {},
        {"origin": "http://evil.example"},
        {"origin": "null"},
        {"origin": "http://localhost:9999"},
        {"origin": "https://localhost:8420"},
        {"sec_fetch_site": "cross-site"},
        {"sec_fetch_site": "same-site"},
        {"sec_fetch_site": "none"},
        {"origin": OWN, "sec_fetch_site": "cross-site"},
        {"origin": "http://evil.example", "sec_fetch_site": "same-origin"},
    ],
)
def test_others_may_not_write(stranger: TestClient, headers: dict[str, str]) -> None:
    """One sign of another site, or no sign at all, changes nothing."""
    assert 403 == post_theme(stranger, **headers)


def test_a_link_from_elsewhere_opens_a_page(stranger: TestClient) -> None:
    """Looking changes nothing, so a link may lead here."""
    link = {"sec-fetch-site": "cross-site", "sec-fetch-mode": "navigate", "sec-fetch-dest": "document"}

    assert 200 == stranger.get("/", headers=link).status_code


@pytest.mark.parametrize(
    ("site", "mode", "dest"),
    [
        ("cross-site", "no-cors", "image"),
        ("cross-site", "cors", "empty"),
        ("same-site", "cors", "empty"),
        ("cross-site", "navigate", "iframe"),
    ],
)
def test_others_may_not_read_into_their_own_pages(
    stranger: TestClient, site: str, mode: str, dest: str
) -> None:
    """No embedding, no fetching, from another site or another port."""
    headers = {"sec-fetch-site": site, "sec-fetch-mode": mode, "sec-fetch-dest": dest}

    assert 403 == stranger.get("/rolls", headers=headers).status_code


def test_no_page_about_the_interface(app: FastAPI, client: TestClient) -> None:
    """The framework's own pages load scripts from other hosts; they are off."""
    assert {404} == {client.get(path).status_code for path in ("/docs", "/redoc", "/openapi.json")}
    assert app.openapi_url is None
