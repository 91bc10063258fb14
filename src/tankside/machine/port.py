"""A port of this machine to serve on, taken before anything else is opened."""

from __future__ import annotations

import errno
import socket

from tankside.core.refusals import refuse

LOOPBACK = "127.0.0.1"


def take_port(port: int, host: str = LOOPBACK) -> socket.socket:
    """A socket that listens on `port`, of this machine alone unless told another of its addresses.

    0 takes any free one.
    """
    taken = socket.socket(socket.AF_INET, socket.SOCK_STREAM)
    taken.setsockopt(socket.SOL_SOCKET, socket.SO_REUSEADDR, 1)
    try:
        taken.bind((host, port))
        taken.listen()
    except OSError as error:
        taken.close()
        if error.errno not in (errno.EADDRINUSE, errno.EACCES):
            raise
        code = "port-in-use" if error.errno == errno.EADDRINUSE else "port-not-allowed"
        raise refuse(code, port=port, ways_on=("other-port",)) from error
    return taken
