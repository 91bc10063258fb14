"""Over which data folder a command works."""

from __future__ import annotations

from pathlib import Path

import click

data_folder_option = click.option(
    "--data-folder",
    type=click.Path(file_okay=False, path_type=Path),
    help="Where your rolls, bottles and runs are kept; by default this system's usual place.",
)
