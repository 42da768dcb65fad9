# SPDX-License-Identifier: BSL-1.0
set(many "aqueth many correct_reading --rows -")
set(three "printf 'jar,reading [%%vol],temperature [C]\\n1,81.5,28\\n2,45.5,20\\n3,101,20\\n'")

# The answers are those of the task itself: 79.09893762 as in the JSON of its own cases.
answers(many.readings "${three} | ${many} 2>&1 >rows_out | cat - rows_out; rm rows_out"
    "^aqueth many: 1 of 3 rows refused: .*\njar,reading \\[%vol\\],temperature \\[C\\],scale,reading_unit,temperature_C,true_strength,true_strength_unit,strength_percent_vol_20C,strength_percent_mass,us_proof,density_kg_m3,density_formulation,refused\n1,81.5,28,% vol at 20 °C,%vol at 20 C,28,79[.]0989376[23],% vol at 20 °C,.*\n2,45[.]5,20,% vol at 20 °C,%vol at 20 C,20,45[.]5,.*,\n3,101,20,,,,,,,,,,,--reading '101 %vol': .*101 % vol at 20 °C is outside 0 to 100.*\n$")
answers(many.results "${three} | head -n 3 | ${many} --results us_proof,true_strength"
    "^jar,reading \\[%vol\\],temperature \\[C\\],us_proof,true_strength,refused\n1,81.5,28,158[.]13[0-9]*,79[.]0989376[23],\n2,45[.]5,20,9[0-9.]*,45[.]5,\n$")
# Options behind the task are for every row: 79.06 is the case of this glass.
answers(many.shared_options "printf 'Reading [%%vol]\\n81.5\\n' | ${many} --temperature '28 C' --glass '10e-6 /K' --results true_strength | tail -n 1"
    "^81.5,79[.]0619[0-9]*,\n$")
answers(many.units_in_cells "printf 'reading,temperature\\n81.5 %%vol,28 C\\n81.5 %%vol,82.4 F\\n163 proof,28 C\\n81.5,28 C\\n' | ${many} --results true_strength 2>&1"
    "81.5 %vol,28 C,79[.]0989376[23],\n81.5 %vol,82.4 F,79[.]0989376[23],\n163 proof,28 C,155[.]4994[0-9]*,\n81.5,28 C,,\"--reading '81[.]5': the unit is missing")
answers(many.strengths "printf 'strength\\n50 %%mass\\n45 %%mass\\n935 kg/m3\\n' | aqueth many convert_strength --rows - --results percent_mass,us_proof,density_kg_m3,sg_20C_air | tail -n 3"
    "^50 %mass,50,[0-9.]+,913[.][0-9]*,0[.]91[0-9]*,\n45 %mass,45,.*\n935 kg/m3,[0-9.]*,[0-9.]*,935,")
answers(many.dilutions "printf 'amount [L];strength [%%vol]\\n3,5;70\\n1,85;60,5\\n' | aqueth many dilute_spirit --rows - --target '43 %vol' --temperature '20 C' 2>&1"
    "^aqueth many: cells are read and written with semicolons between them, numbers with decimal commas\n.*;refused\n3,5;70;.*\n1,85;60,5;.*;\n$")
answers(many.repeated_options "printf 'lot,lot\\n\"3 L, 60 %%vol, 20 C\",\"2 L, 40 %%vol, 20 C\"\\n' | aqueth many blend_lots --rows - | tail -n 1" "^\"3 L, 60 %vol, 20 C\",\"2 L, 40 %vol, 20 C\",.*,\n$")

answers(many.hot "printf 'reading [%%vol],temperature [C]\\n60,20\\n60,40\\n60,41\\n' | ${many} --results density_formulation"
    "60,20,oiml_r22,\n60,40,oiml_r22,\n60,41,fit_above_40_C,\n$")

# RFC 4180: quotes, line breaks in them, CRLF and the byte order mark come out as they went in.
answers(many.as_they_were "printf '\\xef\\xbb\\xbfnote,reading [%%vol],temperature [C]\\r\\n\"a \"\"b\"\",\\n c\",\"81.5\",28\\r\\nlast,81.5,28' | \
    ${many} --results true_strength | cat -A"
    "^M-oM-;M-[?]note,reading \\[%vol\\],temperature \\[C\\],true_strength,refused\\^M[$]\n\"a \"\"b\"\",[$]\n c\",\"81.5\",28,79[.]0989376[23],\\^M[$]\nlast,81.5,28,79[.]0989376[23],\\^M[$]\n$")
answers(many.tabs "printf 'reading [%%vol]\\ttemperature [C]\\n81,5\\t28,0\\n' | ${many} --results true_strength 2>/dev/null | tail -n 1" "^81,5\t28,0\t79,0989376[23]\t\n$")
answers(many.uneven "printf 'reading [%%vol],temperature [C]\\n81.5\\n81.5,28,x\\n\\n81.5,28\\n' | ${many} --results true_strength 2>/dev/null"
    "refused\n81.5,,,\"1 cell, but 2 columns\"\n81.5,\"28,x\",,\"3 cells, but 2 columns\"\n81.5,28,79[.]0989376[23],\n$")
answers(many.two_readings "printf 'reading [%%vol],temperature [C]\\n\"8,500\",28\\n' | ${many} 2>/dev/null | tail -n 1" "'8,500' can mean 8[.]500 or 8500")
answers(many.no_rows "printf 'reading [%%vol],temperature [C]\\n' | ${many}" "^reading \\[%vol\\],temperature \\[C\\],refused\n$")

# Many rows with ten bad ones: each answer is that of the task itself. (tests/packages.sh takes the time of a million.)
answers(many.rows_and_single_answers "${CMAKE_CURRENT_SOURCE_DIR}/rows_against_single_answers.sh 100000"
    "jar,reading.*99990 answered, 10 refused, 8910 compared, sum [0-9]+, largest difference below 2e-7\naqueth many: 10 of 100000 rows refused: .*7,strong,20,.*not a number.*10007,40 kg,.*unit of a mass.*20007,40 %,.*ambiguous.*30007,101,.*outside.*40007,-3,.*outside.*50007,50,-30,.*temperature -30.*60007,50,,.*--temperature is required.*70007,,20,.*either --reading or --strength.*80007,100,10,.*outside.*90007,\"1,234\",20,.*can mean 1[.]234 or 1234")

# What comes from the settings is the same for every row, also where loops answer; above 40 C the task answers.
set(set_up "d=$(mktemp -d); trap 'rm -r $d' EXIT; cd $d; printf 'stem.usual = \"no7\"\\ndigits = 5\\n[stem.no7]\\ncorrection = \"+0 at 50, +0.2 at 60\"\\n' >many.toml; \
    printf 'reading [%%vol],temperature [C]\\n45,20\\n70,20\\n70,45\\n70,20\\n' >many_set.csv")
answers(many.settings_in_loops "${set_up}; aqueth many correct_reading --rows many_set.csv --settings many.toml --results true_strength,density_formulation"
    "\n45,20,45,oiml_r22,\n70,20,70[.]2,oiml_r22,\n70,45,[.0-9]+,fit_above_40_C,\n70,20,70[.]2,oiml_r22,\n$")
answers(many.no_settings "${set_up}; export AQUETH_SETTINGS=many.toml; aqueth many correct_reading --rows many_set.csv --no-settings --results true_strength"
    "\n45,20,45,\n70,20,70,\n70,45,[.0-9]+,\n70,20,70,\n$")

# Files: a new one, or one that may be replaced; nothing else is touched.
answers(many.file "rm -rf many_out && mkdir many_out && cd many_out && ${three} >in.csv && aqueth many correct_reading --rows in.csv --out out.csv 2>&1; ls; tail -n 1 out.csv; cd .. && rm -r many_out"
    "1 of 3 rows refused.*2 rows answered, 1 refused, in out.csv\n\n  task +correct_reading\nin.csv\nout.csv\n3,101,")
answers(many.json "rm -f many_json.csv; ${three} | ${many} --out many_json.csv --json 2>/dev/null; rm many_json.csv" "\"rows\": 3,.*\"refused\": 1")
refuses(many.existing_file "touch many_old.csv; ${three} | ${many} --out many_old.csv" "'many_old.csv': the file exists already; --replace overwrites it")
refuses(many.unreadable "aqueth many correct_reading --rows /nonexistent/rows.csv" "--rows '/nonexistent/rows.csv': cannot be read")
refuses(many.folder "aqueth many correct_reading --rows /" "--rows '/': cannot be read")
refuses(many.empty "${many} </dev/null" "the file is empty")
refuses(many.open_quote "printf 'reading,temperature\\n\"81.5,28\\n' | ${many}" "line 2: a quote is not closed")
refuses(many.misspelt_column "printf 'redaing [%%vol]\\n81.5\\n' | ${many}" "no column is named like an option of correct_reading; did 'redaing' mean reading[?]")
refuses(many.misspelt_option "${three} | ${many} --glas borosilicate" "there is no option --glas; did you mean --glass[?]")
refuses(many.misspelt_result "${three} | ${many} --results proof" "--results 'proof': the results of correct_reading are: .*density_kg_m3, .*us_proof ")
refuses(many.twice "${three} | ${many} --temperature '20 C'" "--temperature is given for all rows, but it is a column, too")
refuses(many.answered_already "${three} | ${many} 2>/dev/null | ${many}" "has a column 'refused' already")
# A result never hides behind the old values of a column.
refuses(many.result_there_already "printf 'strength [%%vol],us_proof\\n43,111\\n' | aqueth many convert_strength --rows - --results us_proof"
    "^aqueth many: the file has a column 'us_proof' already: rename it, or leave it out; --results names the results wanted\n$")
refuses(many.some_result_there_already "printf 'strength [%%vol],us_proof\\n43,111\\n' | aqueth many convert_strength --rows -" "has a column 'us_proof' already")
refuses(many.own_output_again "printf 'strength [%%vol]\\n43\\n' | aqueth many convert_strength --rows - --results us_proof | sed 's/43/60/; s/,[^,]*$//' | aqueth many convert_strength --rows - --results us_proof"
    "has a column 'us_proof' already")
refuses(many.reading_asked_for "${three} | ${many} --results reading,us_proof" "has a column 'reading' already")
answers(many.own_column_beside "printf 'strength [%%vol],us_proof\\n43,111\\n' | aqueth many convert_strength --rows - --results percent_vol_20C" "\n43,111,43,\n$")
foreach(option record draw us)
  refuses(many.column_${option} "printf 'reading [%%vol],temperature [C],${option}\\n81.5,28,x.md\\n' | ${many}" "column '${option}': --${option} is not for rows; give the column another name")
endforeach()
refuses(many.open_bracket "printf 'reading [%%vol,temperature [C]\\n81.5,28\\n' | ${many}" "column 'reading \\[%vol': expected the name and its unit, as in 'reading \\[unit\\]'\n$")
answers(many.open_bracket_of_others "printf 'note (old,reading [%%vol],temperature [C]\\n1,45.5,20\\n' | ${many} --results true_strength" "\n1,45.5,20,45.5,\n$")
answers(many.one_of_one "printf 'reading [%%vol],temperature [C]\\n81.5\\n' | ${many} --results true_strength 2>&1" "^aqueth many: 1 of 1 row refused: the column 'refused' says why\n.*1 cell, but 2 columns")
answers(many.results_of_lists "printf 'charge [L],strength [%%vol]\\n25,11\\n' | aqueth many forecast_run --rows - --power '2 kW' --end 'distillate 20 %vol' --results heat_MJ 2>&1 | \
    tee long_list | grep -o 'heat_MJ[.]boiling\\|points[.][0-9]*\\|fractions[.]1[.]volume_L' | sort -u; wc -c <long_list | awk '{ print $1 < 4000 ? \"short\" : $1 }'; rm long_list" "^fractions[.]1[.]volume_L\nheat_MJ[.]boiling\npoints[.]1\nshort\n$")

# The rows that are read are never changed.
set(own "folder=own.$$; mkdir $folder; cd $folder; printf 'reading [%%vol],temperature [C]\\n81.5,28\\n' >own.csv; ln -s own.csv own_too.csv; end() { cd ..; rm -r $folder; exit $1; }")
refuses(many.own_input "${own}; aqueth many correct_reading --rows own.csv --out own.csv --replace; end $?" "--out 'own.csv': is the file of --rows, which is never changed; name another one\n$")
refuses(many.own_input_by_a_link "${own}; aqueth many correct_reading --rows own_too.csv --out own.csv --replace; end $?" "is the file of --rows, which is never changed")
refuses(many.own_input_from_the_shell "${own}; ${many} --out own.csv --replace <own.csv; end $?" "is the file of --rows, which is never changed")

# The record names the file of the rows, and says what they were answered with.
refuses(many.record_of_no_file "${three} | ${many} --record rows.md" "--record needs --out: the record names the file of the rows")
answers(many.record "rm -f rows.md rows_out.csv; ${three} | ${many} --glass borosilicate --out rows_out.csv --record rows.md >/dev/null 2>&1; sed -n '/^```text/,$p' rows.md; rm rows.md rows_out.csv"
    "^```text\n2 rows answered, 1 refused, in rows_out[.]csv\n\n  task +correct_reading '--glass=borosilicate'\n```\n")
refuses(many.unknown_task "aqueth many corect_reading --rows -" "did you mean correct_reading[?]")
refuses(many.itself "aqueth many many --rows -" "this task is not for rows")
refuses(many.json_to_the_screen "${three} | ${many} --json" "--json needs --out")
