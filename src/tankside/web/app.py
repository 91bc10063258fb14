"""The web face joined: guard, pages, styles, and the house they stand on."""

from __future__ import annotations

from collections.abc import Iterable

from fastapi import FastAPI
from starlette.exceptions import HTTPException
from starlette.requests import Request
from starlette.responses import Response

from tankside.core.refusals import Refused
from tankside.web.assets import FOLDER, Editions
from tankside.web.errors import LastResort, Say, http_answer, refused_answer
from tankside.web.guard import Guard
from tankside.web.pages import ROUTERS
from tankside.workflows.house import House


def make_app(house: House, *, say: Say, hosts: Iterable[str] = (), invented: bool = False) -> FastAPI:
    """The app over `house`; `say` words a refusal, `hosts` are answered beside the loopback names.

    Every page of an `invented` house says that it is one.
    """
    app = FastAPI(title="Tankside", docs_url=None, redoc_url=None, openapi_url=None)
    app.state.house = house
    app.state.say = say
    app.state.invented = invented

    def answer_refused(request: Request, error: Exception) -> Response:
        assert isinstance(error, Refused)
        return refused_answer(request, error, say)

    app.add_exception_handler(Refused, answer_refused)
    app.add_exception_handler(HTTPException, http_answer)
    app.add_middleware(LastResort)
    app.add_middleware(Guard, hosts=tuple(hosts))
    for router in ROUTERS:
        app.include_router(router)
    app.mount("/static", Editions(directory=FOLDER), name="static")
    return app
