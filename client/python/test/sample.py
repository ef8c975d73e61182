"""Held to the types by mypy; it is not run."""

from typing import Optional

import footward
from footward import requests, responses

plate: requests.Plate = {"size_x_mm": 300, "size_y_mm": 300, "thickness_mm": 20, "steel": {"grade": "EN 10025-2 S355"}}
check: requests.CheckItem = {"plate_bending": {"label": "plate", "basis": {"eurocode": {}}, "plate": plate}}
misspelt: requests.WeldRun = {"lenght_mm": 150}  # type: ignore
unknown: requests.DesignBasis = {"basis": "EUROPE"}  # type: ignore


def sample() -> str:
    with footward.connect("http://127.0.0.1:8061", token=lambda: "token") as service:
        answer: footward.Answer = service.check(check, derivation=True)
        utilization: Optional[float] = answer.utilization
        first: responses.LimitState = answer.limit_states[0]
        answer.provenance.service_versions  # type: ignore
        combined: responses.CombineActionsResponse = service.combine("actions.yaml")
        for one in service.check_many([check]):
            if isinstance(one, footward.Refusal):
                return one.violations[0].field
        return f"{utilization} {first.title} {len(combined.combinations)}"
