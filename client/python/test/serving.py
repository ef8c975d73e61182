"""Starts the service's binary, which SERVICE_BINARY names, for a test."""

import json
import os
import random
import socket
import subprocess
import threading
from pathlib import Path

BINARY = os.environ.get("SERVICE_BINARY", "")
DATA = Path(os.environ.get("SERVICE_TESTDATA", Path(__file__).resolve().parents[3] / "testdata"))

BRACKET = {"weld": {
    "label": "bracket",
    "basis": {"eurocode": {}},
    "weld": {"kind": "WELD_KIND_FILLET", "throat_mm": 4, "parts": [
        {"thickness_mm": 20, "steel": {"grade": "EN 10025-2 S355"}},
        {"thickness_mm": 12, "steel": {"grade": "EN 10025-2 S355"}}]},
    "run": {"length_mm": 150, "count": 2, "normal_kn": 120},
}}


def bracket(**changed):
    """The bracket's weld with another run."""
    return {"weld": {**BRACKET["weld"], "run": {**BRACKET["weld"]["run"], **changed}}}


def free_address() -> str:
    """An address that is free, and that no outgoing connection takes in the meantime."""
    while True:
        with socket.socket() as s:
            try:
                s.bind(("127.0.0.1", random.randrange(20000, 32000)))
            except OSError:
                continue
            return f"127.0.0.1:{s.getsockname()[1]}"


class Serving:
    """A service of its own, on ports of its own unless they are given."""

    def __init__(self, *flags: str, grpc: str = "127.0.0.1:0", http: str = "127.0.0.1:0"):
        self._process = subprocess.Popen(
            [BINARY, "--grpc-address", grpc, "--http-address", http, "--metrics-address", "", "--log-json", *flags],
            stderr=subprocess.PIPE, text=True)
        line = self._process.stderr.readline()
        while '"level":"WARN"' in line:
            line = self._process.stderr.readline()
        if '"serving"' not in line:
            self._process.kill()
            self._process.wait()
            self._process.stderr.close()
            raise RuntimeError(f"{BINARY} does not serve: {line}")
        told = json.loads(line)
        self.grpc, self.web = told["listening"], told["http"]
        self.http = f"http://{self.web}"
        self._drained = threading.Thread(target=self._drain, daemon=True)
        self._drained.start()

    def _drain(self) -> None:
        for _ in self._process.stderr:
            pass

    def stop(self) -> None:
        self._process.terminate()
        self._process.wait()
        self._drained.join()
        self._process.stderr.close()

    def __enter__(self):
        return self

    def __exit__(self, *_):
        self.stop()
