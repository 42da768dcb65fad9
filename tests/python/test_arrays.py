# SPDX-License-Identifier: BSL-1.0
"""Calls with arrays: no copies, broadcasting, out, where, odd layouts, refused elements."""
import concurrent.futures
import tracemalloc
import unittest
import warnings

import numpy as np

import aqueth
from aqueth import Argument, Limit, StrengthScale

ABV = StrengthScale.volume_fraction_at_20_celsius


def one_by_one(function, *arguments):
    """the same by calls with numbers, NaN where they are refused"""
    def ask(*numbers):
        try:
            return function(*(float(n) if isinstance(n, np.floating) else n for n in numbers))
        except aqueth.Refusal:
            return np.nan
    return np.vectorize(ask, otypes=[float])(*arguments)


class Arrays(unittest.TestCase):
    def setUp(self):
        random = np.random.default_rng(1)
        self.w = random.uniform(-0.1, 1.1, 5000)
        self.t = random.uniform(-25.0, 45.0, 5000)

    def alike(self, found, expected):
        np.testing.assert_allclose(found, expected, rtol=1e-12, atol=1e-12, equal_nan=True)

    def test_as_numbers(self):
        self.alike(aqueth.density_kg_m3(self.w, self.t), one_by_one(aqueth.density_kg_m3, self.w, self.t))
        for scale in (ABV, StrengthScale.us_proof, StrengthScale.volume_fraction_at_15_celsius):
            found = aqueth.strength_from_reading(self.w, self.t, scale, 2.5e-5)
            self.alike(found, one_by_one(lambda w, t: aqueth.strength_from_reading(w, t, scale, 2.5e-5), self.w, self.t))
        glass = np.where(np.arange(5000) % 2 == 0, 2.5e-5, 1e-5)
        self.alike(aqueth.strength_from_reading(self.w, self.t, ABV, glass),
                   one_by_one(lambda w, t, g: aqueth.strength_from_reading(w, t, ABV, g), self.w, self.t, glass))

    def test_no_copies(self):
        w, t = np.full(1_000_000, 0.4), np.full(1_000_000, 20.0)
        out = np.empty_like(w)
        tracemalloc.start()
        result = aqueth.density_kg_m3(w, t, out=out)
        peak = tracemalloc.get_traced_memory()[1]
        tracemalloc.stop()
        self.assertIs(result, out)
        self.assertLess(peak, w.nbytes // 20)

    def test_out_may_be_an_argument(self):
        expected = aqueth.density_kg_m3(self.w, self.t)
        w = self.w.copy()
        aqueth.density_kg_m3(w, self.t, out=w)
        self.alike(w, expected)

    def test_broadcasting(self):
        found = aqueth.density_kg_m3(self.w[:30, None], self.t[None, :40])
        self.assertEqual(found.shape, (30, 40))
        self.alike(found, one_by_one(aqueth.density_kg_m3, self.w[:30, None], self.t[None, :40]))
        self.alike(aqueth.density_kg_m3(self.w, 20), one_by_one(aqueth.density_kg_m3, self.w, 20))
        with self.assertRaises(ValueError):
            aqueth.density_kg_m3(self.w[:3], self.t[:4])

    def test_layouts(self):
        expected = one_by_one(aqueth.density_kg_m3, self.w, self.t)
        records = np.zeros(5000, dtype=[("flag", "i1"), ("w", "f8"), ("t", "f8")])  # neither aligned nor dense
        records["w"], records["t"] = self.w, self.t
        self.alike(aqueth.density_kg_m3(records["w"], records["t"]), expected)
        records["t"] = np.nan
        aqueth.density_kg_m3(self.w, self.t, out=records["t"])
        self.alike(records["t"], expected)
        self.alike(aqueth.density_kg_m3(self.w[::-3], self.t[::-3]), expected[::-3])
        fortran = np.asfortranarray(self.w.reshape(50, 100))
        self.alike(aqueth.density_kg_m3(fortran, self.t.reshape(50, 100)), expected.reshape(50, 100))
        swapped = self.w.astype(">f8")
        self.alike(aqueth.density_kg_m3(swapped, self.t), expected)
        self.assertEqual(aqueth.density_kg_m3(np.empty((0, 3)), 20.0).shape, (0, 3))
        self.assertEqual(aqueth.density_kg_m3([0.1, 0.4], 20.0)[1], aqueth.density_kg_m3(0.4, 20.0))
        narrow = aqueth.density_kg_m3(np.float32([0.25, 0.5]), 20.0)
        self.assertEqual(narrow.dtype, np.float64)
        self.alike(narrow, one_by_one(aqueth.density_kg_m3, np.array([0.25, 0.5]), 20.0))

    def test_where(self):
        out = np.zeros(5000)
        mask = self.w > 0.5
        aqueth.density_kg_m3(self.w, self.t, out=out, where=mask)
        self.assertTrue((out[~mask] == 0.0).all())
        self.alike(out[mask], aqueth.density_kg_m3(self.w, self.t)[mask])

    def test_several_results(self):
        points = aqueth.bubble_point_at_kpa(np.linspace(0.0, 1.0, 11), 101.325)
        self.assertIs(type(points), aqueth.BubblePointAtKpaResult)
        self.assertEqual(points.celsius.shape, (11,))
        out = tuple(np.empty(11) for _ in range(5))
        again = aqueth.bubble_point_at_kpa(np.linspace(0.0, 1.0, 11), 101.325, out=out)
        self.assertIs(again.celsius, out[0])
        self.alike(np.array(out), np.array(points))

    def test_refused_elements(self):
        with warnings.catch_warnings():
            warnings.simplefilter("error")
            found = aqueth.density_kg_m3([0.4, 0.4, 1.5, np.nan], [20.0, 95.0, 20.0, 20.0])
        why = aqueth.reasons(aqueth.density_kg_m3, [0.4, 0.4, 1.5, np.nan], [20.0, 95.0, 20.0, 20.0])
        self.assertEqual(why.refused.tolist(), [False, True, True, True])
        self.assertEqual(np.isnan(found).tolist(), why.refused.tolist())
        self.assertEqual(why.argument.tolist(), [0, Argument.temperature, Argument.mass_fraction, Argument.mass_fraction])
        self.assertEqual(why.limit[1], Limit.liquid_below_boiling_point)
        self.assertEqual((why.value[1], why.lower[1], why.upper[1]), (95.0, -20.0, 82.844628))
        listed = dict(why.refusals())
        self.assertEqual(list(listed), [(1,), (2,), (3,)])
        with self.assertRaises(aqueth.Refusal) as caught:
            aqueth.density_kg_m3(0.4, 95.0)
        self.assertEqual(str(listed[1,]), str(caught.exception))

    def test_answers_that_are_nan_are_no_refusals(self):
        # no vapour at 20 °C and 101.325 kPa: its mole fraction is not a number
        flash = aqueth.isothermal_flash(np.array([0.3]), 20.0, 101.325)
        self.assertTrue(np.isnan(flash.vapour_mole_fraction[0]))
        self.assertFalse(aqueth.reasons(aqueth.isothermal_flash, np.array([0.3]), 20.0, 101.325).refused[0])

    def test_threads(self):
        expected = aqueth.density_kg_m3(self.w, self.t)
        with concurrent.futures.ThreadPoolExecutor(4) as pool:
            for found in pool.map(lambda _: aqueth.density_kg_m3(self.w, self.t), range(32)):
                np.testing.assert_array_equal(found, expected)


if __name__ == "__main__":
    unittest.main()
