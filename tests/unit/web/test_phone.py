"""A phone at the sink: open to linked phones, closed to everyone else; a code works once."""

from __future__ import annotations

import re
from collections.abc import Callable

import pytest
from evening_clock import CountingDice
from fakes import memory_house
from fastapi.testclient import TestClient

from tankside.web.app import make_app
from tankside.web.linking import TRIES, PhoneLink

HOME = "http://192.168.1.20:8462"
HERE = "http://127.0.0.1:8462"
ON_THE_PHONE, ON_THIS_MACHINE = ("192.168.1.31", 50100), ("127.0.0.1", 50101)


Asked = Callable[[str, tuple[str, int]], TestClient]


class Phones:
    """Linked phones in memory."""

    def __init__(self) -> None:
        self.tokens: set[str] = set()

    def knows(self, token: str) -> bool:
        """Whether it was added."""
        return token in self.tokens

    def add(self, token: str) -> None:
        """Add."""
        self.tokens.add(token)

    def number(self) -> int:
        """How many."""
        return len(self.tokens)

    def forget_all(self) -> None:
        """Forget."""
        self.tokens.clear()


@pytest.fixture
def told() -> list[str]:
    """The addresses that were told after a code was used."""
    return []


@pytest.fixture
def link(told: list[str]) -> PhoneLink:
    """The link of a Tankside that was started for a phone."""
    return PhoneLink(HOME, Phones(), CountingDice(), told.append)


@pytest.fixture
def asked(link: PhoneLink) -> Asked:
    """A browser at some address of the network that opens some address of Tankside."""
    app = make_app(memory_house(), say=lambda no: f"No: {no.code}.", hosts=("192.168.1.20",), link=link)

    def browser(address: str, client: tuple[str, int]) -> TestClient:
        return TestClient(app, base_url=address, client=client, headers={"origin": address})

    return browser


def test_this_machine_goes_on_as_before(asked: Asked) -> None:
    """Loopback needs no code."""
    assert 200 == asked(HERE, ON_THIS_MACHINE).get("/rolls").status_code


@pytest.mark.parametrize("path", ["/", "/rolls", "/sink", "/settings", "/start/phone", "/nowhere"])
def test_a_stranger_in_the_network_sees_a_403_page(asked: Asked, path: str) -> None:
    """Without a linked phone's cookie no page is shown, and the page says how to link."""
    answer = asked(HOME, ON_THE_PHONE).get(path)
    assert 403 == answer.status_code
    assert "not linked" in answer.text
    assert "frame-ancestors 'none'" in answer.headers["content-security-policy"]


def test_a_stranger_changes_nothing(asked: Asked) -> None:
    """A form is refused like a page."""
    answer = asked(HOME, ON_THE_PHONE).post("/settings/theme", data={"theme": "dark"})
    assert 403 == answer.status_code


def test_a_stranger_may_not_pass_for_this_machine(asked: Asked) -> None:
    """A forged Host of the loopback makes nobody local; the network's address here asks for the cookie."""
    assert 403 == asked(HERE, ON_THE_PHONE).get("/rolls").status_code
    assert 403 == asked(HOME, ON_THIS_MACHINE).get("/rolls").status_code


@pytest.mark.parametrize("host", ["http://192.168.1.99:8462", "http://films.example:8462"])
def test_other_names_are_not_answered(asked: Asked, host: str) -> None:
    """Only the names of its own Host list are."""
    assert 421 == asked(host, ON_THE_PHONE).get("/").status_code


def test_the_code_links_a_phone_and_is_used_up(asked: Asked, link: PhoneLink, told: list[str]) -> None:
    """Looking uses nothing up; a press links this phone and no other; the next code is told."""
    code = link.code
    phone, other = asked(HOME, ON_THE_PHONE), asked(HOME, ("192.168.1.32", 50102))
    assert f'value="{code}"' in phone.get(f"/link/{code}").text
    assert code == link.code
    assert 200 == phone.post("/link/", data={"code": f" {code[:4].lower()}-{code[4:]} "}).status_code
    assert 200 == phone.get("/rolls").status_code
    assert code != link.code
    assert [f"{HOME}/link/{link.code}"] == told
    assert 422 == other.post("/link/", data={"code": code}).status_code
    assert 403 == other.get("/rolls").status_code


def test_the_cookie_is_out_of_reach_of_scripts_and_other_sites(asked: Asked, link: PhoneLink) -> None:
    """It is HttpOnly and SameSite=strict."""
    answer = asked(HOME, ON_THE_PHONE).post("/link/", data={"code": link.code}, follow_redirects=False)
    assert 303 == answer.status_code
    cookie = answer.headers["set-cookie"].lower()
    assert "httponly" in cookie
    assert "samesite=strict" in cookie


def test_nobody_guesses_for_long(asked: Asked, link: PhoneLink) -> None:
    """After twenty wrong codes the right one is not taken either."""
    phone = asked(HOME, ON_THE_PHONE)
    for _ in range(TRIES):
        assert "link-code-wrong" in phone.post("/link/", data={"code": "WRONG234"}).text
    answer = phone.post("/link/", data={"code": link.code})
    assert 422 == answer.status_code
    assert "link-withdrawn" in answer.text
    assert 403 == phone.get("/rolls").status_code


def test_the_code_stands_on_the_page_of_this_machine(asked: Asked, link: PhoneLink) -> None:
    """The page shows the address, as words and to be scanned, and says what the phone's screen will do."""
    text = asked(HERE, ON_THIS_MACHINE).get("/start/phone").text
    assert link.open_on_phone in text
    assert re.search(r'<path class="qr-dark" d="M', text)
    assert "long screen time-out" in text


def test_this_machine_locks_every_phone_out(asked: Asked, link: PhoneLink) -> None:
    """A press on its page and the linked phone is a stranger again; the page says how many there were."""
    phone, machine = asked(HOME, ON_THE_PHONE), asked(HERE, ON_THIS_MACHINE)
    assert "Lock it out" not in machine.get("/start/phone").text
    phone.post("/link/", data={"code": link.code})
    assert "One phone is linked." in machine.get("/start/phone").text
    machine.post("/start/phone/lock-out")
    assert 403 == phone.get("/rolls").status_code
    assert "linked." not in machine.get("/start/phone").text


def test_a_phone_locks_nobody_out(asked: Asked, link: PhoneLink) -> None:
    """The button is not on a phone's page, and the request is not answered there."""
    phone = asked(HOME, ON_THE_PHONE)
    phone.post("/link/", data={"code": link.code})
    assert "Lock" not in phone.get("/start/phone").text
    assert 404 == phone.post("/start/phone/lock-out").status_code
    assert 200 == phone.get("/rolls").status_code


def test_without_the_option_there_is_nothing_to_link(client: TestClient) -> None:
    """The page names the command; the address of links leads nowhere."""
    assert "tankside start --phone" in client.get("/start/phone").text
    assert 404 == client.get("/link/K7M4T9QD").status_code
