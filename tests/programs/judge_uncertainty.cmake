# SPDX-License-Identifier: BSL-1.0
# The estimates are those of correct_reading and dilute_spirit. The uncertainties are held by
# tests/measurement_model_test.cpp, and by hand: alcoholometer 0.25 / sqrt(3) = 0.1443 and reading
# 0.125 / sqrt(3) = 0.0722 at 20 °C, where the sensitivity is 1.
set(spirit "--reading '81.5 %vol' --temperature '28 C'")

answers(judge_uncertainty.dilution "aqueth judge_uncertainty ${spirit} --amount '1.85 L' --target '43 %vol'"
    [[^The product will have 43[.]00 % vol, give or take 0[.]33 [(]95 %[)][.]
Add 1[.]600 kg of water by the balance.*54 % of the variance comes from limits of error quoted from memory.*strength of the spirit: 79[.]10 % vol, standard uncertainty 0[.]19 % vol
.*error of the alcoholometer in halves, verified +0[.]14 % vol +1[.]024[89]* +0[.]15 +61[.]4 %
.*temperature scale +0[.]0041 K .*expansion[^%]*%
.*100000 draws: standard uncertainty 0[.]19, interval 78[.]7.*water to add: 1[.]602 kg, standard uncertainty 0[.]014 kg
.*strength of the product: 43[.]00 % vol, standard uncertainty 0[.]1[67] % vol
.*alcoholometer in halves, verified: ±0[.]25 % vol, read: Reichsgesetzblatt 1885.*an old rule: alcoholometers sold today are of the classes I to III.*measuring cylinder, 2000 mL, class B: ±20 mL, from memory: ISO 4788.*local law]])
answers(judge_uncertainty.strength "aqueth judge_uncertainty ${spirit}"
    "^The spirit has 79[.]10 % vol, give or take 0[.]37 .*strength of the spirit.*local law")
answers(judge_uncertainty.nothing_from_memory
    "aqueth judge_uncertainty ${spirit} --amount '1.85 L' --target '43 %vol' --measure '10 mL' | grep -c memory || true" "^0\n$")
answers(judge_uncertainty.class_from_memory "aqueth judge_uncertainty ${spirit} --alcoholometer alcoholometer-II"
    "^The spirit has [^\n]*\n[0-9]+ % of the variance comes from limits of error quoted from memory")
# On a terminal, which script(1) is for the program, long work shows how far it is; else nothing but the answer comes.
set(progress "${CMAKE_CURRENT_SOURCE_DIR}/first_progress.sh")
set(long_work "aqueth judge_uncertainty ${spirit} --amount '1.85 L' --target '43 %vol' --draws 10000000")
answers(judge_uncertainty.progress "bash '${progress}' draws \"${long_work}\""
    "^aqueth judge_uncertainty: [0-9]+ % of the draws for the (strength of the|water)")
# A line that is wider than the terminal would stay there.
answers(judge_uncertainty.progress_on_a_narrow_terminal "bash '${progress}' judge_unc \"stty cols 20; ${long_work}\"" "^aqueth judge_uncert\n$")
answers(judge_uncertainty.by_mass "aqueth judge_uncertainty ${spirit} --amount '2 kg' --target '43 %vol' --balance '2 g'"
    "error of the balance, class III, spirit +0[.]0023 kg .*error of the balance, class III, water +0[.]0023 kg")
answers(judge_uncertainty.no_measure_in_a_weighing
    "aqueth judge_uncertainty ${spirit} --amount '2 kg' --target '43 %vol' | grep -c measur || true" "^0\n$")
answers(judge_uncertainty.own_limits
    "aqueth judge_uncertainty --reading '81.5 %vol' --temperature '20 C' --alcoholometer '0.1 %vol' --thermometer '1.8 F' --read-to '0.2 %vol' --confidence 0.99"
    "99 %.*error of the alcoholometer +0[.]058 % vol .*reading of the alcoholometer +0[.]058 % vol.*error of the thermometer +0[.]58 °C")
answers(judge_uncertainty.formula "aqueth judge_uncertainty ${spirit} --formula-error '0.1 kg/m3'"
    "OIML R 22 as a formula +0[.]058 kg/m3")
answers(judge_uncertainty.three_readings
    "aqueth judge_uncertainty --reading '81.5 %vol' --reading '81.7 %vol' --reading '81.4 %vol' --temperature '20 C'"
    "^The spirit has 81[.]53 .*  reading +0[.]088 % vol +1 .*no draws: the t distribution of fewer than four readings")
answers(judge_uncertainty.four_readings
    "aqueth judge_uncertainty --reading '81.5 %vol' --reading '81.7 %vol' --reading '81.4 %vol' --reading '81.5 %vol' --temperature '20 C'"
    "^The spirit has 81[.]5[23] .*  reading +0[.]063 % vol +1 .*100000 draws")
answers(judge_uncertainty.csv "aqueth judge_uncertainty --reading '81.5 %vol' --temperature '20 C' --csv"
    [[^quantity,input,estimate,unit,standard_uncertainty,sensitivity,contribution,share
"strength of the spirit","reading",81.5,% vol,0,1,0,0
"strength of the spirit","error of the alcoholometer in halves, verified",0,% vol,0[.]1443375[0-9]*,(1|0[.]9999|1[.]0000)]])
answers(judge_uncertainty.json "aqueth judge_uncertainty ${spirit} --json"
    [["confidence": 0[.]95,.*"estimate": 79[.]0989.*"draws": {.*"number": 100000.*"budget":.*"evaluation": "B".*"limits_seen": "read"]])
answers(judge_uncertainty.same_every_time
    "a=$(aqueth judge_uncertainty ${spirit} --json) && [ \"$a\" = \"$(aqueth judge_uncertainty ${spirit} --json)\" ] && echo '{}' || echo differs"
    "^{}\n$")
answers(judge_uncertainty.instruments "aqueth judge_uncertainty --instruments"
    "alcoholometer-II .*from memory: .*76/765/EEC.*thermometer-0[.]5 .*second hand.*cylinder-100-A .*read: ASTM")
answers(judge_uncertainty.instruments_json "aqueth judge_uncertainty --instruments --json"
    [["class": "alcoholometer-I",.*"source_seen": "from memory"]])

refuses(judge_uncertainty.no_temperature "aqueth judge_uncertainty --reading '81.5 %vol'" "give --reading and --temperature")
refuses(judge_uncertainty.target_alone "aqueth judge_uncertainty ${spirit} --target '43 %vol'" "give both --amount and --target")
refuses(judge_uncertainty.hot "aqueth judge_uncertainty --reading '81.5 %vol' --temperature '50 C'"
    "--temperature '50 C': temperature 50 °C is outside -20 to 40")
refuses(judge_uncertainty.nearly_hot "aqueth judge_uncertainty --reading '81.5 %vol' --temperature '39.9 C'"
    "--temperature '39[.]9 C': temperature plus its errors 40[.]5[0-9]* °C is outside -20 to 40")
refuses(judge_uncertainty.end_of_the_scale "aqueth judge_uncertainty --reading '99.9 %vol' --temperature '20 C'"
    "--reading '99[.]9 %vol': reading plus its errors 100[.][0-9]+ % vol is outside 0 to 100")
refuses(judge_uncertainty.frozen "aqueth judge_uncertainty --reading '2 %vol' --temperature '-10 C'"
    "--temperature '-10 C': temperature -10 °C is outside .*freezing")
refuses(judge_uncertainty.proof "aqueth judge_uncertainty --reading '163 proof' --temperature '20 C'"
    "--reading '163 proof': expected the reading of a 20 °C alcoholometer: %vol")
refuses(judge_uncertainty.unknown_class "aqueth judge_uncertainty ${spirit} --alcoholometer spoon"
    "--alcoholometer 'spoon': neither a class of instruments")
refuses(judge_uncertainty.wrong_class "aqueth judge_uncertainty ${spirit} --alcoholometer thermometer-0.1"
    "that is a glass thermometer in tenths of a degree; its error is in °C, not in % vol")
refuses(judge_uncertainty.negative_limits "aqueth judge_uncertainty ${spirit} --alcoholometer '-0.1 %vol'"
    "--alcoholometer '-0[.]1 %vol': difference -0[.]1 % vol is outside 0 to 100")
refuses(judge_uncertainty.limits_without_unit "aqueth judge_uncertainty ${spirit} --thermometer 0.5"
    "--thermometer '0[.]5': the unit is missing; expected a difference of temperatures")
refuses(judge_uncertainty.certain "aqueth judge_uncertainty ${spirit} --confidence '100 %'"
    "--confidence '100 %': probability 100 % is outside 51 to 99[.]9999 %")
refuses(judge_uncertainty.percent_forgotten "aqueth judge_uncertainty ${spirit} --confidence 95" "probability 95 is outside")
refuses(judge_uncertainty.few_draws "aqueth judge_uncertainty ${spirit} --draws 10" "--draws '10': expected a whole number from 10000 to 10000000")
refuses(judge_uncertainty.no_draws "aqueth judge_uncertainty ${spirit} --draws nan" "expected a whole number")
refuses(judge_uncertainty.strengthening "aqueth judge_uncertainty ${spirit} --amount '1.85 L' --target '85 %vol'"
    "--target '85 %vol': target strength 85 % vol at 20 °C is outside")
refuses(judge_uncertainty.balance_in_millilitres
    "aqueth judge_uncertainty ${spirit} --amount '1.85 L' --target '43 %vol' --balance '1 mL'" "--balance '1 mL': expected a mass")
refuses(judge_uncertainty.overloaded_balance
    "aqueth judge_uncertainty ${spirit} --amount '1.85 L' --target '43 %vol' --balance '0.1 g'"
    "--balance '0[.]1 g': load in scale intervals 16[0-9.]+ is outside 0 to 10000")
refuses(judge_uncertainty.formula_in_kilograms "aqueth judge_uncertainty ${spirit} --formula-error '0.1 kg'"
    "'kg' is the unit of a mass; expected a density")
# Proof counts twice the % vol at 60 °F: the uncertainty doubles, the strength does not quite.
answers(judge_uncertainty.us
    "aqueth judge_uncertainty --reading '81.5 %vol' --temperature '82 F' --amount '0.5 gal' --target '86 proof' --draws 10000"
    "^The product will have 86[.]0 US proof, give or take 0[.][67][0-9]* .*\nAdd 3[.][0-9]+ lb of water by the balance.*water to add: 3[.][0-9]* lb.* °F .*strength of the product: 86")
answers(judge_uncertainty.draws_with_an_exponent "aqueth judge_uncertainty --reading '81.5 %vol' --temperature '28 C' --draws 1e4" "10000 draws")
refuses(judge_uncertainty.half_a_draw "aqueth judge_uncertainty --reading '81.5 %vol' --temperature '28 C' --draws 10000.5" "expected a whole number")
refuses(judge_uncertainty.too_sure_for_the_draws "aqueth judge_uncertainty --reading '81.5 %vol' --temperature '28 C' --confidence '99.9999 %'"
    "--confidence '99[.]9999 %': .*more --draws")

# The certificate of the stem corrects the reading, as in correct_reading: 81.5 + 0.2 at 28 °C.
answers(judge_uncertainty.certificate
    "for q in 'judge_uncertainty --reading 81.5%vol --correction +0.2' 'judge_uncertainty --reading 81.7%vol'; do \
    aqueth $q --temperature '28 C' --draws 10000 | head -1; done | uniq -c" "^ *2 The spirit has 79[.]30 % vol, ")
refuses(judge_uncertainty.bad_certificate "aqueth judge_uncertainty --reading '81.5 %vol' --temperature '28 C' --correction '0.2 K'" "--correction '0.2 K'")

# Errors beyond what is possible are said, and no impossible interval is printed without a word.
answers(judge_uncertainty.tells_nothing
    "aqueth judge_uncertainty --reading '81.5 %vol' --temperature '28 C' --amount '1 mL' --target '43 %vol' --measure cylinder-2000-B --draws 10000"
    "^The product will have 43[.]00 % vol, but its errors are too large: this measurement tells nothing[.]\n.*of the interval only 0[.]000 to 0[.]02[0-9] kg is possible[.]\n.*10000 draws: they reach impossible values")
answers(judge_uncertainty.tells_nothing_json
    "aqueth judge_uncertainty --reading '81.5 %vol' --temperature '28 C' --amount '1 mL' --target '43 %vol' --measure cylinder-2000-B --draws 10000 --json"
    "\"draws\": null,\n *\"doubt\": \"The interval covers all of 0 to 100 % vol: this measurement tells nothing[.]\"")
answers(judge_uncertainty.draws_hold "aqueth judge_uncertainty --reading '81.5 %vol' --temperature '28 C' --alcoholometer '5 %vol'"
    "^The spirit has 79[.]10 % vol, give or take 5[.]8 .95 %.[.]\nRandom draws give 74[.][0-9] to 8[34][.][0-9] % vol instead: where both differ, the draws hold[.]")
answers(judge_uncertainty.nothing_to_doubt "aqueth judge_uncertainty --reading '81.5 %vol' --temperature '28 C' | grep -c -E 'instead|impossible' || true" "^0\n$")
refuses(judge_uncertainty.scattered_readings "aqueth judge_uncertainty --reading '81.5 %vol' --reading '81.4 %vol' --reading '60 %vol' --temperature '20 C'"
    "the readings scatter too much: 60 to 81[.]5 % vol, standard uncertainty of their mean 7[.]2 % vol. find the cause and read again")
answers(judge_uncertainty.beyond_the_certificate "aqueth judge_uncertainty --reading '90 %vol' --temperature '20 C' --correction '+0.2 at 40, -0.1 at 60'"
    "The correction of the reading 90 is kept beyond the points of the certificate: its last point is at 60")
