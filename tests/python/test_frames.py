# SPDX-License-Identifier: BSL-1.0
"""Columns of pandas, arrays and dataframes of Dask."""
import unittest

import numpy as np

import aqueth
from aqueth import StrengthScale

ABV = StrengthScale.volume_fraction_at_20_celsius
try:
    import pandas as pd
except ImportError:
    pd = None
try:
    import dask.array as da
    import dask.dataframe as dd
except ImportError:
    da = None

READING = np.linspace(0.1, 1.1, 101)
CELSIUS = np.linspace(-30.0, 45.0, 101)


@unittest.skipIf(pd is None, "needs python3-pandas")
class Pandas(unittest.TestCase):
    def setUp(self):
        self.ledger = pd.DataFrame({"reading": READING, "celsius": CELSIUS}, index=[f"cask {k}" for k in range(101)])

    def test_columns(self):
        for found, expected in (
                (aqueth.density_kg_m3(self.ledger.reading, self.ledger.celsius), aqueth.density_kg_m3(READING, CELSIUS)),
                (aqueth.density_kg_m3(self.ledger.reading, 20.0), aqueth.density_kg_m3(READING, 20.0)),
                (aqueth.density_kg_m3(celsius=self.ledger.celsius, mass_fraction=READING), aqueth.density_kg_m3(READING, CELSIUS)),
                (aqueth.strength_from_reading(self.ledger.reading, self.ledger.celsius, ABV, 2.5e-5),
                 aqueth.strength_from_reading(READING, CELSIUS, ABV, 2.5e-5))):
            self.assertIsInstance(found, pd.Series)
            self.assertTrue(found.index.equals(self.ledger.index))
            np.testing.assert_array_equal(found.to_numpy(), expected)

    def test_several_results(self):
        points = aqueth.bubble_point_at_kpa(self.ledger.reading, 101.325)
        self.assertIs(type(points), aqueth.BubblePointAtKpaResult)
        self.assertEqual(points.celsius["cask 9"], aqueth.bubble_point_at_kpa(READING, 101.325).celsius[9])

    def test_other_order_of_labels(self):
        found = aqueth.density_kg_m3(self.ledger.reading, self.ledger.celsius[::-1])
        np.testing.assert_array_equal(found[self.ledger.index].to_numpy(), aqueth.density_kg_m3(READING, CELSIUS))

    def test_gaps(self):
        column = pd.Series([0.4, None], dtype="Float64")
        found = aqueth.density_kg_m3(column, 20.0)
        self.assertEqual(found[0], aqueth.density_kg_m3(0.4, 20.0))
        self.assertTrue(np.isnan(found[1]))

    def test_refusals(self):
        why = aqueth.reasons(aqueth.density_kg_m3, self.ledger.reading, self.ledger.celsius)
        self.assertEqual(int(why.refused.sum()), int(aqueth.density_kg_m3(READING, CELSIUS).__ne__(aqueth.density_kg_m3(READING, CELSIUS)).sum()))
        with self.assertRaisesRegex(TypeError, "columns"):
            aqueth.density_kg_m3(self.ledger, 20.0)
        with self.assertRaisesRegex(ValueError, "no such value"):
            aqueth.reasons(aqueth.convert_strength, [0.4], 99, 0)


@unittest.skipIf(da is None, "needs python3-distributed")
class Dask(unittest.TestCase):
    def test_array(self):
        found = aqueth.strength_from_reading(da.from_array(READING, chunks=17), da.from_array(CELSIUS, chunks=17), ABV, 2.5e-5)
        self.assertIsInstance(found, da.Array)
        np.testing.assert_array_equal(found.compute(), aqueth.strength_from_reading(READING, CELSIUS, ABV, 2.5e-5))

    def test_dataframe(self):
        ledger = dd.from_pandas(pd.DataFrame({"reading": READING, "celsius": CELSIUS}), npartitions=3)
        ledger["strength"] = aqueth.strength_from_reading(ledger.reading, ledger.celsius, ABV, 2.5e-5)
        self.assertIsInstance(ledger.strength, dd.Series)
        np.testing.assert_array_equal(ledger.compute().strength.to_numpy(),
                                      aqueth.strength_from_reading(READING, CELSIUS, ABV, 2.5e-5))
        points = aqueth.bubble_point_at_kpa(ledger.reading, 101.325)
        np.testing.assert_array_equal(points.celsius.compute().to_numpy(), aqueth.bubble_point_at_kpa(READING, 101.325).celsius)


if __name__ == "__main__":
    unittest.main()
