"""Why there is no answer."""

from __future__ import annotations

from dataclasses import dataclass
from typing import Iterable, Optional


@dataclass(frozen=True)
class Violation:
    """One field of a request that was refused, and why."""

    # Path of the field, such as plate.size_x_mm or rods.positions[2].x_mm.
    field: str
    # What is wrong, with value, limit and unit.
    description: str
    # The kind of fault, such as FIELD_REASON_OUT_OF_RANGE; may be empty.
    reason: str = ""

    def __str__(self) -> str:
        return f"{self.field}: {self.description}" if self.field else self.description


class FootwardError(Exception):
    """What this package raises when there is no answer."""


class CallError(FootwardError):
    """A call that failed or was turned away.

    code is the name of its gRPC status, such as UNAVAILABLE; reason tells more, such
    as OVERLOADED, or is empty; retry_after is when to ask again [s], where the service
    said so; request_id leads to the call in the log of the service, where it is known.
    """

    def __init__(self, code: str, message: str, *, reason: str = "",
                 retry_after: Optional[float] = None, request_id: str = "",
                 unreached: bool = False):
        super().__init__(code, message)
        self.code = code
        self.message = message
        self.reason = reason
        self.retry_after = retry_after
        self.request_id = request_id
        # Whether no server took the call at all.
        self.unreached = unreached

    def __str__(self) -> str:
        return f"{self.message} ({self.code})"


class RefusedError(CallError):
    """A request that cannot be checked. violations names every field at fault."""

    def __init__(self, message: str, violations: Iterable[Violation] = (), **more):
        super().__init__("INVALID_ARGUMENT", message, **more)
        self.violations = list(violations)

    def __str__(self) -> str:
        if not self.violations:
            return super().__str__()
        return "the request was refused\n" + "\n".join(f"  {v}" for v in self.violations)


def from_status(code: str, message: str, details: Iterable[dict], **more) -> CallError:
    """The error of a google.rpc.Status whose details are dictionaries."""
    reason, violations, retry_after = "", [], None
    for d in details:
        kind = d.get("@type", "").rpartition(".")[2]
        if kind == "ErrorInfo":
            reason = d.get("reason", "")
        elif kind == "BadRequest":
            for v in d.get("field_violations") or d.get("fieldViolations") or []:
                violations.append(Violation(v.get("field", ""), v.get("description", ""), v.get("reason", "")))
        elif kind == "RetryInfo":
            retry_after = seconds(d.get("retry_delay") or d.get("retryDelay") or "0s")
    if code == "INVALID_ARGUMENT":
        return RefusedError(message, violations, reason=reason, retry_after=retry_after, **more)
    return CallError(code, message, reason=reason, retry_after=retry_after, **more)


def seconds(text: str) -> Optional[float]:
    """A duration of protobuf's JSON form, such as 1.5s, in seconds."""
    try:
        return float(text.rstrip("s"))
    except ValueError:
        return None
