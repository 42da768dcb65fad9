#!/usr/bin/env python3
# SPDX-License-Identifier: BSL-1.0
"""Makes the sources of the npm package from src/c/functions.tsv and src/c/codes.tsv.

usage: generate.py source <directory>                writes functions.cpp, which is compiled to WebAssembly
       generate.py package <directory> <wasm file>   writes the package: aqueth.js, aqueth.d.ts, package.json, and texts
"""
import base64
import importlib.util
import json
import pathlib
import re
import sys

here = pathlib.Path(__file__).resolve().parent
root = here.parent.parent
spec = importlib.util.spec_from_file_location("interface_for_c", root / "src/c/generate.py")
c = importlib.util.module_from_spec(spec)
spec.loader.exec_module(c)

SAFE = {"yield": "yield_"}  # a word of JavaScript
BASES = {"argument": "plain/argument.hpp", "limit": "plain/limit.hpp"}


def version():
    text = (root / "include/aqueth/version.hpp").read_text()
    return ".".join(re.search(r"AQUETH_VERSION_%s (\d+)" % part, text).group(1) for part in ("MAJOR", "MINOR", "PATCH"))


def words(enumeration):
    """{code: words} as name_of has them"""
    text = (root / "include/aqueth" / BASES[enumeration]).read_text()
    return dict(re.findall(r'case %s::(\w+):\s*return "([^"]*)";' % enumeration, text))


def source(functions, codes):
    out = ["// SPDX-License-Identifier: BSL-1.0", "// Made by src/wasm/generate.py. Not to be edited.",
           '#include "interface.hpp"', "", "using namespace aqueth;", "", "namespace aqueth::wasm {",
           "constinit shared_place shared{};", ""]
    for enumeration in c.QUESTIONS:
        out += [f"{enumeration} {enumeration}_of(int code) noexcept {{", "    switch (code) {"]
        out += [f"    case {number}: return {enumeration}::{name};" for number, name in codes[enumeration]]
        out += ["    default: return {};", "    }", "}"]
    for enumeration in c.ANSWERS:
        out += [f"int code_of(aqueth::{enumeration} code) noexcept {{", "    switch (code) {"]
        out += [f"    case aqueth::{enumeration}::{name}: return {number};" for number, name in codes[enumeration]]
        out += ["    default: return 0;", "    }", "}"]
    out += ["}  // namespace aqueth::wasm", "",
            '#define EXPORTED(name) extern "C" __attribute__((noinline, export_name(#name)))',
            "EXPORTED(place) wasm::shared_place* aqueth_wasm_place() { return &wasm::shared; }"]
    for f in functions:
        call = f.call.replace("c::", "wasm::")
        numbers = [a for a in f.arguments if not a.enumeration]
        enumerated = [a for a in f.arguments if a.enumeration]
        values = ", ".join("double(value" + ("." + member if member else "") + ")" for _, member in f.results)
        as_numbers = f"[](auto const& value) {{ return std::array{{{values}}}; }}"
        out.append(f"EXPORTED({f.name}) double aqueth_wasm_{f.name}({', '.join(f'{a.c_type} {a.name}' for a in f.arguments)}) {{\n"
                   f"    return wasm::one({call}, {as_numbers});\n}}")
        columns = " ".join(f"double const {a.name} = wasm::shared.columns[{k}][row];" for k, a in enumerate(numbers))
        parameters = ", ".join(["int count"] + [f"int {a.name}" for a in enumerated])
        out.append(f"EXPORTED({f.name}_array) void aqueth_wasm_{f.name}_array({parameters}) {{\n"
                   f"    wasm::many<{len(f.results)}>(count, {len(numbers)}, [=](std::size_t row) {{\n"
                   f"        {columns}\n        return aqueth_wasm_{f.name}({', '.join(a.name for a in f.arguments)});\n    }});\n}}")
    return "\n".join(out) + "\n"


def script(functions, codes, wasm):
    def pairs(enumeration):
        text = words(enumeration)
        return json.dumps([[name, text.get(name, "argument" if name == "other" else "")] for _, name in sorted(codes[enumeration])],
                          ensure_ascii=False)

    enumerations = [f"const {e}_codes = new Map({json.dumps([[name, number] for number, name in codes[e]])});" for e in c.QUESTIONS]
    out = []
    for f in functions:
        names = [a.name for a in f.arguments]
        numbers = [a.name for a in f.arguments if not a.enumeration]
        enumerated = [a for a in f.arguments if a.enumeration]
        code = {a.name: f'code_of("{f.name}", "{a.name}", {a.enumeration}_codes, {a.name})' for a in enumerated}
        test = " || ".join(f'typeof {name} !== "number"' for name in numbers)
        given = ", ".join(code.get(name, name) for name in names)
        lines = [f"export function {f.name}({', '.join(names)}) {{",
                 f"    if ({test}) no_number(\"{f.name}\", {json.dumps(numbers)}, [{', '.join(numbers)}]);",
                 f"    const result = wasm.{f.name}({given});",
                 f'    if (result !== result) refuse("{f.name}");']
        if len(f.results) == 1:
            lines.append("    return result;")
        else:
            lines.append(f"    return {{ {', '.join(f'{name}: ' + (f'results[{k}]' if k else 'result') for k, (name, _) in enumerate(f.results))} }};")
        lines.append("}")
        lines += [f"export function {f.name}_array({', '.join(names)}, into) {{",
                  f"    return many(\"{f.name}_array\", wasm.{f.name}_array, [{', '.join(code[a.name] for a in enumerated)}], {json.dumps(numbers)}, "
                  f"[{', '.join(numbers)}], {json.dumps([name for name, _ in f.results])}, into);", "}"]
        out.append("\n".join(lines))
    text = (here / "aqueth.js.in").read_text()
    for key, value in {"version": version(), "argument_codes": pairs("argument"), "limit_codes": pairs("limit"),
                       "enumerations": "\n".join(enumerations), "functions": "\n\n".join(out),
                       "wasm": base64.b64encode(wasm).decode()}.items():
        text = text.replace(f"@{key}@", value)
    return text


def range_of(a):
    return "" if a.enumeration else ", " + c.range_of(a)


def declarations(functions, codes):
    out = ["// SPDX-License-Identifier: BSL-1.0", "// Made by src/wasm/generate.py. Not to be edited.", ""]
    for enumeration, (_, brief) in (c.ANSWERS | c.QUESTIONS).items():
        out.append(f"/** {brief} */\nexport type {enumeration} = " + " | ".join(f'"{name}"' for _, name in sorted(codes[enumeration])) + ";\n")
    out.append((here / "declarations.d.ts").read_text().split("\n", 2)[2])
    for f in functions:
        parameters = ", ".join(f"{a.name}: {a.enumeration or 'number'}" for a in f.arguments)
        columns = ", ".join(f"{a.name}: {a.enumeration or 'Column'}" for a in f.arguments)
        single = len(f.results) == 1
        result = "number" if single else "{ " + " ".join(f"{name}: number;" for name, _ in f.results) + " }"
        names = " | ".join(f'"{name}"' for name, _ in f.results)
        comment = [f"/**\n * {f.brief}."]
        comment += [f" * @param {a.name} {f'a {{@link {a.enumeration}}}' if a.enumeration else c.range_of(a)}" for a in f.arguments]
        comment += [f" * @returns {f.results[0][0]}" if single else f" * @returns {', '.join(name for name, _ in f.results)}"]
        comment += [" * @throws {Refusal} for an argument out of range */"]
        out.append("\n".join(comment))
        out.append(f"export function {f.name}({parameters}): {result};")
        out.append(f"/** The same for many at once. A refused element is NaN and has 1 in `refused`. */")
        out.append(f"export function {f.name}_array({columns}, into?: Partial<Columns<{names}>>): Columns<{names}>;\n")
    return "\n".join(out)


def main():
    functions = list(c.read_functions())
    codes, codes_text = c.read_codes()
    if codes_text != (root / "src/c/codes.tsv").read_text():
        sys.exit("src/c/codes.tsv is not up to date: run src/c/generate.py")
    for enumeration in codes:
        if [number for number, _ in sorted(codes[enumeration])] != list(range(len(codes[enumeration]))):
            sys.exit(f"codes.tsv: the numbers of {enumeration} have a gap")
    if len(sys.argv) == 3 and sys.argv[1] == "source":
        files = {"functions.cpp": source(functions, codes)}
    elif len(sys.argv) == 4 and sys.argv[1] == "package":
        package = json.loads((here / "package.json").read_text())
        package["version"] = version()
        for a in [a for f in functions for a in f.arguments]:
            a.name = SAFE.get(a.name, a.name)
        files = {
            "aqueth.js": script(functions, codes, pathlib.Path(sys.argv[3]).read_bytes()),
            "aqueth.d.ts": declarations(functions, codes),
            "package.json": json.dumps(package, indent=2) + "\n",
            "README.md": (here / "README.md").read_text(),
            "LICENSE": (root / "LICENSE").read_text(),
        }
    else:
        sys.exit(__doc__.split("\n\n")[1])
    directory = pathlib.Path(sys.argv[2])
    directory.mkdir(parents=True, exist_ok=True)
    for name, text in files.items():
        (directory / name).write_text(text)


main()
