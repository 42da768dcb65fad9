#!/usr/bin/env python3
# SPDX-License-Identifier: BSL-1.0
"""Makes the C interface from functions.tsv and codes.tsv.

usage: generate.py [--check]

Writes include/aqueth/c.h, src/c/functions.cpp, src/c/aqueth.map, docs/c_functions.md, the SQL functions of src/sqlite and
the tables of functions in tests/vectors and tests/firmware; with --check it writes nothing and fails where a file differs from what it would write.
Codes of plain/argument.hpp and plain/limit.hpp that plain/ or still/run.hpp have begun to use are appended to codes.tsv, with the next number: a number that
programs were compiled with never changes its meaning.
"""
import dataclasses
import pathlib
import re
import sys

here = pathlib.Path(__file__).resolve().parent
root = here.parent.parent


@dataclasses.dataclass
class Argument:
    name: str
    low: str = ""
    high: str = ""
    unit: str = ""
    enumeration: str = ""

    @property
    def c_type(self):
        return "int" if self.enumeration else "double"


@dataclasses.dataclass
class Function:
    name: str
    results: list  # pairs: name, member of the C++ structure or ""
    arguments: list
    body: str
    array: str
    brief: str

    @property
    def call(self):
        if not self.body:
            return f"plain::{self.name}({', '.join(a.name for a in self.arguments)})"
        return self.expression(self.body)

    def expression(self, text):
        return text.format(**{a.name: f"c::{a.enumeration}_of({a.name})" for a in self.arguments if a.enumeration})


def rows(path):
    lines = [line for line in path.read_text().splitlines() if line and not line.startswith("#")]
    names = lines[0].split("\t")
    for number, line in enumerate(lines[1:], 1):
        cells = line.split("\t")
        if len(cells) != len(names):
            sys.exit(f"{path.name}: '{cells[0]}' has {len(cells)} columns, not {len(names)}")
        yield dict(zip(names, cells))


def read_functions():
    for row in rows(here / "functions.tsv"):
        arguments = []
        for text in row["arguments"].split("; "):
            parts = text.split(" ", 3)
            if len(parts) == 2:
                arguments.append(Argument(parts[0], enumeration=parts[1]))
            elif len(parts) == 4:
                arguments.append(Argument(*parts))
            else:
                sys.exit(f"functions.tsv: '{row['name']}': cannot read the argument '{text}'")
        results = [(r.split("=") + [""])[:2] for r in row["results"].split(" ")]
        yield Function(row["name"], results, arguments, row["body"], row["array"], row["brief"])


def included(header, seen):
    """the header and all that it includes, of the library"""
    if header not in seen:
        seen.add(header)
        for name in re.findall(r"#include <(aqueth/[^>]+)>", (root / "include" / header).read_text()):
            included(name, seen)
    return seen


def enumerators(enumeration, first):
    """the values that the plain floor and runs of a still use: others cannot come out of a function in C"""
    headers = included("aqueth/still/run.hpp", included("aqueth/plain/plain.hpp", set()))
    text = "".join((root / "include" / header).read_text() for header in headers
                   if header not in ("aqueth/plain/argument.hpp", "aqueth/plain/limit.hpp", "aqueth/error.hpp"))
    used = set(re.findall(r"\b%s::(\w+)" % enumeration, text))
    return [first] + sorted(used - {first})


QUESTIONS = {  # enumerations that arguments have
    "strength_scale": ("strength.hpp", "The scale of a strength."),
    "medium": ("specific_gravity.hpp", "Whether weighings are corrected to vacuum."),
    "azeotrope_side": ("equilibrium.hpp", "The side of the azeotrope."),
    "sugar": ("attenuation.hpp", "Kinds of sugar."),
    "sweetener": ("../model/sugar_solution.hpp", "Sugars of sweetened spirit."),
}
ANSWERS = {  # and that refusals have
    "argument": ("other", "The arguments that are refused."),
    "limit": ("none", "What sets the range of an argument."),
}


def declared(enumeration, header):
    text = (root / "include/aqueth/plain" / header).read_text()
    body = re.search(r"enum class %s[^{]*\{(.*?)\};" % enumeration, text, re.S).group(1)
    return re.findall(r"^\s*(\w+),?\s*$", re.sub(r"//[^\n]*", "", body), re.M)


def read_codes():
    """{enumeration: [(number, name)]}, and the text of codes.tsv with what is new appended"""
    path = here / "codes.tsv"
    text = path.read_text()
    codes = {}
    for row in rows(path):
        codes.setdefault(row["enumeration"], []).append((int(row["number"]), row["name"]))
    for enumeration, (first, _) in (ANSWERS | QUESTIONS).items():
        known = codes.setdefault(enumeration, [])
        now = enumerators(enumeration, first) if enumeration in ANSWERS else declared(enumeration, first)
        gone = [name for _, name in known if name not in now]
        if gone:
            sys.exit(f"codes.tsv: {enumeration} has no {', '.join(gone)} any more; a code that programs know stays")
        for name in now:
            if name not in [n for _, n in known]:
                known.append((max([n for n, _ in known], default=-1) + 1, name))
                text += f"{enumeration}\t{known[-1][0]}\t{name}\n"
    return codes, text


def wrapped(text, indent, width=100):
    lines, line = [], ""
    for word in text.split():
        if len(indent) + len(line) + len(word) + 1 > width:
            lines.append(line)
            line = ""
        line = f"{line} {word}".strip()
    return [indent + l for l in lines + [line]]


def range_of(a):
    if a.enumeration:
        return f"a value of aqueth_{a.enumeration}"
    unit = "" if a.unit == "1" else " " + a.unit
    return f"{a.low} to {a.high}{unit}" if a.high != "inf" else f"{a.low} or more{unit and ',' + unit}"


def declaration(f, array):
    if not array:
        inputs = [f"{a.c_type} {a.name}" for a in f.arguments]
        outputs = [f"double* {name}_result" for name, _ in f.results]
        return f"aqueth_{f.name}", inputs + outputs + ["aqueth_refusal* refusal"]
    inputs = ["size_t count"]
    for a in f.arguments:
        if a.enumeration:
            inputs.append(f"int {a.name}")
        else:
            inputs += [f"const double* {a.name}", f"ptrdiff_t {a.name}_stride"]
    for name, _ in f.results:
        inputs += [f"double* {name}_result", f"ptrdiff_t {name}_stride_of_result"]
    return f"aqueth_{f.name}_array", inputs + ["unsigned char* refused"]


def prototype(f, array, start, end):
    name, parameters = declaration(f, array)
    lines, line = [], f"{start}{name}("
    indent = " " * len(line)
    for i, parameter in enumerate(parameters):
        part = parameter + (", " if i + 1 < len(parameters) else f"){end}")
        if len(line) + len(part.rstrip()) > 100:
            lines.append(line.rstrip())
            line = indent
        line += part
    return "\n".join(lines + [line])


def c_header(functions, codes):
    template = (here / "c.h.in").read_text()
    parts = []
    for enumeration, (_, brief) in (ANSWERS | QUESTIONS).items():
        names = ["    AQUETH_" + (enumeration + "_" + name).upper() + f" = {number}" for number, name in codes[enumeration]]
        parts.append(f"/* {brief} */\ntypedef enum aqueth_{enumeration} {{\n" + ",\n".join(names) +
                     f"\n}} aqueth_{enumeration};\n")
    text = template.replace("@codes@", "\n".join(parts))
    parts = []
    for f in functions:
        comment = [f"/* {f.brief}."]
        width = max(len(a.name) for a in f.arguments)
        comment += [f" * {a.name.ljust(width)}  {range_of(a)}" for a in f.arguments]
        parts.append("\n".join(comment) + " */\n" + prototype(f, False, "AQUETH_API aqueth_status ", ";") + "\n" +
                     prototype(f, True, "AQUETH_API aqueth_status ", ";") + "\n")
    return text.replace("@functions@", "\n".join(parts))


def code_functions(codes):
    """C++ functions between the numbers of codes.tsv and the enumerations of the library"""
    out = []
    for enumeration in QUESTIONS:
        out += [f"bool is_{enumeration}(int code) noexcept {{",
                f"    return code >= 0 && code < {len(codes[enumeration])};", "}", "",
                f"{enumeration} {enumeration}_of(int code) noexcept {{", "    switch (code) {"]
        out += [f"    case {number}: return {enumeration}::{name};" for number, name in codes[enumeration]]
        out += ["    default: return {};", "    }", "}", ""]
    for enumeration in ANSWERS:
        out += [f"int code_of(aqueth::{enumeration} code) noexcept {{", "    switch (code) {"]
        out += [f"    case aqueth::{enumeration}::{name}: return {number};" for number, name in codes[enumeration]]
        out += ["    default: return 0;", "    }", "}", ""]
        out += [f"char const* {enumeration}_name(int code) noexcept {{", "    switch (code) {"]
        out += [f"    case {number}: return name_of(aqueth::{enumeration}::{name});" for number, name in codes[enumeration]]
        out += ["    default: return nullptr;", "    }", "}", ""]
    return out


def wrappers(functions, codes):
    out = ["// SPDX-License-Identifier: BSL-1.0", "// Made by generate.py from functions.tsv and codes.tsv. Not to be edited.",
           "// clang-format off", '#include "interface.hpp"', "", "namespace aqueth::c {", ""]
    out += code_functions(codes)
    out += ["}  // namespace aqueth::c", "", "using namespace aqueth;", ""]
    for f in functions:
        outputs = ", ".join(f"{name}_result" for name, _ in f.results)
        values = ", ".join("value" + ("." + member if member else "") for _, member in f.results)
        checks = "".join(f"    if (!c::is_{a.enumeration}({a.name})) return AQUETH_BAD_CALL;\n"
                         for a in f.arguments if a.enumeration)
        out.append(prototype(f, False, 'extern "C" aqueth_status ', " {"))
        out.append(f"{checks}    return c::one({f.call}, refusal, "
                   f"[](auto const& value) {{ return std::array{{{values}}}; }}, {outputs});\n}}\n")
        out.append(prototype(f, True, 'extern "C" aqueth_status ', " {"))
        numbers = [a for a in f.arguments if not a.enumeration]
        captured = ", ".join(a.name for a in f.arguments if a.enumeration)
        inputs = ", ".join(f"c::input{{{a.name}, {a.name}_stride}}" for a in numbers)
        results = ", ".join(f"c::output{{{name}_result, {name}_stride_of_result}}" for name, _ in f.results)
        parameters = ", ".join(f"double {a.name}" for a in numbers)
        if f.array:
            names = ", ".join(f"auto const& {a.name}" for a in numbers)
            given = ", ".join(a.name for a in numbers)
            ask = f.expression(f.array) if "(" in f.array else f"arrays::{f.array}({given}, result, valid)"
            out.append(f"{checks}    return c::many_by_array(count, refused, [{captured}]({names}, auto& result, arrays::flags valid) "
                       f"{{ {ask}; }}, {results}, {inputs});\n}}\n")
        else:
            out.append(f"{checks}    return c::many(count, refused, [{captured}]({parameters}) {{ return {f.call}; }}, "
                       f"[](auto const& value) {{ return std::array{{{values}}}; }},\n"
                       f"        std::array{{{results}}}, {inputs});\n}}\n")
    return "\n".join(out)


def symbols(functions):
    own = re.findall(r"AQUETH_API [^;]*?(aqueth_\w+)\(", (here / "c.h.in").read_text())
    names = sorted(own + [declaration(f, array)[0] for f in functions for array in (False, True)])
    return "AQUETH_0.1 {\n    global:\n" + "".join(f"        {n};\n" for n in names) + "    local: *;\n};\n"


def docs(functions):
    out = ["# The functions of the C interface {#c_functions}", "",
           "Which C function computes what, and in which range? @ref linking_c tells how to link and call the functions, @ref errors_c what a status means.", "",
           "- The full name of `density_kg_m3` is `aqueth_density_kg_m3`. Its prototype is in `aqueth/c.h`: first the arguments in the order below, then a pointer",
           "  for each result, last a pointer to an `aqueth_refusal`, which may be NULL.",
           "- Every function exists a second time for many at once: `aqueth_density_kg_m3_array`. There a count comes first, a pointer and a stride replace every number,",
           "  and a pointer to flags, which may be NULL, is last.",
           "- Fractions run from 0 to 1. Other units are in the names: `kg`, `litres`, `celsius`, `kpa`.",
           "- The range is that of the argument alone. Other arguments may narrow it: a mixture must be liquid, a target weaker than the spirit.", "",
           "The script `src/c/generate.py` makes this table, the header and the functions from one list, `src/c/functions.tsv`. `tests/vectors/vectors.tsv` has questions with",
           "answers for each function, to test an interface in another language.", "",
           "| function | arguments | results | computes |", "| --- | --- | --- | --- |"]
    for f in functions:
        arguments = "<br>".join(f"{a.name}: {range_of(a)}" for a in f.arguments)
        out.append(f"| `{f.name}` | {arguments} | {', '.join(n for n, _ in f.results)} | {f.brief} |")
    out += ["", "Runs of a still are handles (`aqueth_run_new` and `aqueth_run_get_*`), and `aqueth_mix_parcels` mixes any number of parcels: the",
            "comments of `aqueth/c.h` describe them."]
    return "\n".join(out) + "\n"


def vector_table(functions, codes):
    """for tests: every function behind one signature, with the ranges of its arguments"""
    out = ["/* SPDX-License-Identifier: BSL-1.0 */", "/* Made by src/c/generate.py. Not to be edited. */"]
    for f in functions:
        arguments = [f"(int)a[{i}]" if a.enumeration else f"a[{i}]" for i, a in enumerate(f.arguments)]
        results = [f"&r[{i}]" for i in range(len(f.results))]
        out.append(f"static aqueth_status call_{f.name}(const double* a, double* r, aqueth_refusal* why) {{\n"
                   f"    return aqueth_{f.name}({', '.join(arguments + results + ['why'])});\n}}")
        columns = [f"(int)a[{i}][0]" if a.enumeration else f"a[{i}], as[{i}]" for i, a in enumerate(f.arguments)]
        columns += [f"r[{i}], rs[{i}]" for i in range(len(f.results))]
        out.append(f"static aqueth_status call_{f.name}_array(size_t count, const double* const* a, const ptrdiff_t* as, double* const* r,\n"
                   f"    const ptrdiff_t* rs, unsigned char* refused) {{\n"
                   f"    return aqueth_{f.name}_array(count, {', '.join(columns)}, refused);\n}}")
    out.append("static const struct function functions[] = {")
    for f in functions:
        ranges = ", ".join("{0, %d, 1}" % len(codes[a.enumeration]) if a.enumeration else "{%s, %s, 0}" % (a.low, a.high.replace("inf", "1000"))
                           for a in f.arguments)
        out.append(f'    {{"{f.name}", call_{f.name}, call_{f.name}_array, {len(f.arguments)}, {len(f.results)}, {{{ranges}}}}},')
    out.append("};")
    return "\n".join(out) + "\n"


def plain_table(functions, codes):
    """the same functions without the C interface, for a scalar `number`: to write the vectors with, and for firmware"""
    out = ["// SPDX-License-Identifier: BSL-1.0", "// Made by src/c/generate.py. Not to be edited."]
    for f in functions:
        ranges = ", ".join("{0, %d, true}" % len(codes[a.enumeration]) if a.enumeration else "{%s, %s, false}" % (a.low, a.high.replace("inf", "1000"))
                           for a in f.arguments)
        declared = " ".join(f"auto const {a.name} = static_cast<int>(a[{i}]);" if a.enumeration
                            else f"number const {a.name} = a[{i}];" for i, a in enumerate(f.arguments))
        values = ", ".join("answer.value" + ("." + member if member else "") for _, member in f.results)
        out.append(f'{{"{f.name}", {{{ranges}}}, [](number const* a) {{\n    {declared}\n'
                   f"    auto const answer = {f.call.replace('<double>', '<number>')};\n    return outcome{{answer.status, {{{values}}}}};\n}}}},")
    return "\n".join(out) + "\n"


def sql_functions(functions, codes):
    """for src/sqlite: one SQL function a result, behind one signature a function of the C interface"""
    out = ["/* SPDX-License-Identifier: BSL-1.0 */", "/* Made by src/c/generate.py. Not to be edited. */"]
    for enumeration in QUESTIONS:
        names = "".join(f'{{"{name}", {number}}}, ' for number, name in codes[enumeration])
        out.append(f"static const struct code {enumeration}_codes[] = {{{names}{{NULL, 0}}}};")
    for f in functions:
        arguments = [f"(int)a[{i}]" if a.enumeration else f"a[{i}]" for i, a in enumerate(f.arguments)]
        results = [f"&r[{i}]" for i in range(len(f.results))]
        out.append(f"static aqueth_status call_{f.name}(const double* a, double* r, aqueth_refusal* why) {{\n"
                   f"    return aqueth_{f.name}({', '.join(arguments + results + ['why'])});\n}}")
        rows = ", ".join('{"%s", "%s", %s}' % (a.name, a.enumeration, a.enumeration + "_codes") if a.enumeration
                         else '{"%s", NULL, NULL}' % a.name for a in f.arguments)
        out.append(f"static const struct argument arguments_of_{f.name}[] = {{{rows}}};")
    out.append("static const struct function functions[] = {")
    names = []
    for f in functions:
        for i, (result, _) in enumerate(f.results):
            names.append(f"aqueth_{f.name}" + (f"_{result}" if len(f.results) > 1 else ""))
            out.append(f'    {{"{names[-1]}", call_{f.name}, {i}, {len(f.arguments)}, arguments_of_{f.name}}},')
    out.append("};")
    if len(set(names)) < len(names):
        sys.exit("functions.tsv: two results have the same name in SQL")
    return "\n".join(out) + "\n"


def firmware_codes(codes):
    """for tests/firmware, which has no C interface"""
    return "\n".join(["// SPDX-License-Identifier: BSL-1.0", "// Made by src/c/generate.py. Not to be edited."] +
                     [line for line in code_functions(codes)]).rstrip() + "\n"


def main():
    check = sys.argv[1:] == ["--check"]
    if sys.argv[1:] and not check:
        sys.exit("usage: generate.py [--check]")
    functions = list(read_functions())
    codes, codes_text = read_codes()
    files = {
        "src/c/codes.tsv": codes_text,
        "include/aqueth/c.h": c_header(functions, codes),
        "src/c/functions.cpp": wrappers(functions, codes),
        "src/c/aqueth.map": symbols(functions),
        "docs/c_functions.md": docs(functions),
        "tests/vectors/c_functions.inc": vector_table(functions, codes),
        "tests/vectors/plain_functions.inc": plain_table(functions, codes),
        "src/sqlite/functions.inc": sql_functions(functions, codes),
        "tests/firmware/codes.inc": firmware_codes(codes),
    }
    stale = [name for name, text in files.items()
             if not (root / name).exists() or (root / name).read_text() != text]
    if check and stale:
        sys.exit(f"run src/c/generate.py and commit: {', '.join(stale)} not as made from functions.tsv")
    if not check:
        for name in stale:
            (root / name).parent.mkdir(parents=True, exist_ok=True)
            (root / name).write_text(files[name])


if __name__ == "__main__":
    main()
