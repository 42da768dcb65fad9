# SPDX-License-Identifier: BSL-1.0
set(place "--altitude '650 m'")

answers(read_thermometer.both "aqueth read_thermometer --pot '93.4 C' --head '85 C' ${place}"
    [[^Pot: the liquid has 5[.]0 % vol, the vapour over it 39[.]5 % vol .3[67][.][0-9] % vol to 4[12][.][0-9] % vol.[.]
Head: the distillate has 72[.]3 % vol .7[01][.][0-9] % vol to 7[345][.][0-9] % vol.[.]
.*pot +93[.]40 °C
.*if 0[.]10 K off +4[.]8[0-9] % vol to 5[.]1[0-9] % vol
.*if 0[.]50 K off +4[.]3[0-9] % vol to 5[.]6[0-9] % vol
.*pressure ± 1 % .*head +85[.]00 °C]])
# J. S. Carey and W. K. Lewis, Ind. Eng. Chem. 24 (1932) 882: 9.66 % mol boils at 86.7 °C. Within the half kelvin
# that thermometers and sets of measurements differ by, the program must say the same: 26.3 % vol.
answers(read_thermometer.published_pot "aqueth read_thermometer --pot '86.7 C' --pressure '1 atm'"
    "if 0[.]50 K off +2[0-5][.][0-9]* % vol to 2(6[.][3-9]|[7-9])")
answers(read_thermometer.there_and_back
    [[t=$(aqueth boiling_point --strength '8 %vol' | sed -n 's/^  boils at *\([0-9.]*\) .*/\1/p')
aqueth read_thermometer --pot "$t C"]]
    "^Pot: the liquid has 8[.]0 % vol.*liquid +8[.]0[01] % vol")
answers(read_thermometer.kelvin_and_fahrenheit "aqueth read_thermometer --pot '366.55 K' --head '185 F' ${place}"
    "pot +93[.]40 °C.*head +85[.]00 °C")
answers(read_thermometer.water "aqueth read_thermometer --pot '99.97 C'"
    "if 0[.]50 K off +0[.]00 % vol to 0[.][0-9]* % vol")
answers(read_thermometer.no_alcoholometer "aqueth read_thermometer --head '78.2 C'"
    "if 0[.]50 K off .* to 97[.]2[0-9] % vol.*Head: an error of 0[.]10 K changes the strength by [1-9].*Cool a sample.*only dehydrated")
# Two thermometers of half a kelvin each may cross, more is a swap.
answers(read_thermometer.hot_head "aqueth read_thermometer --pot '90 C' --head '90.9 C'"
    "The head is hotter than the pot")
refuses(read_thermometer.swapped "aqueth read_thermometer --pot '85 C' --head '95 C'"
    "--head '95 C' is hotter than --pot '85 C', which is impossible: were the two swapped?")
answers(read_thermometer.vacuum "aqueth read_thermometer --head '40 C' --pressure '8 kPa'" "none at this pressure")
answers(read_thermometer.deep_vacuum "aqueth read_thermometer --pot '10 C' --pressure '1.6 kPa'" "^Pot: the liquid has .*if 0[.]50 K off")
answers(read_thermometer.lowest_air "aqueth read_thermometer --head '15 C' --pressure '2.5 kPa'"
    "^Head: the distillate has .*if 0[.]50 K off")
# A hundredth more is outside the model: the row is left out, the answer stands.
answers(read_thermometer.highest_air "aqueth read_thermometer --pot '119 C' --pressure '198 kPa'"
    "^Pot: the liquid has .*if 0[.]50 K off [^\n]*\n  azeotrope")
answers(read_thermometer.us "aqueth read_thermometer --head '172.7 F' --us"
    "^Head: the distillate has 19[0-9] US proof.*172[.]70 °F.*if 0[.]18 °F off +1[0-9][0-9][.][0-9] US proof to 19[0-9][.][0-9] US proof.*Head: an error of 0[.]18 °F changes the strength by [1-9][0-9.]* US proof")
answers(read_thermometer.json
    "aqueth read_thermometer --pot '93.4 C' --head '78.2 C' --pressure '101.325 kPa' --json"
    [["pot": {.*"uncertainty_of_vapour": {.*"percent_vol_if_off_by_0.1K": .*"tells_strength": true.*"head": {.*"tells_strength": false]])

refuses(read_thermometer.nothing_read "aqueth read_thermometer" "give --pot or --head, or both")
refuses(read_thermometer.too_hot "aqueth read_thermometer --pot '101 C'"
    "--pot '101 C': temperature 101 °C is outside 78[.]1[0-9]* to 99[.]97[0-9]* °C .*water under 101[.]3 kPa")
refuses(read_thermometer.too_cold "aqueth read_thermometer --head '77 C'"
    "--head '77 C': temperature 77 °C is outside 78[.]1[0-9]* to 99[.]97")
refuses(read_thermometer.not_boiling_here "aqueth read_thermometer --head '99 C' --altitude '1500 m'"
    "temperature 99 °C is outside 7[0-9.]* to 94[.]9")
refuses(read_thermometer.no_unit "aqueth read_thermometer --pot 93" "--pot '93': the unit is missing; expected a temperature")
refuses(read_thermometer.strength "aqueth read_thermometer --pot '8 %vol'"
    "unit of a strength; expected a temperature")
answers(read_thermometer.comma "a=$(aqueth read_thermometer --pot '93,4 C'); [ \"$a\" = \"$(aqueth read_thermometer --pot '93.4 C')\" ] && echo same"
    "^same\n$")
refuses(read_thermometer.nan "aqueth read_thermometer --pot 'nan C'" "not a number")
refuses(read_thermometer.beyond_numbers "aqueth read_thermometer --pot '1e308 F'"
    "--pot '1e308 F': the number is too large; expected a temperature")
refuses(read_thermometer.wild_pressure "aqueth read_thermometer --pot '93 C' --pressure '1 kPa'"
    "--pressure '1 kPa': pressure 1 kPa is outside")
refuses(read_thermometer.two_airs "aqueth read_thermometer --pot '93 C' --pressure '1 bar' --altitude '0 m'"
    "give either --pressure or --altitude")
# What was written in Fahrenheit is refused in Fahrenheit.
refuses(read_thermometer.too_cold_in_fahrenheit "aqueth read_thermometer --us --pot '93 F'"
    "--pot '93 F': temperature 93 °F is outside 172[.]63[0-9]* to 211[.]95[0-9]* °F")
