"""What the database and its disk refuse."""

from __future__ import annotations

SENTENCES = {
    "backup-damaged": "{file} is not a whole backup of Tankside; nothing was changed.",
    "backup-exists": "{file} exists already, and a backup is never written over.",
    "backup-not-written": "{file} could not be written: {reason}.",
    "disk-full": "The disk is full, so this was not noted in {file}.",
    "disk-read-failed": "The disk could not read {file}.",
    "disk-sync-failed": (
        "The disk did not confirm what was written to {file}; nothing more is noted until it is read again."
    ),
    "disk-write-failed": "The disk did not take what was to be noted in {file}.",
    "no-such-backup": "There is no file {file}.",
    "nothing-to-back-up": "There is nothing to back up yet: {file} does not exist.",
    "restore-would-overwrite": "{file} holds rolls and runs already; nothing was changed.",
    "store-busy": "Another program holds {file}, so this was not noted.",
    "store-cannot-open": "{file} cannot be opened.",
    "store-damaged": "{file} is damaged; it was left as it is.",
    "store-foreign": "{file} was not made by Tankside; it was left as it is.",
    "store-newer": (
        "{file} was made by a newer Tankside (version {schema} of its tables; this one knows {known}); "
        "it was left as it is."
    ),
    "store-older": (
        "{file} was made by an early Tankside (version {schema} of its tables; this one needs {known}); "
        "it was left as it is."
    ),
    "store-read-only": "{file} may be read but not written.",
}
WAYS_ON = {
    "another-backup": "Choose another backup.",
    "another-name": "Choose another name or folder for it.",
    "allow-writing": "Allow writing to the file and its folder.",
    "choose-another-file": "Choose another folder with --data-folder FOLDER.",
    "close-the-other-program": "Close the other program.",
    "free-some-room": "Free some room on the disk.",
    "look-at-the-folder": "Look whether its folder is there and may be opened.",
    "move-aside": "Add --move-aside to keep it under another name and restore beside it.",
    "restart-and-verify": "Start Tankside again: it looks the file over first.",
    "restore-a-backup": "Restore a backup into another folder.",
    "start-afresh": "Move the file away to start afresh.",
    "try-again": "Try again.",
    "update-the-program": "Update Tankside.",
}
