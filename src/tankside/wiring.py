"""Opens and joins the adapters; the only file that names every one of them.

Each function loads what it joins, so that a command which needs the store alone does not load the pages.
"""

from __future__ import annotations

from collections.abc import Callable, Iterator, Mapping, Sequence
from contextlib import ExitStack, contextmanager
from dataclasses import dataclass, replace
from pathlib import Path
from typing import TYPE_CHECKING

from tankside.workflows.house import House
from tankside.workflows.moments import moment_of
from tankside.workflows.ports import Clock, Desk, Dice

if TYPE_CHECKING:
    from fastapi import FastAPI

    from tankside.core.safety.cautions import Caution
    from tankside.core.solutions.formulas import Formula
    from tankside.core.solutions.hydrates import Form
    from tankside.core.sources import Source
    from tankside.machine.data_folder import DataFolder
    from tankside.store.backup import BackedUp
    from tankside.store.restoring import Restored
    from tankside.web.linking import PhoneLink
    from tankside.web.when_asked import WhenAsked

Opened = Callable[[str, Path], None]
Linking = Callable[[str], None]


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
def open_house(file: Path, clock: Clock, dice: Dice, *, pace: float = 1.0) -> Iterator[House]:
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
        yield House(desk, live_runs, broadcast, clock, dice, zone_of_machine(), pace, clock.now())
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


def known_sources() -> Mapping[str, Source]:
    """The works that numbers are taken from, by their keys."""
    from tankside.catalogue.bibliography import bibliography

    return bibliography()


def app_over(house: House, *, demo: WhenAsked | None = None, phone: Phone | None = None) -> FastAPI:
    """The pages over a house, with the demo beside it, and open to the home network for a phone."""
    from tankside.web.app import make_app
    from tankside.wording.refusals import say

    works = known_sources()
    if phone is None:
        return make_app(house, say=say, demo=demo, bibliography=works)
    return make_app(house, say=say, demo=demo, hosts=phone.hosts, link=phone.link, bibliography=works)


def lay_out_demo(folder: DataFolder, clock: Clock, dice: Dice) -> None:
    """Lay the demo out anew beside the old one and put it in its place whole."""
    from tankside.demo.lay_out import lay_out

    beside = folder.demo.with_suffix(".laying-out")
    for leftover in (
        beside,
        beside.with_name(f"{beside.name}-journal"),
        beside.with_name(f"{beside.name}-wal"),
    ):
        leftover.unlink(missing_ok=True)
    with open_house(beside, clock, dice) as house:
        lay_out(house, clock.now())
    beside.replace(folder.demo)


def demo_in(data_folder: Path | None, *, anew: bool) -> tuple[Path, bool]:
    """Where the demo of a data folder lies and whether it is laid out; `anew` lays it out, held meanwhile."""
    from tankside.machine.clock import MachineClock
    from tankside.machine.data_folder import open_data_folder
    from tankside.machine.dice import MachineDice

    folder = open_data_folder(data_folder)
    if anew:
        with folder.served_at("tankside demo --anew"):
            lay_out_demo(folder, MachineClock(), MachineDice())
    return folder.demo, folder.demo.exists()


@contextmanager
def open_demo(folder: DataFolder, clock: Clock, dice: Dice, *, pace: float = 1.0) -> Iterator[House]:
    """The demo, laid out if it is not, or if it stands as it was laid out on another day."""
    from tankside.demo.lay_out import is_of_today, last_noted
    from tankside.machine.clock import PacedClock

    now = clock.now()
    if folder.demo.exists():
        with desk_over(folder.demo) as desk:
            stale, noted = not is_of_today(desk, now), last_noted(desk)
    else:
        stale, noted = True, None
    if stale:
        lay_out_demo(folder, clock, dice)
        noted = None
    ahead = noted is not None and noted.wall_us > now.wall_us
    if pace != 1.0 or ahead:
        start = replace(now, wall_us=max(now.wall_us, noted.wall_us if noted else 0))
        clock = PacedClock(clock, pace=pace, start=start)
    with open_house(folder.demo, clock, dice, pace=pace) as house:
        yield house


def demo_when_asked(
    houses: ExitStack,
    folder: DataFolder,
    clock: Clock,
    dice: Dice,
    *,
    hosts: Sequence[str],
    pace: float = 1.0,
) -> WhenAsked:
    """The demo's pages, opened at the first request and closed with `houses`."""
    from tankside.web.app import make_app
    from tankside.web.when_asked import WhenAsked
    from tankside.wording.refusals import say

    return WhenAsked(
        lambda: houses.enter_context(open_demo(folder, clock, dice, pace=pace)),
        lambda house: make_app(house, say=say, hosts=hosts, invented=True, bibliography=known_sources()),
    )


def serve(
    *,
    port: int,
    data_folder: Path | None,
    opened: Opened,
    linking: Linking | None = None,
    pace: float | None = None,
) -> None:
    """Serve the pages until told to stop; `opened` hears the address and the folder once both are held.

    With `linking` the home network may ask too, and `linking` hears each address to open on a phone; with a
    `pace` only the demo is served, on a clock that many times as fast.
    """
    from tankside.machine.clock import MachineClock
    from tankside.machine.data_folder import open_data_folder
    from tankside.machine.dice import MachineDice
    from tankside.machine.port import LOOPBACK, take_port
    from tankside.web.app import demo_alone
    from tankside.web.serving import serve_app
    from tankside.wording.refusals import say

    folder, clock, dice = open_data_folder(data_folder), MachineClock(), MachineDice()
    with ExitStack() as houses:
        taken = [houses.enter_context(take_port(port))]
        number = taken[0].getsockname()[1]
        phone = None if linking is None else open_to_phones(folder, dice, number, linking)
        if phone is not None:
            taken.append(houses.enter_context(take_port(number, phone.hosts[0])))
        address = f"http://{LOOPBACK}:{number}"
        houses.enter_context(folder.served_at(address))
        hosts = phone.hosts if phone else ()
        demo = demo_when_asked(houses, folder, clock, dice, hosts=hosts, pace=pace or 1.0)
        if pace is None:
            app = app_over(houses.enter_context(open_house(folder.own, clock, dice)), demo=demo, phone=phone)
        else:
            app = demo_alone(demo, say=say)
        opened(address, folder.path)
        if phone is not None and linking is not None:
            linking(phone.link.open_on_phone)
        serve_app(app, *taken)


@dataclass(frozen=True, slots=True)
class Phone:
    """The home network as it may ask: by which names, the address first, and by which link."""

    hosts: tuple[str, ...]
    link: PhoneLink


def open_to_phones(folder: DataFolder, dice: Dice, port: int, linking: Linking) -> Phone:
    """This machine's address in the home network, and the code that links a phone there."""
    from tankside.machine.home_network import own_address, own_names
    from tankside.machine.linked_phones import KeptPhones
    from tankside.web.linking import PhoneLink

    host = own_address()
    phones = KeptPhones(folder.path / "linked-phones")
    return Phone((host, *own_names()), PhoneLink(f"http://{host}:{port}", phones, dice, linking))


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


def published_formulas() -> tuple[Formula, ...]:
    """Every formula of the catalogue."""
    from tankside.catalogue.formulas import formulas

    return tuple(formulas().values())


def published_formula(name: str) -> Formula:
    """One formula of the catalogue, refused with those there are."""
    from tankside.catalogue.formulas import formula

    return formula(name)


def published_form(substance: str, form: str) -> Form:
    """One form of a substance of the catalogue, refused with those there are."""
    from tankside.catalogue.substances import form_of

    return form_of(substance, form)


def hazards_of(name: str, percent: float) -> tuple[Caution, ...]:
    """The cautions of a substance of the catalogue at `percent` by weight."""
    from tankside.catalogue.substances import substance
    from tankside.core.safety.hazards import cautions_at

    return cautions_at(substance(name).hazards, percent=percent)
