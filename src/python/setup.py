# SPDX-License-Identifier: BSL-1.0
"""The compiled part of the module; all else is in pyproject.toml. The sources of the C interface are compiled in."""
import os
import pathlib
import re

import numpy
from setuptools import Extension, setup

os.chdir(pathlib.Path(__file__).resolve().parent)
root = pathlib.Path("../..")
numbers = re.findall(r"#define AQUETH_VERSION_(?:MAJOR|MINOR|PATCH) (\d+)", (root / "include/aqueth/version.hpp").read_text())

setup(
    version=".".join(numbers),
    ext_modules=[
        Extension(
            "aqueth._core",
            ["module.cpp", "library.cpp"],
            include_dirs=[".", str(root / "include"), str(root / "src/c"), numpy.get_include()],
            extra_compile_args=["-std=c++20", "-O2", "-fvisibility=hidden"],
            language="c++",
        )
    ],
)
