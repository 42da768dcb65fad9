# SPDX-License-Identifier: BSL-1.0
# The settings file: what it gives, what wins over it, and what is refused.
set(example ${PROJECT_SOURCE_DIR}/src/programs/settings_example.toml)
set(mine "export AQUETH_SETTINGS=${example};")

# with_file(<text>): a shell prefix that writes a settings file, uses it, and removes it at the end.
function(with_file prefix text)
  set(${prefix} "f=$(mktemp -d)/s.toml; trap 'rm -r $(dirname $f)' EXIT; printf '${text}' >$f; export AQUETH_SETTINGS=$f;" PARENT_SCOPE)
endfunction()

# What applies.
answers(settings.none "aqueth settings" "^Settings file: none is read[.]\n.*altitude +0 m +built in\n.*price +0 +built in\n.*power +- +not set")
answers(settings.shown "${mine} aqueth settings"
    "stem no7 .usual., line 16; certificate: Quillbeck, own comparison.*still quillbeck, line 34\n.*altitude +310 m +line 5\n.*scale +%vol at 20 C +line 17, stem no7\n.*power +- +not set\n.*units +metric +line 10\n")
answers(settings.chosen "${mine} aqueth settings --still quillbeck --power '2 kW'"
    "power +2 kW +command line\n.*plates +4 +line 38, still quillbeck\n.*reflux +2 +line 41, still quillbeck\n")
answers(settings.json "${mine} aqueth settings --still pot --json"
    "\"kind\": \"stem\".*\"option\": \"--heat-loss\",\n *\"value\": \"6 %\",\n *\"from\": \"line 48, still pot\"")
answers(settings.keys "aqueth help settings" "heat-loss +.still[.]NAME.*usual +.stem., .balance., .still.*XDG_CONFIG_HOME")
answers(settings.writes_nothing "d=$(mktemp -d); cd $d; HOME=$d XDG_CONFIG_HOME= aqueth settings >$d.txt; find $d | wc -l; rm -r $d $d.txt" "^1\n$")

# Where the file is.
answers(settings.in_config "d=$(mktemp -d); mkdir $d/aqueth; echo 'altitude = \"500 m\"' >$d/aqueth/settings.toml; \
    XDG_CONFIG_HOME=$d aqueth settings; rm -r $d" "/aqueth/settings[.]toml[.]\n.*altitude +500 m +line 1\n")
answers(settings.in_home "d=$(mktemp -d); mkdir -p $d/.config/aqueth; echo 'altitude = \"500 m\"' >$d/.config/aqueth/settings.toml; \
    unset XDG_CONFIG_HOME; HOME=$d aqueth settings; rm -r $d" "/[.]config/aqueth/settings[.]toml[.]\n.*altitude +500 m +line 1\n")
with_file(high "altitude = \"2000 m\"\\n")
answers(settings.named_one_wins "${high} aqueth settings --settings ${example}" "altitude +310 m +line 5\n")
answers(settings.no_settings "${high} aqueth settings --no-settings" "none is read.*altitude +0 m +built in\n")

# A task says which settings it took; an option on the command line wins, and displaces what it excludes.
# 2000 m are 79.495 kPa in the ICAO standard atmosphere.
answers(settings.text "${high} aqueth boiling_point --strength '10 %vol'" "79[.]50 kPa.*\n  settings +--altitude 2000 m .*s[.]toml.\n\n")
answers(settings.in_the_answer "${high} aqueth boiling_point --strength '10 %vol' --json"
    "\"settings\": .\n +.\n +\"option\": \"--altitude\",\n +\"value\": \"2000 m\",\n +\"file\": \"[^\n]*s[.]toml\",\n +\"line\": 1,")
answers(settings.option_wins "${high} a=$(aqueth boiling_point --strength '10 %vol' --altitude '0 m'); \
    [ \"$a\" = \"$(aqueth boiling_point --strength '10 %vol' --altitude '0 m' --no-settings)\" ] && echo same" "^same\n$")
answers(settings.pressure_wins "${high} aqueth boiling_point --strength '10 %vol' --pressure '100 kPa'" "100[.]0 kPa.*[.]\n$")
answers(settings.not_at_one_temperature "${high} aqueth equilibrium_table --temperature '80 C' --liquids '50 %mol' | grep -c settings; true" "^0\n$")
# The certificate adds 0.2 at 50 and -0.1 at 90, so -0.03625 at 81.5.
answers(settings.same_as_typed "${mine} a=$(aqueth correct_reading --reading '81.5 %vol' --temperature '28 C' | head -1); \
    [ \"$a\" = \"$(aqueth correct_reading --reading '81.46375 %vol' --temperature '28 C' --no-settings | head -1)\" ] && echo same" "^same\n$")
answers(settings.names_the_stem "${mine} aqueth correct_reading --reading '81.5 %vol' --temperature '28 C'" "\n  settings +stem no7 .*toml.\n\nCaution: ")
answers(settings.not_the_glass_of_a_flask "${mine} aqueth weigh_spirit --empty '58.42 g' --with-water '158.13 g' --with-spirit '149.61 g' \
    --temperature '21 C' --json | grep -c -e --glass; true" "^0\n$")
answers(settings.table_over_plain "f=$(mktemp -d)/s.toml; trap 'rm -r $(dirname $f)' EXIT; printf 'pressure = \"100 kPa\"\\n[still.hill]\\naltitude = \"2000 m\"\\npower = \"1 kW\"\\n' >$f; \
    aqueth settings --settings $f --still hill" "altitude +2000 m +line 3, still hill\npressure +- +not set\n")

# Tables by name.
set(run "aqueth forecast_run --charge '18 L' --strength '11 %vol' --cuts 'distillate 60 %vol' --end 'distillate 40 %vol'")
answers(settings.still_as_typed "${mine} a=$(${run} --still quillbeck | head -1); \
    b=$(${run} --no-settings --power '1.5 kW' --pot-heat '4 kJ/K' --pot-loss '1.2 W/K' --plates 4 --plate-efficiency 0.6 \
        --plate-holds '60 mL' --reflux 2 --head-holds '40 mL' --altitude '310 m' | head -1); [ -n \"$a\" ] && [ \"$a\" = \"$b\" ] && echo same" "^same\n$")
answers(settings.stages_for_plates "${mine} aqueth settings --still quillbeck --stages 3" "stages +3 +command line\nplates +- +not set\nplate-efficiency +[-0-9.]+ +(built in|not set)\nplate-holds +60 mL +line 40")
# The water for diluting is not the water in the flask.
answers(settings.balance "${mine} aqueth weigh_spirit --empty '58.42 g' --with-water '158.13 g' --with-spirit '149.61 g' \
    --temperature '21 C' --balance bench" "flask holds +[0-9.]+ mL at 20 °C.*settings +balance bench, --altitude 310 m [^\n]*settings_example[.]toml.\n\n")
answers(settings.balance_as_mass "${mine} aqueth weigh_spirit --empty '58.42 g' --with-water '158.13 g' --with-spirit '149.61 g' \
    --temperature '21 C' --balance '0.02 g' | grep -c 'balance bench'; true" "^0\n$")
answers(settings.required "${mine} ${run} --still pot" "\n  settings +still pot, --altitude 310 m")
refuses(settings.still_required "${mine} ${run}" "--power is required")

# Units and digits.
with_file(american "units = \"US\"\\ndigits = 6\\n")
answers(settings.units "${american} aqueth boiling_point --strength '10 %vol'" "°F")
answers(settings.units_of_a_liqueur "${american} aqueth sweeten_spirit --make '1 L' --strength '75 %vol' --target '28 %vol' --sugar '250 g/L'" "liqueur +33[.]8140 US fl oz of 55[.]9 US proof.*\n  settings +--digits 6, units US")
answers(settings.units_behind_the_sugar "${american} aqueth judge_liqueur --reading '39 %vol' --temperature '20 C' --sugar '5 g/L'" "^The liqueur has 80[.][0-9] US proof.*\n  settings +--digits 6, units US")
answers(settings.units_of_a_refractometer "${american} aqueth read_refractometer --strength '40 %vol'" "liquid +79[.]9 US proof.*\n  settings +--digits 6, units US")
answers(settings.units_of_a_liquid "${american} aqueth describe_liquid --strength '40 %vol'" "at 60 °F.*liquid +79[.]9 US proof.*\n  settings +--digits 6, units US")
answers(settings.units_of_traces "${american} aqueth follow_traces --charge '25 L' --strength '11 %vol' --power '2 kW' --end 'distillate 5 %vol' --trace 'methanol 50 g/hL'" "US gal at [0-9.]+ US proof.*\n  settings +--digits 6, units US")
answers(settings.metric_wins "${american} aqueth boiling_point --strength '10 %vol' --metric | grep -c '°F'; true" "^0\n$")
answers(settings.json_stays_metric "${american} aqueth boiling_point --strength '10 %vol' --json" "_C\"")
answers(settings.digits "aqueth dilute_spirit --amount '3 L' --strength '80 %vol' --temperature '20 C' --target '40 %vol' --digits 7"
    "[0-9][.][0-9][0-9][0-9][0-9][0-9][0-9] (L|kg)")
refuses(settings.too_many_digits "aqueth convert_strength --strength '43 %vol' --digits 12" "--digits '12'")

# The correction of a certificate.
answers(settings.correction "a=$(aqueth correct_reading --reading '50 %vol' --temperature '20 C' --correction '+0.1 at 40, +0.3 at 60' | grep -o 'True strength 50[.]20'); echo $a" "^True strength 50[.]20\n$")
answers(settings.predicts_the_reading "aqueth correct_reading --strength '50.2 %vol' --temperature '20 C' --correction '+0.1 at 40, +0.3 at 60'" "^The instrument will show 50[.]00 at 20")
refuses(settings.correction_unit "aqueth correct_reading --reading '50 %vol' --temperature '20 C' --correction '0.1 K'" "--correction '0[.]1 K'")
refuses(settings.correction_order "aqueth correct_reading --reading '50 %vol' --temperature '20 C' --correction '0.1 at 60, 0.2 at 40'" "the readings must rise")
refuses(settings.correction_alone "aqueth correct_reading --reading '50 %vol' --temperature '20 C' --correction '0.1, 0.2 at 40'" "need the readings they are for")
refuses(settings.correction_folds "aqueth correct_reading --reading '50 %vol' --temperature '20 C' --correction '5 at 40, -5 at 45'" "corrected readings must rise")
refuses(settings.correction_of_no_table "aqueth print_table density --rows '40 %vol' --columns '20 C' --correction '0.1'" "need correction")

with_file(letters "# für ½\\n[still.\"kühl\"]\\npower = \"1 kW\"\\n")
answers(settings.letters_in_quotes "${letters} aqueth settings --still kühl" "power +1 kW +line 3, still kühl\n")

# Refusals: file, line or table, and the nearest name.
function(refuses_file name text err)
  with_file(file "${text}")
  refuses(settings.${name} "${file} aqueth convert_strength --strength '43 %vol'" "^aqueth convert_strength: [^ ]*/s[.]toml, line ${err}")
endfunction()
refuses_file(unknown_key "\\naltitud = \"300 m\"\\n" "2: there is no setting altitud; did you mean altitude[?]\n$")
refuses_file(unknown_key_of_a_table "[still.quillbeck]\\npowr = \"1 kW\"\\n" "2: .still.quillbeck.: there is no setting powr; did you mean power[?]\n$")
refuses_file(key_of_no_setting "reading = \"81.5 %%vol\"\\n" "1: there is no setting reading; ")
refuses_file(key_in_the_wrong_table "[stem.no7]\\npower = \"1 kW\"\\n" "2: .stem.no7.: there is no setting power in a table of this kind")
refuses_file(key_outside_of_its_table "power = \"1 kW\"\\n" "1: there is no setting power outside of a table")
refuses_file(wrong_unit "altitude = \"300 L\"\\n" "1: altitude '300 L': .*m, ft")
refuses_file(no_unit "altitude = 300\\n" "1: altitude '300'")
refuses_file(wrong_unit_in_a_table "[still.a]\\npower = \"1 kg\"\\n" "2: .still.a.: power '1 kg'")
refuses_file(not_toml "units = \"US\"\\naltitude 300 m\\n" "2: not TOML: ")
refuses_file(open_quotes "altitude = \"300 m\\n" "1: not TOML: ")
refuses_file(letter_without_quotes "# kühl\\naltitude = \"300 m\"\\n[stem.kühl]\\n" "3: 'ü' needs quotes: ")
refuses_file(sign_without_quotes "water_½ = \"18 C\"\\n" "1: '½' needs quotes: ")
refuses_file(letter_after_texts "altitude = \"\"\"300 \\\\\\\" m\"\"\"\"\\né = 1\\n" "2: 'é' needs quotes: ")
refuses_file(two_tables "[stem.a]\\nscale = \"proof\"\\n[stem.a]\\nglass = \"soda-lime\"\\n" "3: not TOML: .*stem.a")
refuses_file(two_keys "altitude = \"1 m\"\\naltitude = \"2 m\"\\n" "2: not TOML: .*altitude")
refuses_file(kind_as_a_key "still = \"quillbeck\"\\n" "1: still is a kind of table: .still.NAME.; still.usual = ")
refuses_file(table_without_a_name "[still]\\npower = \"1 kW\"\\n" "2: .still.: there is no setting power; .*.still.NAME.")
refuses_file(unknown_table "[cask.a]\\n" "1: there are no tables .cask.")
refuses_file(unknown_units "units = \"imperial\"\\n" "1: units must be")
refuses_file(truth "altitude = true\\n" "1: altitude must be one line of text in quotes, or a number")
refuses_file(empty "altitude = \"\"\\n" "1: altitude must be one line of text in quotes, or a number")
refuses_file(altitude_and_pressure "altitude = \"1 m\"\\npressure = \"1 bar\"\\n" "2: give either altitude or pressure")
refuses_file(stages_and_plates "[still.a]\\nstages = 3\\nplates = 4\\n" "3: give either stages or plates")
with_file(usual "[still]\\nusual = \"quilbeck\"\\n[still.quillbeck]\\npower = \"1 kW\"\\n")
refuses(settings.unknown_usual "${usual} aqueth settings" "there is no still quilbeck in .*s[.]toml; did you mean quillbeck[?]")
refuses(settings.unknown_still "${mine} aqueth settings --still quilbeck" "there is no still quilbeck in .*settings_example[.]toml; did you mean quillbeck[?]")
refuses(settings.unknown_balance "${mine} aqueth weigh_spirit --gross '2 kg' --balance bensh" "there is no balance bensh .*did you mean bench[?]")
refuses(settings.no_still_without_a_file "aqueth settings --still quillbeck" "--still 'quillbeck': no settings file was read")
refuses(settings.task_without_a_still "${mine} aqueth convert_strength --strength '43 %vol' --still quillbeck" "there is no option --still")
refuses(settings.missing_file "aqueth settings --settings /nonexistent.toml" "settings file /nonexistent[.]toml cannot be read: No such file")
refuses(settings.missing_file_of_the_environment "AQUETH_SETTINGS=/nonexistent.toml aqueth settings" "/nonexistent[.]toml cannot be read: No such file")
refuses(settings.folder "aqueth settings --settings /tmp" "settings file /tmp cannot be read: Is a directory")
refuses(settings.endless "aqueth settings --settings /dev/zero" "it is larger than 1 MB")
refuses(settings.both "aqueth settings --settings ${example} --no-settings" "give either --settings or --no-settings")
answers(settings.help_without_the_file "AQUETH_SETTINGS=/nonexistent.toml aqueth convert_strength --help" "Usage")
