#!/usr/bin/env python3
# SPDX-License-Identifier: BSL-1.0
"""Measures the Python module: time of a scalar call and of an element, beside numpy's own polynomial.

usage: PYTHONPATH=build/bindings/python bench/python_module.py [--row]

With --row it prints a row of a table: language, version, size, ns a call of density_kg_m3, ns an element of it.
"""
import pathlib
import sys
import timeit

import numpy as np

import aqueth

ABV = aqueth.StrengthScale.volume_fraction_at_20_celsius
GLASS = 2.5e-5
COUNT = 1_000_000


def scalar_ns(call, *arguments):
    """nanoseconds of a call without those of the loop around it"""
    loop = range(100_000)
    names = {"call": call, "loop": loop} | {f"a{k}": a for k, a in enumerate(arguments)}
    given = ", ".join(f"a{k}" for k in range(len(arguments)))
    times = [min(timeit.repeat(f"for _ in loop: {body}", number=1, repeat=20, globals=names))
             for body in (f"call({given})", "pass")]
    return (times[0] - times[1]) / len(loop) * 1e9


def element_ns(call):
    return min(timeit.repeat(call, number=1, repeat=10)) / COUNT * 1e9


def main():
    random = np.random.default_rng(16)
    w = random.uniform(0.02, 0.98, COUNT)
    reading = random.uniform(0.2, 0.9, COUNT)
    celsius = random.uniform(5.0, 35.0, COUNT)
    out = np.empty(COUNT)
    # OIML R 22 is a polynomial of 12 powers of w and 6 of t: numpy's own evaluation of one of that size
    coefficients = random.uniform(-1.0, 1.0, (12, 6))
    size = pathlib.Path(aqueth._core.__file__).stat().st_size
    if sys.argv[1:] == ["--row"]:
        scalar = scalar_ns(aqueth.density_kg_m3, 0.4, 20.0)
        element = element_ns(lambda: aqueth.density_kg_m3(w, celsius, out=out))
        print(f"| Python {sys.version_info[0]}.{sys.version_info[1]} | {aqueth.__version__} | {size // 1000} kB | {scalar:.0f} | {element:.1f} |")
        return
    print(f"aqueth {aqueth.__version__}, numpy {np.__version__}, {size // 1000} kB")
    for name, arguments in (("density_kg_m3", (0.4, 20.0)), ("strength_from_reading", (0.45, 25.0, int(ABV), GLASS)),
                            ("bubble_point_at_kpa", (0.2, 101.325))):
        print(f"{name}, a call with numbers: {scalar_ns(getattr(aqueth, name), *arguments):.0f} ns")
    for name, call in (
            ("density_kg_m3", lambda: aqueth.density_kg_m3(w, celsius, out=out)),
            ("mass_fraction_from_density", lambda: aqueth.mass_fraction_from_density(density, celsius, out=out)),
            ("strength_from_reading", lambda: aqueth.strength_from_reading(reading, celsius, ABV, GLASS, out=out)),
            ("numpy.polynomial.polynomial.polyval2d", lambda: np.polynomial.polynomial.polyval2d(w, celsius, coefficients))):
        density = aqueth.density_kg_m3(w, celsius)
        print(f"{name}, an element: {element_ns(call):.1f} ns")


if __name__ == "__main__":
    main()
