"""What is answered, the same over HTTP and gRPC."""

import dataclasses
import os
import sys
import unittest

import footward
from footward import responses
from footward.decode import decode
from footward.file import items, read_file
from serving import BRACKET, DATA, Serving


class Answers(unittest.TestCase):
    @classmethod
    def setUpClass(cls):
        cls.serving = Serving()
        cls.addClassCleanup(cls.serving.stop)
        cls.http = footward.connect(cls.serving.http)
        cls.grpc = footward.connect(cls.serving.grpc)
        cls.addClassCleanup(cls.grpc.close)

    def test_package_is_the_installed_one(self):
        self.assertTrue(footward.__file__.startswith(sys.prefix), footward.__file__)

    def test_every_check_is_answered_alike_both_ways(self):
        files = sorted([*DATA.glob("demo/*.yaml"), *(DATA / "demo-more").glob("*.yaml")])
        kinds = set()
        for f in files:
            for one in items(read_file(f)):
                if len(one) != 1 or next(iter(one)) not in footward.service.KINDS:
                    continue  # a request of another method
                for derivation in (False, True):
                    over_http = self.http.check(one, derivation=derivation)
                    self.assertEqual(over_http.raw, self.grpc.check(one, derivation=derivation).raw, f)
                    self.assertEqual(bool(over_http.derivation), derivation)
                kinds.add(over_http.kind)
        self.assertGreaterEqual(len(kinds), 6, kinds)

    def test_other_methods_are_answered_alike_both_ways(self):
        path = DATA / "demo-more" / "actions.yaml"
        combined = self.http.combine(path)
        self.assertGreater(len(combined.combinations), 3)
        self.assertEqual(combined, self.grpc.combine(os.fspath(path)))
        for ask in ("size", "compare"):
            refused = []
            for service in (self.http, self.grpc):
                with self.assertRaises(footward.RefusedError) as caught:
                    getattr(service, ask)({})
                refused.append(caught.exception.violations)
            self.assertEqual(refused[0], refused[1])
        steels = self.http.catalog("steels")
        self.assertIn("EN 10025-2 S355", [s.grade for s in steels.steels])
        self.assertEqual(steels, self.grpc.catalog("steels"))
        with self.assertRaisesRegex(ValueError, "known are .*rod_steels"):
            self.http.catalog("woods")

    def test_integers_of_64_bits_are_numbers(self):
        self.assertEqual(decode("SizeColumnBaseResponse", {"choices": "12"}).choices, 12)  # text in JSON

    def test_answer_is_a_plain_object(self):
        a = self.http.check(BRACKET, derivation=True)
        self.assertIsInstance(a.result, responses.CheckResult)
        self.assertEqual((a.kind, a.label, a.verdict, a.governing), ("weld", "bracket", "VERDICT_PASS", "weld_throat_minimum"))
        self.assertTrue(a.passes)
        self.assertAlmostEqual(a.utilization, 0.75)
        self.assertIs(a.limit_state("weld_throat_minimum"), a.limit_states[0])
        self.assertEqual(a.derivation[-1].unit, a.raw["result"]["derivation"][-1]["unit"])
        with self.assertRaisesRegex(KeyError, "has no limit state luck; it has weld_throat_minimum"):
            a.limit_state("luck")

    def test_what_has_no_value_is_none(self):
        a = self.grpc.check(BRACKET)
        none = [s for s in a.limit_states if s.verdict == "VERDICT_NOT_APPLICABLE" and s.utilization is None]
        self.assertTrue(none)
        self.assertIsNone(none[0].resistance)
        self.assertTrue(none[0].reason)

    def test_caution_and_notices_are_shown_with_every_answer(self):
        a = self.http.check(BRACKET)
        self.assertIn("licensed engineer", a.caution)
        self.assertTrue(a.notices)
        for shown in (str(a), a._repr_markdown_()):
            self.assertIn("licensed engineer", shown)
            self.assertIn(a.notices[0].text.split(" ")[0], shown)
            self.assertIn("PASS", shown)
        self.assertNotIn("PASS", str(self.http.check({"weld": {**BRACKET["weld"], "run": {
            "length_mm": 150, "count": 2, "normal_kn": 900}}})).splitlines()[0])

    def test_calculation_is_typeset(self):
        text = self.http.check(BRACKET, derivation=True).to_markdown()
        self.assertIn(r"F_{\mathrm{w,Ed}}", text)
        self.assertIn(r"\frac{", text)
        self.assertIn("EN 1993-1-8", text)

    def test_dictionary_of_the_caller_stays_as_it_is(self):
        before = repr(BRACKET)
        self.http.check(BRACKET, derivation=True)
        self.http.check_many([BRACKET], derivation=True)
        self.assertEqual(before, repr(BRACKET))

    def test_numbers_of_numpy_are_taken(self):
        import numpy

        run = {"length_mm": numpy.int64(150), "count": numpy.int32(2), "normal_kn": numpy.float32(120)}
        for service in (self.http, self.grpc):
            a = service.check({"weld": {**BRACKET["weld"], "run": run}})
            self.assertEqual(a.raw, service.check(BRACKET).raw)


if __name__ == "__main__":
    unittest.main()
