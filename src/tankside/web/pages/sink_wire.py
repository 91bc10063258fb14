"""The sink as JSON: what was noted comes in, the screen goes out, and news of it as they come."""

from __future__ import annotations

from collections.abc import AsyncIterator, Mapping
from types import MappingProxyType
from typing import Annotated, Any
from uuid import UUID

from fastapi import APIRouter, Depends, HTTPException
from fastapi.sse import EventSourceResponse, ServerSentEvent
from starlette.concurrency import run_in_threadpool
from starlette.requests import Request

from tankside.core.refusals import Refusal, Refused
from tankside.core.run.commands import Command
from tankside.core.run.state import Run
from tankside.web.commands_in import Sent, read_command, read_queue
from tankside.web.desk import InHouse
from tankside.web.errors import Say
from tankside.web.plain_json import plain
from tankside.web.screen.notices import refused
from tankside.web.screen.show import screen_of
from tankside.wording.sink_answers import say_answer
from tankside.workflows.house import House
from tankside.workflows.note_at_sink import note_at_sink
from tankside.workflows.records import KeptAnswer

router = APIRouter(prefix="/sink/{run}")
RETRY_MS = 1000


def known_run(run: UUID, house: InHouse) -> Run:
    """The run of the address, as it stands now; 404 where nothing is noted under it."""
    found = house.live_runs.look(run)
    if found is None:
        raise HTTPException(404)
    return found


KnownRun = Annotated[Run, Depends(known_run)]


async def raw_body(request: Request) -> bytes:
    """What was sent, unread."""
    return await request.body()


@router.post("/notes")
def note(
    run: KnownRun, house: InHouse, request: Request, raw: Annotated[bytes, Depends(raw_body)]
) -> dict[str, Any]:
    """Carry out an array of commands; one answer each, and `trouble` where the disk took no more.

    What has no answer was not kept and may be sent again under its id.
    """
    now, say = house.clock.now(), request.app.state.say
    queue = read_queue(raw)
    unreadable: dict[str, Refusal] = {}
    commands = _readable(queue, unreadable)
    noted = note_at_sink(house.live_runs, run.key, commands, now)
    kept = {one.command: one for one in noted.answers}
    told = [_told(one, kept.get(one.id), unreadable.get(one.id), run.state.zone, say) for one in queue]
    return {
        "answers": [one for one in told if one is not None],
        "trouble": None if noted.trouble is None else _no(noted.trouble, say),
        "screen": shown(house, known_run(run.key, house)),
    }


def _readable(queue: list[Sent], unreadable: dict[str, Refusal]) -> list[Command]:
    """The commands that can be read; what cannot is answered at once, or it would be sent for ever."""
    commands = []
    for one in queue:
        try:
            commands.append(read_command(one))
        except Refused as no:
            unreadable[one.id] = no.refusal
    return commands


def _told(
    sent: Sent, kept: KeptAnswer | None, unreadable: Refusal | None, zone: str, say: Say
) -> Mapping[str, Any] | None:
    said = kept.said if kept is not None else unreadable
    if said is None:
        return None
    if isinstance(said, Refusal):
        return {"id": sent.id, "refusal": _no(said, say, sent.asked)}
    seqs = {"from_seq": kept.from_seq, "to_seq": kept.to_seq} if kept is not None else {}
    return {"id": sent.id, "code": said.code, "about": said.about, "said": say_answer(said, zone), **seqs}


def _no(refusal: Refusal, say: Say, asked: Mapping[str, Any] = MappingProxyType({})) -> dict[str, Any]:
    told: dict[str, Any] = plain(refused(refusal, say(refusal), asked))
    return {**told, "code": refusal.code, "at": refusal.at}


@router.get("/screen")
def screen(run: KnownRun, house: InHouse, since: int | None = None) -> dict[str, Any]:
    """What every screen of this run shows now, and what happened `since` it last looked, in microseconds."""
    return shown(house, run, since_us=since)


@router.get("/stream", response_class=EventSourceResponse)
async def stream(run: KnownRun, house: InHouse) -> AsyncIterator[ServerSentEvent]:
    """The screen, and again whenever something was noted, here or by another program."""
    async for number in house.broadcast.follow(lambda: last_seq(house, run.key), run.key):
        told = await run_in_threadpool(lambda: shown(house, known_run(run.key, house)))
        yield ServerSentEvent(event="screen", data=told, id=str(number), retry=RETRY_MS)


def last_seq(house: House, run: UUID) -> int:
    """The number of the last thing noted."""
    found = house.live_runs.look(run)
    return found.last_seq if found else 0


def shown(house: House, run: Run, *, since_us: int | None = None) -> dict[str, Any]:
    """The screen of a run as plain JSON, with the number it stands at."""
    told: dict[str, Any] = plain(screen_of(house, run, since_us=since_us))
    return told
