#!/usr/bin/env bash
# SPDX-License-Identifier: BSL-1.0
# The same results from every build: compiles tests/agreement/agreement.cpp with several compilers, options
# and processors, runs it, and compares what it prints with the first build. Each line of the output holds its
# tolerance. Also: a build that gives up NaN is refused, with a reason; macros called min and max do no harm.
#   tests/builds.sh [<compilers at a time>]       report on standard output; 1 if a build fails or disagrees
# Needs what `cmake/setup_debian.sh all` installs. A compiler that is not there is a failure, not a gap.
set -euo pipefail
cd "$(dirname "${BASH_SOURCE[0]}")/.."
jobs=${1:-2}

work=$(mktemp --directory)
trap 'rm -rf "$work"' EXIT
source=tests/agreement/agreement.cpp
common='-std=c++20 -Iinclude -Wall -Wextra -Werror'

# Macros of these names come from a well-known system header. Here they are defined behind all headers of others that
# ours include, so that they can only hurt ours. (Formats are included only where there are any.)
{
    grep --no-filename '^#include <' -r include "$source" | grep --invert-match -e '<aqueth/' -e '<format>' -e '<fmt/' -e '<Eigen/' | sort --unique
    echo '#define min(a, b) (((a) < (b)) ? (a) : (b))'
    echo '#define max(a, b) (((a) > (b)) ? (a) : (b))'
} >"$work/macros.hpp"

# name | how to compile | how to run (32 bits too: not every kernel of 64 bits runs programs of 32)
cat >"$work/builds" <<BUILDS
g++ -O1|g++ -O1|
g++ -O0|g++ -O0|
g++ -O2|g++ -O2|
g++ -O3|g++ -O3|
clang++ -O0|clang++ -O0|
clang++ -O1|clang++ -O1|
clang++ -O2|clang++ -O2|
clang++ -O3|clang++ -O3|
g++ -O2, no exceptions, no run-time types|g++ -O2 -fno-exceptions -fno-rtti|
clang++ -O2, no exceptions, no run-time types|clang++ -O2 -fno-exceptions -fno-rtti|
g++ -O2, macros min and max|g++ -O2 -include $work/macros.hpp|
g++ -O2 -ffast-math -fno-finite-math-only|g++ -O2 -ffast-math -fno-finite-math-only|
clang++ -O2 -ffast-math -fno-finite-math-only|clang++ -O2 -ffast-math -fno-finite-math-only|
32 bits, x87 arithmetic|i686-linux-gnu-g++ -O2 -static|qemu-i386
big-endian, s390x|s390x-linux-gnu-g++ -O2 -static|qemu-s390x
BUILDS
# Code that chooses its instructions at run time must choose as on older processors ("max" has no AVX-512).
if [[ $(uname --machine) == x86_64 ]]; then
    cat >>"$work/builds" <<BUILDS
g++ -O2 on a processor without AVX|g++ -O2 -static|qemu-x86_64 -cpu Nehalem
g++ -O2 on a processor without AVX-512|g++ -O2 -static|qemu-x86_64 -cpu max
BUILDS
fi
if grep --quiet --word-regexp avx2 /proc/cpuinfo && grep --quiet --word-regexp fma /proc/cpuinfo; then
    cat >>"$work/builds" <<BUILDS
g++ -O2 -march=x86-64-v3|g++ -O2 -march=x86-64-v3|
clang++ -O2 -march=x86-64-v3 -ffp-contract=fast|clang++ -O2 -march=x86-64-v3 -ffp-contract=fast|
BUILDS
else
    echo "no build for x86-64-v3: this processor lacks it" >&2
fi

build() {
    local number=$1 line how run
    line=$(sed --quiet "${number}p" "$work/builds")
    how=$(cut --delimiter='|' --fields=2 <<<"$line")
    run=$(cut --delimiter='|' --fields=3 <<<"$line")
    # shellcheck disable=SC2086 # options are words
    if $how $common -o "$work/$number" "$source" && $run "$work/$number" >"$work/$number.txt"; then
        rm "$work/$number"
    else
        echo "fails: ${line%%|*}" >&2
        return 1
    fi
}
export -f build
export work source common
failed=0
seq "$(wc --lines <"$work/builds")" | xargs --max-procs="$jobs" --max-args=1 bash -c 'build "$1"' bash || failed=1
((failed == 0)) || exit 1

printf '%-47s %8s  %s\n' "$(wc --lines <"$work/1.txt") results, against ${source##*/} with g++ -O1" largest result
number=0
while IFS='|' read -r name _; do
    number=$((number + 1))
    ((number > 1)) || continue
    # Relative difference of every result; the largest is shown with the result it belongs to.
    paste "$work/1.txt" "$work/$number.txt" | awk -F '\t' -v name="$name" '
        NF != 8 || $1 != $5 || !($3 + 0 == $3 && $7 + 0 == $7) { print "unreadable: " $0; bad = 1; next }
        {
            off = ($7 - $3) / $3
            if (off < 0) off = -off
            if (off > most) { most = off; where = $1 }
            if ($4 == $8) ++same
            if (off > $2) { print "disagrees: " $1 " " $3 " " $7; bad = 1 }
        }
        END {
            if (same == NR) printf "%-47s %8s\n", name, "none"
            else printf "%-47s %8.1e  %s; %d of %d are the same to the bit\n", name, most, where, same, NR
            exit bad || NR == 0
        }' || failed=1
done <"$work/builds"

for compiler in g++ clang++; do
    for options in -ffast-math -ffinite-math-only '-O2 -Ofast'; do
        # shellcheck disable=SC2086
        if said=$($compiler $options $common -fsyntax-only -Wfatal-errors "$source" 2>&1); then
            echo "not refused: $compiler $options" >&2
            failed=1
        elif ! grep --quiet 'error: .*aqueth needs NaN and infinity' <<<"$said"; then
            printf 'refused for another reason: %s %s\n%s\n' "$compiler" "$options" "$said" >&2
            failed=1
        else
            printf '%-47s refused, with the reason\n' "$compiler $options"
        fi
    done
done
exit $failed
