#!/usr/bin/env bash
# SPDX-License-Identifier: BSL-1.0
# The costs of linking aqueth, measured: seconds to include it, bytes of the shared library and of firmware, allocations
# of typed calls. 1 if a goal is missed.
#   tests/sizes.sh > docs/size_report.txt
# Seconds depend on the machine and its load: they are user time of g++, the least of five runs. Needs g++, and for
# firmware arm-linux-gnueabihf-g++ or arm-none-eabi-g++; a compiler that is not there is named.
set -euo pipefail
cd "$(dirname "${BASH_SOURCE[0]}")/.."
work=$(mktemp --directory)
trap 'rm -rf "$work"' EXIT
missed=0

# row <what> <measured> <unit> [<goal>]
row() {
    local verdict=
    if [[ -n ${4:-} ]]; then
        verdict="goal at most $4"
        if awk "BEGIN { exit !($2 > $4) }"; then
            verdict+=": MISSED"
            missed=1
        fi
    fi
    printf '%-58s %8s %-11s %s\n' "$1" "$2" "$3" "$verdict" | sed 's/ *$//'
}

version=$(sed -n 's/^#define AQUETH_VERSION_[A-Z]* //p' include/aqueth/version.hpp | paste -sd.)
echo "aqueth $version, $(date -u +%Y-%m-%d), $(g++ --version | head -n 1)"
of_cpu() { sed -n "s/^$1[[:space:]]*: //p" /proc/cpuinfo | head -n 1; }
printf '%s, family %s, model %s; %s processors, load average %s\n' "$(of_cpu 'model name')" "$(of_cpu 'cpu family')" \
    "$(of_cpu model)" "$(nproc)" "$(cut -d' ' -f1 /proc/loadavg)"

echo
echo "Seconds of user time to include a header (g++ -std=c++20 -fsyntax-only)"
TIMEFORMAT=%U
include() {
    printf '#include <%s>\n' "$1" >"$work/one.cpp"
    local least
    least=$(for _ in 1 2 3 4 5; do
        { time g++ -std=c++20 -Iinclude -fsyntax-only "$work/one.cpp"; } 2>&1
    done | sort -g | head -n 1)
    row "$1" "$least" s "${2:-}"
}
include string
include aqueth/plain/plain.hpp 0.4
include aqueth/array.hpp 1.5
include aqueth/aqueth.hpp 2.3

echo
echo "Shared library for C, built as Release and stripped"
cmake -S . -B "$work/build" -DCMAKE_BUILD_TYPE=Release -DAQUETH_PROGRAMS=OFF >"$work/log"
cmake --build "$work/build" --parallel 2 >>"$work/log"
strip "$work/build/src/c/libaqueth.so" -o "$work/libaqueth.so"
row libaqueth.so "$(stat --format=%s "$work/libaqueth.so")" bytes

echo
echo "Firmware: compact strength from density, 32-bit ARM, -Os, code and data with the compiler's own arithmetic"
# firmware <title> <scalar> <goal or ""> <compiler> <option>...
firmware() {
    local title=$1 scalar=$2 goal=$3 basis
    shift 3
    if ! command -v "$1" >/dev/null; then
        echo "$title: no $1 on this machine"
        return
    fi
    for basis in "% mass" "% vol"; do
        "$@" -std=c++20 -Os -mthumb -fno-exceptions -fno-rtti -fno-unwind-tables -fno-asynchronous-unwind-tables \
            -ffunction-sections -fdata-sections -DSCALAR="$scalar" $([[ $basis == *vol* ]] && echo -DBY_VOLUME) -Iinclude \
            tests/sizes/firmware.cpp -nostdlib -static -Wl,--gc-sections,--build-id=none -lgcc -o "$work/firmware"
        row "$title, $scalar, $basis" "$(size "$work/firmware" | awk 'NR == 2 { print $1 + $2 }')" bytes "$goal"
    done
}
linux=(arm-linux-gnueabihf-g++ -march=armv7-a+fp)
for scalar in float double; do
    goal=
    [[ $scalar == float ]] && goal=8000
    firmware "float in hardware" $scalar "$goal" "${linux[@]}" -mfpu=vfpv3xd
    firmware "double in hardware" $scalar "$goal" "${linux[@]}" -mfpu=vfpv3-d16
    firmware "Cortex-M4" $scalar "$goal" arm-none-eabi-g++ -mcpu=cortex-m4 -mfloat-abi=hard -mfpu=fpv4-sp-d16
done

echo
echo "Allocations of one call"
g++ -std=c++20 -O2 -Iinclude tests/sizes/allocations.cpp -o "$work/allocations"
"$work/allocations" || missed=1
exit $missed
