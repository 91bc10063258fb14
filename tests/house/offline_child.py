"""A Tankside with the loopback alone: every page is asked for, and whoever reaches further is told.

Run with the data folder as its argument, in a network of its own where the machine allows one.
"""

from __future__ import annotations

import fcntl
import re
import socket
import struct
import subprocess
import sys
import urllib.request
from pathlib import Path

SIOCSIFFLAGS, IFF_UP = 0x8914, 1
PAGES = (
    "/", "/contents", "/rolls", "/rolls/add", "/shelf", "/plan", "/sink", "/journal", "/densities",
    "/negatives", "/settings", "/begin", "/start/demo", "/start/phone", "/start/restore",
)  # fmt: skip
WATCHED = """
import sys
def watch(event, arguments):
    where = arguments[1] if event == "socket.connect" else ("127.0.0.1",)
    if isinstance(where, tuple) and where[0] not in ("127.0.0.1", "::1"):
        print("REACHED OUT", where, file=sys.stderr, flush=True)
    if event == "socket.getaddrinfo" and arguments[0] not in (None, "127.0.0.1", "localhost"):
        print("ASKED FOR", arguments[0], file=sys.stderr, flush=True)
sys.addaudithook(watch)
from tankside.__main__ import main
main()
"""


def raise_loopback() -> None:
    """A network of one's own begins with its loopback down."""
    with socket.socket(socket.AF_INET, socket.SOCK_DGRAM) as any_socket:
        fcntl.ioctl(any_socket, SIOCSIFFLAGS, struct.pack("16sh22x", b"lo", IFF_UP))


def main(folder: Path, *, alone: bool) -> None:
    """Start, ask for every page of both houses, print their statuses, end."""
    if alone:
        raise_loopback()
    start = [sys.executable, "-c", WATCHED, "start", "--port", "0", "--no-open", "--data-folder", str(folder)]
    with subprocess.Popen(start, stdout=subprocess.PIPE, text=True) as process:
        assert process.stdout is not None
        (address,) = re.findall(r"http://127\.0\.0\.1:\d+", process.stdout.readline())
        for path in [*PAGES, *(f"/demo{page}" for page in PAGES)]:
            with urllib.request.urlopen(address + path, timeout=60) as answer:
                text = answer.read().decode()
                print(answer.status, path)
            for sheet in re.findall(r'(?:href|src)="([^"]+\.(?:css|js|svg))"', text):
                with urllib.request.urlopen(address + sheet, timeout=60) as answer:
                    assert answer.status == 200, sheet
        process.terminate()


if __name__ == "__main__":
    main(Path(sys.argv[1]), alone=sys.argv[2] == "alone")
