"""The service, however it is reached."""

from __future__ import annotations

import json
import os
import ssl
from typing import TYPE_CHECKING, Any, Iterable, Mapping, Optional, Union

from .address import Token, is_http, is_this_machine
from .answer import Answer, Refusal
from .contract import KINDS, METHODS
from .decode import decode
from .error import RefusedError, Violation
from .file import Path, items, read_file
from .retry import Retry
from .web import Web

if TYPE_CHECKING:
    from . import responses

# The steps of a calculation are much text: fewer answers fit in one message.
PER_CALL, PER_CALL_DERIVED = 100, 20

Request = Union[Mapping[str, Any], Path]


def connect(address: str, *, token: Token = None, ca: Optional[str] = None, cert: Optional[str] = None,
            key: Optional[str] = None, plaintext: bool = False, timeout: float = 30.0,
            wait: bool = True) -> Service:
    """Returns a service. It does not wait for a connection: a server that cannot be
    reached shows in the first call.

    address is http://HOST:PORT or https://HOST:PORT for JSON over HTTP, else HOST:PORT
    or any target that gRPC knows. The connection is encrypted and trusts the system's
    certificates, unless the address is this very machine; http:// to another machine
    needs plaintext=True, which is only for a network that you trust.

    token, or what it returns at each call, is sent as a bearer token; to another
    machine over an encrypted connection only. ca is a file of own authorities, cert
    and key are files of a certificate of the caller's, all PEM.

    timeout ends each call [s]. wait lets a call wait for a server that cannot be
    reached, until the timeout; without it the call fails soon.
    """
    here = is_this_machine(address)
    secured = ca is not None or cert is not None or address.lower().startswith("https://")
    if secured and (plaintext or address.lower().startswith("http://")):
        raise ValueError("a plain connection takes no certificates; use https:// or leave out plaintext")
    if (cert is None) != (key is None):
        raise ValueError("cert and key go together")
    plain = plaintext or not secured and here
    if is_http(address) and not secured and not plain:
        raise ValueError(f"{address} is another machine and is not encrypted: use https://, or say plaintext=True")
    if token is not None and plain and not here:
        raise ValueError("a token goes to another machine over an encrypted connection only")
    tls = None
    if not plain:
        tls = ssl.create_default_context(cafile=ca)
        if cert:
            tls.load_cert_chain(cert, key)
    if is_http(address):
        return Service(Web(address, token, tls), Retry(wait), timeout)
    from .wire import Wire, credentials  # needs grpcio, which HTTP does without

    return Service(Wire(address, token, tls and credentials(tls, ca, cert, key), wait), Retry(wait), timeout)


class Service:
    """A Footward service. Threads may share one; make one and keep it.

    Requests are dictionaries as the contract writes them (footward.requests has their
    types), or names of files that hold them.
    """

    def __init__(self, way: Any, retry: Retry, timeout: float):
        self._way, self._retry, self._timeout = way, retry, timeout

    def __enter__(self) -> Service:
        return self

    def __exit__(self, *_: Any) -> None:
        self.close()

    def close(self) -> None:
        """Gives the connection up."""
        self._way.close()

    def call(self, method: str, request: Mapping[str, Any], *, timeout: Optional[float] = None) -> dict:
        """Calls a method by its name, such as CheckWeld, and returns the answer as the
        dictionary that the contract describes."""
        if method not in METHODS:
            raise ValueError(f"{method} is no method; known are {', '.join(METHODS)}")
        m, text = METHODS[method], _text(request)
        return self._retry.run(lambda left: self._way.call(m, text, left), timeout or self._timeout)

    def check(self, request: Request, *, derivation: bool = False, timeout: Optional[float] = None) -> Answer:
        """Makes one check, such as {"weld": {...}} or a file that holds one.

        With derivation the answer holds the calculation, step by step.
        """
        one = dict(request) if isinstance(request, Mapping) else _only(request)
        kind = _kind(one)
        inner = one[kind]
        if derivation and isinstance(inner, Mapping):
            inner = {**inner, "detail": "DETAIL_DERIVATION"}
        method = KINDS[kind]
        try:
            told = self.call(method, inner, timeout=timeout)
        except RefusedError as e:
            e.violations = [Violation(f"{kind}.{v.field}" if v.field else kind, v.description, v.reason)
                            for v in e.violations]
            raise
        response = decode(METHODS[method]["response"], told)
        return Answer(kind, response.result, response.provenance, response, told)

    def check_many(self, requests: Union[Iterable[Mapping[str, Any]], Path], *, derivation: bool = False,
                   timeout: Optional[float] = None) -> list[Union[Answer, Refusal]]:
        """Makes many checks, of any kind, mixed, or all of a file. A bad one fails alone:
        in its place stands a Refusal. The timeout is for each call; there is one for every
        hundred checks."""
        if isinstance(requests, (str, os.PathLike)):
            requests = items(read_file(requests))
        per_call = PER_CALL_DERIVED if derivation else PER_CALL
        all_, out = [_detailed(r) if derivation else r for r in requests], []
        for at in range(0, len(all_), per_call):
            out += self._many(all_[at:at + per_call], timeout)
        return out

    def _many(self, part: list, timeout: Optional[float]) -> list[Union[Answer, Refusal]]:
        out: list = [None] * len(part)
        for i, item in enumerate(part):
            found = self._way.faults("CheckItem", _plain(item))
            if found:
                out[i] = Refusal(found)
        sent = [i for i in range(len(part)) if out[i] is None]
        if not sent:
            return out
        try:
            told = self.call("CheckMany", {"items": [part[i] for i in sent]}, timeout=timeout)
        except RefusedError as e:
            # Something is no part of the contract, which refuses the call as a whole.
            if len(part) == 1:
                return [Refusal(e.violations or [Violation("", e.message)])]
            half = len(part) // 2
            return self._many(part[:half], timeout) + self._many(part[half:], timeout)
        many = decode("CheckManyResponse", told)
        for i, outcome, raw in zip(sent, many.outcomes, told["outcomes"], strict=True):
            if outcome.result is None:
                found = outcome.refusal.violations if outcome.refusal else []
                out[i] = Refusal([Violation(v.field, v.description, v.reason) for v in found])
            else:
                out[i] = Answer(_kind(part[i]), outcome.result, many.provenance, outcome, raw)
        return out

    def combine(self, request: Request, *, timeout: Optional[float] = None) -> responses.CombineActionsResponse:
        """Writes out the combinations of a set of actions."""
        return self._ask("CombineActions", request, timeout)

    def size(self, request: Request, *, timeout: Optional[float] = None) -> responses.SizeColumnBaseResponse:
        """Looks for the cheapest column base among what is offered."""
        return self._ask("SizeColumnBase", request, timeout)

    def compare(self, request: Request, *, timeout: Optional[float] = None) -> responses.CompareFootingsResponse:
        """Holds a ring footing against a concrete pad sized for the same loads."""
        return self._ask("CompareFootings", request, timeout)

    def tests(self, request: Request, *, timeout: Optional[float] = None) -> responses.AssessLoadTestsResponse:
        """Finds the characteristic and design resistance from load tests of one population."""
        return self._ask("AssessLoadTests", request, timeout)

    def reading(self, request: Request, *, timeout: Optional[float] = None) -> responses.ReadLoadTestResponse:
        """Reads the record of one load test."""
        return self._ask("ReadLoadTest", request, timeout)

    def catalog(self, name: str, *, timeout: Optional[float] = None) -> Any:
        """Returns a list of names that requests may use, such as steels or threads."""
        method = "List" + "".join(w.capitalize() for w in name.replace("-", "_").split("_"))
        if method not in METHODS:
            known = ", ".join(_words(m[4:]) for m in METHODS if m.startswith("List"))
            raise ValueError(f"there is no list of {name}; known are {known}")
        return self._ask(method, {}, timeout)

    def _ask(self, method: str, request: Request, timeout: Optional[float]) -> Any:
        one = request if isinstance(request, Mapping) else _only(request)
        return decode(METHODS[method]["response"], self.call(method, one, timeout=timeout))


def _kind(item: Any) -> str:
    kinds = [k for k in item if k in KINDS] if isinstance(item, Mapping) else []
    if len(kinds) != 1 or len(item) != 1:
        has = ", ".join(map(str, item)) if isinstance(item, Mapping) else repr(item)[:60]
        raise ValueError(f"a check is a dictionary with one of {', '.join(KINDS)} in it; this one has {has or 'nothing'}")
    return kinds[0]


def _only(path: Path) -> dict:
    found = items(read_file(path))
    if len(found) != 1:
        raise ValueError(f"{os.fspath(path)} holds {len(found)} requests; check_many takes several")
    return found[0]


def _detailed(item: Any) -> Any:
    if not isinstance(item, Mapping):
        return item
    return {k: {**v, "detail": "DETAIL_DERIVATION"} if k in KINDS and isinstance(v, Mapping) else v
            for k, v in item.items()}


def _text(request: Any) -> str:
    """The JSON of a request. Numbers of numpy and the like become plain ones."""
    def simple(v: Any) -> Any:
        if isinstance(v, Mapping):
            return dict(v)
        if hasattr(v, "tolist"):
            return v.tolist()
        raise TypeError(f"{v!r:.60} is a {type(v).__name__}; a request holds text, numbers, lists and dictionaries")

    try:
        return json.dumps(request, default=simple, allow_nan=False)
    except ValueError as e:
        raise ValueError(f"a number in the request is infinite or none at all, or it holds itself ({e})") from None


def _plain(request: Any) -> Any:
    return json.loads(_text(request))


def _words(name: str) -> str:
    return "".join(f"_{c.lower()}" if c.isupper() else c for c in name).lstrip("_")
