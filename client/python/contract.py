"""Makes the Python code of the contract, in a folder that goes with the program.

Import it before footward.v1. It needs protoc with its plugin for gRPC, and Go,
which knows where the schema lies in which the contract states its rules on values.
"""

import json
import subprocess
import sys
import tempfile
from pathlib import Path

top = Path(__file__).resolve().parents[2]
folder = tempfile.TemporaryDirectory()

module = subprocess.check_output(
    ["go", "mod", "download", "-json", "github.com/bufbuild/protovalidate"],
    cwd=top / ".ci/tools",
)
rules = Path(json.loads(module)["Dir"]) / "proto/protovalidate"

subprocess.check_call(
    ["protoc", f"-I{top}/proto", f"-I{rules}"]
    + [f"--python_out={folder.name}", f"--grpc_python_out={folder.name}"]
    + ["--plugin=protoc-gen-grpc_python=/usr/bin/grpc_python_plugin"]
    + [str(rules / "buf/validate/validate.proto")]
    + [str(p) for p in (top / "proto").rglob("*.proto")]
)
sys.path.insert(0, folder.name)
