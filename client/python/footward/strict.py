"""YAML as a designer means it. Needs PyYAML."""

from __future__ import annotations

import re
from typing import Any

import yaml


class Loader(yaml.SafeLoader):
    """Knows only numbers in decimals, true, false and null; all else is text. 010 is
    not 8 here, 1:30 not 90, and no date or 'no' is made of a label. A name that stands
    twice is refused, and so are anchors and aliases."""

    yaml_implicit_resolvers: dict = {}

    def compose_node(self, parent: Any, index: Any) -> Any:
        event = self.peek_event()
        if isinstance(event, yaml.AliasEvent) or getattr(event, "anchor", None) is not None:
            raise yaml.constructor.ConstructorError(
                None, None, "anchors and aliases (& and *) are not accepted; write the values out", event.start_mark)
        return super().compose_node(parent, index)

    def construct_mapping(self, node: Any, deep: bool = False) -> dict:
        seen = set()
        for key, _ in node.value:
            if key.value in seen:
                raise yaml.constructor.ConstructorError(
                    None, None, f"{key.value!r} stands here for the second time", key.start_mark)
            seen.add(key.value)
        return super().construct_mapping(node, deep=True)


for tag, pattern, first in (
    ("null", r"^(?:~|null|Null|NULL|)$", ["~", "n", "N", ""]),
    ("bool", r"^(?:true|True|TRUE|false|False|FALSE)$", list("tTfF")),
    ("int", r"^[-+]?(?:0|[1-9][0-9]*)$", list("-+0123456789")),
    ("float", r"^[-+]?(?:0|[1-9][0-9]*)?(?:\.[0-9]*)?(?:[eE][-+]?[0-9]+)?$", list("-+.0123456789")),
):
    Loader.add_implicit_resolver(f"tag:yaml.org,2002:{tag}", re.compile(pattern), first)


def _decimal(loader: Loader, node: Any) -> Any:
    try:
        return float(node.value)
    except ValueError:
        return node.value  # a lone sign or point


Loader.add_constructor("tag:yaml.org,2002:float", _decimal)
