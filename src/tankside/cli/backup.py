"""`tankside backup FILE`: everything kept, in one zip that any computer opens."""

from __future__ import annotations

import json
from pathlib import Path

import click


@click.command()
@click.argument("file", type=click.Path(dir_okay=False, path_type=Path))
@click.option(
    "--data-folder",
    type=click.Path(file_okay=False, path_type=Path),
    help="Where your rolls, bottles and runs are kept; by default this system's usual place.",
)
@click.option("--json", "as_json", is_flag=True, help="Say what was done as JSON, for scripts.")
def backup(file: Path, data_folder: Path | None, *, as_json: bool) -> None:
    """Write everything you keep into FILE (a zip), also while Tankside is open."""
    from tankside.wiring import back_up_folder

    done = back_up_folder(data_folder, file)
    if as_json:
        told = {"file": str(done.file), "size_bytes": done.size_bytes, "photographs": done.photographs}
        click.echo(json.dumps(told))
        return
    pictures = f" and {done.photographs} photographs" if done.photographs else ""
    click.echo(f"{done.file} holds your rolls, bottles and runs{pictures} ({done.size_bytes / 1e6:.1f} MB).")
