# SPDX-License-Identifier: BSL-1.0
# What one task found is what the next one computes with.
set(hearts "aqueth blend_lots --lot '3 L, 70 %vol, 20 C' --json")
set(wash "aqueth judge_wash --volume '25 L' --original '1.085 sg' --final '0.992 sg' --json")
set(dilution "aqueth dilute_spirit --amount '2 L' --strength '70 %vol' --temperature '20 C' --target '43 %vol' --json")

# The same as if it had been typed.
answers(carry_on.as_typed
    "${hearts} | aqueth dilute_spirit --from - --target '43 %vol' | grep -v 'taken\\|^ *--' >carried; \
    aqueth dilute_spirit --amount '3 L' --strength '70 %vol' --temperature '20 C' --target '43 %vol' | diff carried - && rm carried && echo same"
    "^same\n$")
answers(carry_on.says_so "${hearts} | aqueth dilute_spirit --from '-#product' --target '43 %vol'"
    "  taken +--amount '2[.]65[0-9]+ kg' from -#product\n +--strength '70 %vol' from -#product\n +--temperature '20 C' from -#product\n\nThe product .*\nCaution: [^\n]+\n$")
answers(carry_on.option_wins "${hearts} | aqueth dilute_spirit --from - --amount '1 L' --target '43 %vol' --json"
    "\"option\": \"--strength\".*\"volume_L\": 1[.]0,")
answers(carry_on.instead "${hearts} | aqueth dilute_spirit --from - --make '1 L' --target '43 %vol' --json | grep -c amount; true" "^0\n$")
# A litre is a litre at its temperature only; the balance shows the same when the lot has cooled.
answers(carry_on.cooled "${hearts} | aqueth fill_bottles --from - --temperature '10 C' --bottle '500 mL' --json"
    "\"volume_L\": 2[.]97[0-9]+,")
answers(carry_on.wash "${wash} | aqueth forecast_run --from - --power '2 kW' --end 'distillate 20 %vol'"
    "--charge '[0-9.]+ kg' from -#wash\n +--strength '12[.][0-9]+ %vol' .*--extract '[0-9.]+ plato' .*--temperature '20 C'")
answers(carry_on.fraction
    "aqueth forecast_run --charge '25 L' --strength '11 %vol' --power '2 kW' --discard '100 mL' --cuts 'distillate 40 %vol' --end 'distillate 20 %vol' --json | aqueth convert_strength --from '-#hearts'"
    "^[0-9.]+ %vol is .*--strength .* from -#hearts")
answers(carry_on.jar
    "aqueth fill_jars --charge '25 L' --strength '11 %vol' --power '2 kW' --jar '1 L' --end 'collected 3 L' --json | aqueth convert_strength --from '-#jar 2'"
    "from -#jar 2\n$")
answers(carry_on.reading "aqueth correct_reading --reading '81.5 %vol' --temperature '28 C' --json | aqueth judge_uncertainty --from - --draws 10000"
    "--reading '81.5 %vol at 20 C' from -.*--temperature '28 C'")
answers(carry_on.certificate "aqueth correct_reading --reading '81.5 %vol' --temperature '28 C' --correction '+0.2' --json | aqueth judge_uncertainty --from - --draws 10000"
    "strength of the spirit: 79[.]30 % vol.*--reading '81.5 %vol at 20 C' from -.*--correction '[+]0[.]2' from -")
answers(carry_on.certificate_of_another_reading "aqueth correct_reading --reading '81.5 %vol' --temperature '28 C' --correction '+0.2' --json | aqueth judge_uncertainty --from - --reading '81.5 %vol' --draws 10000"
    "strength of the spirit: 79[.]10 % vol.*taken +--temperature '28 C' from -\n")
answers(carry_on.lots "${hearts} >lots.json; aqueth blend_lots --from lots.json --from 'lots.json#lot 1' --lot '1 L, 40 %vol, 20 C' --json; rm lots.json"
    "\"lots\": .*\"name\": \"lot 3\"")
answers(carry_on.still "aqueth learn_still --run '25 L, 11 %vol, 100 mL, 1.8 L, 88 %vol' --reflux 3 --json | aqueth forecast_run --from - --charge '25 L' --strength '11 %vol' --power '2 kW' --end 'distillate 20 %vol'"
    "--stages '[23][.0-9]*' from -\n +.*--reflux '3'")

# A forecast gives its hearts, or what is kept in one fraction; never the run with a weaker vapour, whose "product" has 48.44 % vol.
set(run "aqueth forecast_run --charge '25 L' --strength '11 %vol' --power '2 kW' --end 'distillate 20 %vol'")
answers(carry_on.main_product "${run} --discard '100 mL' --cuts 'distillate 40 %vol' --json >fc.json; \
    for each in \"fill_bottles --bottle '700 mL'\" \"dilute_spirit --target '43 %vol'\" \"keep_cask --period '1 years, ethanol 2 %, water 1 %'\" describe_liquid; do \
    eval \"aqueth $each --from fc.json\" | grep -o 'strength .* from .*'; done; rm fc.json"
    "^(strength '49[.]8588344[0-9]* %vol' from fc[.]json#hearts\n)(strength '49[.]8588344[0-9]* %vol' from fc[.]json#hearts\n)+$")
answers(carry_on.only_fraction "${run} --json | aqueth fill_bottles --from - --bottle '700 mL'" "--strength '41[.]61[0-9]* %vol' from -#distillate")
answers(carry_on.column "${run} --json >fc1.json; printf 'from\\nfc1.json\\n' | aqueth many convert_strength --rows - --results percent_vol_20C; rm fc1.json" "fc1[.]json,41[.]61[0-9]*,\n$")
refuses(carry_on.several_products "${run} --discard '100 mL' --cuts 'distillate 40 %vol' --names 'a, b, c' --json | aqueth convert_strength --from -"
    "name a lot behind '#'; the answer of forecast_run has: charge, a, b, c, residue\n$")
refuses(carry_on.what_if "${run} --json | aqueth convert_strength --from '-#product'" "there is no lot 'product'; the answer of forecast_run has: charge, distillate, residue\n$")
foreach(name charge residue product)
  refuses(carry_on.reserved_name_${name} "${run} --cuts 'distillate 40 %vol' --names '${name}, last'" "--names '${name}, last': '${name}' is the name of another liquid in the answer")
endforeach()

# The last of several casks has the name; the others are told apart by their years. 62 % vol, as filled, is none of them.
set(cask "aqueth keep_cask --amount '50 L' --strength '62 %vol' --period '4 years, ethanol 4 %, water 2 %' --period '2 years, ethanol 4 %, water 2 %' --json")
answers(carry_on.last_cask "${cask} >kc.json; for each in kc.json kc.json#cask 'kc.json#cask after 6 years' 'kc.json#cask after 4 years'; do \
    aqueth convert_strength --from \"$each\" | head -n 1 | cut -d ' ' -f 1; done | uniq -c; rm kc.json" "^ +3 58[.]9[0-9]*\n +1 59[.]9[0-9]*\n$")

# Dissolved solids are not forgotten, whatever a task takes.
set(sweetened "aqueth sweeten_spirit --amount '5 L' --strength '60 %vol' --temperature '20 C' --target '30 %vol' --sugar '250 g/L' --json")
set(judged "aqueth judge_liqueur --sugar '250 g/L' --reading '5 %vol' --temperature '20 C' --json")
set(number 0)
foreach(task "weigh_spirit --gross '5 kg'" "correct_reading --temperature '20 C'" "forecast_run --charge '5 L' --power '2 kW' --end 'distillate 5 %vol'"
    "fill_jars --charge '5 L' --power '2 kW' --jar '400 mL' --end 'distillate 5 %vol'" "plan_season --wash '50 L' --pot-charge '20 L'"
    "follow_traces --charge '5 L' --trace 'methanol 50 g/hL'" "dilute_spirit --amount '1 L' --target '20 %vol'" "gauge_tank --dip '1 m'" describe_liquid
    "fill_bottles --amount '5 kg' --bottle '500 mL'" "sweeten_spirit --amount '1 L' --target '20 %vol' --sugar '100 g/L'" boiling_point convert_strength
    "keep_cask --amount '50 L'" "blend_lots --lot '1 L, 40 %vol, 20 C'" "check_label --contents '700 mL'" "check_label --label '25 %vol'")
  math(EXPR number "${number} + 1")
  string(REGEX REPLACE " .*" "" name "${task}")
  refuses(carry_on.sugar_forgotten_${number} "${sweetened} | aqueth ${task} --from -" "^aqueth ${name}: --from '-': 'liqueur' holds 250 g/L of sugar, which this task does not take into account; judge_liqueur")
  refuses(carry_on.sugar_judged_${number} "${judged} | aqueth ${task} --from -" "^aqueth ${name}: --from '-': the lot holds 250 g/L of sugar, which this task does not take into account; ")
endforeach()
answers(carry_on.sugar_passed_on "${sweetened} | aqueth read_refractometer --from -" "--strength '30 %vol' from -#liqueur\n +--sugar '250 g/L' from -#liqueur")
answers(carry_on.spirit_of_the_liqueur "${sweetened} | aqueth convert_strength --from '-#spirit'" "--strength '60 %vol' from -#spirit")
refuses(carry_on.extract_unknown "aqueth judge_liqueur --sample '100 mL' --made-up '100 mL' --reading '25.3 %vol' --temperature '20 C' --json | aqueth fill_bottles --from - --amount '5 kg'"
    "the lot holds an unknown amount of extract, which")
set(run_of_wash "${wash} | aqueth forecast_run --from - --power '2 kW' --end 'distillate 20 %vol' --json")
foreach(name charge residue)
  refuses(carry_on.extract_of_the_${name} "${run_of_wash} | aqueth forecast_run --from '-#${name}' --power '2 kW' --end 'distillate 1 %vol'" "'${name}' holds 0[.]54[0-9]* kg of extract, which")
endforeach()
refuses(carry_on.extract_left_by_jars "${wash} | aqueth fill_jars --from - --power '2 kW' --jar '1 L' --end 'collected 3 L' --json | aqueth convert_strength --from '-#residue'" "'residue' holds 0[.]54[0-9]* kg of extract, which")
answers(carry_on.distillate_has_none "${run_of_wash} | aqueth fill_bottles --from - --bottle '700 mL'" "from -#distillate")

# What cannot be carried on is refused, and what is there is named.
refuses(carry_on.no_such_lot "${dilution} | aqueth convert_strength --from '-#heads'" "there is no lot 'heads'; the answer of dilute_spirit has: spirit, .*product")
refuses(carry_on.which_lot "aqueth fill_bottles --amount '3 L' --strength '43 %vol' --temperature '20 C' --bottle '500 mL' --json | aqueth convert_strength --from -" "name a lot behind '#'; the answer of fill_bottles has: spirit.*left_over")
refuses(carry_on.no_lot "aqueth read_thermometer --pot '93 C' --json | sed 's/strength_percent_vol_20C/x/' | aqueth convert_strength --from -" "holds nothing that this task takes; the answer of read_thermometer has")
refuses(carry_on.still_missing "aqueth convert_strength --strength '43 %vol' --json | sed 's/percent_vol_20C/strength_&/' | aqueth fill_bottles --from - --bottle '500 mL'" "--amount is required|--temperature is required")
refuses(carry_on.nothing_taken "${hearts} | aqueth convert_strength --from - --strength '40 %vol'" "nothing is taken from it")
refuses(carry_on.extract_forgotten "${wash} | aqueth dilute_spirit --from - --target '5 %vol'" "'wash' holds 2[.]183 °P of extract, which this task does not take into account; forecast_run, ")
refuses(carry_on.number_too_large "${wash} | sed 's/\"volume_L\": 25.0/\"volume_L\": 1e400/' | aqueth fill_bottles --from -" "^aqueth fill_bottles: --from '-': a number in it is too large; --json writes an answer\n$")
refuses(carry_on.nothing_for_it "${hearts} | aqueth check_label --from - --label '43 %vol'" "--from '-': nothing is taken from it, and it holds nothing else that this task takes: --label has a value already\n$")
refuses(carry_on.taken_in_its_place "${hearts} | aqueth boiling_point --from - --vapour '50 %vol'" "it holds nothing else that this task takes: --vapour takes the place of --strength, .*--temperature is taken only with --amount\n$")
refuses(carry_on.other_glass "aqueth correct_reading --reading '81.5 %vol' --temperature '28 C' --glass borosilicate --json | aqueth judge_uncertainty --from -"
    "--from '-': the instrument that was read is of glass 'borosilicate'; this task knows soda-lime glass only\n$")
refuses(carry_on.unreadable_glass "aqueth correct_reading --reading '81.5 %vol' --temperature '28 C' --glass borosilicate --json | sed 's/borosilicate/x/' | aqueth judge_uncertainty --from -"
    "--from '-': its glass 'x': ")
refuses(carry_on.no_json "echo spirit | aqueth convert_strength --from -" "no JSON: an error in line 1")
refuses(carry_on.empty_file "aqueth convert_strength --from /dev/null" "--from '/dev/null': the file is empty; --json writes an answer\n$")
refuses(carry_on.empty_input "printf '\n' | aqueth convert_strength --from -" "--from '-': standard input is empty; --json writes an answer\n$")
refuses(carry_on.other_json "echo '{}' | aqueth convert_strength --from -" "no answer of aqueth")
refuses(carry_on.other_schema "${hearts} | sed 's/answers:1/answers:9/' | aqueth convert_strength --from -" "has schema 'urn:aqueth:answers:9', expected")
refuses(carry_on.no_file "aqueth convert_strength --from nothing.json" "--from 'nothing.json': cannot be read")
refuses(carry_on.stdin_twice "${hearts} | aqueth blend_lots --from - --from -" "only once")
refuses(carry_on.deep "printf '%0.s[' {1..100000} | aqueth convert_strength --from -" "no JSON")

# Answers follow the published schema, and an answer that does not is found.
find_package(Python3 COMPONENTS Interpreter REQUIRED)
set(check "${Python3_EXECUTABLE} ${CMAKE_CURRENT_SOURCE_DIR}/check_answers.py ${PROJECT_SOURCE_DIR}/docs/answers.schema.json")
answers(answers_follow_the_schema "${check} --examples $(ls ${PROJECT_SOURCE_DIR}/src/programs/*.cpp | xargs -n 1 basename -s .cpp | grep -v '^aqueth$' | tr '\\n' ' ')" "^[0-9]+ answers follow the schema\n$")
answers(schema.unit_missing "${dilution} | sed 's/mass_kg/mass/' | ${check} || true" "mass")
answers(schema.no_task "${dilution} | sed 's/\"task\"/\"work\"/' | ${check} || true" "'task' is a required property")
