"""Calls in JSON over HTTP, with nothing but Python."""

from __future__ import annotations

import http.client
import json
import ssl
import urllib.error
import urllib.request
from typing import Any, Optional

from .address import Token, bearer, is_this_machine
from .error import CallError, from_status, seconds

# The largest answer that is read; the service sends none that is larger.
MOST_BYTES = 256 << 20

# What stands between caller and service may answer without a status of its own.
CODES = {400: "INVALID_ARGUMENT", 401: "UNAUTHENTICATED", 403: "PERMISSION_DENIED", 404: "NOT_FOUND",
         408: "DEADLINE_EXCEEDED", 413: "RESOURCE_EXHAUSTED", 429: "RESOURCE_EXHAUSTED", 501: "UNIMPLEMENTED",
         502: "UNAVAILABLE", 503: "UNAVAILABLE", 504: "DEADLINE_EXCEEDED"}

NAMES = ["OK", "CANCELLED", "UNKNOWN", "INVALID_ARGUMENT", "DEADLINE_EXCEEDED", "NOT_FOUND", "ALREADY_EXISTS",
         "PERMISSION_DENIED", "RESOURCE_EXHAUSTED", "FAILED_PRECONDITION", "ABORTED", "OUT_OF_RANGE",
         "UNIMPLEMENTED", "INTERNAL", "UNAVAILABLE", "DATA_LOSS", "UNAUTHENTICATED"]


class NoRedirect(urllib.request.HTTPRedirectHandler):
    """Follows nobody elsewhere: a token would go along."""

    def redirect_request(self, *_: Any) -> None:
        return None


class Web:
    """A service that is asked over HTTP."""

    def __init__(self, address: str, token: Token, tls: Optional[ssl.SSLContext]):
        self.address, self.token = address.rstrip("/"), token
        handlers: list[urllib.request.BaseHandler] = [NoRedirect(), urllib.request.HTTPSHandler(context=tls)]
        if is_this_machine(address):
            handlers.append(urllib.request.ProxyHandler({}))
        self._opener = urllib.request.build_opener(*handlers)

    def close(self) -> None:
        """Connections end with each call."""

    def faults(self, message: str, request: dict) -> list:
        """The service itself finds what is not part of a request."""
        return []

    def call(self, method: dict, text: str, timeout: float) -> dict:
        """Sends one request and returns the answer, or raises why there is none."""
        header = {"Content-Type": "application/json", "User-Agent": "footward-python",
                  "Request-Timeout": f"{min(max(timeout, 0.001), 3600):.3f}"}
        authorization = bearer(self.token)
        if authorization:
            header["Authorization"] = authorization
        request = urllib.request.Request(self.address + method["path"], text.encode(), header)
        try:
            with self._opener.open(request, timeout=timeout) as answer:
                return json.loads(answer.read(MOST_BYTES))
        except urllib.error.HTTPError as e:
            with e:
                raise refused(e.code, e.headers, e.read(MOST_BYTES)) from None
        except TimeoutError as e:
            raise CallError("DEADLINE_EXCEEDED", f"no answer from {self.address} in time") from e
        except urllib.error.URLError as e:
            raise self._unreached(e) from e
        except (OSError, http.client.HTTPException) as e:
            raise CallError("UNAVAILABLE", f"the connection to {self.address} broke: {e or type(e).__name__}") from e
        except ValueError as e:
            raise CallError("INTERNAL", f"{self.address} answered no JSON; is it a Footward service?") from e

    def _unreached(self, e: urllib.error.URLError) -> CallError:
        if isinstance(e.reason, TimeoutError):
            return CallError("DEADLINE_EXCEEDED", f"{self.address} could not be reached in time")
        if isinstance(e.reason, ssl.SSLError):  # another try would find the same
            return CallError("UNAUTHENTICATED", f"{self.address} could not be trusted: {e.reason}")
        return CallError("UNAVAILABLE", f"{self.address} could not be reached: {e.reason}",
                         unreached=isinstance(e.reason, OSError))


def refused(status: int, headers: Any, body: bytes) -> CallError:
    """The error of an answer that is no answer."""
    more = {"request_id": headers.get("X-Request-Id") or ""}
    try:
        told = json.loads(body)
        code = NAMES[told["code"]]
        error = from_status(code, told.get("message", ""), told.get("details") or [], **more)
    except (ValueError, KeyError, IndexError, TypeError, AttributeError):
        text = body[:200].decode(errors="replace").strip()
        error = from_status(CODES.get(status, "UNKNOWN"), f"HTTP status {status}: {text}", [], **more)
    if error.retry_after is None and error.code in ("RESOURCE_EXHAUSTED", "UNAVAILABLE"):
        error.retry_after = seconds(headers.get("Retry-After") or "-")
    return error
