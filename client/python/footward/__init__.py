"""Asks a Footward service whether the parts of a column base hold.

    import footward

    with footward.connect("http://127.0.0.1:8061") as service:  # or "127.0.0.1:50061"
        answer = service.check("base.yaml")
    print(answer)

An address with http:// or https:// is asked in JSON, with nothing but Python; any
other in gRPC, which needs grpcio and protobuf. Both give the same answers.

A part that does not hold is an answer, not an error: look at its verdict. An error
means that there is no answer; RefusedError tells which fields were refused.

Every result is a design aid. It does not replace the local code and regulations or
the judgement of a licensed engineer, who must check input, assumptions and result
before anything is built.
"""

from .answer import Answer, Refusal
from .error import CallError, FootwardError, RefusedError, Violation
from .file import read_file
from .service import Service, connect
from .table import to_frame

__all__ = [
    "Answer",
    "CallError",
    "FootwardError",
    "Refusal",
    "RefusedError",
    "Service",
    "Violation",
    "connect",
    "read_file",
    "to_frame",
]
