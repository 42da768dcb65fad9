#!/usr/bin/env bash
# SPDX-License-Identifier: BSL-1.0
# report.sh <test program>...
# Runs programs of tests/published and prints the rows of their checks as one table, with totals. Fails when one of
# the programs fails. Other cells: printed ones that are compared once more in another quantity, those of sources whose
# precision is not known, and values of printed formulas.
set -euo pipefail

rows=
for program in "$@"; do
    reported=$("$program" --gtest_brief=1 --gtest_color=no) || {
        printf '%s\n%s fails\n' "$reported" "$program" >&2
        exit 1
    }
    rows+=$(grep --extended-regexp ' (judges|guards|fitted|shown)$' <<<"$reported" || true)$'\n'
done
[[ $rows =~ [a-z] ]] || { echo "no rows" >&2; exit 1; }

# Columns as deviations.hpp prints them: cells end in column 49, those that meet the source's precision in 54.
for role in judges guards fitted shown; do
    printf '%-33s %-9s %5s %4s %9s %9s %15s %8s  %s\n' check unit cells meet mean largest demanded limit role
    grep " $role\$" <<<"$rows" || true
    echo
done
awk '
    $NF == "shown" || NF == 0 { next }
    {
        cells = substr($0, 45, 5) + 0
        meet = substr($0, 51, 4)
        ++checks[$NF]
        if (meet ~ /-/) { converted[$NF] += cells; next }
        printed[$NF] += cells
        meeting[$NF] += meet
    }
    function line(name, a, b, c, d) { printf "%-7s %7d %14d %31d %12d\n", name, a, b, c, d }
    END {
        print "totals   checks  printed cells  within the source\047s precision  other cells"
        count = split("judges guards fitted", roles)
        for (i = 1; i <= count; ++i) {
            r = roles[i]
            line(r, checks[r], printed[r], meeting[r], converted[r])
            a += checks[r]; b += printed[r]; c += meeting[r]; d += converted[r]
        }
        line("all", a, b, c, d)
    }' <<<"$rows"
