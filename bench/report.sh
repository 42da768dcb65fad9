#!/usr/bin/env bash
# SPDX-License-Identifier: BSL-1.0
# Writes the two reports that docs/speed.md shows, from an optimized build on an idle machine:
#   cmake --workflow --preset release && bench/report.sh build/release/bench
set -euo pipefail
programs=${1:?"usage: bench/report.sh <directory of the benchmarks>"}
root=$(dirname "${BASH_SOURCE[0]}")/..
[[ -x $programs/bench.density ]] || { echo "report.sh: no benchmarks in '$programs'" >&2; exit 2; }

pinned=()
command -v taskset >/dev/null && pinned=(taskset --cpu-list 1)

speed=$(mktemp)
trap 'rm -f "$speed"' EXIT
{
    printf '%s, %s\n' "$(sed -n 's/^model name[[:space:]]*: //p' /proc/cpuinfo | head -1)" "$(${CXX:-c++} --version | head -1)"
    printf 'vector instructions: %s\n' "$(grep -o -w -m 1 -e 'avx2' -e 'avx512f' /proc/cpuinfo | sort -u | tr '\n' ' ')"
    for name in density inverse equilibrium plain; do
        for program in "$programs/bench.$name" "$programs/bench.$name".*; do
            [[ -x $program ]] || continue
            case $program in
                *.avx2) flags='-O3 -march=x86-64-v3' ;;
                *.avx512) flags='-O3 -march=x86-64-v4' ;;
                *) flags='-O3' ;;
            esac
            printf '\n==== %s, compiled with %s\n' "$name" "$flags"
            "${pinned[@]}" "$program"
        done
    done
} >"$speed"
cp "$speed" "$root/docs/speed_report.txt"
"$root/bench/compile_cost.sh" >"$speed"
cp "$speed" "$root/docs/compile_cost.txt"
