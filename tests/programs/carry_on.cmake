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

# What cannot be carried on is refused, and what is there is named.
refuses(carry_on.no_such_lot "${dilution} | aqueth convert_strength --from '-#heads'" "there is no lot 'heads'; the answer of dilute_spirit has: spirit, .*product")
refuses(carry_on.which_lot "aqueth fill_bottles --amount '3 L' --strength '43 %vol' --temperature '20 C' --bottle '500 mL' --json | aqueth convert_strength --from -" "name a lot behind '#'; the answer of fill_bottles has: spirit.*left_over")
refuses(carry_on.no_lot "aqueth read_thermometer --pot '93 C' --json | sed 's/strength_percent_vol_20C/x/' | aqueth convert_strength --from -" "holds nothing that this task takes; the answer of read_thermometer has")
refuses(carry_on.still_missing "aqueth convert_strength --strength '43 %vol' --json | sed 's/percent_vol_20C/strength_&/' | aqueth fill_bottles --from - --bottle '500 mL'" "--amount is required|--temperature is required")
refuses(carry_on.nothing_taken "${hearts} | aqueth convert_strength --from - --strength '40 %vol'" "nothing is taken from it")
refuses(carry_on.extract_forgotten "${wash} | aqueth dilute_spirit --from - --target '5 %vol'" "has extract or sugar, which this task does not take into account")
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
