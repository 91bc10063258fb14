"""The screen of a run as frozen values; times are seconds after an anchor such as 'A.develop:poured'."""

from __future__ import annotations

from collections.abc import Mapping
from dataclasses import dataclass, field
from typing import Any, Literal

from tankside.web.drawing.kinds import Sign

Asked = Mapping[str, Any]
Sheet = Literal["dip", "earlier", "more", "bottle", "right", "skip", "scan"]


@dataclass(frozen=True, slots=True)
class Button:
    """One of the others: it opens a sheet or a page, or notes `command` at once.

    `key` is its key on a keyboard; `asks` marks a request, which needs the server.
    """

    words: str
    key: str
    sheet: Sheet | None = None
    command: Asked | None = None
    said: str = ""
    page: str = ""
    asks: bool = False


@dataclass(frozen=True, slots=True)
class Guard:
    """The bottle to have in hand: `step` 'measure' shows it lifted, 'pour' its jug in front of it.

    `before_s` is how long an empty tank may wait.
    """

    step: Literal["measure", "pour"]
    lead: str
    name: str
    code: str
    where: str
    then: str
    volume: str
    before_s: float | None = None


@dataclass(frozen=True, slots=True)
class Act:
    """One thing to do `after_s` after `anchor`.

    `sets` is the anchor that noting it sets, empty where nobody notes it. It is offered as the main act from
    `opens_s` on, and while a bath is in the tank no longer than `closes_s`; it is past once the anchor
    `until` is set, or a later act of its tankful is noted. Before `held_before_s` it must be held. `asks`
    marks a request, which needs the server. A `named` act stands in words on the scale, as `mark_words` if it
    has them. A `patient` one does no harm by waiting. `each` notes an inversion, for who notes every one,
    and is offered for `each_s` after its cue.
    """

    id: str
    tankful: str
    anchor: str
    after_s: float
    words: str
    title: str
    spoken: str
    pictogram: str
    for_s: float = 10.0
    lang: str = "en"
    named: bool = True
    patient: bool = False
    mark_words: str = ""
    cue: bool = True
    until: str = ""
    code: str = ""
    sets: str = ""
    button: str = ""
    hint: str = ""
    command: Asked | None = None
    asks: bool = False
    each: Asked | None = None
    each_s: float = 0.0
    opens_s: float | None = None
    closes_s: float | None = None
    held_before_s: float | None = None
    guard: Guard | None = None
    others: tuple[Button, ...] = ()


@dataclass(frozen=True, slots=True)
class Fill:
    """What a fill of a wash leaves: (seconds of its soak, g/m2), and words for what it came to."""

    trace: tuple[tuple[float, float], ...]
    words: str


@dataclass(frozen=True, slots=True)
class Residual:
    """The scale of a wash: fixer left in the film, g/m2, by plan; nothing is engraved under `floor`."""

    high: float
    floor: float
    limit: float
    limit_words: str
    start: float
    start_words: str
    fills: tuple[Fill, ...]
    fill: int
    last: tuple[float, float, float]
    last_words: str
    last_doubt: str


@dataclass(frozen=True, slots=True)
class BathFace:
    """One bath, or one fill of a wash, as it stands on the page from `begins` until one of `ends`.

    `exact` baths are over at their aim; others may stay until `most_s`, None without limit.
    """

    id: str
    tankful: str
    sign: Sign
    name: str
    what: str
    begins: str
    ends: tuple[str, ...]
    least_s: float
    aim_s: float
    most_s: float | None
    exact: bool
    under: str
    after: str
    at_end: str
    code: str = ""
    at_end_code: str = ""
    low_s: float | None = None
    high_s: float | None = None
    residual: Residual | None = None
    others: tuple[Button, ...] = ()


@dataclass(frozen=True, slots=True)
class Why:
    """Where the end of a developer comes from; `page` holds the working of its planned time."""

    heading: str
    sentences: tuple[str, ...]
    page: str


@dataclass(frozen=True, slots=True)
class TankfulFace:
    """One tankful: its letter, tank and baths in order.

    `doubted_s` is how much less may be left of its bath, if a doubted clock is wrong; `working` is where its
    developing time is argued, in the plan of this run.
    Of the inversions `missed` are ids of those that were not done, `noted` of those noted as done.
    """

    letter: str
    tank: str
    tank_long: str
    baths: tuple[BathFace, ...]
    missed: tuple[str, ...] = ()
    noted: tuple[str, ...] = ()
    tank_c: float | None = None
    next_bath: str | None = None
    next_words: str = ""
    ended: str = ""
    why: Why | None = None
    working: str = ""
    doubted_s: float = 0.0


@dataclass(frozen=True, slots=True)
class BenchBottle:
    """A bottle as it stands on the bench, from the left."""

    code: str
    sign: Sign
    name: str
    cap: str


@dataclass(frozen=True, slots=True)
class Notice:
    """A refusal, a warning or a plain fact, with its ways on; `about` names what it tells of."""

    kind: Literal["refusal", "warning", "fact"]
    heading: str
    sentence: str
    ways: tuple[Button, ...] = ()
    about: str = ""


@dataclass(frozen=True, slots=True)
class EarlierNote:
    """Something noted before, that can be put right; `about` is its event."""

    about: str
    at_us: int
    words: str


@dataclass(frozen=True, slots=True)
class Screen:
    """Everything that one run shows; `anchors` are when things happened, in microseconds since the epoch.

    `away` tells what happened while nobody looked, for a page that asked since when. `endings` are
    the ways on once nothing is left to do.
    """

    run: str
    seq: int
    now_us: int
    zone: str
    tankfuls: tuple[TankfulFace, ...]
    acts: tuple[Act, ...]
    anchors: Mapping[str, int]
    bench: tuple[BenchBottle, ...] = ()
    notices: tuple[Notice, ...] = ()
    notes: tuple[EarlierNote, ...] = ()
    away: Notice | None = None
    endings: tuple[Button, ...] = ()
    pace: float = 1.0
    watching: int = 0
    fahrenheit: bool = False
    closed: bool = False
    phrases: Mapping[str, str] = field(default_factory=dict)
