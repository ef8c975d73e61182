"""Answers as tables of pandas."""

import unittest

import footward
from serving import BRACKET, Serving, bracket


class Tables(unittest.TestCase):
    def test_answers_are_tables(self):
        with Serving() as serving:
            service = footward.connect(serving.http)
            one = service.check(BRACKET)
            many = service.check_many([bracket(normal_kn=n) for n in (120, 900)] + [bracket(length_mm=0)])
        frame = one.to_frame()
        self.assertEqual(list(frame.index), [s.id for s in one.limit_states])
        self.assertAlmostEqual(frame.loc["weld_throat_minimum", "utilization"], one.utilization)
        self.assertIn("licensed engineer", frame.attrs["caution"])
        self.assertTrue(frame.attrs["notices"])
        table = footward.to_frame(many)
        self.assertEqual(list(table["verdict"]), ["VERDICT_PASS", "VERDICT_FAIL", "REFUSED"])
        self.assertGreater(table["utilization"][1], 1)
        self.assertTrue(table["utilization"].isna()[2])
        self.assertIn("weld.run.length_mm", table["reason"][2])
        self.assertIn("licensed engineer", table.attrs["caution"])


if __name__ == "__main__":
    unittest.main()
