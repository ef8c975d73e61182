"""Answers as tables of pandas."""

from __future__ import annotations

import dataclasses
from typing import Any, Iterable, Union

from .answer import Answer, Refusal


def limit_states(answer: Answer) -> Any:
    """A row for every limit state; the caution stands in attrs."""
    pandas = _pandas()
    frame = pandas.DataFrame([dataclasses.asdict(s) for s in answer.limit_states]).set_index("id") \
        if answer.limit_states else pandas.DataFrame()
    frame.attrs["caution"] = answer.caution
    frame.attrs["notices"] = [n.text or n.code for n in answer.notices]
    return frame


def to_frame(answers: Iterable[Union[Answer, Refusal]]) -> Any:
    """A row for every answer, in order; a refused check has the verdict REFUSED and its
    faults as the reason. The caution stands in attrs."""
    pandas = _pandas()
    rows: list[dict] = []
    caution = ""
    for a in answers:
        if isinstance(a, Refusal):
            rows.append({"label": "", "kind": "", "verdict": "REFUSED", "governing": "", "utilization": None,
                         "reason": "; ".join(map(str, a.violations)), "notices": []})
            continue
        caution = a.caution
        rows.append({"label": a.label, "kind": a.kind, "verdict": a.verdict, "governing": a.governing,
                     "utilization": a.utilization, "reason": a.result.reason,
                     "notices": [n.code for n in a.notices]})
    frame = pandas.DataFrame(rows, columns=["label", "kind", "verdict", "governing", "utilization", "reason", "notices"])
    frame["utilization"] = frame["utilization"].astype(float)
    frame.attrs["caution"] = caution
    return frame


def _pandas() -> Any:
    try:
        import pandas
    except ImportError as e:
        raise ImportError("a table needs pandas (pip install 'footward[table]', or Debian's python3-pandas);"
                          " limit_states is the same as a list") from e
    return pandas
