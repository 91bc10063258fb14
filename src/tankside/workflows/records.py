"""Records that are kept though no science asks for them: answers, photographs, headings of runs."""

from __future__ import annotations

from dataclasses import dataclass
from datetime import datetime
from typing import Literal
from uuid import UUID

from tankside.core.refusals import Refusal
from tankside.core.review.evidence import Evidence, NotAsked
from tankside.core.review.proposals import Proposal
from tankside.core.run.decide.drafts import Answer

Media = Literal["image/jpeg", "image/png", "image/heic"]
ProposalStanding = Literal["offered", "accepted", "declined"]


@dataclass(frozen=True, slots=True)
class KeptAnswer:
    """What was `said` to a command, so that a repeat gets the same; the numbers are those of its events."""

    command: str
    run: UUID
    said: Answer | Refusal
    from_seq: int | None = None
    to_seq: int | None = None


@dataclass(frozen=True, slots=True)
class RunHeading:
    """A run as a list shows it: when it was opened, how many events it has, whether it was closed."""

    run: UUID
    opened: datetime
    last_seq: int
    closed: bool


@dataclass(frozen=True, slots=True)
class KeptProposal:
    """What a review proposed for a combination, and what the person said to it.

    `old_row` is the row of the combination that an accepted one replaces; both rows are kept.
    """

    key: UUID
    made: datetime
    proposal: Proposal
    run: UUID | None = None
    combination: UUID | None = None
    old_row: UUID | None = None
    standing: ProposalStanding = "offered"
    decided: datetime | None = None
    tankful: str | None = None


@dataclass(frozen=True, slots=True)
class KeptEvidence:
    """What the negatives of one tankful said, or that the person does not wish to be asked; nothing is
    written over, the latest counts."""

    key: UUID
    run: UUID
    tankful: str
    said: Evidence | NotAsked
    noted: datetime


@dataclass(frozen=True, slots=True)
class Photograph:
    """A photograph attached to the thing `about` of kind `noun`; the picture lies in the data folder."""

    sha256: str
    noun: str
    about: UUID
    media: Media
    size_bytes: int
    kept: datetime
    words: str = ""


class CodeTaken(Exception):  # noqa: N818 - not an error: the one who drew the code draws again
    """The short code is on another sticker already."""


class Conflict(Exception):  # noqa: N818 - not an error: the one who decided catches up and decides again
    """Somebody else has written this number of the run, or answered this command, meanwhile."""
