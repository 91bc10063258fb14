"""What differed between plan and run, in words: what is, what it means, what can be done."""

from __future__ import annotations

from dataclasses import dataclass
from typing import assert_never

from tankside.core.methods.baths import BathKind
from tankside.core.quantities.display import temperature_text, time_text, to_step, volume_text
from tankside.core.quantities.preferences import Preferences
from tankside.core.review.differed import (
    Begun,
    ColdWash,
    Deviation,
    Disorder,
    Doubtful,
    Drained,
    EndMoved,
    LeftOut,
    Missed,
    Noted,
    OfContrast,
    OtherBottle,
    PastFixer,
    PutRight,
    Replanned,
    RightWay,
    Spoilt,
    Timed,
    Warmth,
    Washed,
)
from tankside.core.run.standing import OutOfOrder
from tankside.core.run.state import RunState
from tankside.wording.consequences import say_doubt
from tankside.wording.cues import BATHS
from tankside.wording.fixer import fixer_past_words
from tankside.wording.percent import percent_band
from tankside.wording.permanence import washed_words
from tankside.wording.refusals import PLAIN

NTH = ("First", "Second", "Third", "Fourth", "Fifth", "Sixth", "Seventh", "Eighth", "Ninth", "Tenth")
SIZES = {
    "too small to see": "Too small to see in the film.",
    "just": "Just to be seen in the film.",
    "will show": "It will show in the film.",
}
DISORDER: dict[OutOfOrder, tuple[str, str]] = {
    "image-gone": ("Fixer came before the developer.", "The image is gone; developing brings nothing back."),
    "before-developer": ("{bath} came before the developer.", "The film is unharmed once it was rinsed."),
    "unfixed": (
        "{bath} came before the fix.",
        "Without a fix the film is not permanent: fix, then wash anew.",
    ),
    "unwashed": ("{bath} came before the wash.", "Without a wash the film is not permanent: wash it."),
}
LEFT_OUT: dict[BathKind, str] = {
    "presoak": "Nothing in the film.",
    "develop": "Without developer there is no image.",
    "stop": "The fixer takes the developer along and tires sooner.",
    "fix": "The film is not permanent: fix it, then wash it anew.",
    "aid": "The wash has more to do: give it two more fills.",
    "wash": "The film is not permanent: wash it.",
    "wetting": "Drops may have dried on the film; a rinse in wetting agent takes them off.",
}
TOO_SHORT: dict[BathKind, str] = {
    "fix": "It may not be fixed through: fix it again, then wash it anew.",
    "stop": "The fixer took some developer along and tires sooner.",
    "wetting": "Drops may have dried on the film.",
}
TOO_LONG: dict[BathKind, str] = {
    "fix": "Fresh rapid fixer may have begun to take the thinnest silver.",
    "stop": "Acid so long may swell the gelatin; look for grain.",
}
NOTED: dict[str, str] = {
    "bath-poured": "The pour",
    "bath-drained": "The draining",
    "bath-returned": "Where it went",
    "bath-discarded": "Where it went",
    "water-changed": "The change of water",
    "reading-taken": "The reading",
    "film-hung": "The hanging",
    "bottle-confirmed": "The bottle",
    "agitation-noted": "The agitation",
}
RIGHT_WAYS: dict[RightWay, str] = {
    "restated": "{note} was noted anew; the first note is kept.",
    "withdrawn": "{note} was taken back; the note is kept.",
    "retimed": "{note} was put {by} {way}; the first note is kept.",
}


@dataclass(frozen=True, slots=True)
class SaidDeviation:
    """`head` is the fact, `rest` what it means and what can be done."""

    head: str
    rest: str = ""

    @property
    def whole(self) -> str:
        """Both in one line."""
        return f"{self.head} {self.rest}".strip()


def say_deviation(  # noqa: PLR0911, PLR0912, C901 - one arm a kind
    one: Deviation, state: RunState, preferences: Preferences = PLAIN
) -> SaidDeviation:
    """One deviation in words."""
    bath = _bath(one, state)
    match one.what:
        case Begun(by_s=by_s):
            when = "later" if by_s > 0 else "earlier"
            return SaidDeviation(f"Begun {apart(by_s)} {when} than planned.", "Nothing in the film.")
        case EndMoved(from_s=from_s, to_s=to_s):
            was, now = (time_text(to_step(one_s, 5.0)) for one_s in (from_s, to_s))
            return SaidDeviation(f"The end moved from {was} to {now}.", "The tank was read.")
        case Drained(by_s=by_s, contrast=contrast):
            return SaidDeviation(f"Drained {apart(by_s)} {_late(by_s)}.", say_contrast(contrast))
        case Timed():
            return _timed(one.what, bath)
        case Missed():
            return _missed(one.what, bath)
        case Warmth():
            return _warmth(one.what, preferences)
        case OtherBottle(bottle=bottle, poured=poured, owed=owed):
            return SaidDeviation(f"{BATHS[poured]} came out of {bottle}, where {BATHS[owed]} was due.")
        case Spoilt():
            return _spoilt(one.what, preferences)
        case Disorder(order=order):
            head, rest = DISORDER[order]
            return SaidDeviation(head.format(bath=bath), rest)
        case LeftOut(bath=kind, why=why, noted=noted):
            said = f"{BATHS[kind]} skipped." if noted else f"{BATHS[kind]}: no pour was noted."
            return SaidDeviation(said, f"{_quoted(why)}{LEFT_OUT[kind]}")
        case Washed():
            return SaidDeviation(*washed_words(one.what))
        case PastFixer(used=used):
            return SaidDeviation(*fixer_past_words(used))
        case ColdWash(temp_c=temp_c):
            head = f"Wash water {temperature_text(temp_c, preferences)}."
            ten = temperature_text(10.0, preferences)
            return SaidDeviation(
                head, f"Under {ten} no plan of fills holds: wash once more, warmer, and test."
            )
        case Doubtful(doubt=doubt):
            told = say_doubt(doubt, state)
            return SaidDeviation(told.head, f"{told.more} Nobody has said which is right.".strip())
        case PutRight():
            return _put_right(one.what)
        case Replanned(because=because, changes=changes):
            what = f" {'; '.join(changes)}." if changes else ""
            return SaidDeviation("The plan was changed.", f"You said: {because}.{what}")
        case Noted(text=text, about=about):
            return SaidDeviation(f"You noted{f' of {about}' if about else ''}: {text}")
        case _:
            assert_never(one.what)


def say_contrast(contrast: OfContrast | None) -> str:
    """What something did to the contrast: the size, and from 3 % on the number with its interval."""
    if contrast is None:
        return "What that does to this film is not known."
    if contrast.size == "too small to see":
        return SIZES[contrast.size]
    return f"{SIZES[contrast.size]} Contrast {percent_band(contrast.percent)}."


def apart(by_s: float) -> str:
    """How far apart two moments are: seconds under two minutes, then minutes, then hours.

    >>> apart(-9.0), apart(130.0), apart(1300.0)
    ('9 s', '2:10', '22 min')
    """
    if abs(by_s) < 120:
        return f"{abs(by_s):.0f} s"
    if abs(by_s) < 600:
        return time_text(abs(by_s))
    return f"{abs(by_s) / 60:.0f} min" if abs(by_s) < 7200 else f"{abs(by_s) / 3600:.0f} h"


def _late(by_s: float) -> str:
    return "late" if by_s > 0 else "early"


def _bath(one: Deviation, state: RunState) -> str:
    """The name of the bath that it is about."""
    if one.tankful is None or one.bath is None:
        return ""
    return BATHS[state.tankful(one.tankful).bath(one.bath).kind]


def _timed(what: Timed, bath: str) -> SaidDeviation:
    limit = time_text(what.limit_s)
    match what.stayed:
        case "longer":
            head = f"{bath} {apart(what.by_s)} longer."
            return SaidDeviation(head, "Harmless: this bath is at least, not exact.")
        case "shorter":
            return SaidDeviation(
                f"{bath} {apart(what.by_s)} shorter.", "No less than its least time, give or take a tap."
            )
        case "too short":
            return SaidDeviation(f"{bath} under its least time of {limit}.", TOO_SHORT.get(what.bath, ""))
        case "too long":
            return SaidDeviation(f"{bath} beyond its most of {limit}.", TOO_LONG.get(what.bath, ""))
        case _:
            assert_never(what.stayed)


def _missed(what: Missed, bath: str) -> SaidDeviation:
    count = len(what.cycles)
    if count == 1 and what.cycles[0] < len(NTH):
        head = f"{NTH[what.cycles[0]]} inversion missed."
    else:
        head = f"{count} inversions missed."
    if what.first_minute:
        return SaidDeviation(head, "The first minute decides how even the film is: look for streaks.")
    return SaidDeviation(head, f"{bath}: no correction for it.")


def _warmth(what: Warmth, preferences: Preferences) -> SaidDeviation:
    read, planned = (temperature_text(temp_c, preferences) for temp_c in (what.read_c, what.planned_c))
    return SaidDeviation(f"The tank read {read}, planned {planned}.", say_contrast(what.contrast))


def _spoilt(what: Spoilt, preferences: Preferences) -> SaidDeviation:
    one = what.contamination
    strength = f", at most {100 * one.most_strength:.0f} % of its strength" if one.most_strength else ""
    poured = f"{volume_text(one.poured_ml, preferences)} of {one.kind or 'another bath'}"
    head = f"{poured} went back into {one.bottle}."
    return SaidDeviation(
        head, f"{one.bottle} is contaminated{strength}, and not used again. This film is unaffected."
    )


def _put_right(what: PutRight) -> SaidDeviation:
    note = NOTED.get(what.kind, "A note")
    way = "later" if what.by_s > 0 else "earlier"
    head = RIGHT_WAYS[what.way].format(note=note, by=apart(what.by_s), way=way)
    return SaidDeviation(head, _quoted(what.why).strip())


def _quoted(why: str) -> str:
    return f"You said: {why}. " if why.strip() else ""
