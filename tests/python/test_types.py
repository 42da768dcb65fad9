# SPDX-License-Identifier: BSL-1.0
"""The stubs: mypy accepts the module and a program that uses it, and finds the mistakes of another."""
import pathlib
import re
import subprocess
import sys
import tempfile
import unittest

import aqueth

GOOD = """
import numpy as np
import aqueth
from typing_extensions import assert_type
from numpy.typing import NDArray

assert_type(aqueth.density_kg_m3(0.4, 20), float)
assert_type(aqueth.density_kg_m3(np.zeros(3), 20.0), NDArray[np.float64])
assert_type(aqueth.density_kg_m3(np.zeros(3), 20.0, out=np.zeros(3)), NDArray[np.float64])
assert_type(aqueth.mix(1.0, 0.4, 20.0, 1.0, 0.5, 20.0).product_kg, float)
assert_type(aqueth.bubble_point_at_kpa([0.1, 0.2], 101.325).celsius, NDArray[np.float64])
assert_type(aqueth.convert_strength(0.4, aqueth.StrengthScale.us_proof, to=aqueth.StrengthScale.mass_fraction), float)
assert_type(aqueth.Strength(0.4).mass_fraction, float)
assert_type(aqueth.reasons(aqueth.mix, 1, 2, 3, 4, 5, 6).refused, NDArray[np.bool_])
try:
    pass
except aqueth.Refusal as refusal:
    assert_type(refusal.argument, aqueth.Argument)
"""
BAD = {
    "aqueth.density_kg_m3(0.4)": "call-overload",
    "aqueth.density_kg_m3(0.4, colour=20.0)": "call-overload",
    "aqueth.convert_strength(0.4, 'us_proof', 'mass')": "call-overload",
    "aqueth.density_kg_m4(0.4, 20.0)": "attr-defined",
    "aqueth.mix(1.0, 0.4, 20.0, 1.0, 0.5, 20.0).mass": "attr-defined",
}


def mypy(*arguments):
    return subprocess.run([sys.executable, "-m", "mypy", "--strict", "--cache-dir", tempfile.gettempdir() + "/aqueth-mypy", *arguments],
                          capture_output=True, text=True)


class Types(unittest.TestCase):
    def setUp(self):
        if mypy("--version").returncode != 0:
            self.skipTest("needs mypy")

    def check(self, text):
        with tempfile.TemporaryDirectory() as folder:
            program = pathlib.Path(folder) / "program.py"
            program.write_text(text)
            return mypy(str(program))

    def test_module(self):
        package = pathlib.Path(aqueth.__file__).parent
        found = mypy(*(str(package / name) for name in ("__init__.pyi", "_core.pyi", "parcel.py", "refusal.py", "codes.py")))
        self.assertEqual(found.returncode, 0, found.stdout + found.stderr)

    def test_good_program(self):
        found = self.check(GOOD)
        self.assertEqual(found.returncode, 0, found.stdout + found.stderr)

    def test_mistakes(self):
        found = self.check("import aqueth\n" + "\n".join(BAD) + "\n")
        for line, code in enumerate(BAD.values(), 2):
            self.assertRegex(found.stdout, rf"program.py:{line}: error: .*\[{code}\]")

    def test_stubs_name_all(self):
        stubs = (pathlib.Path(aqueth.__file__).parent / "__init__.pyi").read_text()
        declared = set(re.findall(r"^from \S+ import (\w+) as \1$", stubs, re.M))
        self.assertEqual(declared, set(aqueth.__all__))


if __name__ == "__main__":
    unittest.main()
