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
@click.option("--phone", is_flag=True, help="Let a phone in your home network in, by a code that works once.")
@click.option(
    "--pace",
    type=click.FloatRange(min=1, max=600, min_open=True),
    help="The demo alone, on a clock this many times as fast.",
)
@click.option("--no-open", is_flag=True, help="Do not open the browser.")
def start(port: int, data_folder: Path | None, *, phone: bool, pace: float | None, no_open: bool) -> None:
    """Open Tankside in the browser, and serve it until Ctrl+C."""
    from tankside.core.refusals import refuse
    from tankside.wiring import serve

    if phone and pace is not None:
        raise refuse("phone-not-paced", ways_on=("start-without-pace",))

    def opened(address: str, kept_at: Path) -> None:
        if pace is None:
            click.echo(f"Tankside is open at {address}; what you keep lies in {kept_at}. Ctrl+C ends it.")
        else:
            click.echo(f"The demo runs {pace:g} times as fast at {address}/demo/. Ctrl+C ends it.")
        if not no_open and has_screen():
            webbrowser.open(address)

    serve(port=port, data_folder=data_folder, opened=opened, linking=show_link if phone else None, pace=pace)
    click.echo("Closed. Everything noted is kept.")


def show_link(address: str) -> None:
    """The address for the next phone, as words and as a QR code."""
    import segno

    click.echo(f"\nOn a phone in the same network, once: {address}")
    segno.make(address, error="m", micro=False).terminal(compact=True)
    click.echo(
        "Set a long screen time-out on the phone: on a plain address of the home network its screen may "
        "turn itself off."
    )


def has_screen() -> bool:
    """False where a browser would take over the terminal, or there is none."""
    return sys.platform != "linux" or bool(environ.get("DISPLAY") or environ.get("WAYLAND_DISPLAY"))
