# SPDX-License-Identifier: BSL-1.0
"""A program of somebody else that uses the installed module: a day's readings of the Quillbeck teaching stillhouse.

usage: cellar_log.py <folder that the module must come from>
"""
import pathlib
import sys

import numpy as np

import aqueth

home = pathlib.Path(aqueth.__file__).resolve()
if pathlib.Path(sys.argv[1]).resolve() not in home.parents:
    sys.exit(f"aqueth comes from {home}, not from {sys.argv[1]}")

reading = np.array([0.612, 0.598, 0.571, 0.533])
celsius = np.array([18.5, 18.0, 17.5, 99.0])
strength = aqueth.strength_from_reading(reading, celsius, aqueth.StrengthScale.volume_fraction_at_20_celsius, 2.5e-5)
for number, refusal in aqueth.reasons(aqueth.strength_from_reading, reading, celsius, 2, 2.5e-5).refusals():
    print(f"reading {number[0] + 1}: {refusal.text}")
print(f"aqueth {aqueth.__version__}: {np.count_nonzero(~np.isnan(strength))} readings, mean {100 * np.nanmean(strength):.2f} % vol")
