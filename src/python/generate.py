#!/usr/bin/env python3
# SPDX-License-Identifier: BSL-1.0
"""Makes the Python module's table of functions, codes and type stubs from src/c/functions.tsv and codes.tsv.

usage: generate.py [--check]

Writes functions.inc, enumerations.inc, aqueth/codes.py and the stubs beside this file; with --check it writes nothing and
fails where a file differs from what it would write.
"""
import importlib.util
import keyword
import pathlib
import sys

here = pathlib.Path(__file__).resolve().parent
spec = importlib.util.spec_from_file_location("c_interface", here.parent / "c" / "generate.py")
c = importlib.util.module_from_spec(spec)
sys.modules[spec.name] = c
sys.dont_write_bytecode = True
spec.loader.exec_module(c)

MADE = "Made by src/python/generate.py from src/c/functions.tsv and codes.tsv. Not to be edited."


def class_name(name):
    return "".join(word.capitalize() for word in name.split("_"))


def result_class(f):
    return class_name(f.name) + "Result"


def docstring(f):
    """what help() shows: the signature in the form that CPython reads, what the function gives, arguments, results"""
    names = ", ".join(a.name for a in f.arguments)
    width = max(len(a.name) for a in f.arguments)
    lines = [f"{f.name}({names}, **keywords)", "--", "", f.brief + ".", ""]
    for a in f.arguments:
        lines.append(f"{a.name.ljust(width)}  {class_name(a.enumeration) if a.enumeration else c.range_of(a)}")
    result = f.results[0][0] if len(f.results) == 1 else f"{result_class(f)}({', '.join(n for n, _ in f.results)})"
    lines += ["", f"Returns {result}. Numbers give numbers, or raise Refusal; arrays give arrays, with NaN for",
              "refused elements. Arrays take the keywords of a numpy ufunc, such as out and where."]
    return "\n".join(lines) + "\n"


def literal(text):
    lines = [line.replace("\\", "\\\\").replace('"', '\\"') for line in text.split("\n")]
    return "\n     ".join(f'"{line}\\n"' for line in lines[:-1])


def table(functions):
    out = ["// SPDX-License-Identifier: BSL-1.0", "// " + MADE, "// clang-format off"]
    for f in functions:
        arguments = ", ".join('{"%s", %s}' % (a.name, f"&{a.enumeration}" if a.enumeration else "nullptr") for a in f.arguments)
        results = ", ".join(f'{{"{name}", nullptr}}' for name, _ in f.results) + ", {nullptr, nullptr}"
        scalar = [f"e[{i}]" if a.enumeration else f"a[{i}]" for i, a in enumerate(f.arguments)]
        scalar += [f"&r[{i}]" for i in range(len(f.results))] + ["why"]
        array = ["n"]
        for i, a in enumerate(f.arguments):
            array += [f"e[{i}]"] if a.enumeration else [f"in[{i}].data, in[{i}].stride"]
        array += [f"out[{i}].data, out[{i}].stride" for i in range(len(f.results))] + ["nullptr"]
        out.append(f'{{"{f.name}",\n     {literal(docstring(f))},\n     "aqueth.{result_class(f)}", "Results of {f.name}.",\n'
                   f"     {len(f.arguments)}, {len(f.results)}, {{{arguments}}}, {{{results}}},\n"
                   f"     [](double const* a, int const* e, double* r, aqueth_refusal* why) {{ (void)e; return aqueth_{f.name}({', '.join(scalar)}); }},\n"
                   f"     [](std::size_t n, column const* in, int const* e, column const* out) {{ (void)e; return aqueth_{f.name}_array({', '.join(array)}); }}}},")
    return "\n".join(out) + "\n"


def enumerations(codes):
    out = ["// SPDX-License-Identifier: BSL-1.0", "// " + MADE]
    for name in c.QUESTIONS:
        out.append(f'constexpr enumeration {name}{{"{class_name(name)}", {len(codes[name])}}};')
    return "\n".join(out) + "\n"


def codes_module(codes):
    out = ["# SPDX-License-Identifier: BSL-1.0", f'"""The enumerations of aqueth. {MADE}"""', "import enum"]
    for name, (_, brief) in (c.QUESTIONS | c.ANSWERS).items():
        out += ["", "", f"class {class_name(name)}(enum.IntEnum):", f'    """{brief}"""', ""]
        out += [f"    {value} = {number}" for number, value in codes[name]]
    return "\n".join(out) + "\n"


def core_stub(functions):
    out = ["# SPDX-License-Identifier: BSL-1.0", "# " + MADE,
           "from typing import Any, Generic, NamedTuple, TypeVar, Union, overload", "",
           "import numpy as np", "from numpy.typing import ArrayLike, NDArray", "",
           "from .codes import " + ", ".join(sorted(class_name(n) for n in c.QUESTIONS)), "",
           "__version__: str", "_reasons: dict[str, np.ufunc]", "_results: dict[str, Any]", "_ufuncs: dict[str, np.ufunc]",
           '_Number = TypeVar("_Number")', "_Array = NDArray[np.float64]", "_Out = Union[_Array, tuple[_Array, ...], None]", "",
           "def _refusal_text(argument: int, limit: int, value: float, lower: float, upper: float, /) -> str: ..."]
    for f in functions:
        if len(f.results) > 1:
            out += ["", f"class {result_class(f)}(NamedTuple, Generic[_Number]):"]
            out += [f"    {name}: _Number" + ("  # type: ignore[assignment]" if name in ("count", "index") else "")
                    for name, _ in f.results]
        of = (lambda t: t) if len(f.results) == 1 else lambda t: f"{result_class(f)}[{t}]"
        for number, array in (("float", False), ("ArrayLike", True)):
            parameters = [f"{a.name}: {class_name(a.enumeration) if a.enumeration else number}" for a in f.arguments]
            if array:
                parameters += ["*", "out: _Out = ...", "where: ArrayLike = ...", "dtype: Any = ...", "casting: str = ...", "order: str = ..."]
            # a number is ArrayLike too; the first that fits counts
            out += ["", "@overload" if array else "@overload  # type: ignore[misc]",
                    f"def {f.name}({', '.join(parameters)}) -> {of('_Array' if array else 'float')}:", f'    """{f.brief}."""']
    return "\n".join(out) + "\n"


def package_stub(functions):
    out = ["# SPDX-License-Identifier: BSL-1.0", "# " + MADE]
    core = [f.name for f in functions] + [result_class(f) for f in functions if len(f.results) > 1] + ["__version__"]
    for module, names in (("._core", core), (".codes", [class_name(n) for n in (c.QUESTIONS | c.ANSWERS)]),
                          (".parcel", ["Parcel", "Strength"]), (".refusal", ["Reasons", "Refusal", "reasons"]), (".", ["ufuncs"])):
        out += [f"from {module} import {name} as {name}" for name in sorted(names)]
    return "\n".join(out) + "\n"


def main():
    check = sys.argv[1:] == ["--check"]
    if sys.argv[1:] and not check:
        sys.exit("usage: generate.py [--check]")
    functions = list(c.read_functions())
    for f in functions:
        for a in f.arguments:
            if keyword.iskeyword(a.name):  # "from" becomes from_, as PEP 8 has it
                a.name += "_"
    codes, _ = c.read_codes()
    files = {"functions.inc": table(functions), "enumerations.inc": enumerations(codes),
             "aqueth/codes.py": codes_module(codes), "aqueth/_core.pyi": core_stub(functions), "aqueth/__init__.pyi": package_stub(functions)}
    stale = [name for name, text in files.items() if not (here / name).exists() or (here / name).read_text() != text]
    if check and stale:
        sys.exit(f"run src/python/generate.py and commit: {', '.join(stale)} not as made from functions.tsv")
    if not check:
        for name in stale:
            (here / name).write_text(files[name])


if __name__ == "__main__":
    main()
