# SPDX-License-Identifier: BSL-1.0
set(tables ${PROJECT_SOURCE_DIR}/tables)
set(carey_lewis ${tables}/carey_lewis_1932.csv)

answers(equilibrium_table.isobar "aqueth equilibrium_table --liquids '0 to 90 %vol by 10' --altitude '650 m'"
    [[^Equilibrium of ethanol and water under 93[.]76 kPa
.*azeotrope .*
 +liquid +vapour +boils at +relative +uncertainty
 +% vol +% mass +% mol +% vol +% mass +% mol +°C +volatility +± % vol
 +0 .*
 +90[.]0 +85[.]7 +70[.]0 +92[.]2 ]])
# The same in US units: 180 proof are 90 % vol at 60 °F.
answers(equilibrium_table.us_units
    "aqueth equilibrium_table --liquids '0 to 180 proof by 20' --pressure '29.92 inHg'"
    [[under 29[.]92 inHg
.*US proof +% mass +% mol +US proof +% mass +% mol +°F +volatility +± US proof
.* +180 +85[.]7 +70[.]1 +18[0-9] .* 173[.][0-9] .* 0[.]4
]])
answers(equilibrium_table.isotherm "aqueth equilibrium_table --temperature '70 C' --liquids '0 to 100 %mol by 50'"
    "at 70[.]00 °C.*pressure.*kPa.*\n +0 .* 31[.]20 +1[0-9.]* +0[.]0\n.*\n +100 .*72[.][0-9]* +0[.]9[0-9]* +0[.]0\n")
answers(equilibrium_table.csv "aqueth equilibrium_table --liquids '40 %vol' --csv"
    [[^liquid_percent_vol_20C,liquid_percent_mass,.*,relative_volatility,vapour_uncertainty_percent_vol_20C,vapour_uncertainty_percent_mol
40,33[.]2996[0-9]*,16[.]334[0-9]*,.*,101[.]325,[0-9.]*,0[.]97[0-9]*,1[.]40[0-9]*
$]])
# docs/fit_report.txt, section 9: u(y) = 0.0197 at x = 0.0746 under 101.325 kPa. No doubt is stated in a vacuum.
answers(equilibrium_table.how_sure "aqueth equilibrium_table --pressure '1 atm' --liquids '7.46 %mol'"
    "uncertainty\n.*% vol\n.* 7[.]46 .* 1[.]8\n.*Uncertainty: one standard uncertainty of the model's vapour; known from 25 to 300 kPa")
answers(equilibrium_table.how_sure_in_json "aqueth equilibrium_table --pressure '1 atm' --liquids '7.46 %mol' --json"
    "\"vapour_uncertainty_percent_mol\": 1[.]97")
answers(equilibrium_table.how_sure_in_vacuum "aqueth equilibrium_table --pressure '10 kPa' --liquids '7.46 %mol'"
    "\n +21[.][0-9]+ [^\n]* -\n")
# The last option of a line in a script with the line ends of another system.
answers(equilibrium_table.carriage_return
    "aqueth equilibrium_table --pressure $'101.325 kPa\\r' --liquids $'40 %vol\\r' --csv" "\n40,33[.]2996")
answers(equilibrium_table.json "aqueth equilibrium_table --json"
    [["pressure_kPa": 101[.]325,.*"azeotrope": {.*"rows": .*"liquid_percent_mol": 5[.]0.*"relative_volatility"]])
answers(equilibrium_table.out_of_range_rows
    "aqueth equilibrium_table --pressure '230 kPa' --liquids '0 to 20 %vol by 10'"
    "\n +0 +0 +0 +- +- +- +- +- +-\n +10[.]0.*-: no value, outside the measured points or outside 0[.]01 to 120 °C")
# A measured point is given back: J. S. Carey and W. K. Lewis, Ind. Eng. Chem. 24 (1932) 882, x = 0.3273.
answers(equilibrium_table.measured_point "aqueth equilibrium_table --measured ${carey_lewis} --liquids '32.73 %mol'"
    [[^Equilibrium of ethanol and water as measured under 101[.]3 kPa
.*The points can be trusted.*points +15, 1[.]90 to 89[.]4 % mol
.*area test +[0-9][.][0-9] % .*temperature +0[.][0-9]+ K from the model on average.*
.* 32[.]7 .* 58[.]3 +81[.]50 ]])
answers(equilibrium_table.measured_beyond
    "aqueth equilibrium_table --measured ${carey_lewis} --liquids '0 to 100 %mol by 50' --csv"
    "\n0,0,0,,,,,101[.]325,,,\n78.*,50,.*\n100,100,100,,,,,101[.]325,,,\n$")
answers(equilibrium_table.measured_in_json "aqueth equilibrium_table --measured ${tables}/lai_2014.csv --json"
    "\"consistency\": {.*\"trusted\": true,.*\"points\": 16,.*\"rows\"")
answers(equilibrium_table.one_pressure_of_several
    "aqueth equilibrium_table --measured ${tables}/beebe_1942.csv --pressure '380 mmHg'" "points +[12][0-9], ")
answers(equilibrium_table.own_file
    "aqueth equilibrium_table --liquids '10 %mol' \\
        --measured <(printf 'x,y\\r\\n0.05,0.32\\n0.1,0.44\\n0.3,0.57\\n0.6,0.69\\n')"
    "points +4, 5[.]00 to 60[.]0 % mol.* 44[.]0 +- ")
answers(equilibrium_table.points_not_to_be_trusted
    "aqueth equilibrium_table --measured <(printf '0.05,0.2\\n0.1,0.3\\n0.3,0.45\\n0.6,0.6\\n') --liquids '10 %mol'"
    "Do not trust the points")

refuses(equilibrium_table.two_conditions "aqueth equilibrium_table --temperature '70 C' --pressure '1 bar'"
    "either --temperature or a pressure")
refuses(equilibrium_table.measured_at_a_temperature
    "aqueth equilibrium_table --temperature '70 C' --measured ${carey_lewis}"
    "needs a pressure")
refuses(equilibrium_table.too_hot "aqueth equilibrium_table --temperature '130 C'"
    "--temperature '130 C': temperature 130 °C is outside 0.01 to 120 °C")
refuses(equilibrium_table.no_row "aqueth equilibrium_table --pressure '900 kPa'"
    "--pressure '900 kPa': pressure 900 kPa is outside")
refuses(equilibrium_table.strength_above_100 "aqueth equilibrium_table --liquids '90 to 110 %vol by 10'"
    "110 % vol at 20 °C is outside")
refuses(equilibrium_table.no_unit "aqueth equilibrium_table --liquids '0 to 100'" "the unit is missing")
refuses(equilibrium_table.temperatures "aqueth equilibrium_table --liquids '10 to 20 C'" "expected a strength")
refuses(equilibrium_table.no_file "aqueth equilibrium_table --measured /nonexistent/x.csv"
    "--measured '/nonexistent/x.csv': cannot be read: No such file")
refuses(equilibrium_table.folder "aqueth equilibrium_table --measured /" "cannot be read: Is a directory")
refuses(equilibrium_table.endless_file "aqueth equilibrium_table --measured /dev/zero" "longer than 1 MiB")
refuses(equilibrium_table.no_text "aqueth equilibrium_table --measured <(printf 'a\\0b')" "no text")
refuses(equilibrium_table.empty_file "aqueth equilibrium_table --measured /dev/null" "--measured '/dev/null': the file has no points\n$")
refuses(equilibrium_table.other_pressure "aqueth equilibrium_table --measured ${carey_lewis} --altitude '1500 m'"
    "the file has no point at 84[.]5[56]* kPa; 15 at other pressures, the first at 101[.]3")
refuses(equilibrium_table.three_points
    "aqueth equilibrium_table --measured <(printf '0.1,0.4\\n0.2,0.5\\n0.3,0.6\\n')"
    "number of points 3 is outside 4")

# What a file may look like. One table of four points in other dresses: x = 0.1 has y = 0.44 at 86 °C.
set(four "0.05 0.32 90.5|0.1 0.44 86|0.3 0.57 81.7|0.6 0.69 79.3")
function(reads name head rows)
  string(REPLACE "|" "\\n" rows "${rows}")
  answers(equilibrium_table.reads.${name}
      "aqueth equilibrium_table --liquids '10 %mol' --measured <(printf '${head}${rows}\\n')"
      "points +4, 5[.]00 to 60[.]0 % mol.* 10[.]0 .* 44[.]0 +86[.]00 ")
endfunction()
function(reads_as name head separator)
  string(REPLACE " " "${separator}" rows "${four}")
  reads(${name} "${head}" "${rows}")
endfunction()
reads_as(no_names "" ",")
reads_as(any_case "X_Ethanol,Y_Ethanol,Temperature_C\\n" ",")
reads_as(byte_order_mark "\\xEF\\xBB\\xBFx,y,t\\r\\n" ",")
reads_as(tabs "x\\ty\\tT\\n" "\\t")
reads_as(quotes "\"x\",\"y\",\"t\"\\n" ",")
string(REPLACE "." "," decimal_commas "${four}")
string(REPLACE " " ";" decimal_commas "${decimal_commas}")
reads(decimal_commas "x;y;t\\r\\n" "${decimal_commas}")
reads(other_order "y,x,T\\n" "0.32,0.05,90.5|0.44,0.1,86|0.57,0.3,81.7|0.69,0.6,79.3")
reads(kelvins "x,y,temperature_k\\n" "0.05,0.32,363.65|0.1,0.44,359.15|0.3,0.57,354.85|0.6,0.69,352.45")
reads(fahrenheit "x,y,temperature_f\\n" "0.05,0.32,194.9|0.1,0.44,186.8|0.3,0.57,179.06|0.6,0.69,174.74")
reads(percent "x_percent_mol,y_percent_mol,t\\n" "5,32,90.5|10,44,86|30,57,81.7|60,69,79.3")
# The case of a name must not mix in the points of another pressure.
answers(equilibrium_table.other_pressure_left_out
    "aqueth equilibrium_table --liquids '10 %mol' --measured <(printf \\
        'x,y,Pressure_kPa\\n.05,.32,101\\n.1,.44,101\\n.3,.57,101\\n.6,.69,101\\n.2,.6,50\\n')"
    "points +4, 5[.]00 to 60[.]0 % mol; 1 at another pressure left out\n.* 44[.]0 ")
answers(equilibrium_table.reads_itself
    "f=$(mktemp); trap 'rm $f' EXIT
aqueth equilibrium_table --liquids '0 to 100 %mol by 5' --csv >$f
aqueth equilibrium_table --liquids '35 %mol' --measured $f"
    "can be trusted.*points +21, 0 to 100 % mol; not used: columns relative_volatility, vapour_[^\n]*\n.* 35[.]0 ")
answers(equilibrium_table.names_what_it_does_not_use
    "aqueth equilibrium_table --json --measured <(printf 'run,x,y\\na,.05,.32\\nb,.1,.44\\nc,.3,.57\\nd,.6,.69\\ne,.7,\\n')"
    "\"empty_lines\": 1,.*\"ignored_columns\": .[ \n]*\"run\"")

# What it may not. The file, the line and the column are named.
function(refuses_points name file err)
  refuses(equilibrium_table.${name} "aqueth equilibrium_table --measured <(printf '${file}')"
      "--measured '/dev/fd/[0-9]+': ${err}")
endfunction()
refuses_points(percent_for_fractions "10,44\\n20,52\\n" "line 1, column x: 10 is outside 0 to 1; is this percent[?]")
refuses_points(kelvins_for_celsius "x,y,t\\n0.1,0.44,359.15\\n"
    "line 2, column t: 359[.]15 is outside 0[.]01 to 120 °C; are these kelvins[?]")
refuses_points(below_absolute_zero "x,temperature_c\\n0.1,-300\\n" "line 2, column temperature_c: -300 is outside")
refuses_points(unknown_unit "x,y,temperature_r\\n0.1,0.44,646\\n" "line 1, column temperature_r: the name has no known unit")
refuses_points(unknown_names "wash,steam\\n0.1,0.44\\n" "line 1: no column holds the liquid: wash, steam; accepted are x or x_ethanol")
refuses_points(one_name_twice "x,y,Y\\n0.1,0.44,0.45\\n" "line 1, column Y: two columns have this name")
refuses_points(commas_and_decimal_commas "x,y\\n0,1,0,44\\n" "line 2: 4 cells, but 2 columns; decimal commas need semicolons")
refuses_points(two_decimal_signs "x;y\\n0,1;0.44\\n" "line 2, column y: '0.44' has a decimal point")
refuses_points(words "x,y\\n0.1,much\\n" "line 2, column y: 'much' is not a number")
refuses_points(short_row "x_ethanol,y_ethanol\\n0.1\\n" "line 2: 1 cell, but 2 columns")
refuses_points(no_liquid "x_ethanol,y_ethanol\\n,0.1\\n" "line 2: no number for the liquid")
refuses_points(open_quote "x,y\\n0.1,\"0.44\\n" "line 2: a quote opens here and does not close")
# Names that are not UTF-8 make no invalid JSON and no internal error.
answers(equilibrium_table.name_in_latin_1
    "f=$(mktemp); printf 'x,y,bl\\xe9\\n.05,.32,1\\n.1,.44,1\\n.3,.57,1\\n.6,.69,1\\n' >$f
aqueth equilibrium_table --json --measured $f; rm $f"
    "\"ignored_columns\": .[ \n]*\"bl�\"")
add_case(equilibrium_table.name_in_latin_1_in_a_message
    "aqueth equilibrium_table --measured $(printf '/nonexistent/\\xe9.csv')" 2 "^$"
    "--measured '/nonexistent/�.csv': cannot be read")
