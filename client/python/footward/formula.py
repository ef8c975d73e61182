"""Turns the formulas of a derivation into LaTeX.

They are written in plain characters: a blank between two factors multiplies, products
and quotients go from left to right, ^ binds closest, and a name goes on through
letters, digits, underscores and primes, and through a comma that a letter or digit
follows at once: F_t,Rd.
"""

from __future__ import annotations

import math
import re
from typing import Any, Callable, Optional

_TOKEN = re.compile(r" *(?:(?P<number>[0-9]+(?:\.[0-9]+)?(?:e[-+]?[0-9]+)?)"
                    r"|(?P<name>[A-Za-z_](?:[A-Za-z0-9_']|[,.](?=[A-Za-z0-9]))*)|(?P<sign>[-+*/^(),]))")

_FUNCTIONS: dict[str, Callable[..., float]] = {"abs": abs, "sqrt": math.sqrt, "sin": math.sin, "cos": math.cos,
                                             "tan": math.tan, "acos": math.acos, "exp": math.exp, "ln": math.log,
                                             "min": min, "max": max}

_GREEK = set("alpha beta gamma delta epsilon zeta eta theta iota kappa lambda mu nu xi pi rho sigma tau phi chi psi"
             " omega Gamma Delta Theta Lambda Xi Pi Sigma Phi Psi Omega".split())


class Unreadable(ValueError):
    """A text that is no formula, such as words."""


def latex(text: str) -> str:
    """The LaTeX of a formula; of what is none, its words."""
    try:
        return _write(parse(text))
    except Unreadable:
        return words(text)


def words(text: str) -> str:
    """Words in LaTeX."""
    return r"\text{" + _escaped(text) + "}"


def _escaped(text: str) -> str:
    """Text without what LaTeX would take for a command."""
    return re.sub(r"([\\{}$&#^_%~])", lambda m: {"\\": "/", "^": r"\^{}", "~": "-"}.get(m[1], "\\" + m[1]), text)


def symbol(name: str) -> str:
    """The LaTeX of a symbol, such as f_jd or gamma_M0."""
    head, *below = (_escaped(part) for part in name.split("_"))
    primes = len(head) - len(head.rstrip("'"))
    head = head.rstrip("'")
    if head in _GREEK:
        top = "\\" + head
    elif len(head) <= 1:
        top = head or r"{}"
    elif head[0].isalpha() and head[1:].isdigit():
        top = head[0] + "^{" + head[1:] + "}"
    else:
        top = r"\mathrm{" + head + "}"
    top += "'" * primes
    if not below:
        return top
    parts: list[str] = []
    for p in (p for b in below for p in b.split(",") if p):
        if p in _GREEK:
            parts.append("\\" + p)
        elif parts and parts[-1].endswith("}"):
            parts[-1] = parts[-1][:-1] + f",{p}}}"
        else:
            parts.append(r"\mathrm{" + p + "}")
    return top + "_{" + ",".join(parts) + "}"


# A tree is a tuple: ("number", text), ("name", text), ("call", name, values), ("-", value),
# or an operator of two values.
def parse(text: str) -> tuple:
    """The tree of a formula."""
    tokens, at = [], 0
    text = text.rstrip()
    while at < len(text):
        m = _TOKEN.match(text, at)
        if not m:
            raise Unreadable(text)
        kind = m.lastgroup or ""
        tokens.append((kind, m[kind]))
        at = m.end()
    p = _Parser(tokens)
    tree = p.sum()
    if p.at != len(tokens):
        raise Unreadable(text)
    return tree


class _Parser:
    def __init__(self, tokens: list):
        self.tokens, self.at = tokens, 0

    def sign(self, signs: str) -> Optional[str]:
        if self.at < len(self.tokens) and self.tokens[self.at][0] == "sign" and self.tokens[self.at][1] in signs:
            self.at += 1
            return self.tokens[self.at - 1][1]
        return None

    def sum(self) -> tuple:
        tree = self.product()
        while s := self.sign("+-"):
            tree = (s, tree, self.product())
        return tree

    def product(self) -> tuple:
        tree = self.power()
        while self.at < len(self.tokens):
            kind, text = self.tokens[self.at]
            if kind != "sign" or text == "(":
                tree = ("*", tree, self.power())
            elif s := self.sign("*/"):
                tree = (s, tree, self.power())
            else:
                break
        return tree

    def power(self) -> tuple:
        tree = self.factor()
        return ("^", tree, self.power()) if self.sign("^") else tree

    def factor(self) -> tuple:
        if self.sign("-"):
            return ("-", self.power())
        if self.sign("("):
            return self.closed(self.sum())
        if self.at == len(self.tokens) or self.tokens[self.at][0] == "sign":
            raise Unreadable("a value is missing")
        kind, text = self.tokens[self.at]
        self.at += 1
        if kind == "name" and text in _FUNCTIONS and self.sign("("):
            values = [self.sum()]
            while self.sign(","):
                values.append(self.sum())
            return self.closed(("call", text, values))
        return (kind, text)

    def closed(self, tree: tuple) -> tuple:
        if not self.sign(")"):
            raise Unreadable(") is missing")
        return tree


def evaluate(tree: tuple) -> float:
    """The value of a formula whose names have been replaced by numbers."""
    kind, *rest = tree
    if kind == "number":
        return float(rest[0])
    if tree == ("name", "pi"):
        return math.pi
    if kind == "call":
        return float(_FUNCTIONS[rest[0]](*map(evaluate, rest[1])))
    if kind == "name":
        raise Unreadable(f"{rest[0]} has no value")
    values = [evaluate(t) for t in rest]
    if len(values) == 1:
        return -values[0]
    a, b = values
    return {"+": lambda: a + b, "-": lambda: a - b, "*": lambda: a * b, "/": lambda: a / b, "^": lambda: a**b}[kind]()


def _write(tree: tuple) -> str:
    kind, *rest = tree
    if kind == "number":
        mantissa, _, power = rest[0].partition("e")
        return rf"{mantissa} \cdot 10^{{{int(power)}}}" if power else mantissa
    if kind == "name":
        return symbol(rest[0])
    if kind == "call":
        return _call(rest[0], [_write(t) for t in rest[1]])
    if len(rest) == 1:
        return "-" + _within(rest[0], "+-")
    a, b = rest
    if kind == "/":
        return rf"\frac{{{_write(a)}}}{{{_write(b)}}}"
    if kind == "^":
        base = _write(a) if a[0] in ("name", "number") and "'" not in a[1] and "^" not in _write(a) \
            else rf"\left({_write(a)}\right)"
        return f"{base}^{{{_write(b)}}}"
    if kind == "*":
        left, right = _within(a, "+-"), _within(b, "+-")
        return left + (r" \cdot " if re.match(r"[-0-9]|\\frac\{[-0-9]", right) else r" \, ") + right
    return f"{_write(a)} {kind} " + (_within(b, "+-") if kind == "-" or _negative(b) else _write(b))


def _negative(tree: Any) -> bool:
    return tree[0] == "-" and len(tree) == 2


def _within(tree: Any, kinds: str) -> str:
    """A part, in parentheses where it would else be read otherwise."""
    return rf"\left({_write(tree)}\right)" if tree[0] in kinds else _write(tree)


def _call(name: str, values: list[str]) -> str:
    inner = ",\\; ".join(values)
    if name == "sqrt":
        return rf"\sqrt{{{inner}}}"
    if name == "abs":
        return rf"\left|{inner}\right|"
    if name == "exp":
        return rf"\mathrm{{e}}^{{{inner}}}"
    return rf"\{'arccos' if name == 'acos' else name}\left({inner}\right)"
