# SPDX-License-Identifier: BSL-1.0
# What forecast_run says of a still with 3 stages comes back as 3 stages.
answers(learn_still.of_a_forecast
    "q=$(aqueth forecast_run --charge '25 L' --strength '11 %vol' --power '2 kW' --stages 3 --reflux 3 --discard '100 mL' --cuts 'collected 1.8 L' --end 'collected 2 L' | awk '/^  hearts/ {print $4}'); aqueth learn_still --run \"25 L, 11 %vol, 100 mL, 1.8 L, $q %vol\" --reflux 3"
    "^The still works like 3[.]0 theoretical stages above the pot [(]2[.][89] to 3[.][1-4][)].*one run cannot tell reflux and stages apart")
answers(learn_still.several_runs
    "aqueth learn_still --run '25 L, 11 %vol, 100 mL, 0.3 L, 90.9 %vol' --run '25 L, 11 %vol, 100 mL, 2.9 L, 79 %vol' --reflux 3 --json"
    "\"stages\": 3[.]39[0-9]+,.*\"uncertainty_used_percent_vol\": 1[.]64[0-9]+,.*\"explains_the_runs\": false,.*\"candidates\": [[].*\"reflux_ratio\": 2[.]5,")
answers(learn_still.contradiction
    "aqueth learn_still --run '25 L, 11 %vol, none, 1.8 L, 88 %vol' --run '25 L, 11 %vol, none, 0.5 L, 60 %vol' --reflux 3"
    "^No number of stages explains these runs, with reflux 3 or any other tried;\nwith 3 the nearest is 0[.]7 stages [(]0[.]1 to 3[.][0-9][)], which miss by 15[.]0*[0-9]+ % vol.*disagreement +15[.].*uncertainty +21[.]3.*contradict")
set(one_run "--run '25 L, 11 %vol, 100 mL, 1.8 L, 90 %vol'")
answers(learn_still.reflux_unknown "aqueth learn_still ${one_run}"
    "^One run cannot tell reflux and stages apart.*not given.*with reflux 3 +4[.]6 stages [(]4[.]0 to 5[.]5[)].*with reflux 50 .*To tell them apart, measure the reflux")
answers(learn_still.reflux_unknown_several
    "aqueth learn_still --run '25 L, 11 %vol, 100 mL, 0.3 L, 90.9 %vol' --run '25 L, 11 %vol, 100 mL, 2.9 L, 79 %vol'"
    "^Only one of the reflux ratios tried explains these runs: 2[.]5, with 4[.]1 stages.*they tell stages and reflux apart")
answers(learn_still.another_reflux_would "aqueth learn_still ${one_run} --reflux 1.1"
    "^No number of stages explains this run with reflux 1[.]1: even 20 stages miss by 15[.0]* % vol[.]\nReflux 2[.]5 would, with ")
answers(learn_still.another_reflux_would_json "aqueth learn_still ${one_run} --reflux 1.1 --json"
    "\"reflux_ratio\": 1[.]1,.*\"stages\": null,.*\"explains_the_runs\": false.*\"candidates\": [[].*\"reflux_ratio\": 2[.]5,")
answers(learn_still.sixty_runs
    "runs=(); for i in {10..69}; do runs+=(--run \"25 L, 11 %vol, 100 mL, 1.$i L, 88.5 %vol\"); done; timeout 30 aqueth learn_still \"\${runs[@]}\""
    "^(No number of stages explains these runs|These runs do not tell|Of the reflux ratios tried)")
answers(learn_still.no_number_is_too_many "aqueth learn_still --run '25 L, 11 %vol, none, 1 L, 95.9 %vol' --reflux 3"
    "^The still works like [0-9.]+ (stages or more|theoretical stages above the pot [(][0-9.]+ or more)")
# Where the most stages are nearest, fewer are offered only as far as they explain the run (within 0.97 % vol).
answers(learn_still.fewest_explain_the_run "aqueth learn_still --run '25 L, 11 %vol, 100 mL, 1.8 L, 96.9 %vol'"
    "with reflux 5 +19[.]0 stages or more\n +with reflux 6 +14[.]1 stages or more")
answers(learn_still.one_run_has_no_scatter "aqueth learn_still --run '25 L, 11 %vol, 100 mL, 1.8 L, 96.9 %vol' --reflux 5 --json"
    "\"stages\": null,.*\"disagreement_percent_vol\": 0[.]92[0-9]+,\n +\"uncertainty_used_percent_vol\": 0[.]5,")

refuses(learn_still.too_strong "aqueth learn_still --run '25 L, 11 %vol, 100 mL, 1.8 L, 98.5 %vol' --reflux 3"
    "--run '25 L, 11 %vol, 100 mL, 1.8 L, 98.5 %vol': measured strength 98[.]5 % vol at 20 °C is outside 53[.][0-9]+ to 9[12][.][0-9]+ .*from a bare pot to 20 stages with reflux 3")
refuses(learn_still.too_weak "aqueth learn_still --run '25 L, 11 %vol, none, 1.8 L, 50 %vol'" "--run .*: measured strength 50 .*with reflux 50")
refuses(learn_still.too_much "aqueth learn_still --run '25 L, 11 %vol, none, 30 L, 9 %vol' --reflux 3" "--run '25 L, 11 %vol, none, 30 L, 9 %vol': collected volume 30 L is outside 0 to 24[.]25 L")
refuses(learn_still.four_figures "aqueth learn_still --run '25 L, 11 %vol, 100 mL, 1.8 L'" "expected charge, its strength, volume of foreshots")
refuses(learn_still.negative "aqueth learn_still --run '25 L, 11 %vol, none, -1 L, 88 %vol'" "--run '25 L, 11 %vol, none, -1 L, 88 %vol', collected '-1 L': volume -1 L is outside")
refuses(learn_still.second_of_two "aqueth learn_still ${one_run} --run '25 L, 98 %vol, none, 1 L, 97 %vol'" "--run '25 L, 98 %vol, none, 1 L, 97 %vol': strength of the charge 98 .* is outside .*below the azeotrope")
refuses(learn_still.charge_without_a_unit "aqueth learn_still --run '25, 11 %vol, none, 1 L, 88 %vol'" "--run '25, 11 %vol, none, 1 L, 88 %vol', charge '25': the unit is missing")
refuses(learn_still.certain "aqueth learn_still --run '25 L, 11 %vol, none, 1.8 L, 88 %vol' --uncertainty 0" "number 0 is outside 0[.]01 to 5")
refuses(learn_still.heat_loss_of_everything "aqueth learn_still ${one_run} --heat-loss '95 %'" "--heat-loss '95 %': share of the vapour that condenses 95 % is outside 0 to 90 %")
refuses(learn_still.two_airs "aqueth learn_still ${one_run} --pressure '1 bar' --altitude '10 m'" "either --pressure or --altitude")
refuses(learn_still.negative_reflux "aqueth learn_still --run '25 L, 11 %vol, none, 1.8 L, 88 %vol' --reflux -2" "--reflux '-2'")

# Under a neck that condenses a tenth, the stages of the column alone come back.
answers(learn_still.under_a_neck
    "q=$(aqueth forecast_run --charge '25 L' --strength '11 %vol' --power '2 kW' --stages 3 --reflux 3 --heat-loss '10 %' --discard '100 mL' --cuts 'collected 1.8 L' --end 'collected 2 L' | awk '/^  hearts/ {print $4}'); aqueth learn_still --run \"25 L; 11 %vol; 100 mL; 1.8 L; $q %vol\" --reflux 3 --heat-loss '10 %'"
    "^The still works like 3[.]0 theoretical stages above the pot")
answers(learn_still.assumed "aqueth learn_still ${one_run} --reflux 3"
    "  assumed +no vapour condenses in neck and head [(]--heat-loss[)],\n +strengths with a standard uncertainty of 0[.]50* % vol [(]--uncertainty[)],\n +air as at sea level [(]--altitude[)]\n")
answers(learn_still.assumed_json "aqueth learn_still ${one_run} --reflux 3 --heat-loss '5 %' --altitude '300 m' --json"
    "\"assumed\": {\n    \"--uncertainty\": \"0[.]5\"\n  }")
# Long work shows on a terminal how far it is.
set(progress "${CMAKE_CURRENT_SOURCE_DIR}/first_progress.sh")
answers(learn_still.progress
    "bash '${progress}' tried 'runs=(); for i in {1000..8999}; do runs+=(--run \"25 L,11 %vol,none,1.$i L,88.5 %vol\"); done; aqueth learn_still --reflux 3 \"\${runs[@]}\"'"
    "^aqueth learn_still: [0-9]+ of 16 reflux ratios tried")

# The logs of the stillhouse: invented with plates of efficiency 0.5, reflux 3.2, neck 6 %, 3.5 W/K.
set(logs "${PROJECT_SOURCE_DIR}/src/programs/logs")
set(monday "--log '${logs}/quillbeck_monday.csv, 25 L, 11 %vol, 1.5 kW, 1.5 plato'")
set(friday "--log '${logs}/quillbeck_friday.csv, 25 L, 11 %vol, 1.5 kW, 1.5 plato, reflux 1.5'")
answers(learn_still.log
    "aqueth learn_still ${monday} --plates 4 --reflux 3.2 --heat-loss '6 %' --pot-loss '3.5 W/K'"
    "^From 1 log with 43 readings, the still has:\n  plate efficiency  0[.]50[0-9]*, standard uncertainty 0[.]00[0-9]*; 95 %: 0[.]4[89][0-9]* to 0[.]5[0-3][0-9]*\n.*  strength +10 readings, off by 0[.].*in line [0-9]+ of .*monday[.]csv.*logs and forecast agree.*  equilibrium .*weaker by one standard uncertainty.*forecast_run --plates 4 --plate-efficiency 0[.]50.* --reflux 3[.]2 --heat-loss '6 %' --pot-loss '3[.]5 W/K'")
answers(learn_still.two_logs
    "aqueth learn_still ${monday} ${friday} --plates 4 --learn 'plate-efficiency, reflux, heat-loss, pot-loss'"
    "^From 2 logs with 83 readings.*plate efficiency +0[.]50.*reflux ratio +3[.]2.*neck share +[56][.].* %.*pot loss +3[.]4.* W/K.*The logs tell all of these apart[.].*correlation ")
answers(learn_still.alike
    "aqueth learn_still ${monday} --plates 4 --learn 'plate-efficiency, reflux, heat-loss'"
    "The logs do not tell plate efficiency, reflux ratio and neck share apart:\n.* together give nearly the same readings[.]\nRemedy: measure the reflux")
answers(learn_still.measured_reflux
    "aqueth learn_still ${monday} --plates 4 --learn 'plate-efficiency, reflux, heat-loss' --reflux '3.2 +- 0.1' --json"
    "\"reflux\": {\n +\"value\": 3[.]2.*\"not_told_apart\": [[]")
answers(learn_still.log_json
    "aqueth learn_still ${monday} --plates 4 --reflux 3.2 --heat-loss '6 %' --pot-loss '3.5 W/K' --json"
    "\"plate-efficiency\": {\n +\"value\": 0[.]5.*\"standard_uncertainty\": 0[.]00.*\"not_told_apart\": [[]],.*\"largest_in_line\": [0-9]+\n.*\"consistent\": true,")
answers(learn_still.no_power "aqueth learn_still --log '${logs}/quillbeck_monday.csv, 25 L, 11 %vol' --reflux 3.2"
    "  stages +[12][.].*not used +the times of .*need its power")
# a slip: 46.5 written as 64.5
answers(learn_still.slip
    "sed 's/;2190;80,0/;2190;50,0/' ${logs}/quillbeck_monday.csv >${CMAKE_CURRENT_BINARY_DIR}/slip.csv; aqueth learn_still --log \"${CMAKE_CURRENT_BINARY_DIR}/slip.csv, 25 L, 11 %vol, 1.5 kW\" --plates 4 --reflux 3.2; rm ${CMAKE_CURRENT_BINARY_DIR}/slip.csv"
    "Logs and forecast contradict each other: .*most in line 12 of .*slip[.]csv: -[23].* % vol")

refuses(learn_still.neither "aqueth learn_still --reflux 3" "give --run or --log, and only one of them")
refuses(learn_still.both "aqueth learn_still ${one_run} ${monday}" "give --run or --log, and only one of them")
refuses(learn_still.run_with_plates "aqueth learn_still ${one_run} --plates 4" "--plates needs --log")
refuses(learn_still.no_file "aqueth learn_still --log 'nothing.csv, 25 L, 11 %vol' --reflux 3" "--log 'nothing.csv': cannot be read: No such file")
refuses(learn_still.only_a_file "aqueth learn_still --log 'nothing.csv' --reflux 3" "expected FILE, charge, its strength")
refuses(learn_still.no_log "aqueth learn_still --log '${PROJECT_SOURCE_DIR}/tables/proof_spirit.csv, 25 L, 11 %vol' --reflux 3" "no column holds time or volume")
function(refuses_log name rows err)
  # from the file's own folder: a message cuts a long path
  refuses(learn_still.${name} "cd ${CMAKE_CURRENT_BINARY_DIR}; printf '${rows}' >${name}.csv; aqueth learn_still --log '${name}.csv, 25 L, 11 %vol' --reflux 3; s=$?; rm ${name}.csv; exit $s" "${name}[.]csv.*: ${err}")
endfunction()
refuses_log(log_falls "collected_ml,strength_percent_vol\\n200,80\\n100,79\\n" "line 3, column collected_ml: 100 is less than in a line before")
refuses_log(log_words "collected_ml,strength_percent_vol\\n200,strong\\n" "line 2, column strength_percent_vol: 'strong' is not a number")
refuses_log(log_no_unit "collected,strength_percent_vol\\n200,80\\n" "line 1, column collected: the name has no known unit")
refuses_log(log_too_much "collected_l,strength_percent_vol\\n30,80\\n" "collected volume 30 L is outside 0 to 24[.]")
refuses_log(log_needs_power "time_min,strength_percent_vol\\n30,80\\n" "the power is missing: a row without a volume needs the power of its run, as in 'FILE, 25 L, 11 %vol, 2 kW'\n$")
refuses(learn_still.two_powers "aqueth learn_still --log '${logs}/quillbeck_monday.csv, 25 L, 11 %vol, 1 kW, 2 kW' --reflux 3" "'2 kW' is a second figure of its kind")
refuses(learn_still.unknown_figure "aqueth learn_still ${monday} --learn 'colour' --reflux 3" "--learn 'colour': expected of: stages, plate-efficiency")
refuses(learn_still.figure_twice "aqueth learn_still ${monday} --learn 'stages, stages' --reflux 3" "named twice")
refuses(learn_still.known_and_learned "aqueth learn_still ${monday} --learn 'stages, reflux' --reflux 3" "--reflux '3': reflux is to be learned .*behind [+]-")
refuses(learn_still.uncertain_and_known "aqueth learn_still ${monday} --learn 'stages' --reflux '3 +- 0.1'" "an uncertainty needs --learn 'reflux'")
refuses(learn_still.efficiency_of_no_plates "aqueth learn_still ${monday} --learn 'plate-efficiency' --reflux 3" "needs --plates")
refuses(learn_still.stages_and_plates "aqueth learn_still ${monday} --stages 3 --plates 4 --reflux 3" "give stages or --plates, not both")
refuses(learn_still.no_reflux "aqueth learn_still ${monday}" "a column has no effect without reflux: give --reflux, or name reflux in --learn")
refuses(learn_still.certain_temperatures "aqueth learn_still ${monday} --reflux 3 --temperature-uncertainty '0 K'" "difference 0 K is outside 0[.]01 to 10")
answers(learn_still.log_progress
    "line=\"aqueth learn_still ${monday} ${friday} --plates 4 --learn 'plate-efficiency, reflux, heat-loss, pot-loss'\"; for i in {1..100}; do line+=\" ${friday}\"; done; bash '${progress}' forecast \"$line\""
    "^aqueth learn_still: (weaker vapour, )?[0-9]+ runs forecast(, chi-squared [0-9]+[0-9.e+]*)?[ \n]*$")
answers(learn_still.with_holdup
    "aqueth learn_still ${monday} --plates 4 --learn 'plate-efficiency, plate-holds' --reflux 3.2 --heat-loss '6 %' --pot-loss '3.5 W/K' --head-holds '10 mL'"
    "plate efficiency +0[.].*holdup of a plate +[0-9]+ mL, standard uncertainty .*forecast_run .* --head-holds '10 mL'")
answers(learn_still.after_total_reflux
    "aqueth learn_still --log '${logs}/quillbeck_monday.csv, 25 L, 11 %vol, 1.5 kW, total reflux 30 min' --plates 4 --reflux 3.2 --plate-holds '20 mL' --reflux-temperature '40 C'"
    "plate efficiency +0[.].*--plate-holds '20 mL' --reflux-temperature '40 C'")
refuses(learn_still.holdup_of_a_pot "aqueth learn_still ${monday} --stages 0 --learn 'plate-holds' --reflux 3" "number of plates 0 .*efficiency and holdup need a column")
refuses(learn_still.holdup_too_large "aqueth learn_still ${monday} --reflux 3 --head-holds '2000 L'" "--head-holds '2000 L': holdup 2000 L is outside 0 to 1000 L")

# No column passes the azeotrope, 97.2 % vol at 101.325 kPa: what the stated uncertainty does not explain is refused.
function(answers_log name rows options out)
  answers(learn_still.${name} "cd ${CMAKE_CURRENT_BINARY_DIR}; printf '${rows}' >${name}.csv; aqueth learn_still --log \"${name}.csv, 25 L, 11 %vol, reflux 2\" ${options}; rm ${name}.csv" "${out}")
endfunction()
refuses_log(log_above_the_azeotrope "collected_ml,strength_percent_vol\\n200,90\\n400,99.9\\n"
    "line 3: strength of the distillate 99[.]90 % vol is outside 0 to 97[.][12][0-9] % vol, the azeotrope, which no column passes; the stated uncertainty is 0[.]5 % vol [(]--uncertainty[)]")
refuses_log(jar_above_the_azeotrope "collected_ml,jar_strength_percent_vol\\n200,98.5\\n" "line 2: strength of the jar 98[.]50 % vol is outside 0 to 97[.]")
answers(learn_still.run_above_the_azeotrope "aqueth learn_still --run '25 L, 11 %vol, none, 0.1 L, 97.4 %vol' --reflux 50"
    "^The still works like .*\n\n97[.]40 % vol is above the azeotrope, 97[.][12][0-9] % vol, which no column passes: it fits only within the\nstated uncertainty of 0[.]5 % vol")
# One reading tests nothing; the reflux of the log stands in the command.
answers_log(log_of_one_reading "collected_ml,strength_percent_vol\\n500,80\\n" ""
    "^From 1 log with 1 reading, the still has:.*  agreement +not tested: no more readings than figures to learn\n.*  forecast with it +aqueth forecast_run --stages [0-9.]+ --reflux 2 [.][.][.]\n")
answers_log(log_of_two_readings "collected_ml,strength_percent_vol\\n500,85\\n900,84\\n" "" "with 1 degree of freedom: ")
answers_log(log_in_us_units "collected_ml,strength_percent_vol\\n500,85\\n900,84\\n" "--us"
    "temperatures by 0[.]9 °F [(]--temperature-uncertainty[)].*volumes by 0[.]34 US fl oz")
# Hours where minutes were meant: large figures have no exponent.
answers(learn_still.log_in_plain_digits
    "cd ${CMAKE_CURRENT_BINARY_DIR}; printf 'collected_ml,time_h,strength_percent_vol\\n500,0.5,85\\n900,500,84\\n' >plain.csv; aqueth learn_still --log 'plain.csv, 25 L, 11 %vol, 2 kW, reflux 1000'; rm plain.csv"
    "differ by [0-9]+ times .*  time +2 readings, off by 1[0-9][0-9][0-9][0-9] min [(]root mean square[)], [0-9]+ times what was stated\n.*: [+]2[0-9][0-9][0-9][0-9] min from .*--reflux 1000 [.][.][.]\n")
