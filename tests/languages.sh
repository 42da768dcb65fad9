#!/usr/bin/env bash
# SPDX-License-Identifier: BSL-1.0
# One table of what other languages get: version, size, time of a density, and the questions of tests/vectors that they
# answer as C++ does. Build the preset bindings first. Times are of this machine, which should be quiet.
#   tests/languages.sh [<build directory>] > docs/languages_report.txt
set -euo pipefail
cd "$(dirname "${BASH_SOURCE[0]}")/.."
source=$PWD
build=$(realpath "${1:-build/bindings}")
version=$(sed -n 's/^#define AQUETH_VERSION_[A-Z]* //p' include/aqueth/version.hpp | paste -sd.)

# asked <pattern of tests>: "<questions>, <refused>" as the test that matches prints it, or why there is none
asked() {
    local line
    line=$(ctest --test-dir "$build" --tests-regex "$1" --verbose 2>/dev/null | grep -E '[0-9]+ questions' |
        grep -o -E '[0-9]+ questions[^0-9]+[0-9]+ of them refused' | head -n 1 | grep -o -E '[0-9]+' | paste -sd/ || true)
    echo "${line:-not run here}"
}
# "refused" counts answers without a value. SQLite turns a question of NaN into one of NULL, which is not refused.
row() { printf '%-34s %-8s %10s %12s %12s   %s\n' "$@"; }

of_cpu() { sed -n "s/^$1[[:space:]]*: //p" /proc/cpuinfo | head -n 1; }
printf '%s, family %s, model %s\n\n' "$(of_cpu 'model name')" "$(of_cpu 'cpu family')" "$(of_cpu model)"
row "language" "version" "kB" "ns a call" "ns an element" "questions/refused"

if [[ -d $build/python ]]; then
    IFS='|' read -r _ language number size call element _ < <(PYTHONPATH=$build/python /usr/bin/python3 bench/python_module.py --row)
    row "${language## }" "${number// /}" "${size//[ kB]/}" "${call// /}" "${element// /}" "$(asked '^python[.]vectors$')"
fi
if [[ -f $build/src/wasm/consumer/speed.mjs ]]; then
    read -r _ call element < <(cd "$build/src/wasm/consumer" && node speed.mjs | grep '^density_kg_m3')
    size=$(($(stat -c %s "$build/src/wasm/consumer/node_modules/aqueth/aqueth.js") / 1000))
    row "JavaScript, Node $(node --version | tr -d v)" "$version" "$size" "$call" "$element" "$(asked '^javascript[.]node$')"
fi
if [[ -f $build/src/sqlite/aqueth_sqlite.so ]]; then
    lines=$(ctest --test-dir "$build" --tests-regex '^sqlite[.]speed$' --verbose)
    alone=$(grep -o -E 'sum alone +[0-9.]+' <<<"$lines" | grep -o -E '[0-9.]+$')
    density=$(grep -o -E 'million densities +[0-9.]+' <<<"$lines" | grep -o -E '[0-9.]+$')
    call=$(awk -v a="$alone" -v d="$density" 'BEGIN { printf "%.0f", (d - a) * 1000 }')
    size=$(($(stat -c %s "$build/src/sqlite/aqueth_sqlite.so") / 1000))
    row "SQLite $(sqlite3 --version | cut -d' ' -f1)" "$version" "$size" "$call" "-" "$(asked '^sqlite[.]vectors$')"
fi
if grep -q 'firmware[.]vectors_double' < <(ctest --test-dir "$build" --show-only); then
    size=$(awk '$1 == "double" && $2 == "-O2" && $3 == "table" { printf "%.0f", $4 / 1000 }' docs/firmware_report.txt)
    count=$(awk '$1 == "double" && $2 == "-O2" && $3 == "table" { print $7 }' docs/firmware_report.txt)
    row "C++ on a Cortex-M4F, double" "$version" "$size" "$count*" "-" "$(asked '^firmware[.]vectors_double$')"
    size=$(awk '$1 == "float" && $2 == "-O2" && $3 == "table" { printf "%.0f", $4 / 1000 }' docs/firmware_report.txt)
    count=$(awk '$1 == "float" && $2 == "-O2" && $3 == "table" { print $7 }' docs/firmware_report.txt)
    row "C++ on a Cortex-M4F, float" "$version" "$size" "$count*" "-" "$(asked '^firmware[.]vectors_float$')"
    echo
    echo "* instructions of a strength from a density, counted in an emulator"
fi
echo "Refused: answers with a reason instead of a value. In SQL, NaN is NULL, and NULL in is NULL out: the 142 questions with NaN are not counted."
