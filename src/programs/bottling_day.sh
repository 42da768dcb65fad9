#!/usr/bin/env bash
# SPDX-License-Identifier: BSL-1.0
# A bottling day of the Quillbeck teaching stillhouse, an invented place (docs/tasks.md, "Before you start"):
#   bottling_day.sh <folder of the programs>
# Shows every command and what it answers.
set -euo pipefail

if (($# != 1)) || [[ ! -x $1/aqueth ]]; then
    echo "bottling_day.sh: usage: bottling_day.sh <folder of the programs, such as build/main/bin>" >&2
    exit 2
fi
programs=$(cd "$1" && pwd)

notebook=$(mktemp -d)
trap 'rm -r "$notebook"' EXIT
cd "$notebook"

tell() { printf '\n' && cat; }
# show <command> [<file>]: shows the answer; keeps it in the file, as the next task reads it
show() {
    printf '\n$ %s\n' "$1${2:+        # with --json also into $2}"
    PATH="$programs:$PATH" bash -c "$1"
    if (($# > 1)); then PATH="$programs:$PATH" bash -c "$1 --json" >"$2"; fi
}

cat <<'TEXT'
A bottling day at the Quillbeck teaching stillhouse
===================================================
1.85 L of spirit are to become bottles of 350 mL at 43 % vol. The stillhouse measures the
volumes, readings and temperatures on the day; everything else is computed from them.
Local law and licensed practice decide what may be distilled and sold.
TEXT

tell <<'TEXT'
1. What is it? The alcoholometer, made for 20 °C, shows 81.5. But the spirit is at 28 °C: warm
   spirit is lighter, the stem sinks deeper, and it reads too high.
TEXT
show "aqueth correct_reading --reading '81.5 %vol' --temperature '28 C'" spirit.json

tell <<'TEXT'
2. How much water? The water in the jug is at 14 °C. The distiller weighs it, because masses add
   up and volumes do not, and adds it in two halves, stirred in between. The volume lost in mixing
   is listed below. Mixing makes heat: the mixture is nearly as warm as the spirit was.
TEXT
show "aqueth dilute_spirit --from spirit.json --amount '1.85 L' --target '43 %vol' \\
      --water-temperature '14 C' --portions 2" vat.json

tell <<'TEXT'
3. Is it right? After an hour the vat is still at 26 °C. If it holds 43 % vol, the alcoholometer
   shows more than 43 in it, and that is no reason to add more water:
TEXT
show "aqueth correct_reading --from vat.json --temperature '26 C'"

tell <<'TEXT'
   In the evening it is at 22 °C, the bubbles are gone, and the alcoholometer shows 43.8:
TEXT
show "aqueth correct_reading --reading '43.8 %vol' --temperature '22 C'" evening.json

tell <<'TEXT'
4. Into bottles. The vat holds 3.37 L at 22 °C. A label means 20 °C, and the spirit is warmer, so
   each bottle takes a little more than its label says.
TEXT
show "aqueth fill_bottles --from evening.json --amount '3.37 L' --bottle '350 mL'"

tell <<'TEXT'
Nine bottles, and a sample for the shelf.
TEXT
