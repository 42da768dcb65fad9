# SPDX-License-Identifier: BSL-1.0
set(many "aqueth many correct_reading --rows -")
set(three "printf 'jar,reading [%%vol],temperature [C]\\n1,84,31\\n2,45.5,20\\n3,101,20\\n'")

# The answers are those of the task itself: 80.76492817 as in the JSON of its own cases.
answers(many.readings "${three} | ${many} 2>&1 >rows_out | cat - rows_out; rm rows_out"
    "^aqueth many: 1 of 3 rows refused: .*\njar,reading \\[%vol\\],temperature \\[C\\],scale,reading_unit,temperature_C,true_strength,true_strength_unit,strength_percent_vol_20C,strength_percent_mass,us_proof,density_kg_m3,density_formulation,refused\n1,84,31,% vol at 20 °C,%vol at 20 C,31,80[.]7649281[78],% vol at 20 °C,.*\n2,45[.]5,20,% vol at 20 °C,%vol at 20 C,20,45[.]5,.*,\n3,101,20,,,,,,,,,,,--reading '101 %vol': .*101 % vol at 20 °C is outside 0 to 100.*\n$")
answers(many.results "${three} | head -n 3 | ${many} --results us_proof,true_strength"
    "^jar,reading \\[%vol\\],temperature \\[C\\],us_proof,true_strength,refused\n1,84,31,161[.]46[0-9]*,80[.]7649281[78],\n2,45[.]5,20,9[0-9.]*,45[.]5,\n$")
# Options behind the task are for every row: 80.72 is the case of this glass.
answers(many.shared_options "printf 'Reading [%%vol]\\n84\\n' | ${many} --temperature '31 C' --glass '10e-6 /K' --results true_strength | tail -n 1"
    "^84,80[.]715[0-9]*,\n$")
answers(many.units_in_cells "printf 'reading,temperature\\n84 %%vol,31 C\\n84 %%vol,87.8 F\\n168 proof,31 C\\n84,31 C\\n' | ${many} --results true_strength 2>&1"
    "84 %vol,31 C,80[.]7649281[78],\n84 %vol,87.8 F,80[.]7649281[78],\n168 proof,31 C,158[.]87[0-9]*,\n84,31 C,,\"--reading '84': the unit is missing")
answers(many.strengths "printf 'strength\\n50 %%mass\\n45 %%mass\\n935 kg/m3\\n' | aqueth many convert_strength --rows - --results percent_mass,us_proof,density_kg_m3,sg_20C_air | tail -n 3"
    "^50 %mass,50,[0-9.]+,913[.][0-9]*,0[.]91[0-9]*,\n45 %mass,45,.*\n935 kg/m3,[0-9.]*,[0-9.]*,935,")
answers(many.dilutions "printf 'amount [L];strength [%%vol]\\n3,5;70\\n2,0;60,5\\n' | aqueth many dilute_spirit --rows - --target '45 %vol' --temperature '20 C' 2>&1"
    "^aqueth many: cells are read and written with semicolons between them, numbers with decimal commas\n.*;refused\n3,5;70;.*\n2,0;60,5;.*;\n$")
answers(many.repeated_options "printf 'lot,lot\\n\"3 L, 60 %%vol, 20 C\",\"2 L, 40 %%vol, 20 C\"\\n' | aqueth many blend_lots --rows - | tail -n 1" "^\"3 L, 60 %vol, 20 C\",\"2 L, 40 %vol, 20 C\",.*,\n$")

# Settings apply to every row, also to those that the loops answer; hot rows say so.
answers(many.settings "printf 'reading [%%vol],temperature [C]\\n84,31\\n84,31\\n84,31\\n' | AQUETH_SETTINGS=${PROJECT_SOURCE_DIR}/src/programs/settings_example.toml ${many} --results true_strength | tail -n 3"
    "^(84,31,80[.]70782876,\n)+$")
answers(many.hot "printf 'reading [%%vol],temperature [C]\\n60,20\\n60,40\\n60,41\\n' | ${many} --results density_formulation"
    "60,20,oiml_r22,\n60,40,oiml_r22,\n60,41,fit_above_40_C,\n$")

# RFC 4180: quotes, line breaks in them, CRLF and the byte order mark come out as they went in.
answers(many.as_they_were "printf '\\xef\\xbb\\xbfnote,reading [%%vol],temperature [C]\\r\\n\"a \"\"b\"\",\\n c\",\"84\",31\\r\\nlast,84,31' | \
    ${many} --results true_strength | cat -A"
    "^M-oM-;M-[?]note,reading \\[%vol\\],temperature \\[C\\],true_strength,refused\\^M[$]\n\"a \"\"b\"\",[$]\n c\",\"84\",31,80[.]7649281[78],\\^M[$]\nlast,84,31,80[.]7649281[78],\\^M[$]\n$")
answers(many.tabs "printf 'reading [%%vol]\\ttemperature [C]\\n84,0\\t31,0\\n' | ${many} --results true_strength 2>/dev/null | tail -n 1" "^84,0\t31,0\t80,7649281[78]\t\n$")
answers(many.uneven "printf 'reading [%%vol],temperature [C]\\n84\\n84,31,x\\n\\n84,31\\n' | ${many} --results true_strength 2>/dev/null"
    "refused\n84,,,\"1 cells, but 2 columns\"\n84,\"31,x\",,\"3 cells, but 2 columns\"\n84,31,80[.]7649281[78],\n$")
answers(many.two_readings "printf 'reading [%%vol],temperature [C]\\n\"8,500\",31\\n' | ${many} 2>/dev/null | tail -n 1" "'8,500' can mean 8[.]500 or 8500")
answers(many.no_rows "printf 'reading [%%vol],temperature [C]\\n' | ${many}" "^reading \\[%vol\\],temperature \\[C\\],refused\n$")

# Many rows with ten bad ones: each answer is that of the task itself. (tests/packages.sh takes the time of a million.)
answers(many.rows_and_single_answers "${CMAKE_CURRENT_SOURCE_DIR}/rows_against_single_answers.sh 100000"
    "jar,reading.*99990 answered, 10 refused, 8910 compared, sum [0-9]+, largest difference below 2e-7\naqueth many: 10 of 100000 rows refused: .*7,strong,20,.*not a number.*10007,40 kg,.*unit of a mass.*20007,40 %,.*ambiguous.*30007,101,.*outside.*40007,-3,.*outside.*50007,50,-30,.*temperature -30.*60007,50,,.*--temperature is required.*70007,,20,.*either --reading or --strength.*80007,100,10,.*outside.*90007,\"1,234\",20,.*can mean 1[.]234 or 1234")

# Files: a new one, or one that may be replaced; nothing else is touched.
answers(many.file "rm -rf many_out && mkdir many_out && cd many_out && ${three} >in.csv && aqueth many correct_reading --rows in.csv --out out.csv 2>&1; ls; tail -n 1 out.csv; cd .. && rm -r many_out"
    "1 of 3 rows refused.*2 rows answered, 1 refused, in out.csv\nin.csv\nout.csv\n3,101,")
answers(many.json "rm -f many_json.csv; ${three} | ${many} --out many_json.csv --json 2>/dev/null; rm many_json.csv" "\"rows\": 3,.*\"refused\": 1")
refuses(many.existing_file "touch many_old.csv; ${three} | ${many} --out many_old.csv" "'many_old.csv': the file exists already; --replace overwrites it")
refuses(many.unreadable "aqueth many correct_reading --rows /nonexistent/rows.csv" "--rows '/nonexistent/rows.csv': cannot be read")
refuses(many.folder "aqueth many correct_reading --rows /" "--rows '/': cannot be read")
refuses(many.empty "${many} </dev/null" "the file is empty")
refuses(many.open_quote "printf 'reading,temperature\\n\"84,31\\n' | ${many}" "line 2: a quote is not closed")
refuses(many.misspelt_column "printf 'redaing [%%vol]\\n84\\n' | ${many}" "no column is named like an option of correct_reading; did 'redaing' mean reading[?]")
refuses(many.misspelt_option "${three} | ${many} --glas borosilicate" "there is no option --glas; did you mean --glass[?]")
refuses(many.misspelt_result "${three} | ${many} --results proof" "--results 'proof': the results of correct_reading are: .*density_kg_m3, .*us_proof ")
refuses(many.twice "${three} | ${many} --temperature '20 C'" "--temperature is given for all rows, but it is a column, too")
refuses(many.answered_already "${three} | ${many} 2>/dev/null | ${many}" "has a column 'refused' already")
refuses(many.unknown_task "aqueth many corect_reading --rows -" "did you mean correct_reading[?]")
refuses(many.itself "aqueth many many --rows -" "this task is not for rows")
refuses(many.json_to_the_screen "${three} | ${many} --json" "--json needs --out")
