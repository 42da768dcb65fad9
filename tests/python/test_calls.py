# SPDX-License-Identifier: BSL-1.0
"""Calls with numbers: keywords, errors, classes, help, speed."""
import inspect
import math
import pickle
import timeit
import tracemalloc
import unittest

import numpy as np

import aqueth
from aqueth import Argument, Limit, Medium, Parcel, Refusal, Strength, StrengthScale

ABV = StrengthScale.volume_fraction_at_20_celsius


class Calls(unittest.TestCase):
    def test_a_published_density(self):
        # OIML R 22 (Council Directive 76/766/EEC): coefficient A1, the density of water at 20 °C
        self.assertAlmostEqual(aqueth.density_kg_m3(0.0, 20.0), 998.20123, delta=5e-6)

    def test_kinds_of_numbers(self):
        expected = aqueth.density_kg_m3(1.0, 20.0)
        for one in (1, True, np.float64(1), np.float32(1), np.int64(1), np.array(1.0)):
            found = aqueth.density_kg_m3(one, 20)
            self.assertIs(type(found), float)
            self.assertEqual(found, expected)

    def test_keywords(self):
        self.assertEqual(aqueth.density_kg_m3(celsius=20.0, mass_fraction=0.4), aqueth.density_kg_m3(0.4, 20.0))
        self.assertEqual(aqueth.convert_strength(0.4, from_=StrengthScale.mass_fraction, to=ABV),
                         aqueth.convert_strength(0.4, 0, 2))

    def test_bad_calls(self):
        for error, text, call in (
                (TypeError, "needs the argument 'celsius'", lambda: aqueth.density_kg_m3(0.4)),
                (TypeError, "takes 2 arguments, not 3", lambda: aqueth.density_kg_m3(0.4, 20.0, 1.0)),
                (TypeError, "two values for 'mass_fraction'", lambda: aqueth.density_kg_m3(0.4, mass_fraction=0.4)),
                (TypeError, "density", lambda: aqueth.density_kg_m3(0.4, 20.0, colour=1)),
                (TypeError, "density", lambda: aqueth.density_kg_m3("0.4", 20.0)),
                (TypeError, "density", lambda: aqueth.density_kg_m3(None, 20.0)),
                (OverflowError, "", lambda: aqueth.density_kg_m3(10**400, 20.0)),
                (ValueError, "StrengthScale has no value 99", lambda: aqueth.convert_strength(0.4, 99, 0)),
                (ValueError, "StrengthScale has no value -1", lambda: aqueth.convert_strength([0.4], -1, 0)),
                (ValueError, "StrengthScale has no value", lambda: aqueth.convert_strength(0.4, 10**30, 0)),
                (TypeError, "from_ must be one value of StrengthScale", lambda: aqueth.convert_strength(0.4, 0.0, 0)),
                (TypeError, "no function of aqueth", lambda: aqueth.reasons(math.sin, 1.0))):
            with self.subTest(text=text), self.assertRaisesRegex(error, text):
                call()

    def test_refusal(self):
        with self.assertRaises(Refusal) as caught:
            aqueth.density_kg_m3(0.4, 95.0)
        refusal = caught.exception
        self.assertIsInstance(refusal, ValueError)
        self.assertEqual((refusal.function, refusal.argument, refusal.limit), ("density_kg_m3", Argument.temperature, Limit.liquid_below_boiling_point))
        self.assertEqual((refusal.value, refusal.lower, refusal.upper), (95.0, -20.0, 82.844628))
        self.assertEqual(str(refusal), "density_kg_m3: temperature 95 is outside -20 to 82.84463 (liquid, up to its boiling point at 101.325 kPa)")
        again = pickle.loads(pickle.dumps(refusal))
        self.assertEqual((str(again), again.upper), (str(refusal), 82.844628))
        for bad in (math.nan, math.inf, -math.inf):
            with self.assertRaises(Refusal):
                aqueth.density_kg_m3(bad, 20.0)

    def test_several_results(self):
        point = aqueth.bubble_point_at_kpa(0.1, 101.325)
        self.assertIs(type(point), aqueth.BubblePointAtKpaResult)
        self.assertEqual(point[3], point.vapour_mole_fraction)
        self.assertEqual(pickle.loads(pickle.dumps(point)), point)
        self.assertEqual(aqueth.fill_bottles(10.0, 0.4, 20.0, 0.7, 20.0).count, 15.0)

    def test_pickles(self):
        for function in (aqueth.mix, aqueth.ufuncs.mix, aqueth.density_kg_m3):
            self.assertIs(pickle.loads(pickle.dumps(function)), function)

    def test_help(self):
        for name in aqueth._core._ufuncs:
            function = getattr(aqueth, name)
            parameters = list(inspect.signature(function).parameters)
            self.assertEqual(parameters[-1], "keywords")
            for parameter in parameters[:-1]:
                self.assertRegex(function.__doc__, rf"(?m)^{parameter} ")
        self.assertIn("-20 to 100 °C", aqueth.density_kg_m3.__doc__)
        self.assertIn("density_kg_m3", aqueth.__all__)

    def test_strength(self):
        proof = Strength(80.0, StrengthScale.us_proof)
        self.assertAlmostEqual(proof.on(StrengthScale.volume_fraction_at_60_fahrenheit), 0.4, places=12)
        self.assertAlmostEqual(Strength(0.4).mass_fraction, aqueth.convert_strength(0.4, ABV, StrengthScale.mass_fraction))
        for bad in (1.2, math.nan):
            with self.assertRaises(Refusal):
                Strength(bad)

    def test_parcel(self):
        spirit = Parcel.by_volume(2.0, Strength(0.84), 20.0)
        self.assertAlmostEqual(spirit.volume_litres(), 2.0, places=12)
        self.assertAlmostEqual(spirit.pure_alcohol_litres(), 1.68, places=12)
        self.assertAlmostEqual(spirit.strength().value, 0.84, places=12)
        water, product = spirit.diluted_to(Strength(0.40))
        self.assertAlmostEqual(product.strength().value, 0.40, places=9)
        self.assertAlmostEqual(water.mass_kg + spirit.mass_kg, product.mass_kg, places=12)
        self.assertGreater(water.volume_litres() + 2.0, product.volume_litres())
        mixed = spirit.mixed_with(water)
        self.assertAlmostEqual(mixed.mass_fraction, product.mass_fraction, places=12)
        self.assertGreater(mixed.celsius, 20.0)
        with self.assertRaises(Refusal):
            Parcel(-1.0, 0.4, 20.0)
        with self.assertRaises(Refusal):
            spirit.diluted_to(Strength(0.9))

    def test_medium(self):
        in_air = aqueth.specific_gravity_of(0.4, 20.0, 20.0, Medium.air)
        self.assertLess(in_air, aqueth.specific_gravity_of(0.4, 20.0, 20.0, Medium.vacuum))

    def test_no_leaks(self):
        def all_ways():
            array = np.array([0.1, 0.4, 2.0])
            aqueth.bubble_point_at_kpa(0.1, 101.325)
            aqueth.bubble_point_at_kpa(array, kpa=101.325)
            aqueth.density_kg_m3(array, celsius=20.0, out=np.empty(3))
            aqueth.density_kg_m3(np.float32(0.4), celsius=20.0)
            list(aqueth.reasons(aqueth.density_kg_m3, array, 20.0).refusals())
            for bad in ((0.4,), (0.4, 99.0), (0.4, "a"), (0.4, 1.0, 2.0), ([0.4], object())):
                try:
                    aqueth.density_kg_m3(*bad)
                except (TypeError, ValueError):
                    pass
            for bad in ((0.4, 99, 0), (0.4, "a", 0), (0.4, 10**30, 0)):
                try:
                    aqueth.convert_strength(*bad)
                except (TypeError, ValueError):
                    pass

        tracemalloc.start()
        for _ in range(2500):  # until Python's own store of free tuples is full
            all_ways()
        before = tracemalloc.get_traced_memory()[0]
        for _ in range(1000):
            all_ways()
        grown = tracemalloc.get_traced_memory()[0] - before
        tracemalloc.stop()
        self.assertLess(grown, 10_000)

    def test_speed(self):
        # the limit of the module's design; the least of many short runs is little disturbed by other programs
        loop = range(1000)
        ns = min(timeit.repeat("for _ in loop: call(0.4, 20.0)", number=1, repeat=300,
                               globals={"call": aqueth.density_kg_m3, "loop": loop})) / len(loop) * 1e9
        print(f"density_kg_m3, a call with numbers: {ns:.0f} ns")
        self.assertLess(ns, 250.0)


if __name__ == "__main__":
    unittest.main()
