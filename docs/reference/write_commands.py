"""Writes commands.md from what the commands say of themselves: python docs/reference/write_commands.py."""

from __future__ import annotations

from collections.abc import Iterator
from pathlib import Path

import click

from tankside.cli.command import command

PAGE = Path(__file__).with_name("commands.md")
HEAD = """# Commands

Written by `docs/reference/write_commands.py` from the commands themselves; the tests fail when it is stale.
Every command ends with 0, with 1 for a fault of the program, with 2 for a refusal in one sentence.
"""


def written() -> str:
    """The whole page."""
    return "\n".join([HEAD, *_sections(command, ("tankside",))])


def _sections(one: click.Command, names: tuple[str, ...]) -> Iterator[str]:
    """A command and all below it, in the order of their names."""
    context = click.Context(one, info_name=" ".join(names), terminal_width=100, max_content_width=100)
    yield f"## {' '.join(names)}\n\n```text\n{one.get_help(context).rstrip()}\n```\n"
    if isinstance(one, click.Group):
        for name in one.list_commands(context):
            below = one.get_command(context, name)
            if below is not None:
                yield from _sections(below, (*names, name))


if __name__ == "__main__":
    PAGE.write_text(written(), encoding="utf-8")
