"""Ends a set-up that failed with one sentence in place of a traceback."""

from __future__ import annotations

import functools
import subprocess
from collections.abc import Callable

from environment import say
from installing import CannotSetUp


def plainly(main: Callable[[], int]) -> Callable[[], int]:
    """`main`, with what can go wrong on somebody's machine told as a sentence."""

    @functools.wraps(main)
    def told() -> int:
        try:
            return main()
        except CannotSetUp as no:
            say(str(no))
        except subprocess.CalledProcessError as failed:
            say(
                f"Set-up stopped: '{' '.join(map(str, failed.cmd[:4]))} ...' ended with {failed.returncode}. "
                "If the connection was lost, start again: nothing half-made is kept."
            )
        except KeyboardInterrupt:
            say("Stopped. Start again when you like: nothing half-made is kept.")
            return 130
        return 1

    return told
