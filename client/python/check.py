"""Asks a running server whether a weld holds, and prints how that is worked out."""

import sys

import footward

# Two runs of fillet weld, 150 mm long with a throat of 4 mm, hold a bracket on its
# plate against 120 kN that pulls it off. Units stand in the names.
part = lambda thickness: {"thickness_mm": thickness, "steel": {"grade": "EN 10025-2 S355"}}
request = {"weld": {
    "label": "bracket",
    "basis": {"eurocode": {}},
    "weld": {"kind": "WELD_KIND_FILLET", "throat_mm": 4, "parts": [part(20), part(12)]},
    "run": {"length_mm": 150, "count": 2, "normal_kn": 120},
}}

# http://127.0.0.1:8061 asks in JSON over HTTP, which needs nothing but Python.
with footward.connect(sys.argv[1] if len(sys.argv) > 1 else "127.0.0.1:50061") as service:
    answer = service.check(request, derivation=True)

print(f"{answer.label}: {answer.verdict}, utilization {answer.utilization:.3f} by {answer.governing}")
for step in answer.derivation:
    value = f"{step.value:.6g} {step.unit}".strip()
    # What is given has no expression.
    line = " = ".join(s for s in (step.symbol, step.expression, step.numbers, value) if s)
    print(f"{line}  [{step.clause}]")
print("N, mm and MPa; a blank between two factors multiplies.")
print(answer.caution)
