#!/usr/bin/env bash
# SPDX-License-Identifier: BSL-1.0
# Cost of including a public header, in a source file that includes it and uses nothing.
#   bench/compile_cost.sh > docs/compile_cost.txt     the report: two minutes
#   bench/compile_cost.sh --check [include directory]  fails if a header costs a fifth more than in the report
# The report: seconds of processor time at -O2, kB of source that the compiler reads, kB of it that are ours, MB of memory
# that it uses, bytes of code. Source and memory are the same in every run, on a busy machine too, so they are the budget.
# The check compares the source of every header, ours apart, as most of the rest is the standard library's and Boost's. Of a
# few it compares the memory, in which templates show. It takes 20 s of processor time, and ends with status 77 if the
# compiler is not that of the report. If a header may cost more, write the report again.
set -euo pipefail
root=$(cd "$(dirname "${BASH_SOURCE[0]}")/.." && pwd)
check=0
if [[ ${1-} == --check ]]; then
    check=1
    shift
fi
include=${1:-$root/include}
compiler=${CXX:-c++}
report=$root/docs/compile_cost.txt
weighed=(aqueth/aqueth.hpp aqueth/array.hpp aqueth/plain/plain.hpp aqueth/density.hpp)
[[ -d $include/aqueth ]] || { echo "compile_cost.sh: no headers of aqueth in '$include'" >&2; exit 2; }

work=$(mktemp -d)
trap 'rm -rf "$work"' EXIT
flags=(-std=c++20 -O2 "-I$include")
[[ -d /usr/include/eigen3 ]] && flags+=(-isystem /usr/include/eigen3) # for still/learning.hpp
version=$("$compiler" --version | head -1 | sed 's/^[^ ]* (/g++ (/') # g++ says the name by which it was called
headers=$(cd "$include" && find aqueth -name '*.hpp' -not -path '*/detail/*' | LC_ALL=C sort)

# kilobytes <header>: size of all files that the compiler reads, and of ours among them
kilobytes() {
    printf '#include <%s>\n' "$1" | "$compiler" "${flags[@]}" -x c++ -M - |
        tr -d '\\\n' | cut --delimiter=: --fields=2- | xargs stat --dereference --format='%s %n' |
        awk -v ours="$include/" '{ sum += $1; if (index($2, ours) == 1) own += $1 } END { printf "%.0f %.0f", sum / 1000, own / 1000 }'
}

# seconds_and_megabytes <header>: processor time and memory of the compiler, and an object file
seconds_and_megabytes() {
    printf '#include <%s>\n' "$1" >"$work/one.cpp"
    "$compiler" "${flags[@]}" -ftime-report -c "$work/one.cpp" -o "$work/one.o" 2>&1 |
        awk '$1 == "TOTAL" { memory = $NF; scale = memory ~ /k$/ ? 1e-3 : memory ~ /G$/ ? 1e3 : 1; printf "%.2f %.0f", $3, memory * scale }'
}

if ((check)); then
    written_with=$(sed -n '1s/^.* by //p' "$report")
    if [[ $version != "$written_with" ]]; then
        echo "compile_cost.sh: left out: this is $version, the report is by $written_with"
        exit 77
    fi
    costly=0
    judge() { # <header> <figure> <budget> <unit>; 5 units more are allowed, for small headers
        if [[ ! $2 =~ ^[1-9][0-9]*$ ]]; then
            echo "$1 could not be measured: $4" >&2
            costly=1
        elif (($2 * 5 > $3 * 6 && $2 > $3 + 5)); then
            echo "$1 costs $2 $4, a fifth more than its budget of $3 $4" >&2
            costly=1
        fi
    }
    for header in $headers; do
        if ! read -r all_budget own_budget memory_budget < <(awk -v header="$header" '$1 == header { print $3, $4, $5 }' "$report"); then
            echo "$header has no budget: write docs/compile_cost.txt again" >&2
            costly=1
            continue
        fi
        read -r all own < <(kilobytes "$header"; echo)
        judge "$header" "$all" "$all_budget" kB
        judge "$header" "$own" "$own_budget" "kB of ours"
        for each in "${weighed[@]}"; do
            [[ $each != "$header" ]] || judge "$header" "$(seconds_and_megabytes "$header" | cut -d ' ' -f 2)" "$memory_budget" MB
        done
    done
    ((costly == 0)) || echo "If that is wanted: bench/compile_cost.sh > docs/compile_cost.txt" >&2
    exit "$costly"
fi

printf 'one run on %s by %s\n' "$(date '+%-d %B %Y')" "$version"
printf '%-50s %8s %7s %7s %6s %7s\n' header seconds kB ours MB bytes
for header in string $headers; do
    read -r seconds megabytes <<<"$(seconds_and_megabytes "$header")"
    bytes=$(size "$work/one.o" | awk 'NR == 2 { print $1 + $2 + $3 }')
    read -r all own < <(kilobytes "$header"; echo)
    printf '%-50s %8s %7s %7s %6s %7s\n' "$header" "$seconds" "$all" "$own" "$megabytes" "$bytes"
done
