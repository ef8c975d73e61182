"""Formulas as LaTeX."""

import unittest

import footward
from footward.formula import evaluate, latex, parse, symbol
from serving import DATA, Serving


class Formulas(unittest.TestCase):
    def test_formulas_are_read_as_the_service_means_them(self):
        """The same reading that sets a formula gives the value of its step."""
        steps = 0
        with Serving() as serving:
            service = footward.connect(serving.http)
            for f in sorted(DATA.glob("demo/*.yaml")):
                for s in service.check(f, derivation=True).derivation:
                    if s.expression:
                        parse(s.expression)
                    if s.numbers:
                        steps += 1
                        self.assertAlmostEqual(evaluate(parse(s.numbers)), s.value, delta=1e-3 * abs(s.value) + 1e-9, msg=s)
        self.assertGreater(steps, 300)

    def test_latex(self):
        for text, want in {
            "t sqrt(f_y / (3 f_B gamma_M0))":
                r"t \, \sqrt{\frac{f_{\mathrm{y}}}{3 \, f_{\mathrm{B}} \, \gamma_{\mathrm{M0}}}}",
            "pi / 4 d^2": r"\frac{\pi}{4} \, d^{2}",
            "a - (b + c)": r"a - \left(b + c\right)",
            "a - b + c": "a - b + c",
            "(a + b) c / d / e": r"\frac{\frac{\left(a + b\right) \, c}{d}}{e}",
            "-(a)^2": r"-a^{2}",
            "max(0, -N) (-2)": r"\max\left(0,\; -N\right) \, \left(-2\right)",
            "2 0.6 l_b": r"2 \cdot 0.6 \, l_{\mathrm{b}}",
            "2 * 3": r"2 \cdot 3",
            "1.5e-07 x": r"1.5 \cdot 10^{-7} \, x",
            "abs(M_x,G) + exp(0 - l)": r"\left|M_{\mathrm{x,G}}\right| + \mathrm{e}^{0 - l}",
            "B' / L'": r"\frac{B'}{L'}",
            "n_r^0.9": r"n_{\mathrm{r}}^{0.9}",
            "given: 50 % & more": r"\text{given: 50 \% \& more}",
        }.items():
            self.assertEqual(latex(text), want, text)

    def test_symbols(self):
        for name, want in {"f_u_1": r"f_{\mathrm{u,1}}", "gamma_phi": r"\gamma_{\phi}", "M0_Rk,s": r"M^{0}_{\mathrm{Rk,s}}",
                           "T_rod#1": r"T_{\mathrm{rod\#1}}", "gap": r"\mathrm{gap}", "Delta_s": r"\Delta_{\mathrm{s}}", "q'": "q'"}.items():
            self.assertEqual(symbol(name), want)


if __name__ == "__main__":
    unittest.main()
