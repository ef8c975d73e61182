"""The answer of one check, or why there is none."""

from __future__ import annotations

from dataclasses import dataclass, field
from typing import TYPE_CHECKING, Any, Optional

from .error import Violation

if TYPE_CHECKING:
    from . import responses


@dataclass(frozen=True)
class Answer:
    """What a check answered. Printed, it shows notices and caution beside the numbers;
    in a notebook it is a table."""

    # What was checked, such as weld.
    kind: str
    # The answer, with every field of the contract.
    result: responses.CheckResult
    # What produced it: versions, editions, caution.
    provenance: responses.Provenance
    # The whole response; of a column base with its table. Of check_many one outcome.
    response: Any = field(repr=False)
    # The same as the dictionary that came.
    raw: dict = field(repr=False)

    @property
    def label(self) -> str:
        """The caller's own name for the check, else its kind."""
        return self.result.label or self.kind.replace("_", " ")

    @property
    def verdict(self) -> str:
        """VERDICT_PASS, VERDICT_FAIL, VERDICT_OUT_OF_SCOPE or VERDICT_NOT_APPLICABLE."""
        return self.result.verdict

    @property
    def passes(self) -> bool:
        """Whether every limit state holds. OUT_OF_SCOPE and NOT_APPLICABLE do not pass."""
        return self.result.verdict == "VERDICT_PASS"

    @property
    def utilization(self) -> Optional[float]:
        """Demand over resistance where it is greatest; None without a resistance."""
        return self.result.governing_utilization

    @property
    def governing(self) -> str:
        """Id of the limit state that governs; may be empty."""
        return self.result.governing_limit_state_id

    @property
    def limit_states(self) -> list[responses.LimitState]:
        return self.result.limit_states

    @property
    def notices(self) -> list[responses.Notice]:
        """Assumptions, cautions and limits of the method. Read them."""
        return self.result.notices

    @property
    def derivation(self) -> list[responses.DerivationStep]:
        """The calculation step by step, where it was asked for."""
        return self.result.derivation

    @property
    def caution(self) -> str:
        """What every answer is and is not."""
        return self.provenance.caution

    def limit_state(self, id: str) -> responses.LimitState:
        """The limit state of an id, such as plate_compression."""
        for s in self.limit_states:
            if s.id == id:
                return s
        raise KeyError(f"{self.label} has no limit state {id}; it has {', '.join(s.id for s in self.limit_states)}")

    def to_frame(self) -> Any:
        """The limit states as a table of pandas."""
        from .table import limit_states

        return limit_states(self)

    def to_markdown(self) -> str:
        """Limit states, calculation, notices and caution as Markdown with formulas."""
        from .page import markdown

        return markdown(self)

    def _repr_markdown_(self) -> str:
        return self.to_markdown()

    def __str__(self) -> str:
        return "\n".join([headline(self), *(f"  {state_line(s)}" for s in self.limit_states),
                          *(f"  {n.severity.removeprefix('SEVERITY_').lower()}: {n.text or n.code}"
                            for n in self.notices), self.caution])


@dataclass(frozen=True)
class Refusal:
    """In check_many, why one check could not be made."""

    violations: list[Violation]

    def __str__(self) -> str:
        return "refused\n" + "\n".join(f"  {v}" for v in self.violations)


def verdict_words(verdict: str) -> str:
    return verdict.removeprefix("VERDICT_").replace("_", " ")


def headline(answer: Answer) -> str:
    """Verdict and what governs, in a line."""
    text = f"{answer.label}: {verdict_words(answer.verdict)}"
    if answer.governing:
        text += f", governed by {answer.governing}"
    if answer.utilization is not None:
        text += f", utilization {answer.utilization:.3f}"
    if answer.result.reason:
        text += f" ({answer.result.reason})"
    return text


def state_line(s: responses.LimitState) -> str:
    """A limit state in a line."""
    text = f"{s.id}: {verdict_words(s.verdict)}"
    if s.utilization is not None:
        text += f", utilization {s.utilization:.3f}"
    if s.resistance is not None:
        text += f" ({s.demand:.6g} of {s.resistance:.6g} {s.unit}".rstrip() + ")"
    if s.reason:
        text += f": {s.reason}"
    return f"{text} [{s.clause}]"
