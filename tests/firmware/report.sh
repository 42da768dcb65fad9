#!/usr/bin/env bash
# SPDX-License-Identifier: BSL-1.0
# report.sh [--check] <build folder of tests/firmware>
# The size report of the density meter: flash and RAM by arm-none-eabi-size, instructions and stack as measure.cpp counts
# them in QEMU. With --check it compares with docs/firmware_report.txt and fails where a figure is off by more than 10 %.
set -euo pipefail

check=0
if [[ $1 == --check ]]; then
    check=1
    shift
fi
docs=$(realpath "$(dirname "${BASH_SOURCE[0]}")/../../docs")
cd "$1"

emulate() {
    qemu-system-arm -M mps2-an386 -nographic -monitor none -serial null -icount shift=0 \
        -semihosting-config enable=on,target=native -kernel "$1" 2>&1 # where the emulator writes what the image prints
}

report() {
    printf '%s, %s\n\n' "$(arm-none-eabi-g++ --version | sed 's/ (.*) / /; q')" "$(qemu-system-arm --version | sed 's/ (.*//; q')"
    printf '%-8s %-6s %-8s %12s %10s %14s %14s %14s\n' scalar option guess 'flash bytes' 'RAM bytes' 'stack bytes' \
        'instructions' 'at most'
    local scalar level guess text data bss mean most stack figures
    for scalar in float double; do
        for guess in compact table; do
            for level in Os O2; do
                read -r text data bss _ < <(arm-none-eabi-size "density_meter_${scalar}_${level}_$guess.elf" | tail -1)
                figures=$(emulate "measure_${scalar}_${level}_$guess.elf") || {
                    echo "measure_${scalar}_${level}_$guess.elf: $figures" >&2
                    return 1
                }
                read -r mean most stack _ <<<"$figures"
                printf '%-8s %-6s %-8s %12s %10s %14s %14s %14s\n' "$scalar" "-$level" "$guess" $((text + data)) \
                    $((data + bss)) "$stack" "$mean" "$most"
            done
        done
    done
}

if ((!check)); then
    report
    exit
fi
found=$(report)
paste <(tail -n +3 <<<"$found") <(tail -n +3 "$docs/firmware_report.txt") | awk '
    { for (k = 1; k <= 8; ++k) {
          was = $(k + 8)
          if (NR == 1) continue
          if (k <= 3 ? $k != was : $k > 1.1 * was + 8 || $k < 0.9 * was - 8) {
              print $1, $2, $3 ": " $k ", and in docs/firmware_report.txt " was; bad = 1
          }
      } }
    END { exit bad || NR != 9 }'
