#!/usr/bin/env bash
# SPDX-License-Identifier: BSL-1.0
# capture_reports.sh <file> <test program>
# Runs the test program and writes to the file what the tests reported, without GoogleTest's own lines, and in lines
# that fit a page.
set -euo pipefail

file=$1 program=$2
reported=$("$program" --gtest_brief=1 --gtest_color=no) || {
    printf '%s\n%s fails\n' "$reported" "$program" >&2
    exit 1
}
{
    # What the columns of a check against a published table are (tests/published/report.sh).
    if grep --quiet --extended-regexp ' (judges|guards|fitted|shown)$' <<<"$reported"; then
        printf '%-33s %-9s %5s %4s %9s %9s %15s %8s  %s\n' check unit cells meet mean largest demanded limit role
    fi
    grep --invert-match --extended-regexp '^(Running main|\[|$)' <<<"$reported"
} | fold --spaces --width=110 >"$file"
