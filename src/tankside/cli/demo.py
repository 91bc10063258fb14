"""`tankside demo`: where the invented evening and season lie, and laying them out anew."""

from __future__ import annotations

from pathlib import Path

import click

from tankside.cli.amounts import json_option, tell
from tankside.cli.folder import data_folder_option


@click.command()
@click.option("--anew", is_flag=True, help="Lay it out anew; what was done in it is gone.")
@data_folder_option
@json_option
def demo(data_folder: Path | None, *, anew: bool, as_json: bool) -> None:
    """Say where the demo lies, or lay it out anew; your own rolls and runs are never touched."""
    from tankside.wiring import demo_in

    file, there = demo_in(data_folder, anew=anew)
    if as_json:
        tell({"file": str(file), "laid_out": there})
    elif there:
        words = "is laid out anew in" if anew else "lies in"
        click.echo(f"The demo, invented from end to end, {words} {file}. 'tankside start' shows it.")
    else:
        click.echo(f"The demo is laid out in {file} when it is first opened from the start page.")
