# SPDX-License-Identifier: BSL-1.0
"""Runs the code of docs/python.md: what it prints must stand below it. With --paste the page gets what was printed."""
import contextlib
import io
import os
import pathlib
import re
import sys
import unittest

PAGE = pathlib.Path(os.environ.get("AQUETH_SOURCE", pathlib.Path(__file__).resolve().parent.parent.parent)) / "docs" / "python.md"
BLOCK = re.compile(r"```python\n(.*?)```\n\n```text\n(.*?)```\n", re.S)


def run(text):
    """gives the code, the text below it, and what the code prints; one block after the other, as a reader would"""
    names = {}
    for match in BLOCK.finditer(text):
        printed = io.StringIO()
        with contextlib.redirect_stdout(printed):
            exec(compile(match[1], str(PAGE), "exec"), names)
        yield match[1], match[2], printed.getvalue()


class Page(unittest.TestCase):
    def test_code_prints_what_the_page_shows(self):
        for package in ("pandas", "dask"):
            try:
                __import__(package)
            except ImportError:
                self.skipTest(f"needs python3-{package}")
        text = PAGE.read_text()
        blocks = list(run(text))
        self.assertEqual(len(blocks), text.count("```python\n"))
        for code, shown, printed in blocks:
            with self.subTest(code=code):
                self.assertEqual(printed, shown)


if __name__ == "__main__":
    if sys.argv[1:] == ["--paste"]:
        page = PAGE.read_text()
        for code, shown, printed in list(run(page)):
            page = page.replace(f"```python\n{code}```\n\n```text\n{shown}```\n", f"```python\n{code}```\n\n```text\n{printed}```\n")
        PAGE.write_text(page)
    else:
        unittest.main()
