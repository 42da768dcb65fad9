#!/usr/bin/env bash
# SPDX-License-Identifier: BSL-1.0
# Cost of including a public header: seconds of compile time, lines after preprocessing, and bytes of code in a source
# file that includes it and uses nothing.
#   bench/compile_cost.sh [include directory] [compiler]
# Seconds are the median of three, of processor time; the first row is a standard header for comparison.
set -euo pipefail
include=${1:-$(dirname "${BASH_SOURCE[0]}")/../include}
compiler=${2:-${CXX:-c++}}
[[ -d $include/aqueth ]] || { echo "compile_cost.sh: no headers of aqueth in '$include'" >&2; exit 2; }

work=$(mktemp -d)
trap 'rm -rf "$work"' EXIT
TIMEFORMAT=%U
flags=(-std=c++20 -O2 "-I$include")

printf '%-48s %8s %9s %8s\n' header seconds lines bytes
headers=$(cd "$include" && find aqueth -name '*.hpp' -not -path '*/detail/*' | LC_ALL=C sort)
for header in string $headers; do
    printf '#include <%s>\n' "$header" >"$work/one.cpp"
    seconds=$(for _ in 1 2 3; do
        { time "$compiler" "${flags[@]}" -fsyntax-only "$work/one.cpp"; } 2>&1
    done | sort -g | sed -n 2p)
    lines=$("$compiler" "${flags[@]}" -E -P "$work/one.cpp" | wc -l)
    "$compiler" "${flags[@]}" -c "$work/one.cpp" -o "$work/one.o"
    bytes=$(size "$work/one.o" | awk 'NR == 2 { print $1 + $2 + $3 }')
    printf '%-48s %8s %9s %8s\n' "$header" "$seconds" "$lines" "$bytes"
done
