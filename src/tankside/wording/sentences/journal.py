"""What the journal refuses: runs, proposals and photographs."""

from __future__ import annotations

SENTENCES = {
    "no-combination-judged": "What this film was developed by is not kept here, so nothing can be corrected.",
    "no-such-proposal": "That proposal is not kept here.",
    "no-such-run": "There is no such run.",
    "not-one-combination": "These rolls do not share one combination, so they are judged one by one.",
    "answers-missing": "Choose one answer in each row, or leave both for ever.",
    "photograph-damaged": "The photograph is damaged: it ends before its picture does.",
    "photograph-heic": (
        "A HEIC photograph says where it was taken, and that cannot be taken out here: it is not kept."
    ),
    "photograph-missing": "No photograph was chosen.",
    "photograph-too-large": "The photograph has {megabytes} MB; the most is 15 MB.",
    "photograph-unknown": "That is no photograph that Tankside reads; it reads JPEG and PNG.",
    "proposal-left": "That proposal was left as it is, or a newer answer took its place.",
    "proposal-outrun": "The time was changed since; that proposal was made for the one before.",
    "density-not-readable": "'{text}' is no density. Write it as 0.35.",
}
WAYS_ON = {
    "answer-again": "Answer once more.",
    "judge-apart": "Judge each by itself.",
    "look-at-the-journal": "Look at the list of runs.",
    "save-as-jpeg": "Save it as JPEG and choose it again.",
}
