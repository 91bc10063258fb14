"""Bodies of events as JSON: kind and version stand in columns of their own, the text holds the fields.

A restated note is the one body that holds another; the inner one carries its kind and version with it,
because two kinds may have the same fields and nothing else would tell them apart.
"""

from __future__ import annotations

import json
from typing import Any, cast

from tankside.core.run.events import EVENTS, Body, NoteRestated, Observed
from tankside.core.run.upcast import upcast
from tankside.store.frozen_json import from_json, to_json


def body_to_json(body: Body) -> str:
    """The fields of `body` as one line of JSON."""
    if isinstance(body, NoteRestated):
        inner = {"kind": body.body.kind, "version": body.body.version, **json.loads(body_to_json(body.body))}
        return json.dumps({"about": body.about, "why": body.why, "body": inner})
    return to_json(cast(type[Body], type(body)), body)


def body_from_json(kind: str, version: int, text: str) -> Body:
    """The body that `body_to_json` wrote, brought up to the present version of its kind."""
    if kind == NoteRestated.kind:
        return _restated(json.loads(text))
    if version != EVENTS[kind].version:
        text = json.dumps(upcast(kind, version, json.loads(text)))
    return from_json(EVENTS[kind], text)


def _restated(outer: dict[str, Any]) -> NoteRestated:
    inner = dict(outer["body"])
    kind, version = inner.pop("kind"), inner.pop("version")
    body = cast(Observed, body_from_json(kind, version, json.dumps(inner)))
    return NoteRestated(outer["about"], body, outer["why"])
