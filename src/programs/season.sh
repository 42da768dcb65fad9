#!/usr/bin/env bash
# SPDX-License-Identifier: BSL-1.0
# A season of the Quillbeck teaching stillhouse, an invented place (a pot for charges to 25 L in a vessel of 40 L):
#   season.sh <folder of the programs> <new folder for answers, pictures and record>
# No figure is typed twice. Stills, stem, altitude and prices are those of settings_example.toml; each answer is kept in
# JSON, and the next task takes what it needs from it. Local law and licensed practice decide what may be distilled.
set -euo pipefail
if (($# != 2)) || [[ ! -x $1/aqueth || -e $2 ]]; then
    echo "season.sh: usage: season.sh <folder of the programs> <new folder>" >&2
    exit 2
fi
PATH="$(cd "$1" && pwd):$PATH" AQUETH_SETTINGS="$(cd "$(dirname "$0")" && pwd)/settings_example.toml"
export AQUETH_SETTINGS
mkdir "$2" && cd "$2"
charge='20 L' strip_end='distillate 8 %vol' cut='distillate 82 %vol' label='43 %vol' bottle='500 mL'
run=(--still quillbeck --total-reflux '30 min' --discard '250 mL' --end 'distillate 20 %vol') steps='70 %vol, 55 %vol'
# answer <name> <task> <options>: keeps the answer as <name>.json and its page in the record
answer() { aqueth "${@:2}" --record season.md --json >"$1.json"; }
# vat <number> <original gravity> <final gravity> <its temperature>: one wash, one strip in the pot without its column
vat() {
    answer "wash$1" judge_wash --volume "$charge" --original "$2" --final "$3" --final-temperature "$4"
    answer "strip$1" forecast_run --from "wash$1.json" --still pot --names strip --end "$strip_end" --draw "strip$1.svg"
}
vat 1 '1.076 sg' '0.993 sg' '26 C'
vat 2 '1.074 sg' '0.9945 sg' '24 C'
vat 3 '1.0785 sg' '0.9925 sg' '25 C'
# The low wines go under the column: fractions, jars, and what the whole season costs for each bottle.
answer low_wines blend_lots --from strip1.json#strip --from strip2.json#strip --from strip3.json#strip
answer spirit forecast_run --from low_wines.json "${run[@]}" --cuts "$cut" --draw spirit.svg
answer jars fill_jars --from low_wines.json "${run[@]}" --jar '400 mL' --draw jars.svg
answer plan plan_season --from wash1.json --wash "$((3 * ${charge% L})) L" --pot-charge "$charge" \
    --strip-end "$strip_end" "${run[@]}" --cuts "$cut" --between '45 min' --bottle "$bottle of $label"
# The hearts go down in steps. The stem is read in the vat on the next day and held against the label.
answer vat dilute_spirit --from spirit.json#hearts --steps "$steps" --target "$label" --room '18 C' --draw ladder.svg
answer reading correct_reading --reading '43.7 %vol' --temperature '22 C' --draw stem.svg
answer doubt judge_uncertainty --from reading.json --thermometer '0.2 K'
answer bottles fill_bottles --from vat.json#product --bottle "$bottle"
answer label check_label --from bottles.json#spirit --from reading.json --from doubt.json
cat season.md
