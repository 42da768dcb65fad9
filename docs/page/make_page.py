#!/usr/bin/env python3
# SPDX-License-Identifier: BSL-1.0
"""Makes the page at the bench, one file that needs no other: page.html, its style and script, and the npm package.

usage: make_page.py <aqueth.js> <page to write>
"""
import pathlib
import re
import sys

here = pathlib.Path(__file__).resolve().parent


def number(match):
    """a field for a number: its label, its unit, and the place of its refusal"""
    name, label, kind = match.group(1).split("|")
    sign = (f'\n<button type="button" class="sign" data-sign="{name}" aria-label="Change the sign: {label}">±</button>'
            if kind == "temperature" else "")
    return (f'<p class="field"><label for="{name}">{label}</label>\n'
            f'<span class="entry"><input id="{name}" inputmode="decimal" autocomplete="off" aria-describedby="{name}-unit {name}-note">\n'
            f'<span class="unit" id="{name}-unit" data-unit="{kind}"></span>{sign}</span>\n'
            f'<span class="note" id="{name}-note"></span></p>')


def main():
    if len(sys.argv) != 3:
        sys.exit(__doc__.split("\n\n")[1])
    package = pathlib.Path(sys.argv[1]).read_text()
    package = re.sub(r"^export function \w+_array\(.*?^}\n", "", package, flags=re.M | re.S)  # the page has no columns
    exported = re.findall(r"^export (?:const|class|function) (\w+)", package, re.M)
    body = re.sub(r"^export (?=const|class|function)", "", package, flags=re.M)
    script = (here / "page.js").read_text()
    unknown = sorted(set(re.findall(r"\baqueth\.(\w+)", script)) - set(exported) - {"js"})
    if unknown:
        sys.exit(f"page.js: the package has no {', '.join(unknown)}")
    whole = ("let aqueth;\ntry {\naqueth = (() => {\n" + body + f"\nreturn {{ {', '.join(exported)} }};\n}})();\n"
             "} catch (why) {\ndocument.getElementById('broken').hidden = false;\nthrow why;\n}\n" + script)
    if "</script" in whole:
        sys.exit("the scripts hold the end of a script")
    page = (here / "page.html").read_text()
    page = re.sub(r"@number ([^@]*)@", number, page)
    page = page.replace("@style@", (here / "page.css").read_text()).replace("@script@", whole)
    pathlib.Path(sys.argv[2]).write_text(page)


main()
