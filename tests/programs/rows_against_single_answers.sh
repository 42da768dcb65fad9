#!/bin/bash
# SPDX-License-Identifier: BSL-1.0
# rows_against_single_answers.sh <count>: answers a file of that many readings at once. A thousand of them are asked for
# one by one as well, as the task itself answers, and every row with one of these readings is compared. (Readings repeat
# after 11550 rows. In the second file all cells but the first name their unit in another spelling, for which there is
# no quick loop.)
set -eu -o pipefail
here=$(dirname "$(readlink -f "$0")")
folder=$(mktemp -d)
trap 'rm -rf "$folder"' EXIT
cd "$folder"
"$here/rows_of_readings.sh" "${1:?usage: rows_against_single_answers.sh <count>}" >rows.csv
aqueth many correct_reading --rows rows.csv --out answers.csv 2>counted
"$here/rows_of_readings.sh" 1000 | awk -F, '
    NR == 1 { print "jar,reading,temperature"; next }
    /^[0-9]+,[0-9]+\.[0-9],[0-9.]+$/ {
        print $1 "," $2 (NR == 2 ? " %vol" : " % vol") "," $3 (NR == 2 ? " C" : " °C") }' >single.csv
aqueth many correct_reading --rows single.csv --results \
    temperature_C,true_strength,strength_percent_vol_20C,strength_percent_mass,us_proof,density_kg_m3 --out singly.csv
head -n 1 answers.csv
awk -F, '
    FNR == 1 { file++; for (k = 4; k <= NF; k++) at[file, $k] = k; for (k = 4; k <= 9; k++) if (file == 1) name[k] = $k
               next }
    file == 1 { split($2, reading, " "); split($3, degrees, " ")
                for (k = 4; k <= 9; k++) answer[reading[1] + 0, degrees[1] + 0, k] = $k + 0
                known[reading[1] + 0, degrees[1] + 0] = 1; next }
    $NF != "" { refused++; next }
    { answered++; sum += $at[2, "true_strength"]
      key = ($2 + 0) SUBSEP ($3 + 0)
      if (!(key in known)) next
      compared++
      for (k = 4; k <= 9; k++) { d = $at[2, name[k]] - answer[key, k]; if (d < 0) d = -d; if (d > largest) largest = d } }
    END { printf "%d answered, %d refused, %d compared, sum %.0f, largest difference %s\n", answered, refused, compared,
                 sum, largest < 2e-7 ? "below 2e-7" : largest }' singly.csv answers.csv
cat counted
awk -F, 'NR > 1 && !/,$/' answers.csv
