#!/usr/bin/env python3
# SPDX-License-Identifier: BSL-1.0
"""check_answers.py <schema> [--examples <task>...]: checks the answer on standard input against the schema, or the
answers to the examples in the help of tasks. Needs the program aqueth in the path, and jsonschema."""
import json
import re
import subprocess
import sys

from jsonschema import Draft202012Validator
from jsonschema.exceptions import best_match


def example(task):
    """The command of a task's example, with --json."""
    text = subprocess.run(["aqueth", task, "--help"], capture_output=True, text=True, check=True).stdout
    command = re.search(r"\n  \$ ((?:[^\n]*\\\n)*[^\n]*)\n", text).group(1)
    files = " --out rows.csv --replace" if task == "many" else ""  # its rows are CSV, and JSON counts them
    return command + " --json" + files


def fault(validator, text):
    error = best_match(validator.iter_errors(json.loads(text)))
    return error and f"{'/'.join(map(str, error.absolute_path))}: {error.message}"


def main():
    with open(sys.argv[1], encoding="utf-8") as file:
        schema = json.load(file)
    Draft202012Validator.check_schema(schema)
    validator = Draft202012Validator(schema)
    answers = [("standard input", None)] if len(sys.argv) < 3 else [(t, example(t)) for t in sys.argv[3:]]
    faults = 0
    for name, command in answers:
        if command:
            text = subprocess.run(["bash", "-c", command], capture_output=True, text=True, check=True).stdout
        else:
            text = sys.stdin.read()
        found = fault(validator, text)
        if found:
            print(f"{name}: {found}")
            faults += 1
    if not faults:
        print(f"{len(answers)} answers follow the schema")
    return 1 if faults else 0


sys.exit(main())
