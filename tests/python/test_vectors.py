# SPDX-License-Identifier: BSL-1.0
"""Every question of tests/vectors/vectors.tsv: as numbers, and for each function as arrays."""
import collections
import math
import os
import pathlib
import unittest

import numpy as np

import aqueth

VECTORS = pathlib.Path(os.environ.get("AQUETH_VECTORS", pathlib.Path(__file__).parent.parent / "vectors" / "vectors.tsv"))
ENUMERATED = {"convert_strength": (1, 2), "specific_gravity_of": (3,), "mass_fraction_from_specific_gravity": (3,),
              "strength_from_reading": (2,), "reading_of_strength": (2,), "coexistence": (2,), "sugar_needed": (2,),
              "sweet_density_kg_m3": (2,), "sweet_composition_from_strength": (2,), "strength_behind_sugar": (3,),
              "sugar_behind_density_g_per_litre": (2,), "strength_doubt_from_sugar": (2,), "sweeten": (5,), "refractive_index": (2,)}


def read():
    for line in VECTORS.read_text().splitlines():
        if line.startswith("#") or line.startswith("function\t"):
            continue
        name, arguments, outcome, results, tail = line.split("\t")
        given = [float(a) for a in arguments.split(" ")]
        for k in ENUMERATED.get(name, ()):
            given[k] = int(given[k])
        yield name, given, outcome, [float(r) for r in results.split(" ")], [float(t) for t in tail.split(" ")]


def alike(found, expected, tolerance):
    if math.isnan(expected):
        return math.isnan(found)
    if abs(expected) > 1e300:
        return found == expected
    return abs(found - expected) <= tolerance * max(1.0, abs(expected))


class Vectors(unittest.TestCase):
    def test_numbers(self):
        asked = refused = 0
        for name, given, outcome, results, tail in read():
            asked += 1
            with self.subTest(name=name, given=given):
                try:
                    found = getattr(aqueth, name)(*given)
                except aqueth.Refusal as refusal:
                    refused += 1
                    self.assertEqual(outcome, "refused")
                    self.assertEqual((refusal.function, refusal.argument, refusal.limit), (name, results[0], results[1]))
                    self.assertTrue(alike(refusal.lower, tail[0], 1e-9) and alike(refusal.upper, tail[1], 1e-9))
                    continue
                self.assertEqual(outcome, "ok")
                found = found if isinstance(found, tuple) else (found,)
                self.assertEqual(len(found), len(results))
                for got, expected in zip(found, results):
                    self.assertTrue(alike(got, expected, tail[0]), f"{got!r}, not {expected!r}")
        print(f"{asked} questions, {refused} of them refused")
        self.assertGreater(asked, 1500)
        self.assertGreater(refused, 300)

    def test_every_function_has_vectors(self):
        self.assertEqual({row[0] for row in read()}, set(aqueth._core._ufuncs))

    def test_arrays(self):
        rows = collections.defaultdict(list)
        for name, given, outcome, results, tail in read():
            codes = tuple(given[k] for k in ENUMERATED.get(name, ()))
            rows[name, codes].append((given, outcome, results, tail))
        for (name, _), cases in rows.items():
            function = getattr(aqueth, name)
            given = [np.array(column) for column in zip(*(case[0] for case in cases))]
            for k in ENUMERATED.get(name, ()):
                given[k] = cases[0][0][k]
            found = function(*given)
            found = np.array(found if isinstance(found, tuple) else (found,))
            why = aqueth.reasons(function, *given)
            for k, (arguments, outcome, results, tail) in enumerate(cases):
                with self.subTest(name=name, given=arguments):
                    self.assertEqual(bool(why.refused[k]), outcome == "refused")
                    if outcome == "refused":
                        self.assertTrue(np.isnan(found[:, k]).all())
                        self.assertEqual((why.argument[k], why.limit[k]), (results[0], results[1]))
                        self.assertTrue(alike(why.lower[k], tail[0], 1e-9) and alike(why.upper[k], tail[1], 1e-9))
                    else:
                        self.assertTrue(all(alike(f, r, tail[0]) for f, r in zip(found[:, k], results)))


if __name__ == "__main__":
    unittest.main()
