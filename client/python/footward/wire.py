"""Calls over gRPC. Needs grpcio and protobuf."""

from __future__ import annotations

import inspect
import json
import ssl
from typing import Any, Optional

try:
    import grpc
    from google.protobuf import descriptor_pb2, descriptor_pool, json_format, message_factory
except ImportError as e:
    raise ImportError(
        "an address without http:// is asked over gRPC, which needs grpcio and protobuf"
        " (pip install 'footward[grpc]', or Debian's python3-grpcio and python3-protobuf)"
    ) from e

from .address import Token, bearer, is_this_machine
from .contract import METHODS, descriptors
from .error import CallError, RefusedError, Violation, from_status
from .fault import faults

MESSAGE_BYTES = 16 << 20

# The name of the argument that has every field written changed with protobuf 5.
_every = {"preserving_proto_field_name": True}
_every[next(n for n in ("always_print_fields_with_no_presence", "including_default_value_fields")
            if n in inspect.signature(json_format.MessageToDict).parameters)] = True


def _pool() -> Any:
    """The messages of the contract. The pool is our own: that of the process may hold
    another edition of them."""
    pool = descriptor_pool.DescriptorPool()
    for f in descriptor_pb2.FileDescriptorSet.FromString(descriptors()).file:
        pool.AddSerializedFile(f.SerializeToString())
    return pool


def _classes(pool: Any) -> dict[str, Any]:
    """A class for every request, response and detail of a status, by its full name."""
    names = {f"footward.v1.{m[k]}" for m in METHODS.values() for k in ("request", "response")}
    names |= {"google.rpc.Status"} | {f"google.rpc.{d}" for d in ("BadRequest", "ErrorInfo", "RetryInfo")}
    if hasattr(message_factory, "GetMessageClass"):
        make = message_factory.GetMessageClass
    else:
        make = message_factory.MessageFactory(pool).GetPrototype
    return {n: make(pool.FindMessageTypeByName(n)) for n in names}


class Wire:
    """A service that is asked over gRPC."""

    def __init__(self, address: str, token: Token, credentials: Optional[Any], wait: bool):
        self.address, self.token, self.wait = address, token, wait
        options = [
            ("grpc.max_send_message_length", MESSAGE_BYTES),
            ("grpc.max_receive_message_length", MESSAGE_BYTES),
            ("grpc.enable_retries", 0),  # Retry does it, the same for every way
            ("grpc.enable_http_proxy", 0 if is_this_machine(address) else 1),
            ("grpc.primary_user_agent", "footward-python"),
            ("grpc.service_config", json.dumps({"loadBalancingConfig": [{"round_robin": {}}]})),
            ("grpc.initial_reconnect_backoff_ms", 100),
            ("grpc.min_reconnect_backoff_ms", 100),
            ("grpc.max_reconnect_backoff_ms", 2000),
        ]
        self._pool = _pool()
        self._classes = _classes(self._pool)
        if credentials is None:
            self._channel = grpc.insecure_channel(address, options)
        else:
            self._channel = grpc.secure_channel(address, credentials, options)

    def close(self) -> None:
        self._channel.close()

    def faults(self, message: str, request: dict) -> list[Violation]:
        """What in a request is no part of the contract, by its path."""
        return faults(request, self._pool.FindMessageTypeByName("footward.v1." + message))

    def call(self, method: dict, text: str, timeout: float) -> dict:
        """Sends one request and returns the answer, or raises why there is none."""
        kind = self._classes["footward.v1." + method["request"]]
        found = self.faults(method["request"], json.loads(text))
        if found:
            raise RefusedError("the request is not of the contract", found)
        try:
            request = json_format.Parse(text, kind())
        except json_format.ParseError as e:  # two fields that exclude each other
            raise RefusedError(f"the request is not of the contract: {e}") from e
        ask = self._channel.unary_unary(
            method["path"], request_serializer=kind.SerializeToString,
            response_deserializer=self._classes["footward.v1." + method["response"]].FromString)
        authorization = bearer(self.token)
        metadata = [("authorization", authorization)] if authorization else None
        try:
            answer = ask(request, timeout=timeout, metadata=metadata, wait_for_ready=self.wait)
        except grpc.RpcError as e:
            raise self._error(e, timeout) from None
        return json_format.MessageToDict(answer, **_every)

    def _error(self, e: Any, timeout: float) -> CallError:
        trailers = dict(e.trailing_metadata() or ())
        code, message = e.code().name, e.details() or ""
        if code == "DEADLINE_EXCEEDED" and not trailers and not self._connected():
            return CallError("UNAVAILABLE", f"{self.address} could not be reached within {timeout:.3g} s")
        return from_status(code, message, self._details(trailers), request_id=str(trailers.get("x-request-id", "")))

    def _connected(self) -> bool:
        ready = grpc.channel_ready_future(self._channel)
        try:
            ready.result(timeout=0.05)
            return True
        except grpc.FutureTimeoutError:
            return False
        finally:
            ready.cancel()

    def _details(self, trailers: dict) -> list[dict]:
        """The details of a status that are known, as dictionaries."""
        out = []
        try:
            status = self._classes["google.rpc.Status"].FromString(trailers.get("grpc-status-details-bin", b""))
            for d in status.details:
                kind = self._classes.get(d.type_url.rpartition("/")[2])
                if kind is None:
                    continue
                m = kind.FromString(d.value)
                if kind.DESCRIPTOR.name == "RetryInfo":
                    delay = m.retry_delay.seconds + m.retry_delay.nanos / 1e9
                    out.append({"@type": "RetryInfo", "retry_delay": f"{delay}s"})
                else:
                    out.append({"@type": kind.DESCRIPTOR.name,
                                **json_format.MessageToDict(m, preserving_proto_field_name=True)})
        except Exception:  # a status that cannot be read has no details
            return out
        return out


def credentials(tls: ssl.SSLContext, ca: Optional[str], cert: Optional[str], key: Optional[str]) -> Any:
    """Encryption for gRPC: own authorities, else those of the system."""
    def read(name: Optional[str]) -> Optional[bytes]:
        if name is None:
            return None
        with open(name, "rb") as f:
            return f.read()

    roots = read(ca)
    if roots is None:
        roots = "".join(map(ssl.DER_cert_to_PEM_cert, tls.get_ca_certs(binary_form=True))).encode() or None
    return grpc.ssl_channel_credentials(roots, read(key), read(cert))
