"""Run where nothing but Python is installed: over HTTP the package needs no more."""

import json
import sys
import tempfile
import unittest
from pathlib import Path

import footward
from serving import BRACKET, DATA, Serving


class Plain(unittest.TestCase):
    def test_nothing_else_is_needed_over_http(self):
        with Serving() as serving, tempfile.TemporaryDirectory() as folder:
            service = footward.connect(serving.http)
            self.assertTrue(service.check(BRACKET, derivation=True).passes)
            file = Path(folder, "bracket.json")
            file.write_text(json.dumps(BRACKET))
            answer = service.check(file)
            self.assertIn("licensed engineer", str(answer))
            self.assertTrue(service.catalog("threads").threads)
            with self.assertRaisesRegex(ImportError, "python3-pandas"):
                answer.to_frame()
        self.assertEqual([m for m in ("grpc", "google.protobuf", "yaml", "pandas") if m in sys.modules], [])
        self.assertTrue(footward.__file__.startswith(sys.prefix), footward.__file__)

    def test_what_is_missing_is_named(self):
        with self.assertRaisesRegex(ImportError, "python3-grpcio"):
            footward.connect("127.0.0.1:50061")
        with self.assertRaisesRegex(ImportError, "python3-yaml"):
            footward.read_file(DATA / "demo" / "3-weld.yaml")


if __name__ == "__main__":
    unittest.main()
