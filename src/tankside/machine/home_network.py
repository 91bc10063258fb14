"""This machine's address in the home network, and the names by which it goes there."""

from __future__ import annotations

import socket
from ipaddress import IPv4Address

from tankside.core.refusals import refuse

OUTWARDS = ("192.0.2.1", 9)
"""An address kept for examples (RFC 5737): to choose the way there a socket needs to send nothing."""


def own_address() -> str:
    """The address that the home network knows this machine by."""
    with socket.socket(socket.AF_INET, socket.SOCK_DGRAM) as probe:
        try:
            probe.connect(OUTWARDS)
            found = str(probe.getsockname()[0])
        except OSError as error:
            raise refuse("no-home-network", ways_on=("start-without-phone",)) from error
    return home_address(found)


def home_address(found: str) -> str:
    """The same, refused where it is no address of a home network.

    >>> home_address("192.168.1.20")
    '192.168.1.20'
    """
    address = IPv4Address(found)
    if address.is_loopback or address.is_unspecified or address.is_link_local:
        raise refuse("no-home-network", ways_on=("start-without-phone",))
    if not address.is_private:
        raise refuse("open-internet", ways_on=("start-without-phone",), address=found)
    return found


def own_names() -> tuple[str, ...]:
    """Names that this machine goes by: its own, and the same under .local."""
    name = socket.gethostname().lower().partition(".")[0]
    return (name, f"{name}.local") if name else ()
