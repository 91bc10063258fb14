"""`tankside start`: serve the pages on this machine and open them."""

from __future__ import annotations

import sys
import webbrowser
from os import environ
from pathlib import Path

import click

PORT = 8462


@click.command()
@click.option(
    "--port", default=PORT, show_default=True, type=click.IntRange(0, 65535), help="0: any free one."
)
@click.option(
    "--data-folder",
    type=click.Path(file_okay=False, path_type=Path),
    help="Where your rolls, bottles and runs are kept; by default this system's usual place.",
)
@click.option("--no-open", is_flag=True, help="Do not open the browser.")
def start(port: int, data_folder: Path | None, *, no_open: bool) -> None:
    """Open Tankside in the browser, and serve it until Ctrl+C."""
    from tankside.wiring import serve

    def opened(address: str, kept_at: Path) -> None:
        click.echo(f"Tankside is open at {address}; what you keep lies in {kept_at}. Ctrl+C ends it.")
        if not no_open and has_screen():
            webbrowser.open(address)

    serve(port=port, data_folder=data_folder, opened=opened)
    click.echo("Closed. Everything noted is kept.")


def has_screen() -> bool:
    """False where a browser would take over the terminal, or there is none."""
    return sys.platform != "linux" or bool(environ.get("DISPLAY") or environ.get("WAYLAND_DISPLAY"))
