"""The web face joined: guard, pages, styles, and the house they stand on."""

from __future__ import annotations

from collections.abc import Iterable, Mapping

from fastapi import FastAPI
from starlette.exceptions import HTTPException
from starlette.requests import Request
from starlette.responses import Response

from tankside.core.refusals import Refused, refuse
from tankside.core.sources import Source
from tankside.web.addresses import go_to
from tankside.web.assets import FOLDER, Editions
from tankside.web.door import Door
from tankside.web.errors import LastResort, Say, http_answer, refused_answer
from tankside.web.guard import Guard
from tankside.web.linking import PhoneLink
from tankside.web.pages import ROUTERS
from tankside.web.templating import page
from tankside.web.when_asked import WhenAsked
from tankside.workflows.house import House


def make_app(
    house: House,
    *,
    say: Say,
    hosts: Iterable[str] = (),
    invented: bool = False,
    demo: WhenAsked | None = None,
    link: PhoneLink | None = None,
    bibliography: Mapping[str, Source] | None = None,
) -> FastAPI:
    """The app over `house`; `say` words a refusal, `hosts` are answered beside the loopback names.

    Every page of an `invented` house says that it is one; `demo` is such a house, served under /demo. With a
    `link` the home network may ask too, once a phone is linked. `bibliography` are the works a page may name.
    """
    app = bare_app(say=say, hosts=hosts, link=link)
    app.state.house = house
    app.state.invented = invented
    app.state.bibliography = bibliography or {}
    app.state.demo = demo
    for router in ROUTERS:
        app.include_router(router)
    if demo is not None:
        app.mount("/demo", demo)
    return app


def demo_alone(demo: WhenAsked, *, say: Say) -> FastAPI:
    """The demo and nothing else, for a clock that runs faster than the chemistry of a real film."""
    app = bare_app(say=say)
    app.state.invented = False
    app.state.demo = demo
    app.mount("/demo", demo)

    @app.get("/")
    def to_the_demo(request: Request) -> Response:
        return go_to(request, "/demo/")

    @app.api_route("/{rest:path}", methods=["GET", "POST"])
    def not_paced(request: Request) -> Response:
        no = refuse("own-film-not-paced", ways_on=("start-without-pace",)).refusal
        return page(request, "pages/not_paced.html", status=422, sentence=say(no))

    return app


def bare_app(*, say: Say, hosts: Iterable[str] = (), link: PhoneLink | None = None) -> FastAPI:
    """Guard, refusals, mishaps and styles, without a page yet."""
    app = FastAPI(title="Tankside", docs_url=None, redoc_url=None, openapi_url=None)
    app.state.say = say
    app.state.link = link

    def answer_refused(request: Request, error: Exception) -> Response:
        assert isinstance(error, Refused)
        return refused_answer(request, error, say)

    app.add_exception_handler(Refused, answer_refused)
    app.add_exception_handler(HTTPException, http_answer)
    app.add_middleware(LastResort)
    if link is not None:
        app.add_middleware(Door, link=link)
    app.add_middleware(Guard, hosts=tuple(hosts))
    app.mount("/static", Editions(directory=FOLDER), name="static")
    return app
