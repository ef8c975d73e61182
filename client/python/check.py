"""Asks a running server whether a weld holds, and prints how that is worked out."""

import sys

import contract  # makes footward.v1
import grpc
from footward.v1 import check_pb2, check_pb2_grpc, common_pb2
from google.protobuf.json_format import ParseDict

# Two runs of fillet weld, 150 mm long with a throat of 4 mm, hold a bracket on its
# plate against 120 kN that pulls it off. Units stand in the names.
part = lambda thickness: {"thickness_mm": thickness, "steel": {"grade": "EN 10025-2 S355"}}
request = ParseDict({
    "label": "bracket",
    "basis": {"basis": "BASIS_EUROCODE"},
    "detail": "DETAIL_DERIVATION",
    "weld": {"kind": "WELD_KIND_FILLET", "throat_mm": 4, "parts": [part(20), part(12)]},
    "run": {"length_mm": 150, "count": 2, "normal_kn": 120},
}, check_pb2.CheckWeldRequest())

address = sys.argv[1] if len(sys.argv) > 1 else "127.0.0.1:50061"
with grpc.insecure_channel(address) as channel:
    answer = check_pb2_grpc.CheckServiceStub(channel).CheckWeld(request, timeout=30)

result = answer.result
verdict = common_pb2.Verdict.Name(result.verdict)
print(f"{result.label}: {verdict}, utilization {result.governing_utilization:.3f} by {result.governing_id}")
for step in result.derivation:
    value = f"{step.value:.6g} {step.unit}".strip()
    # What is given has no expression.
    line = " = ".join(s for s in (step.symbol, step.expression, step.numbers, value) if s)
    print(f"{line}  [{step.clause}]")
print("N, mm and MPa; a blank between two factors multiplies.")
print(answer.provenance.caution)
