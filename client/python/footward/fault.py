"""Finds what in a request is no part of the contract, by its path."""

from __future__ import annotations

import re
from typing import Any

from .error import Violation

_WHOLE = re.compile(r"-?(?:0|[1-9][0-9]*)\Z")
_DECIMAL = re.compile(r"-?(?:0|[1-9][0-9]*)(?:\.[0-9]+)?(?:[eE][-+]?[0-9]+)?\Z")


def faults(value: Any, message: Any, path: str = "") -> list[Violation]:
    """Every field of a request that the descriptor of its message does not have, or
    that is of another kind."""
    if value is None:
        return []
    if not isinstance(value, dict):
        return [Violation(path, f"is {_told(value)}; it must hold the fields of {message.name}",
                          "FIELD_REASON_UNKNOWN_VALUE")]
    out: list[Violation] = []
    for name, v in value.items():
        field = message.fields_by_name.get(name) or message.fields_by_camelcase_name.get(name)
        at = f"{path}.{name}" if path else str(name)
        if field is None:
            known = ", ".join(f.name for f in message.fields)
            out.append(Violation(at, f"is no field of {message.name}; known are {known}", "FIELD_REASON_UNKNOWN_VALUE"))
        elif field.label != field.LABEL_REPEATED:
            out += _value(v, field, at)
        elif isinstance(v, list):
            for i, one in enumerate(v):
                out += _value(one, field, f"{at}[{i}]")
        elif v is not None:
            out.append(Violation(at, f"is {_told(v)}; it must be a list", "FIELD_REASON_UNKNOWN_VALUE"))
    return out


def _value(v: Any, field: Any, at: str) -> list[Violation]:
    if field.message_type is not None:
        return faults(v, field.message_type, at)
    if v is None:
        return []
    wrong = ""
    if field.enum_type is not None:
        names = [n.name for n in field.enum_type.values if n.number != 0]
        if isinstance(v, bool) or not isinstance(v, int) and v not in field.enum_type.values_by_name:
            wrong = "one of " + ", ".join(names)
    elif field.type == field.TYPE_STRING:
        wrong = "" if isinstance(v, str) else "text"
    elif field.type == field.TYPE_BOOL:
        wrong = "" if isinstance(v, bool) else "true or false"
    elif field.type in (field.TYPE_DOUBLE, field.TYPE_FLOAT):
        wrong = "" if _number(v, whole=False) else "a number; units stand in the name of the field"
    else:
        wrong = "" if _number(v, whole=True) else "a whole number"
    return [Violation(at, f"is {_told(v)}; it must be {wrong}", "FIELD_REASON_UNKNOWN_VALUE")] if wrong else []


def _number(v: Any, whole: bool) -> bool:
    if isinstance(v, bool):
        return False
    if isinstance(v, str):  # the JSON form of protobuf takes numbers as text
        return v in ("NaN", "Infinity", "-Infinity") and not whole or bool((_WHOLE if whole else _DECIMAL).match(v))
    return isinstance(v, (int, float)) and (not whole or float(v).is_integer())


def _told(v: Any) -> str:
    text = repr(v)
    return text if len(text) <= 60 else text[:57] + "..."
