"""Reads requests from YAML and JSON files, as strictly as the command does."""

from __future__ import annotations

import json
import os
from typing import Any, Union

Path = Union[str, "os.PathLike[str]"]

MOST_BYTES = 16 << 20


def read_file(path: Path) -> list[dict]:
    """The documents of a file, each a dictionary. YAML needs PyYAML, JSON nothing."""
    with open(path, "rb") as f:
        data = f.read(MOST_BYTES + 1)
    name = os.fspath(path)
    if len(data) > MOST_BYTES:
        raise ValueError(f"{name} is larger than {MOST_BYTES >> 20} MiB")
    try:
        text = data.decode("utf-8-sig")
    except UnicodeDecodeError:
        raise ValueError(f"{name} is not text in UTF-8") from None
    documents = [_json(name, text)] if name.lower().endswith(".json") else _yaml(name, text)
    for d in documents:
        if not isinstance(d, dict):
            raise ValueError(f"{name} holds no request, but {d!r:.60}")
    if not documents:
        raise ValueError(f"{name} holds no request")
    return documents


def items(documents: list[dict]) -> list[dict]:
    """The checks of documents: each is one, or a list of them under items."""
    out: list[dict] = []
    for d in documents:
        if "items" not in d:
            out.append(d)
        elif len(d) > 1 or not isinstance(d["items"], list):
            raise ValueError("items must be a list of checks, with nothing beside it")
        else:
            out += d["items"]
    return out


def _once(pairs: list[tuple[str, Any]]) -> dict:
    out: dict = {}
    for name, value in pairs:
        if name in out:
            raise ValueError(f"{name!r} stands here for the second time")
        out[name] = value
    return out


def _json(name: str, text: str) -> Any:
    def no_number(word: str) -> None:
        raise ValueError(f"{word} is no number")

    try:
        return json.loads(text, object_pairs_hook=_once, parse_constant=no_number)
    except ValueError as e:
        raise ValueError(f"{name}: {e}") from None


def _yaml(name: str, text: str) -> list[Any]:
    try:
        import yaml
    except ImportError as e:
        raise ImportError(
            f"to read {name} PyYAML is needed (pip install 'footward[yaml]', or Debian's python3-yaml);"
            " JSON is read without it, from a file that ends in .json") from e
    from .strict import Loader

    try:
        return [d for d in yaml.load_all(text, Loader) if d is not None]
    except yaml.YAMLError as e:
        raise ValueError(f"{name}: {e}") from None
