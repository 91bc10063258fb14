"""Styles and scripts, served under the hash of their content so that a browser may keep them for ever."""

from __future__ import annotations

from functools import cache
from hashlib import sha256
from pathlib import Path

from starlette.exceptions import HTTPException
from starlette.responses import Response
from starlette.staticfiles import StaticFiles
from starlette.types import Scope

FOLDER = Path(__file__).parent / "static"
FOR_EVER = "public, max-age=31536000, immutable"


@cache
def edition() -> str:
    """One short hash over every static file.

    The whole tree shares it, so that a module's relative imports stay inside the same edition.
    """
    digest = sha256()
    for path in sorted(path for path in FOLDER.rglob("*") if path.is_file()):
        digest.update(path.relative_to(FOLDER).as_posix().encode())
        digest.update(path.read_bytes())
    return digest.hexdigest()[:12]


def static_url(name: str) -> str:
    """Where a static file is fetched from, by its name under static/."""
    if not (FOLDER / name).is_file():
        raise LookupError(f"no static file {name}")
    return f"/static/{edition()}/{name}"


class Editions(StaticFiles):
    """Serves `<edition>/<name>`; a page of an older edition still gets the file, but may not keep it."""

    async def get_response(self, path: str, scope: Scope) -> Response:
        """The file, marked to be kept for ever only under its own hash."""
        asked, _, name = path.partition("/")
        if not name:
            raise HTTPException(404)
        answer = await super().get_response(name, scope)
        answer.headers["cache-control"] = FOR_EVER if asked == edition() else "no-cache"
        return answer
