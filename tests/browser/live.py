"""A live Tankside on a free port of this machine, and the themes and sizes that every page is seen in."""

from __future__ import annotations

import os
import shutil
import threading
from collections.abc import Iterator
from contextlib import contextmanager
from dataclasses import replace

from fakes import memory_desk, memory_house
from fastapi import FastAPI

from tankside.machine.port import LOOPBACK, take_port
from tankside.web.app import make_app
from tankside.web.serving import server_of
from tankside.workflows.ports import Desk

CHROMIUM = os.environ.get("TANKSIDE_BROWSER") or shutil.which("chromium") or shutil.which("chromium-browser")
THEMES = ("light", "dark", "dim")
SIZES = {"small": (320, 640), "phone": (390, 844), "laptop": (1280, 800)}


@contextmanager
def served(app: FastAPI, port: int = 0) -> Iterator[str]:
    """The address of an app, up while the block runs; on any free port unless one is named."""
    server = server_of(app)
    with take_port(port) as taken:
        thread = threading.Thread(target=server.run, kwargs={"sockets": [taken]})
        thread.start()
        try:
            yield f"http://{LOOPBACK}:{taken.getsockname()[1]}"
        finally:
            server.should_exit = True
            thread.join()


@contextmanager
def serving(desk: Desk | None = None) -> Iterator[str]:
    """The address of the pages over `desk`, or over one in memory."""
    house = memory_house(desk or replace(memory_desk(), kept_at="~/tankside"))
    app = make_app(house, say=lambda refusal: refusal.code)
    with served(app) as address:
        yield address
