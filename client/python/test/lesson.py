"""Runs the lesson against the service's binary, and holds its figures to what the
command is answered for the same requests.

    lesson.py FOOTWARD      the path of the command
"""

import json
import os
import subprocess
import sys
import tempfile
from pathlib import Path

import nbclient
import nbformat
from serving import Serving

LESSON = Path(__file__).resolve().parents[1] / "lab.ipynb"

# Tells the figures of the lesson; it is no part of it.
TELL = """
import json
print(json.dumps({"items": [plate(t) for t in thicknesses], "utilizations": utilizations}))
"""


def run(url: str) -> tuple[nbformat.NotebookNode, dict]:
    """The lesson with its outputs, and its figures."""
    lesson = nbformat.read(LESSON, as_version=4)
    for cell in lesson.cells:
        if cell.cell_type == "code":
            assert not cell.outputs and cell.execution_count is None, "the lesson is kept without outputs"
    lesson.cells.append(nbformat.v4.new_code_cell(TELL))
    os.environ["SERVICE_URL"] = url
    os.environ["PYDEVD_DISABLE_FILE_VALIDATION"] = "1"  # nobody debugs it
    with tempfile.TemporaryDirectory() as folder:
        nbclient.NotebookClient(lesson, timeout=300, resources={"metadata": {"path": folder}}).execute()
    return lesson, json.loads(lesson.cells.pop().outputs[0].text)


def command(footward: str, items: list, *flags: str) -> list[float]:
    """The utilizations that the command answers."""
    with tempfile.TemporaryDirectory() as folder:
        file = Path(folder, "lesson.json")
        file.write_text(json.dumps({"items": items}))
        told = subprocess.run([footward, "check", "--json", *flags, str(file)], stdout=subprocess.PIPE, text=True)
    assert told.returncode in (0, 1), told.returncode  # 1: one of them fails, as a thin plate does
    return [o["result"]["governing_utilization"] for o in json.loads(told.stdout)["outcomes"]]


def shown(lesson: nbformat.NotebookNode, kind: str) -> list[str]:
    return [o.data[kind] for c in lesson.cells if c.cell_type == "code" for o in c.outputs if kind in o.get("data", {})]


def main(footward: str) -> None:
    with Serving() as serving:
        lesson, figures = run(serving.http)
        for flags in (("--server", serving.grpc), ()):
            assert command(footward, figures["items"], *flags) == figures["utilizations"], "the lesson shows other figures"
    curve = figures["utilizations"]
    assert curve[0] > 1 > curve[-1] and curve == sorted(curve, reverse=True), curve
    assert len(shown(lesson, "image/png")) == 1, "one plot"
    typeset = shown(lesson, "text/markdown")
    assert any(r"\sqrt{\frac{f_{\mathrm{y}}}" in t for t in typeset), "the calculation is typeset"
    assert all("licensed engineer" in t for t in typeset), "the caution stands with every answer"
    print(f"lesson: {len(curve)} figures as the command answers")


if __name__ == "__main__":
    main(sys.argv[1])
