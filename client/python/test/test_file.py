"""Requests from files."""

import tempfile
import unittest
from pathlib import Path

from footward.file import items, read_file


class Files(unittest.TestCase):
    def setUp(self):
        folder = tempfile.TemporaryDirectory()
        self.addCleanup(folder.cleanup)
        self.folder = Path(folder.name)

    def read(self, text, name="a.yaml"):
        path = self.folder / name
        path.write_bytes(text if isinstance(text, bytes) else text.encode())
        return read_file(path)

    def test_yaml_and_json_are_read_alike(self):
        want = [{"weld": {"label": "shoe", "run": {"length_mm": 120, "normal_kn": -15.0}}}]
        for text in ("# a comment\nweld:\n  label: shoe\n  run: {length_mm: 120, normal_kn: -1.5e1}\n",
                     "\ufeffweld: {label: shoe, run: {length_mm: 120, normal_kn: -15}}\r\n",
                     "---\nweld: {label: shoe, run: {length_mm: 120, normal_kn: -15.}}\n---\n"):
            self.assertEqual(self.read(text), want)
        self.assertEqual(self.read('{"weld": {"label": "shoe", "run": {"length_mm": 120, "normal_kn": -15}}}', "a.json"), want)

    def test_a_number_is_what_a_designer_reads(self):
        got = self.read("a: [10, 010, 1:30, 1_000, 1e3, .5, 0x10, 2026-12-01, no, NO, ~, -, 1e999, '3']\n")[0]["a"]
        self.assertEqual(got, [10, "010", "1:30", "1_000", 1000.0, 0.5, "0x10", "2026-12-01", "no", "NO", None, "-",
                               float("inf"), "3"])

    def test_lists_and_documents_are_items(self):
        docs = self.read("weld: {label: a}\n---\nitems:\n- weld: {label: b}\n- bearing: {label: c}\n")
        self.assertEqual([next(iter(i.values()))["label"] for i in items(docs)], ["a", "b", "c"])
        self.assertEqual(self.read("a: {<<: {b: 1}}\n"), [{"a": {"<<": {"b": 1}}}], "nothing is merged in")
        with self.assertRaisesRegex(ValueError, "nothing beside it"):
            items([{"items": [], "weld": {}}])

    def test_refuses_what_could_be_misread(self):
        for text, why in (("weld:\n  label: a\n  label: b\n", "'label' stands here for the second time"),
                          ("weld: &a {}\nbearing: *a\n", "anchors and aliases"), ("- 1\n", "holds no request"), ("# nothing\n", "holds no request"),
                          ("a: !!python/object:os.system {}\n", "python"), (b"\xff", "UTF-8"), ("a:\n\tb: 1\n", "line 2")):
            with self.assertRaisesRegex(ValueError, why):
                self.read(text)
        for text, why in (('{"a": 1, "a": 2}', "second time"), ('{"a": NaN}', "NaN is no number"), ("{", "a.json"),
                          ("[]", "holds no request")):
            with self.assertRaisesRegex(ValueError, why):
                self.read(text, "a.json")


if __name__ == "__main__":
    unittest.main()
