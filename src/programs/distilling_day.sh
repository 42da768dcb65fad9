#!/usr/bin/env bash
# SPDX-License-Identifier: BSL-1.0
# A distilling day of the Quillbeck teaching stillhouse, an invented place with a 4-plate column and a pot
# named 25 L after the charge it takes: its vessel holds 40 L, so that a third stays empty:
#   distilling_day.sh <folder of the programs> [<picture.svg>]
# Shows every command and what it answers; draws the run if a picture is named.
set -euo pipefail

if (($# < 1 || $# > 2)) || [[ ! -x $1/aqueth ]]; then
    echo "usage: distilling_day.sh <folder of the programs, such as build/main/bin> [<picture.svg>]" >&2
    exit 2
fi
programs=$(cd "$1" && pwd)
picture=${2:+ --draw \'$(realpath -m "$2")\' --replace}
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
A distilling day at the Quillbeck teaching stillhouse
=====================================================
25 L of sugar wash go under the 4-plate column, into a pot whose vessel holds 40 L. The stillhouse measures
gravities, volumes and temperatures on the day; everything else is computed from them. Local law and licensed
practice decide what may be distilled.
TEXT

tell <<'TEXT'
1. Weeks before: how much sugar for 25 L at 11 % vol?
TEXT
show "aqueth judge_wash --volume '25 L' --wanted '11 %vol'"

tell <<'TEXT'
2. Today: what is in it? The gravity fell from 1.076 to 0.993, read in a warm vat.
TEXT
show "aqueth judge_wash --volume '25 L' --original '1.076 sg' --final '0.993 sg' --final-temperature '26 C'" wash.json

tell <<'TEXT'
3. How good is the column? An earlier run gave 1.8 L of 88 % vol from 25 L of 11 % vol, with a reflux ratio of 3,
   after 100 mL of foreshots. About 5 % of the vapour condenses in neck and head.
TEXT
show "aqueth learn_still --run '25 L, 11 %vol, 100 mL, 1.8 L, 88 %vol' --reflux 3 --heat-loss '5 %'" column.json

tell <<'TEXT'
4. What will today's run give? The wash of step 2, cooled to 20 °C, under the column of step 3: 100 mL of
   foreshots, hearts down to 80 % vol, tails down to 20 % vol.
TEXT
show "aqueth forecast_run --from wash.json --from column.json --temperature '20 C' --power '2 kW' \\
      --pot-heat '4 kJ/K' --pot-loss '3 W/K' --discard '100 mL' \\
      --cuts 'distillate 80 %vol' --end 'distillate 20 %vol'$picture"
