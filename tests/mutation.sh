#!/usr/bin/env bash
# SPDX-License-Identifier: BSL-1.0
# Do the tests notice? Changes the library in one place at a time and demands that a test fails:
#   tests/mutation.sh [GROUP...]
# GROUPs: r22 gibbs saturation freezing (coefficients: the 6th significant digit, or the last one printed if there are
# fewer), r22-code blending parcel hydrometer (operators: + - * / < > <= >= && ||). Without a GROUP, all of them.
# Prints one line for each change that no test noticed (a survivor), then the count of its group. Exit status 1 if
# there is a survivor that tests/mutation_survivors.txt does not list with its reason. Works in a scratch copy of
# the headers; takes about two seconds a change. CXX and MUTATION_JOBS (1) may be set.
set -euo pipefail
cd "$(dirname "${BASH_SOURCE[0]}")/.."

CXX=${CXX:-g++}
jobs=${MUTATION_JOBS:-1}
known=tests/mutation_survivors.txt
scratch=$(mktemp -d)
trap 'rm -rf "$scratch"' EXIT
options=(-std=c++20 -O0 -DAQUETH_TABLES="\"$PWD/tables\"" -Itests)
echo '#include <gtest/gtest.h>' >"$scratch/common.hpp"
"$CXX" "${options[@]}" -x c++-header "$scratch/common.hpp" -o "$scratch/common.hpp.gch"

# Prints the header with change number n; nothing if there are not so many. What was changed goes to standard error.
mutate() { # coefficients|operators header n
    awk -v kind="$1" -v wanted="$3" '
        function changed_digit(number,    i, c, first, last, seen) {
            first = 0; last = 0; seen = 0
            for (i = 1; i <= length(number); ++i) {
                c = substr(number, i, 1)
                if (c == "e" || c == "E") break
                if (c !~ /[0-9]/) continue
                if (c != "0" || seen > 0) ++seen
                if (seen > 0 && seen <= 6) last = i
            }
            if (last == 0) return number  # a zero
            c = substr(number, last, 1)
            return substr(number, 1, last - 1) (c == "9" ? 8 : c + 1) substr(number, last + 1)
        }
        function note(old, new) { printf "%d: %s -> %s", NR, old, new > "/dev/stderr"; ++found }
        BEGIN {
            count = 0; found = 0
            from = "[+]|-|[*]|/|<=|>=|<|>|&&|[|][|]"
            n = split("+ - * / <= >= < > && ||", old, " ")
            split("- + / * > < >= <= || &&", new, " ")
            for (i = 1; i <= n; ++i) other[old[i]] = new[i]
        }
        {
            line = $0; done = ""
            if (line ~ /^ *(\/\/|#|static_assert|template|"|inline constexpr (source|char))/) { print; next }
            pattern = kind == "operators" ? " (" from ") " : "[0-9]+[.][0-9]+(e[+-]?[0-9]+)?"
            if (kind == "coefficients" && line !~ /[{,] *-?[0-9]+([.][0-9]+)?(e[-+]?[0-9]+)?[,}]/) { print; next }
            while (match(line, pattern)) {
                if (kind == "operators" && index(substr(line, 1, RSTART), "//")) break
                text = substr(line, RSTART, RLENGTH)
                if (kind == "operators") {
                    with = " " other[substr(text, 2, length(text) - 2)] " "
                } else {
                    with = changed_digit(text)
                }
                if (with != text && ++count == wanted) { note(text, with); text = with }
                done = done substr(line, 1, RSTART - 1) text
                line = substr(line, RSTART + RLENGTH)
            }
            print done line
        }
        END { exit found ? 0 : 9 }' "$2"
}

# Tries change n of a header: prints "killed", "stillborn" (does not compile) or "SURVIVED", and what was changed.
try() { # kind header n test...
    local kind=$1 header=$2 n=$3 room what
    shift 3
    room=$(mktemp -d "$scratch/room.XXXXXX")
    mkdir -p "$room/include"
    cp -r include/aqueth "$room/include"
    if ! mutate "$kind" "$header" "$n" >"$room/$header" 2>"$room/what"; then
        rm -rf "$room"
        return 9
    fi
    what=$(<"$room/what")
    local test verdict=SURVIVED
    for test in "$@"; do
        if ! "$CXX" "${options[@]}" -I"$room/include" -include "$scratch/common.hpp" "tests/${test}_test.cpp" \
            -o "$room/test" -lgtest_main -lgtest >/dev/null 2>&1; then
            verdict=stillborn
            break
        elif ! timeout 60 "$room/test" >/dev/null 2>&1; then
            verdict=killed
            break
        fi
    done
    rm -rf "$room"
    echo "$verdict $header:$what"
}

group() { # name kind header test...
    local name=$1 kind=$2 header=$3 n=1 running=0
    shift 3
    local results="$scratch/$name.results"
    : >"$results"
    while mutate "$kind" "$header" "$n" >/dev/null 2>&1; do
        try "$kind" "$header" "$n" "$@" >>"$results" &
        ((++running < jobs)) || { wait -n; ((running--)) || true; }
        n=$((n + 1))
    done
    wait
    local line
    while read -r line; do
        line=${line#SURVIVED }
        # Listed without its line number, which moves.
        if grep --fixed-strings --quiet -- "$(sed -E 's/:[0-9]+:/:/' <<<"$line")" "$known"; then
            echo "survived, as listed: $line"
        else
            echo "SURVIVED: $line"
            touch "$scratch/failed"
        fi
    done < <(grep '^SURVIVED' "$results" || true)
    printf '%s: %d changes, %d noticed, %d do not compile, %d survived\n' "$name" "$(wc -l <"$results")" \
        "$(grep -c '^killed' "$results" || true)" "$(grep -c '^stillborn' "$results" || true)" \
        "$(grep -c '^SURVIVED' "$results" || true)"
}

correlation=include/aqueth/correlation
run() {
    case $1 in
        r22) group r22 coefficients $correlation/oiml_r22_coefficients.hpp published/oiml_r22_formula ;;
        gibbs) group gibbs coefficients $correlation/excess_gibbs_coefficients.hpp \
            excess_gibbs published/total_pressures published/excess_enthalpies ;;
        saturation)
            group saturation coefficients $correlation/water_saturation_wagner_pruss.hpp \
                published/pure_components saturation
            group saturation coefficients $correlation/ethanol_saturation_poling.hpp \
                published/pure_components saturation
            ;;
        freezing) group freezing coefficients $correlation/freezing_point_table.hpp freezing_point ;;
        r22-code) group r22-code operators $correlation/oiml_r22.hpp \
            published/oiml_r22_formula strength density oiml_r22 ;;
        blending) group blending operators include/aqueth/blending.hpp blending properties ;;
        parcel) group parcel operators include/aqueth/parcel.hpp parcel blending ;;
        hydrometer) group hydrometer operators include/aqueth/hydrometer.hpp hydrometer ;;
        *)
            echo "mutation.sh: no group '$1'" >&2
            exit 2
            ;;
    esac
}

if (($# == 0)); then set -- r22 gibbs saturation freezing r22-code blending parcel hydrometer; fi
for name in "$@"; do run "$name"; done
[[ ! -e $scratch/failed ]]
