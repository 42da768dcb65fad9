# SPDX-License-Identifier: BSL-1.0
# What forecast_run says of a still with 3 stages comes back as 3 stages.
answers(learn_still.of_a_forecast
    "q=$(forecast_run --charge '25 L' --strength '11 %vol' --power '2 kW' --stages 3 --reflux 3 --discard '100 mL' --cuts 'collected 1.8 L' --end 'collected 2 L' | awk '/^  hearts/ {print $4}'); learn_still --run \"25 L, 11 %vol, 100 mL, 1.8 L, $q %vol\" --reflux 3"
    "^The still works like 3[.]0 theoretical stages above the pot [(]2[.][89] to 3[.][1-4][)].*one run cannot tell reflux and stages apart")
answers(learn_still.several_runs
    "learn_still --run '25 L, 11 %vol, 100 mL, 0.3 L, 90.9 %vol' --run '25 L, 11 %vol, 100 mL, 2.9 L, 79 %vol' --reflux 3 --json"
    "\"stages\": 3[.]39[0-9]+,.*\"uncertainty_used_percent_vol\": 1[.]64[0-9]+,.*\"explains_the_runs\": false,.*\"candidates\": [[].*\"reflux_ratio\": 2[.]5,")
answers(learn_still.contradiction
    "learn_still --run '25 L, 11 %vol, none, 1.8 L, 88 %vol' --run '25 L, 11 %vol, none, 0.5 L, 60 %vol' --reflux 3"
    "^No number of stages explains these runs, with reflux 3 or any other tried;\nwith 3 the nearest is 0[.]7 stages [(]0[.]1 to 3[.][0-9][)], which miss by 15[.]0*[0-9]+ % vol.*disagreement +15[.].*uncertainty +21[.]3.*contradict")
set(one_run "--run '25 L, 11 %vol, 100 mL, 1.8 L, 90 %vol'")
answers(learn_still.reflux_unknown "learn_still ${one_run}"
    "^One run cannot tell reflux and stages apart.*not given.*with reflux 3 +4[.]6 stages [(]4[.]0 to 5[.]5[)].*with reflux 50 .*To tell them apart, measure the reflux")
answers(learn_still.reflux_unknown_several
    "learn_still --run '25 L, 11 %vol, 100 mL, 0.3 L, 90.9 %vol' --run '25 L, 11 %vol, 100 mL, 2.9 L, 79 %vol'"
    "^Only one of the reflux ratios tried explains these runs: 2[.]5, with 4[.]1 stages.*they tell stages and reflux apart")
answers(learn_still.another_reflux_would "learn_still ${one_run} --reflux 1.1"
    "^No number of stages explains this run with reflux 1[.]1: even 20 stages miss by 15[.0]* % vol[.]\nReflux 2[.]5 would, with ")
answers(learn_still.another_reflux_would_json "learn_still ${one_run} --reflux 1.1 --json"
    "\"reflux_ratio\": 1[.]1,.*\"stages\": null,.*\"explains_the_runs\": false.*\"candidates\": [[].*\"reflux_ratio\": 2[.]5,")
answers(learn_still.sixty_runs
    "runs=(); for i in {10..69}; do runs+=(--run \"25 L, 11 %vol, 100 mL, 1.$i L, 88.5 %vol\"); done; timeout 30 learn_still \"\${runs[@]}\""
    "^(No number of stages explains these runs|These runs do not tell|Of the reflux ratios tried)")
answers(learn_still.no_number_is_too_many "learn_still --run '25 L, 11 %vol, none, 1 L, 95.9 %vol' --reflux 3"
    "^The still works like [0-9.]+ (stages or more|theoretical stages above the pot [(][0-9.]+ or more)")
# Where the most stages are nearest, fewer are offered only as far as they explain the run (within 0.97 % vol).
answers(learn_still.fewest_explain_the_run "learn_still --run '25 L, 11 %vol, 100 mL, 1.8 L, 96.9 %vol'"
    "with reflux 5 +19[.]0 stages or more\n +with reflux 6 +14[.]1 stages or more")
answers(learn_still.one_run_has_no_scatter "learn_still --run '25 L, 11 %vol, 100 mL, 1.8 L, 96.9 %vol' --reflux 5 --json"
    "\"stages\": null,.*\"disagreement_percent_vol\": 0[.]92[0-9]+,\n +\"uncertainty_used_percent_vol\": 0[.]5,")

refuses(learn_still.too_strong "learn_still --run '25 L, 11 %vol, 100 mL, 1.8 L, 98.5 %vol' --reflux 3"
    "--run '25 L, 11 %vol, 100 mL, 1.8 L, 98.5 %vol': measured strength 98[.]5 % vol at 20 °C is outside 53[.][0-9]+ to 9[12][.][0-9]+ .*from a bare pot to 20 stages with reflux 3")
refuses(learn_still.too_weak "learn_still --run '25 L, 11 %vol, none, 1.8 L, 50 %vol'" "--run .*: measured strength 50 .*with reflux 50")
refuses(learn_still.too_much "learn_still --run '25 L, 11 %vol, none, 30 L, 9 %vol' --reflux 3" "--run '25 L, 11 %vol, none, 30 L, 9 %vol': collected volume 30 L is outside 0 to 24[.]25 L")
refuses(learn_still.four_figures "learn_still --run '25 L, 11 %vol, 100 mL, 1.8 L'" "expected charge, its strength, volume of foreshots")
refuses(learn_still.negative "learn_still --run '25 L, 11 %vol, none, -1 L, 88 %vol'" "--run '25 L, 11 %vol, none, -1 L, 88 %vol', collected '-1 L': volume -1 L is outside")
refuses(learn_still.second_of_two "learn_still ${one_run} --run '25 L, 98 %vol, none, 1 L, 97 %vol'" "--run '25 L, 98 %vol, none, 1 L, 97 %vol': strength of the charge 98 .* is outside .*below the azeotrope")
refuses(learn_still.charge_without_a_unit "learn_still --run '25, 11 %vol, none, 1 L, 88 %vol'" "--run '25, 11 %vol, none, 1 L, 88 %vol', charge '25': the unit is missing")
refuses(learn_still.certain "learn_still --run '25 L, 11 %vol, none, 1.8 L, 88 %vol' --uncertainty 0" "number 0 is outside 0[.]01 to 5")
refuses(learn_still.heat_loss_of_everything "learn_still ${one_run} --heat-loss '95 %'" "--heat-loss '95 %': share of the vapour that condenses 0[.]95 is outside 0 to 0[.]9")
refuses(learn_still.two_airs "learn_still ${one_run} --pressure '1 bar' --altitude '10 m'" "either --pressure or --altitude")
refuses(learn_still.negative_reflux "learn_still --run '25 L, 11 %vol, none, 1.8 L, 88 %vol' --reflux -2" "--reflux '-2'")

# Under a neck that condenses a tenth, the stages of the column alone come back.
answers(learn_still.under_a_neck
    "q=$(forecast_run --charge '25 L' --strength '11 %vol' --power '2 kW' --stages 3 --reflux 3 --heat-loss '10 %' --discard '100 mL' --cuts 'collected 1.8 L' --end 'collected 2 L' | awk '/^  hearts/ {print $4}'); learn_still --run \"25 L; 11 %vol; 100 mL; 1.8 L; $q %vol\" --reflux 3 --heat-loss '10 %'"
    "^The still works like 3[.]0 theoretical stages above the pot")
answers(learn_still.assumed "learn_still ${one_run} --reflux 3"
    "  assumed +no vapour condenses in neck and head [(]--heat-loss[)],\n +strengths with a standard uncertainty of 0[.]50* % vol [(]--uncertainty[)],\n +air as at sea level [(]--altitude[)]\n")
answers(learn_still.assumed_json "learn_still ${one_run} --reflux 3 --heat-loss '5 %' --altitude '300 m' --json"
    "\"assumed\": {\n    \"--uncertainty\": \"0[.]5\"\n  }")
# Long work shows on a terminal how far it is.
answers(learn_still.progress
    "line='learn_still --reflux 3'; for i in {1000..2999}; do line+=\" --run '25 L,11 %vol,none,1.$i L,88.5 %vol'\"; done; script -qc \"$line\" /dev/null | tr '\\r' '\\n' | grep -m 1 tried"
    "^learn_still: [0-9]+ of 16 reflux ratios tried")
