#!/usr/bin/env bash
# SPDX-License-Identifier: BSL-1.0
# A distilling day of the Quillbeck teaching stillhouse, an invented place with a 25 L pot and a 4-plate column:
#   distilling_day.sh <folder of the programs> [<picture.svg>]
# Shows every command and what it answers; draws the run if a picture is named.
set -euo pipefail

if (($# < 1 || $# > 2)) || [[ ! -x $1/aqueth ]]; then
    echo "usage: distilling_day.sh <folder of the programs, such as build/demo/bin> [<picture.svg>]" >&2
    exit 2
fi
programs=$(cd "$1" && pwd)
picture=${2:+ --draw \'$2\' --replace}

tell() { printf '\n' && cat; }
show() {
    printf '\n$ %s\n' "$1"
    PATH="$programs:$PATH" bash -c "$1"
}
# figure <command> <name> <digits>: a figure of the command's answer, as somebody would write it into a notebook
figure() {
    local found
    found=$(PATH="$programs:$PATH" bash -c "$1 --json" | sed -n "s/^  \"$2\": \([-+.0-9e]*\),*\$/\1/p")
    if [[ -z $found ]]; then
        echo "distilling_day.sh: no $2 in the answer of: $1" >&2
        exit 1
    fi
    LC_ALL=C printf "%.$3f" "$found"
}

cat <<'TEXT'
A distilling day at the Quillbeck teaching stillhouse
=====================================================
25 L of sugar wash go into the pot under the 4-plate column. The stillhouse measures gravities, volumes and
temperatures on the day; everything else is computed from them. Local law and licensed practice decide what may be
distilled.
TEXT

tell <<'TEXT'
1. Weeks before: how much sugar for 25 L at 11 % vol?
TEXT
show "aqueth judge_wash --volume '25 L' --wanted '11 %vol'"

tell <<'TEXT'
2. Today: what is in it? The gravity fell from 1.076 to 0.993, read in a warm vat.
TEXT
wash="aqueth judge_wash --volume '25 L' --original '1.076 sg' --final '0.993 sg' --final-temperature '26 C'"
show "$wash"
strength=$(figure "$wash" strength_percent_vol_20C 1)
extract=$(figure "$wash" real_extract_P 2)

tell <<'TEXT'
3. How good is the column? An earlier run gave 1.8 L of 88 % vol from 25 L of 11 % vol, with a reflux ratio of 3,
   after 100 mL of foreshots. About 5 % of the vapour condenses in neck and head.
TEXT
column="aqueth learn_still --run '25 L, 11 %vol, 100 mL, 1.8 L, 88 %vol' --reflux 3 --heat-loss '5 %'"
show "$column"
stages=$(figure "$column" stages 1)

tell <<TEXT
4. What will today's run give? The wash of step 2, $strength % vol with $extract °P, under the column of step 3,
   $stages stages: 100 mL of foreshots, hearts down to 80 % vol, tails down to 20 % vol.
TEXT
show "aqueth forecast_run --charge '25 L' --strength '$strength %vol' --extract '$extract plato' --power '2 kW' \\
      --pot-heat '4 kJ/K' --pot-loss '3 W/K' --stages $stages --reflux 3 --heat-loss '5 %' --discard '100 mL' \\
      --cuts 'distillate 80 %vol' --end 'distillate 20 %vol'$picture"
