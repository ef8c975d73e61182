"""An answer as Markdown, with its formulas typeset."""

from __future__ import annotations

import re
from typing import TYPE_CHECKING

from .answer import Answer, headline, verdict_words
from .formula import latex, symbol

if TYPE_CHECKING:
    from . import responses


def markdown(answer: Answer) -> str:
    """Limit states, calculation, notices and caution."""
    parts = [f"**{plain(headline(answer))}**"]
    if answer.limit_states:
        parts.append("\n".join(["| limit state | demand | resistance | utilization | verdict | clause |",
                                "|---|---:|---:|---:|---|---|", *map(_row, answer.limit_states)]))
    if answer.derivation:
        parts += ["Units are N, mm and MPa.", *map(step, answer.derivation)]
    if answer.notices:
        parts.append("\n".join(f"- *{n.severity.removeprefix('SEVERITY_').lower()}*: {plain(n.text or n.code)}"
                               for n in answer.notices))
    return "\n\n".join([*parts, f"*{plain(answer.caution)}*"]) + "\n"


def _row(s: responses.LimitState) -> str:
    utilization = "" if s.utilization is None else f"{s.utilization:.3f}"
    resistance = "" if s.resistance is None else f"{s.resistance:.6g} {s.unit}"
    verdict = verdict_words(s.verdict) + (f": {s.reason}" if s.reason else "")
    cells = [s.title, f"{s.demand:.6g} {s.unit}" if resistance else "", resistance, utilization, verdict, s.clause]
    return "| " + " | ".join(plain(c) for c in cells) + " |"


def step(s: responses.DerivationStep) -> str:
    """A line of the calculation: symbol, formula, numbers put in, value, and its clause."""
    lines = [latex(t) for t in (s.expression, s.numbers) if t] + [f"{number(s.value)}{unit(s.unit)}"]
    body = rf" \\ &= ".join(lines)
    return rf"$$\begin{{aligned}} {symbol(s.symbol)} &= {body} \end{{aligned}}$$" + f"\n\n[{plain(s.clause)}]"


def number(value: float) -> str:
    """A value with six digits."""
    mantissa, _, power = f"{value:.6g}".partition("e")
    return rf"{mantissa} \cdot 10^{{{int(power)}}}" if power else mantissa


def unit(text: str) -> str:
    """The LaTeX of a unit, such as mm2 or N/mm."""
    if not text:
        return ""
    return r"\ \mathrm{" + re.sub(r"(?<=[a-zA-Z])([0-9])", r"^{\1}", text) + "}"


def plain(text: str) -> str:
    """Text in which Markdown sees nothing to mark."""
    return re.sub(r"([\\`*_{}\[\]<>|$#])", r"\\\1", text).replace("\n", " ")
