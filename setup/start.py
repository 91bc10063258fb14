"""What `./start` does: set up if need be, then become `tankside start`."""

from __future__ import annotations

import os
import sys

from environment import RUN, prepare
from plainly import plainly


@plainly
def main() -> int:
    """Does not come back when all is well: the process becomes the program."""
    program = prepare(RUN) / "tankside"
    os.execv(program, [str(program), "start", *sys.argv[1:]])


if __name__ == "__main__":
    sys.exit(main())
