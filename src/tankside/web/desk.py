"""How a page gets at the desk."""

from __future__ import annotations

from typing import Annotated, cast

from fastapi import Depends
from starlette.requests import Request

from tankside.workflows.ports import Desk


def desk_of(request: Request) -> Desk:
    """The desk that the app was made over."""
    return cast(Desk, request.app.state.desk)


AtDesk = Annotated[Desk, Depends(desk_of)]
