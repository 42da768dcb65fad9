#!/usr/bin/env bash
# SPDX-License-Identifier: BSL-1.0
# A season of the Quillbeck teaching stillhouse, an invented place with a 25 L pot and a 4-plate column:
#   season.sh <folder of the programs> <new folder for answers, pictures and record>
# No figure is typed twice: each answer is kept in JSON, and the next task takes what it needs from it.
set -euo pipefail
if (($# != 2)) || [[ ! -x $1/aqueth || -e $2 ]]; then
    echo "season.sh: usage: season.sh <folder of the programs> <new folder>" >&2
    exit 2
fi
PATH="$(cd "$1" && pwd):$PATH"
mkdir "$2" && cd "$2"
# answer <name> <task> <options>: keeps the answer as <name>.json and its page in the record
answer() { aqueth "${@:2}" --record season.md --json >"$1.json"; }

pot=(--power '2 kW' --pot-heat '4 kJ/K' --pot-loss '3 W/K')
spirit_run=(--from low_wines.json --from column.json "${pot[@]}" --discard '250 mL' --end 'distillate 20 %vol')

# The wash, as measured in the warm vat. Each of three strips takes one vat.
answer wash judge_wash --volume '24 L' --original '1.076 sg' --final '0.993 sg' --final-temperature '26 C'
answer strip forecast_run --from wash.json "${pot[@]}" --names 'strip' --end 'distillate 8 %vol' --draw strip.svg
answer low_wines blend_lots --from strip.json#strip --from strip.json#strip --from strip.json#strip

# The spirit run, under the column as an earlier run showed it.
answer column learn_still --run '25 L, 11 %vol, 100 mL, 1.8 L, 88 %vol' --reflux 3 --heat-loss '5 %'
answer spirit forecast_run "${spirit_run[@]}" --cuts 'distillate 80 %vol' --draw spirit.svg
answer jars fill_jars "${spirit_run[@]}" --jar '400 mL' --draw jars.svg

# The hearts become bottles; the stem, read in the vat on the next day, is held against the label.
answer vat dilute_spirit --from spirit.json#hearts --target '43 %vol' --portions 2
answer bottles fill_bottles --from vat.json#product --bottle '500 mL'
answer reading correct_reading --reading '43.9 %vol' --temperature '22 C'
answer label check_label --from bottles.json#spirit --from reading.json --uncertainty '0.08 %vol'
cat season.md
