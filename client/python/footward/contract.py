"""What the package knows of the contract, as written by .ci/generate."""

from __future__ import annotations

import json
from importlib.resources import files

_known = json.loads((files(__package__) / "methods.json").read_text("utf-8"))

# Names of the checks that a request may hold, such as weld, with their method.
KINDS: dict[str, str] = _known["kinds"]
# Methods by name, such as CheckWeld: path, request and response.
METHODS: dict[str, dict[str, str]] = _known["methods"]


def descriptors() -> bytes:
    """The descriptors of the contract, a FileDescriptorSet."""
    return (files(__package__) / "contract.binpb").read_bytes()
