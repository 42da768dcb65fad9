#!/usr/bin/env bash
# SPDX-License-Identifier: BSL-1.0
# Writes docs/speed_report.txt, which docs/speed.md shows, from an optimized build on an idle machine, in four minutes:
#   cmake --workflow --preset release && bench/report.sh build/release/bench
# Each section says which instructions the loops over arrays choose. A processor with AVX-512 writes two: its own, and
# that of a processor with AVX2, whose instructions it executes too.
set -euo pipefail
programs=${1:?"usage: bench/report.sh <directory of the benchmarks>"}
root=$(dirname "${BASH_SOURCE[0]}")/..
[[ -x $programs/bench.density ]] || { echo "report.sh: no benchmarks in '$programs'" >&2; exit 2; }

pinned=()
command -v taskset >/dev/null && pinned=(taskset --cpu-list 1)
of_cpu() { sed -n "s/^$1[[:space:]]*: //p" /proc/cpuinfo | head -1; }
can() { grep --quiet --word-regexp --max-count=1 "$1" /proc/cpuinfo; }

# report <title> <suffix>...: the benchmarks of these suffixes
report() {
    printf '\n######## %s\n' "$1"
    shift
    for name in density inverse equilibrium uncertainty; do
        for suffix in "$@"; do
            program=$programs/bench.$name$suffix
            [[ -x $program ]] || continue
            flags=-O3
            [[ $suffix =~ v([34])$ ]] && flags+=" -march=x86-64-v${BASH_REMATCH[1]}"
            printf '\n==== %s, compiled with %s\n' "$name" "$flags"
            "${pinned[@]}" "$program"
        done
    done
}

speed=$(mktemp)
trap 'rm -f "$speed"' EXIT
{
    printf '%s, family %s, model %s\n' "$(of_cpu 'model name')" "$(of_cpu 'cpu family')" "$(of_cpu model)"
    printf '%s, %s\n' "$("${CXX:-c++}" --version | head -1)" "$(date '+%-d %B %Y')"
    if can avx512f; then
        report "AVX-512: loops over arrays as this processor chooses them" "" .v4
        report "AVX2: the same processor, loops over arrays as one without AVX-512 chooses them" .older .older.v3
    elif can avx2; then
        report "AVX2: loops over arrays as this processor chooses them" "" .older.v3
    else
        report "Neither AVX2 nor AVX-512" ""
    fi
    printf '\n######## One at a time, and on all cores\n'
    printf '\n==== plain, compiled with -O3\n'
    "${pinned[@]}" "$programs/bench.plain"
    printf '\n==== parallel, compiled with -O3, on %s cores\n' "$(nproc)"
    "$programs/bench.parallel"
} >"$speed"
cp "$speed" "$root/docs/speed_report.txt"
