"""How a page gets at the desk, and the sink at the whole house."""

from __future__ import annotations

from typing import Annotated, cast

from fastapi import Depends
from starlette.requests import Request

from tankside.workflows.house import House
from tankside.workflows.ports import Desk


def house_of(request: Request) -> House:
    """The house that the app was made over."""
    return cast(House, request.app.state.house)


def desk_of(request: Request) -> Desk:
    """The desk that the app was made over."""
    return house_of(request).desk


InHouse = Annotated[House, Depends(house_of)]
"""Everything that the app was made over."""

AtDesk = Annotated[Desk, Depends(desk_of)]
