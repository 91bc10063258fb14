"""Opens and joins the adapters; the only file that names every one of them.

Each function loads what it joins, so that a command which needs the store alone does not load the pages.
"""

from __future__ import annotations

from collections.abc import Callable, Iterator
from contextlib import contextmanager
from pathlib import Path
from typing import TYPE_CHECKING

from tankside.workflows.ports import Desk

if TYPE_CHECKING:
    from fastapi import FastAPI

Opened = Callable[[str, Path], None]


@contextmanager
def desk_over(file: Path) -> Iterator[Desk]:
    """The desk over one database, closed afterwards."""
    from tankside.store.connection import Database
    from tankside.store.desk import stored_desk

    database = Database(file)
    try:
        yield stored_desk(database)
    finally:
        database.close()


def app_over(desk: Desk) -> FastAPI:
    """The pages over a desk."""
    from tankside.web.app import make_app
    from tankside.wording.refusals import say

    return make_app(desk, say=say)


def serve(*, port: int, data_folder: Path | None, opened: Opened) -> None:
    """Serve the pages until told to stop; `opened` hears the address and the folder once both are held."""
    from tankside.machine.data_folder import open_data_folder
    from tankside.machine.port import LOOPBACK, take_port
    from tankside.web.serving import serve_app

    folder = open_data_folder(data_folder)
    with take_port(port) as taken:
        address = f"http://{LOOPBACK}:{taken.getsockname()[1]}"
        with folder.served_at(address), desk_over(folder.own) as desk:
            app = app_over(desk)
            opened(address, folder.path)
            serve_app(app, taken)
