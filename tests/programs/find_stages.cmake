# SPDX-License-Identifier: BSL-1.0
# What forecast_run says of a still with 3 stages comes back as 3 stages.
answers(find_stages.of_a_forecast
    "q=$(forecast_run --charge '25 L' --strength '11 %vol' --power '2 kW' --stages 3 --reflux 3 --discard '100 mL' --cuts 'collected 1.8 L' --end 'collected 2 L' | awk '$1 == 2 {print $4}'); find_stages --run \"25 L, 11 %vol, 100 mL, 1.8 L, $q %vol\" --reflux 3"
    "^The still works like 3[.]0 theoretical stages above the pot [(]2[.][89] to 3[.][1-4][)].*do not tell reflux and stages")
answers(find_stages.several_runs
    "find_stages --run '25 L, 11 %vol, 100 mL, 0.3 L, 90.9 %vol' --run '25 L, 11 %vol, 100 mL, 2.9 L, 79 %vol' --reflux 3 --json"
    "\"stages\": [0-9.]+,.*\"explains_the_runs\": (true|false),.*\"candidates\": ")
answers(find_stages.contradiction
    "find_stages --run '25 L, 11 %vol, none, 1.8 L, 88 %vol' --run '25 L, 11 %vol, none, 0.5 L, 60 %vol' --reflux 3"
    "disagreement +1[0-9][.].*No number of stages explains all the runs.*contradict")
answers(find_stages.no_number_is_too_many "find_stages --run '25 L, 11 %vol, none, 1 L, 95.9 %vol' --reflux 3"
    "^The still works like [0-9.]+ (stages or more|theoretical stages above the pot [(][0-9.]+ or more)")

refuses(find_stages.too_strong "find_stages --run '25 L, 11 %vol, 100 mL, 1.8 L, 97 %vol' --reflux 3"
    "measured strength 97 % vol at 20 °C is outside 53[.][0-9]+ to 92[.][0-9]+ .*from a bare pot to 20 stages")
refuses(find_stages.too_weak "find_stages --run '25 L, 11 %vol, none, 1.8 L, 50 %vol'" "measured strength 50 ")
refuses(find_stages.too_much "find_stages --run '25 L, 11 %vol, none, 30 L, 9 %vol' --reflux 3" "collected volume 30 L is outside 0 to 24[.]25 L")
refuses(find_stages.four_figures "find_stages --run '25 L, 11 %vol, 100 mL, 1.8 L'" "expected charge, its strength, discarded")
refuses(find_stages.negative "find_stages --run '25 L, 11 %vol, none, -1 L, 88 %vol'" "volume -1 L is outside")
refuses(find_stages.certain "find_stages --run '25 L, 11 %vol, none, 1.8 L, 88 %vol' --uncertainty 0" "number 0 is outside 0[.]01 to 5")
refuses(find_stages.negative_reflux "find_stages --run '25 L, 11 %vol, none, 1.8 L, 88 %vol' --reflux -2" "--reflux '-2'")
