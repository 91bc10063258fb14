"""Opens and joins the adapters; the only file that names every one of them.

Each function loads what it joins, so that a command which needs the store alone does not load the pages.
"""

from __future__ import annotations

from collections.abc import Callable, Iterator
from contextlib import contextmanager
from pathlib import Path
from typing import TYPE_CHECKING

from tankside.workflows.house import House
from tankside.workflows.moments import moment_of
from tankside.workflows.ports import Clock, Desk, Dice

if TYPE_CHECKING:
    from fastapi import FastAPI

    from tankside.store.backup import BackedUp
    from tankside.store.restoring import Restored

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


@contextmanager
def open_house(file: Path, clock: Clock, dice: Dice) -> Iterator[House]:
    """Everything joined over one database, made if need be; streams are ended and it is closed afterwards."""
    from tankside.machine.zone import zone_of_machine
    from tankside.sink.broadcast import Broadcast
    from tankside.sink.live_runs import LiveRuns
    from tankside.store.connection import Database
    from tankside.store.desk import stored_desk

    database = Database(file)
    broadcast = Broadcast(database.version)
    try:
        desk = stored_desk(database)
        live_runs = LiveRuns(desk, dice, written=broadcast.written)
        yield House(desk, live_runs, broadcast, clock, dice, zone_of_machine())
    finally:
        broadcast.close()
        database.close()


@contextmanager
def house_in(data_folder: Path | None) -> Iterator[House]:
    """The house over a data folder, for a command that comes and goes; a server over it may go on."""
    from tankside.machine.clock import MachineClock
    from tankside.machine.data_folder import open_data_folder
    from tankside.machine.dice import MachineDice

    with open_house(open_data_folder(data_folder).own, MachineClock(), MachineDice()) as house:
        yield house


def app_over(house: House) -> FastAPI:
    """The pages over a house."""
    from tankside.web.app import make_app
    from tankside.wording.refusals import say

    return make_app(house, say=say)


def serve(*, port: int, data_folder: Path | None, opened: Opened) -> None:
    """Serve the pages until told to stop; `opened` hears the address and the folder once both are held."""
    from tankside.machine.clock import MachineClock
    from tankside.machine.data_folder import open_data_folder
    from tankside.machine.dice import MachineDice
    from tankside.machine.port import LOOPBACK, take_port
    from tankside.web.serving import serve_app

    folder = open_data_folder(data_folder)
    with take_port(port) as taken:
        address = f"http://{LOOPBACK}:{taken.getsockname()[1]}"
        with folder.served_at(address), open_house(folder.own, MachineClock(), MachineDice()) as house:
            app = app_over(house)
            opened(address, folder.path)
            serve_app(app, taken)


def back_up_folder(data_folder: Path | None, to: Path) -> BackedUp:
    """Back up what the data folder holds into the zip file `to`; a server over it may go on."""
    from tankside.machine.clock import MachineClock
    from tankside.machine.data_folder import open_data_folder
    from tankside.store.backup import back_up
    from tankside.store.photographs import photographs_beside

    folder = open_data_folder(data_folder)
    return back_up(folder.own, photographs_beside(folder.own), to.resolve(), moment_of(MachineClock().now()))


def restore_folder(data_folder: Path | None, backup: Path, *, aside: bool) -> Restored:
    """Restore into the data folder, held meanwhile so that no server opens it halfway."""
    from tankside.machine.clock import MachineClock
    from tankside.machine.data_folder import open_data_folder
    from tankside.store.photographs import photographs_beside
    from tankside.store.restoring import restore

    folder = open_data_folder(data_folder)
    with folder.served_at("restore"):
        now = moment_of(MachineClock().now())
        return restore(backup, folder.own, photographs_beside(folder.own), now, aside=aside)
