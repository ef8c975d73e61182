"""Turns the JSON of an answer into the data classes of footward.responses."""

from __future__ import annotations

import dataclasses
import functools
import typing
from typing import Any, Callable

from . import responses


def decode(name: str, value: dict) -> Any:
    """The response of the given name. Fields that a newer service has added are left
    out here; they stand in the dictionary."""
    return _reader(getattr(responses, name))(value)


@functools.lru_cache(maxsize=None)
def _reader(kind: type) -> Callable[[dict], Any]:
    hints = typing.get_type_hints(kind)
    readers = {f.name: _of(hints[f.name]) for f in dataclasses.fields(kind)}

    def read(value: dict) -> Any:
        return kind(**{n: readers[n](v) for n, v in value.items() if n in readers and v is not None})

    return read


def _of(hint: Any) -> Callable[[Any], Any]:
    args = typing.get_args(hint)
    if typing.get_origin(hint) is typing.Union:  # Optional
        return _of(args[0])
    if typing.get_origin(hint) is list:
        one = _of(args[0])
        return lambda v: [one(x) for x in v]
    if hint in (float, int, str, bool):
        return hint
    if dataclasses.is_dataclass(hint):
        return lambda v: _reader(hint)(v)
    return lambda v: v  # the name of an enum
