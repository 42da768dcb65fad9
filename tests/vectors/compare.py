#!/usr/bin/env python3
# SPDX-License-Identifier: BSL-1.0
"""Runs write_vectors and compares what it writes with the vectors that are committed: the same questions, the same
outcomes, and numbers within the tolerance of each vector.

usage: compare.py <vectors.tsv> <write_vectors>
"""
import math
import subprocess
import sys


def numbers(cell):
    return [float(word) for word in cell.split(" ")]


def alike(found, expected, tolerance):
    if math.isnan(expected) or math.isinf(expected):
        return repr(found) == repr(expected)
    return abs(found - expected) <= tolerance * max(1.0, abs(expected))


def agrees(found, expected):
    """Arguments are the same but for the last digits that a compiler may print of them otherwise."""
    if found[0] != expected[0] or found[2] != expected[2]:
        return False
    ok = expected[2] == "ok"
    tolerance = float(expected[4]) if ok else 1e-9
    pairs = [(found[1], expected[1], 1e-12), (found[3], expected[3], tolerance)]
    if not ok:
        pairs.append((found[4], expected[4], 1e-9))
    for a, b, within in pairs:
        a, b = numbers(a), numbers(b)
        if len(a) != len(b) or not all(alike(x, y, within) for x, y in zip(a, b)):
            return False
    return True


def main():
    if len(sys.argv) != 3:
        sys.exit("usage: compare.py <vectors.tsv> <write_vectors>")
    with open(sys.argv[1]) as file:
        committed = file.read().splitlines()
    written = subprocess.run([sys.argv[2]], check=True, capture_output=True, text=True).stdout.splitlines()
    if len(written) != len(committed):
        sys.exit(f"{len(written)} lines are written and {len(committed)} committed: run write_vectors and commit")
    wrong = [number for number, (found, expected) in enumerate(zip(written, committed), 1)
             if number > 2 and not agrees(found.split("\t"), expected.split("\t"))]
    for number in wrong[:10]:
        print(f"line {number}:\n  committed {committed[number - 1]}\n  written   {written[number - 1]}")
    print(f"{len(committed) - 2} vectors compared, {len(wrong)} differ")
    sys.exit(1 if wrong else 0)


main()
