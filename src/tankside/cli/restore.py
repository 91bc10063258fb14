"""`tankside restore FILE`: bring a backup back; what stands there is never written over."""

from __future__ import annotations

import json
from pathlib import Path

import click


@click.command()
@click.argument("file", type=click.Path(dir_okay=False, path_type=Path))
@click.option(
    "--data-folder",
    type=click.Path(file_okay=False, path_type=Path),
    help="Where to bring it back; by default this system's usual place.",
)
@click.option("--move-aside", is_flag=True, help="Keep what stands there now under another name.")
@click.option("--json", "as_json", is_flag=True, help="Say what was done as JSON, for scripts.")
def restore(file: Path, data_folder: Path | None, *, move_aside: bool, as_json: bool) -> None:
    """Bring back what FILE, written by 'backup', holds."""
    from tankside.wiring import restore_folder

    done = restore_folder(data_folder, file, aside=move_aside)
    aside = str(done.moved_aside) if done.moved_aside else None
    if as_json:
        click.echo(
            json.dumps({"file": str(done.file), "photographs": done.photographs, "moved_aside": aside})
        )
        return
    click.echo(f"{done.file} is back as it was in {file}.")
    if aside:
        click.echo(f"What stood there before lies in {aside}.")
