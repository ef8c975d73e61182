"""What is refused, and how that is told."""

import math
import unittest

import footward
from serving import BRACKET, Serving, bracket


class Refusals(unittest.TestCase):
    @classmethod
    def setUpClass(cls):
        cls.serving = Serving()
        cls.addClassCleanup(cls.serving.stop)
        cls.ways = [footward.connect(cls.serving.http), footward.connect(cls.serving.grpc)]
        for w in cls.ways:
            cls.addClassCleanup(w.close)

    def test_every_refused_field_is_named_by_its_path(self):
        for service in self.ways:
            with self.assertRaises(footward.RefusedError) as caught:
                service.check(bracket(length_mm=-3, count=500))
            e = caught.exception
            self.assertEqual((e.code, e.reason), ("INVALID_ARGUMENT", "FIELDS_REFUSED"))
            self.assertEqual({v.field for v in e.violations}, {"weld.run.length_mm", "weld.run.count"})
            self.assertEqual({v.reason for v in e.violations}, {"FIELD_REASON_OUT_OF_RANGE"})
            self.assertIn("weld.run.length_mm: ", str(e))
            self.assertIn("mm", str(e))

    def test_misspelt_field_is_refused(self):
        for service in self.ways:
            with self.assertRaisesRegex(footward.RefusedError, "lenght_mm"):
                service.check(bracket(lenght_mm=3))

    def test_over_grpc_all_that_is_no_part_of_the_contract_is_named_at_once(self):
        wrong = {"weld": {"labl": 1, "basis": {"eurocode": {}}, "weld": {"kind": "FILET"}, "run": {"length_mm": "20 mm", "count": 1.5, "end_loaded": "no"},
                          "group": {"segments": {}}, "detail": True}}
        with self.assertRaises(footward.RefusedError) as caught:
            self.ways[1].check(wrong)
        told = {v.field: v.description for v in caught.exception.violations}
        self.assertEqual(set(told), {"weld.labl", "weld.weld.kind", "weld.run.length_mm", "weld.run.count",
                                     "weld.run.end_loaded", "weld.group.segments", "weld.detail"})
        self.assertIn("known are label, basis", told["weld.labl"])
        self.assertIn("WELD_KIND_FILLET", told["weld.weld.kind"])
        self.assertIn("units stand in the name", told["weld.run.length_mm"])

    def test_fields_that_exclude_each_other_are_refused(self):
        for service in self.ways:
            with self.assertRaises(footward.RefusedError):
                service.check({"weld": {**BRACKET["weld"], "group": {}}})

    def test_bad_check_fails_alone_in_its_place(self):
        many = [bracket(normal_kn=10 + i) for i in range(230)]
        many[7], many[103], many[205] = bracket(length_mm=0), bracket(lenght_mm=1), {"wedl": {}}
        for service in self.ways:
            got = service.check_many(many)
            self.assertEqual(len(got), len(many))
            refused = {i: g for i, g in enumerate(got) if isinstance(g, footward.Refusal)}
            self.assertEqual(set(refused), {7, 103, 205})
            self.assertEqual(refused[7].violations[0].field, "weld.run.length_mm")
            self.assertIn("lenght_mm", str(refused[103]))
            self.assertIn("wedl", str(refused[205]))
            for i in (0, 104, 229):
                self.assertEqual(got[i].result, service.check(many[i]).result)
        self.assertEqual(self.ways[0].check_many([]), [])

    def test_misuse_is_told_in_words(self):
        for service in self.ways:
            with self.assertRaisesRegex(ValueError, "one of anchor_rods.*this one has weld, bearing"):
                service.check({"weld": {}, "bearing": {}})
            with self.assertRaisesRegex(ValueError, "this one has items"):
                service.check({"items": []})
            with self.assertRaisesRegex(ValueError, "CheckLuck is no method; known are .*CheckWeld"):
                service.call("CheckLuck", {})
            for value in (math.nan, math.inf):
                with self.assertRaisesRegex(ValueError, "infinite or none at all"):
                    service.check(bracket(normal_kn=value))
            with self.assertRaisesRegex(TypeError, "is a set"):
                service.check(bracket(normal_kn={1}))

    def test_something_else_than_the_service_is_told(self):
        metrics = footward.connect(self.serving.http + "/elsewhere", wait=False)
        with self.assertRaisesRegex(footward.CallError, "GET / lists"):
            metrics.check(BRACKET)


if __name__ == "__main__":
    unittest.main()
