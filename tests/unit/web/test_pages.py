"""Every page of the ground answers, names itself, and leads on."""

from __future__ import annotations

import re

import click
import pytest
from fastapi.testclient import TestClient

from tankside.cli.command import command
from tankside.web.templating import CONTENTS

OTHERS = [
    "/",
    "/contents",
    "/settings",
    "/start/demo",
    "/start/restore",
    "/start/phone",
    "/place",
    "/leaflets",
    "/leaflets/new",
    "/shelf/mix",
]


@pytest.mark.parametrize("path", [*(place.path for place in CONTENTS), *OTHERS])
def test_a_page_is_whole_and_holds_nothing_inline(client: TestClient, path: str) -> None:
    """One heading, zoom left alone, and nothing that the policy would block."""
    text = client.get(path).text

    assert 1 == text.count("<h1>")
    assert '<meta name="viewport" content="width=device-width, initial-scale=1">' in text
    assert not re.search(r"<style|<script(?! [^>]*src=)|\sstyle=|\son[a-z]+=", text)
    assert not re.search(r"(src|href|action)=\"(https?:)?//", text)


@pytest.mark.parametrize("place", CONTENTS, ids=lambda place: place.name)
def test_the_open_page_is_marked_in_the_margin(client: TestClient, place: object) -> None:
    """Of the seven names only the open one is current."""
    text = client.get(place.path).text  # type: ignore[attr-defined]

    current = re.findall(r'<a href="([^"]+)" aria-current="page">', text)
    assert [place.path] == current  # type: ignore[attr-defined]


def test_links_lead_somewhere(client: TestClient) -> None:
    """No link of any of these pages ends at nothing."""
    links = set()
    for path in [*(place.path for place in CONTENTS), *OTHERS]:
        links |= set(re.findall(r'<a [^>]*href="(/[^"]*)"', client.get(path).text))

    assert set() == {link for link in links if client.get(link).status_code != 200}


def test_the_first_start_says_where_it_keeps_things(client: TestClient) -> None:
    """The folder in words, and that nothing is sent anywhere."""
    text = client.get("/").text

    assert "~/tankside" in text
    assert "Nothing is sent anywhere" in text


def test_a_command_named_on_a_page_exists(client: TestClient) -> None:
    """Whoever types what a page says to type must not be told that there is no such thing."""
    named = set()
    for path in [*(place.path for place in CONTENTS), *OTHERS]:
        named |= set(re.findall(r"<code>tankside ([^<]*)</code>", client.get(path).text))

    assert [] == [line for line in named if not known_to_the_terminal(line)]


@pytest.mark.parametrize(
    ("line", "known"), [("start --port 0", True), ("start --dance", False), ("sing", False)]
)
def test_what_the_terminal_knows(line: str, *, known: bool) -> None:
    """The judge of the test above tells commands and options that are there from those that are not."""
    assert known == known_to_the_terminal(line)


def known_to_the_terminal(line: str) -> bool:
    """Whether the terminal has each noun and each option of a line."""
    node: click.Command | None = command
    context = click.Context(command)
    for word in line.split():
        if node is None:
            return False
        if word.startswith("-"):
            if not any(word in parameter.opts for parameter in node.params):
                return False
        elif isinstance(node, click.Group):
            node = node.get_command(context, word)
    return node is not None
