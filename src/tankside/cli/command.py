"""The `tankside` command: nouns are loaded only when they are used."""

from __future__ import annotations

import click


@click.group()
@click.version_option(package_name="tankside")
def command() -> None:
    """Plan the evening, lead it at the sink, learn from every roll."""
