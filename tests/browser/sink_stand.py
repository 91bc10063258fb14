"""A stand for the page at the sink alone: one address for each state, without a run behind it."""

from __future__ import annotations

from collections.abc import Iterator
from contextlib import contextmanager

from browser.live import served
from browser.sink_states import state_screen
from fastapi import FastAPI
from starlette.requests import Request
from starlette.responses import Response

from tankside.web.assets import FOLDER, Editions
from tankside.web.guard import Guard
from tankside.web.screen.show import run_page


def stand() -> FastAPI:
    """An app that shows `/state/<name>`."""
    app = FastAPI()
    app.state.invented = True
    app.add_middleware(Guard, hosts=())

    @app.get("/state/{name}")
    def show(request: Request, name: str) -> Response:
        return run_page(request, state_screen(name))

    app.mount("/static", Editions(directory=FOLDER), name="static")
    return app


@contextmanager
def standing() -> Iterator[str]:
    """Its address, while the block runs."""
    with served(stand()) as address:
        yield address
