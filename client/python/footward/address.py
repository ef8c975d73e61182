"""Where a service is, and whether anybody could listen in."""

from __future__ import annotations

import ipaddress
from typing import Callable, Optional, Union
from urllib.parse import urlsplit

# A token, or a function that is asked for it at each call, so that it may change.
Token = Union[str, Callable[[], str], None]


def is_http(address: str) -> bool:
    return address.lower().startswith(("http://", "https://"))


def is_this_machine(address: str) -> bool:
    """Whether an address is this very machine, so that nobody else can listen in."""
    if not is_http(address):
        scheme, _, rest = address.partition(":")
        if scheme in ("unix", "unix-abstract"):
            return True
        if rest.startswith("//"):  # scheme://authority/address
            address = rest[2:].partition("/")[2]
        elif scheme in ("dns", "ipv4", "ipv6"):
            address = rest
        address = "//" + address
    try:
        host = urlsplit(address).hostname or ""
    except ValueError:
        return False
    if host == "localhost":
        return True
    try:
        return ipaddress.ip_address(host).is_loopback
    except ValueError:
        return False


def bearer(token: Token) -> Optional[str]:
    """The header of a token."""
    if callable(token):
        token = token()
    return None if token is None else f"Bearer {token}"
