# SPDX-License-Identifier: BSL-1.0
set(pot "aqueth fill_jars --charge '20 L' --strength '28 %vol' --power '2 kW' --heat-loss '10 %'")
set(run "${pot} --discard '200 mL' --jar '500 mL' --end 'distillate 10 %vol'")
set(folder "d=$(mktemp -d) && trap 'rm -r $d' EXIT && cd $d &&")

# A pot still's second distillation of 28 % vol with 10 to 20 % condensed begins at 77 to 80 % vol, as published for
# double distillation (heads 78 to 82).
answers(fill_jars.all "${run}" "^Together jars 1 to 19: [0-9.]+ L at 5[67][.][0-9]+ % vol[.]\n\n  jar .*\n    1 +500[.]0 mL +77[.][0-9]+ % vol .*\n   19 +3[0-9.]+ mL .*\n  foreshots +200[.]0 mL at 7[78][.][0-9]+ % vol, discarded\n.*never close or leave a running still")
answers(fill_jars.more_condensed "aqueth fill_jars --charge '20 L' --strength '28 %vol' --power '2 kW' --heat-loss '20 %' --jar '100 mL' --end 'collected 100 mL'"
    "^Together jar 1: 100[.]0 mL at (79|80)[.][0-9]+ % vol")
answers(fill_jars.average "${run} --average '68 %vol'" "^Take jars 1 to 13 and 37[0-9.]+ mL of jar 14: 6[.]8[0-9]+ L at 68[.]00 % vol[.]\nThe cut comes 1 h 2[0-9] min after it began to boil: 46[.][0-9]+ % vol runs, which shows 46[.][0-9] at 20 °C. the pot is at 94")
answers(fill_jars.without_heads "${run} --average '68 %vol' --from-jar 4" "^Take jars 4 to 1[0-9] and .* at 68[.]00 % vol.*\n    3 .* heads .*\n    4 +500[.]0 mL +74[.]8[0-9] % vol +74[.]8 +74[.]8[0-9] % vol ")
answers(fill_jars.in_the_first_jar "${run} --average '77.3 %vol'" "^Take [0-9.]+ mL of jar 1: [0-9.]+ mL at 77[.]30 % vol")
answers(fill_jars.warm_spout "${run} --spout-temperature '30 C'" "  jar   volume at 20 °C   strength        shows at 30 °C .*\n    1 +500[.]0 mL +77[.]1[0-9] % vol +80[.][0-9] ")
answers(fill_jars.us "${run} --us" "^Together jars 1 to 19: [0-9.]+ US gal at 11[0-9.]+ US proof.*shows at 68 °F")
# The jars, the foreshots and the residue add up to the charge.
answers(fill_jars.adds_up
    "echo \"{\\\"sum\\\": $(${run} --json | awk -F '[:,]' '/\"pure_alcohol_L_20C\"/ {sum += $2} /\"cut\"/ {if (0) exit} END {printf \"%.6f\", sum}')}\""
    "^{\"sum\": 5[.](600000|599999)}\n$")
answers(fill_jars.json "${run} --average '68 %vol' --json"
    "\"jars\": .*\"strength_percent_vol_20C\": 77[.].*\"jar\": 1,\n +\"reading_percent_vol\": 77[.].*\"average_percent_vol_20C\": 77[.].*\"cut\": {\n +\"first_jar\": 1,\n +\"whole_jars\": 13,\n +\"of_the_next_jar_L_20C\": 0[.]37.*\"elapsed_min\": 8")
answers(fill_jars.no_cut_json "${run} --json" "\"cut\": null,")
answers(fill_jars.csv "${run} --from-jar 2 --csv" "^jar,volume_L_20C,strength_percent_vol_20C,reading_percent_vol,average_percent_vol_20C,end_min,end_distillate_percent_vol_20C,end_reading_percent_vol\n1,0[.][45][0-9]*,77[.][0-9]+,77[.][0-9]+,,[0-9.]+,76[.][0-9]+,76[.][0-9]+\n2,")
answers(fill_jars.column "aqueth fill_jars --charge '25 L' --strength '11 %vol' --power '2 kW' --plates 4 --reflux 3 --total-reflux '20 min' --jar '250 mL' --end 'distillate 60 %vol'" "^Together jars 1 to ")
answers(fill_jars.drawing "${folder} ${run} --average '68 %vol' --draw a.svg && grep -c 'average so far' a.svg" "drawing +a[.]svg.*\n[1-9]\n$")
answers(fill_jars.drawing_us "${folder} ${run} --us --draw a.svg && grep -c 'US proof' a.svg" "\n[1-9]\n$")

refuses(fill_jars.average_too_strong "${run} --average '85 %vol'" "--average '85 %vol': average of the jars 85 % vol at 20 °C is outside 57[.][0-9]+ to 77[.][0-9]+")
refuses(fill_jars.average_too_weak "${run} --average '40 %vol'" "--average '40 %vol': average of the jars 40 % vol at 20 °C is outside 57[.]")
refuses(fill_jars.no_such_jar "${run} --from-jar 20" "--from-jar '20': the run fills 19 jars")
refuses(fill_jars.jar_nought "${run} --from-jar 0" "--from-jar '0': expected a whole number from 1 to 1000")
refuses(fill_jars.thimbles "${pot} --jar '1 mL' --end 'distillate 10 %vol'" "--jar '1 mL': number of jars [0-9]+ is outside 1 to 990")
refuses(fill_jars.no_jar "${pot} --jar '0 L' --end 'distillate 10 %vol'" "--jar '0 L': volume 0 L is outside")
refuses(fill_jars.all_foreshots "${pot} --jar '500 mL' --end 'distillate 10 %vol' --discard '15 L'" "--discard '15 L': discarded volume 15 L is outside 0 to")
refuses(fill_jars.hot_spout "${run} --spout-temperature '60 C'" "--spout-temperature '60 C': temperature of the spout 60 °C is outside -20 to 40")
refuses(fill_jars.past_already "${pot} --jar '500 mL' --end 'pot 40 %vol'" "--end 'pot 40 %vol': strength in the still 40 % vol")
refuses(fill_jars.keeps_nothing "${pot} --jar '500 mL' --end 'strength lost'" "--end 'strength lost': needs --keep-strength")
refuses(fill_jars.stray_replace "${run} --replace" "--replace needs --draw")
refuses(fill_jars.drawing_pdf "${run} --draw a.pdf" "SVG or PNG")
refuses(fill_jars.not_a_number "${run} --average 'nan %vol'" "--average 'nan %vol'")

answers(fill_jars.discards_nothing "${pot} --discard '0 mL' --jar '500 mL' --end 'distillate 10 %vol'" "^Together jars 1 to [0-9]+: .*left in the pot")
answers(fill_jars.residue_with_extract "aqueth fill_jars --charge '20 L' --strength '9 %vol' --extract '2 plato' --power '2 kW' --jar '1 L' --end 'distillate 20 %vol' --json"
    "\"residue\": {.*\"real_extract_P\": 2[.][0-9]+")
