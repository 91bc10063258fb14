"""Where a page of this house lies: every link, form and redirect goes through here.

The same pages are served more than once under addresses of their own (the demo under /demo), so that a path
written out would lead from one house into the other.
"""

from __future__ import annotations

from starlette.requests import Request
from starlette.responses import RedirectResponse


def prefix_of(request: Request) -> str:
    """What stands before every path of the house that was asked: nothing, or /demo.

    Below a mount the framework's own root path grows by the mount, so a page shown for a lost style would
    look for everything under /static; the guard notes the path at the door of each house.
    """
    return str(request.scope.get("house_path", request.scope.get("root_path", "")))


def go_to(request: Request, path: str) -> RedirectResponse:
    """Send the browser on to `path` of the same house, to be read there."""
    return RedirectResponse(prefix_of(request) + path, status_code=303)
