#!/usr/bin/env bash
# SPDX-License-Identifier: BSL-1.0
# Writes docs/speed_report.txt, which docs/speed.md shows, from an optimized build on an idle machine, in four minutes:
#   cmake --workflow --preset release && bench/report.sh build/release/bench
# Each section says which instructions the loops over arrays choose. A processor with AVX-512 writes two: its own, and
# that of a processor with AVX2, whose instructions it executes too.
set -euo pipefail
programs=${1:?"usage: bench/report.sh <directory of the benchmarks>"}
root=$(dirname "${BASH_SOURCE[0]}")/..

# The last processor that this shell may use, as the first one does more of the kernel's work.
pinned=()
if command -v taskset >/dev/null; then
    allowed=$(taskset --cpu-list --pid $$)
    pinned=(taskset --cpu-list "${allowed##*[ ,-]}")
fi
of_cpu() { sed -n "s/^$1[[:space:]]*: //p" /proc/cpuinfo | head -1; }
can() { grep --quiet --word-regexp --max-count=1 "$1" /proc/cpuinfo; }

# The sections: a title, and the suffixes of the benchmarks.
if can avx512f; then
    sections=("AVX-512: loops over arrays as this processor chooses them" "/ .v4"
        "AVX2: the same processor, loops over arrays as one without AVX-512 chooses them" ".older .older.v3")
elif can avx2; then
    sections=("AVX2: loops over arrays as this processor chooses them" "/ .older.v3")
else
    sections=("Neither AVX2 nor AVX-512" "/")
fi

# benchmarks <suffix>...: their names; / is no suffix. Only two are compiled for newer processors too.
benchmarks() {
    for name in density inverse equilibrium uncertainty; do
        for suffix in "$@"; do
            [[ $suffix == *.v[34] && $name != density && $name != inverse ]] || echo "bench.$name${suffix#/}"
        done
    done
}

missing=()
# shellcheck disable=SC2086
for each in $(for ((k = 1; k < ${#sections[@]}; k += 2)); do benchmarks ${sections[k]}; done) bench.plain bench.parallel; do
    [[ -x $programs/$each ]] || missing+=("$each")
done
((${#missing[@]} == 0)) || { echo "report.sh: missing in '$programs': ${missing[*]}" >&2; exit 2; }

speed=$(mktemp)
trap 'rm -f "$speed"' EXIT
{
    printf '%s, family %s, model %s\n' "$(of_cpu 'model name')" "$(of_cpu 'cpu family')" "$(of_cpu model)"
    printf '%s, %s\n' "$("${CXX:-c++}" --version | head -1)" "$(date '+%-d %B %Y')"
    for ((k = 0; k < ${#sections[@]}; k += 2)); do
        printf '\n######## %s\n' "${sections[k]}"
        # shellcheck disable=SC2086
        for each in $(benchmarks ${sections[k + 1]}); do
            flags=-O3
            [[ $each =~ v([34])$ ]] && flags+=" -march=x86-64-v${BASH_REMATCH[1]}"
            name=${each#bench.}
            printf '\n==== %s, compiled with %s\n' "${name%%.*}" "$flags"
            "${pinned[@]}" "$programs/$each"
        done
    done
    printf '\n######## One at a time, and on all cores\n'
    printf '\n==== plain, compiled with -O3\n'
    "${pinned[@]}" "$programs/bench.plain"
    printf '\n==== parallel, compiled with -O3, on %s cores\n' "$(nproc)"
    "$programs/bench.parallel"
} >"$speed"
cp "$speed" "$root/docs/speed_report.txt"
