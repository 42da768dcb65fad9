# SPDX-License-Identifier: BSL-1.0
answers(print_table.density "aqueth print_table density --rows '0 to 40 %vol by 40' --columns '15 to 20 C by 5'"
    [[^Density in kg/m3
down: strength in %vol; across: temperature in C

 +15 +20
 +0 +999[.]1[0-9] +998[.]20
 +40 +951[.]33 +948[.]05
]])
answers(print_table.correction "aqueth print_table correction --rows '81.5 %vol' --columns '20 to 28 C by 8'"
    "^True strength in % vol at 20 °C\n.* 20 +28\n +81[.]5 +81[.]50 +79[.]10\n")
answers(print_table.correction_in_proof
    "aqueth print_table correction --scale proof --rows '193 proof' --columns '60 to 75 F by 15'"
    "193 +193[.]00 +189[.](4[5-9]|5[0-4])\n")
# L. J. Gay-Lussac, table de mouillage: 100 volumes of 95 % take 6.41 volumes of water for 90 %, 13.33 for 85 %
# (the library's 6.413 and 13.341; tests/published/gay_lussac_dilution_test.cpp has the whole table).
set(at_15 "--amount '100 L' --temperature '15 C'")
answers(print_table.published_dilution
    "aqueth print_table water-by-volume ${at_15} --rows '95 %vol at 15 C' --columns '85 to 90 %vol at 15 C by 5' --csv"
    "^spirit .%vol at 15 C.,85 %vol at 15 C,90 %vol at 15 C\n95,13[.]3[0-9]*,6[.]4[0-9]*\n$")
answers(print_table.water_by_mass
    "aqueth print_table water-by-mass --amount '1 kg' --rows '50 %mass' --columns '25 to 75 %mass by 25'"
    " 50 +1[.]000[0-9] +0[.]0000 +-\n.*-: no value [(]frozen, off the scale, or stronger")
# 1 mL is a thousandth of the litre, which needs 0.3461 L for 45 % vol; machines get litres.
answers(print_table.millilitres "aqueth print_table water-by-volume --rows '60 %vol' --columns '45 %vol' --amount '1 mL'"
    "^mL of water for 1 mL of spirit.* 60 +0[.]34[0-9][0-9]\n")
answers(print_table.litres_in_csv "aqueth print_table water-by-volume --rows '60 %vol' --columns '45 %vol' --amount '1 mL' --csv"
    "\n60,0[.]00034[0-9]+\n$")
answers(print_table.ounces "aqueth print_table water-by-volume --rows '60 %vol' --columns '45 %vol' --amount '1 fl oz'"
    "^US fl oz of water for 1 fl oz of spirit.* 60 +0[.]34[0-9][0-9]\n")
answers(print_table.grams "aqueth print_table water-by-mass --rows '60 %vol' --columns '45 %vol' --amount '500 mL'"
    "^g of water by the balance for 500 mL of spirit.* 60 +17[0-9][.][0-9][0-9]\n")
answers(print_table.digits "aqueth print_table water-by-volume --rows '60 %vol' --columns '45 %vol' --amount '1 L' --digits 6"
    " 60 +0[.]34[0-9][0-9][0-9][0-9]\n")
answers(print_table.few_digits "aqueth print_table water-by-volume --rows '60 %vol' --columns '45 %vol' --amount '1 L' --digits 3"
    " 60 +0[.]34[0-9]\n.*A fresh mixture is often warm.*Caution: spirit and its vapour catch fire")
answers(print_table.csv
    "aqueth print_table density --rows '0 to 10 %mass by 10' --columns '-5 to 20 C by 25' --csv"
    "^strength .%mass.,-5 C,20 C\n0,,998[.]20123\n10,,981[.]8[0-9]*\n$")
answers(print_table.json
    "aqueth print_table density --rows '0 to 40 %vol by 40' --columns '-5 to 20 C by 25' --json"
    [["table": "Density in kg/m3".*"values": .*40.0.*"cells": .*null.*948[.]04515]])
answers(print_table.fine_steps "aqueth print_table density --rows '40 to 41 %vol by 0.1' --columns '20 C' --csv"
    "\n40[.]3,.*\n41,")

refuses(print_table.unknown_table "aqueth print_table volume --rows '1 to 2 %vol' --columns '1 to 2 C'"
    "TABLE 'volume': expected density, correction")
refuses(print_table.no_rows "aqueth print_table density --columns '1 to 2 C'" "--rows is required")
refuses(print_table.no_unit "aqueth print_table density --rows '1 to 2' --columns '1 to 2 C'"
    "--rows '1 to 2': the unit is missing")
refuses(print_table.two_units "aqueth print_table density --rows '1 %vol to 2 %mass' --columns '1 to 2 C'"
    "write the unit once")
refuses(print_table.downwards "aqueth print_table density --rows '2 to 1 %vol' --columns '1 to 2 C'"
    "must not exceed the second")
refuses(print_table.no_step "aqueth print_table density --rows '1 to 2 %vol by 0' --columns '1 to 2 C'"
    "step must be above 0")
refuses(print_table.step_back "aqueth print_table density --rows '1 to 2 %vol by -1' --columns '1 to 2 C'"
    "step must be above 0")
refuses(print_table.step_with_unit "aqueth print_table density --rows '1 to 2 %vol by 1 %vol' --columns '1 to 2 C'"
    "write the step without a unit")
refuses(print_table.too_long "aqueth print_table density --rows '1 to 2 %vol by 0.000001' --columns '1 to 2 C'"
    "at most 10000 values")
refuses(print_table.too_large
    "aqueth print_table density --rows '0 to 90 %vol by 0.01' --columns '0 to 40 C by 0.01'"
    "more than 1000000 cells")
answers(print_table.range_with_comma
    "aqueth print_table density --rows '1,5 to 2,5 %vol' --columns '1 to 2 C' --csv" "\n1[.]5,")
refuses(print_table.strength_above_100 "aqueth print_table density --rows '1 to 200 %vol by 10' --columns '1 to 2 C'"
    "101 % vol at 20 °C is outside 0 to 100")
refuses(print_table.too_hot "aqueth print_table density --rows '1 to 2 %vol' --columns '1 to 120 C by 17'"
    "103 °C is outside -20 to 99[.]9")
refuses(print_table.strengths_for_temperatures
    "aqueth print_table density --rows '1 to 2 %vol' --columns '1 to 2 %vol'"
    "expected a temperature")
refuses(print_table.all_frozen "aqueth print_table density --rows '1 to 2 %vol' --columns '-15 to -10 C'"
    "freezing point")
refuses(print_table.all_too_strong "aqueth print_table water-by-mass --rows '40 %vol' --columns '50 to 60 %vol'"
    "target strength 50 % vol at 20 °C is outside .* to 40 % vol")
# A million cells without an answer take a tenth of a second, not an exception each (which took three and more).
# The limit is of processor time: a machine that pauses does not fail it.
refuses(print_table.a_million_frozen
    "ulimit -t 2; aqueth print_table density --rows '10 to 10.999 %vol by 0.001' --columns '-20 to -19.001 C by 0.001'"
    "temperature -20 °C is outside -3[.]4")
refuses(print_table.a_million_too_strong
    "ulimit -t 2; aqueth print_table water-by-mass --rows '10 to 10.999 %vol by 0.001' --columns '20 to 20.999 %vol by 0.001'"
    "target strength 20 % vol at 20 °C is outside")
refuses(print_table.other_scale "aqueth print_table correction --rows '70 to 75 %mass' --columns '10 to 20 C'"
    "the scale is % vol at 20 °C")
refuses(print_table.scale_for_density
    "aqueth print_table density --rows '1 to 2 %vol' --columns '1 to 2 C' --scale proof"
    "need correction")
refuses(print_table.amount_for_correction
    "aqueth print_table correction --rows '1 to 2 %vol' --columns '1 to 2 C' --amount '1 L'"
    "need water-by-mass")
refuses(print_table.amount_below_zero
    "aqueth print_table water-by-mass --rows '80 %vol' --columns '50 %vol' --amount '-1 L'"
    "volume -1 L is outside")
refuses(print_table.hot_water
    "aqueth print_table water-by-mass --amount '1 L' --temperature '101 C' --rows '80 %vol' --columns '50 %vol'"
    "--temperature '101 C': temperature 101 °C is outside 0 to 99[.]9")
refuses(print_table.two_forms "aqueth print_table density --rows '1 to 2 %vol' --columns '1 to 2 C' --json --csv"
    "either --json or --csv")
# 27 CFR 30.65, table 5: 190 proof weighs 6.79434 lb a gallon at 60 F (R 22: within a few units of the fifth digit).
answers(print_table.us_density "aqueth print_table density --rows '190 proof' --columns '60 F'"
    "^Weight in lb/US gal, in air.* 190 +6[.]794[0-9]\n")
answers(print_table.us_water "aqueth print_table water-by-volume --rows '190 proof' --columns '100 proof'"
    "^US gal of water for 1 gal of spirit, measured at 60 °F.* 190 +0[.][0-9]+\n")
answers(print_table.metric_for_machines "aqueth print_table density --rows '190 proof' --columns '60 F' --csv"
    "\n190,81[0-9][.]")

# 50 mL of each alone would be 100 mL: the handbooks' greatest contraction, 3.6 % near half and half (common knowledge).
answers(print_table.contraction "aqueth print_table contraction --rows '0 to 100 %vol by 50' --columns '20 C'"
    "^Volume lost in mixing ethanol and water.*\n +0 +0[.]00\n +50 +3[.][5-7][0-9]\n +100 +0[.]00\n")
set(in_folder "d=$(mktemp -d) && trap 'rm -r $d' EXIT && cd $d &&")
answers(print_table.drawing "${in_folder} aqueth print_table contraction --rows '0 to 100 %vol by 5' --columns '10 to 30 C by 10' --draw a.svg && grep -c 'Volume lost' a.svg"
    "  drawing +a[.]svg.*\n[1-9]\n$")
# The name of the axis fits beside it.
answers(print_table.axis "${in_folder} aqueth print_table water-by-volume --rows '60 to 62 %vol' --columns '40 to 50 %vol by 5' --draw a.svg >/dev/null && grep -c '>water to add, L<' a.svg"
    "^1\n$")
refuses(print_table.too_many_lines "aqueth print_table contraction --rows '0 to 100 %vol by 5' --columns '10 to 30 C' --draw a.svg"
    "a picture has at most 6 columns")

# The unit of the scale, as the caption says.
answers(print_table.correction_in_grams_a_litre "aqueth print_table correction --scale 'g/L' --rows '300 g/L' --columns '20 C'"
    "^True strength in g/L at 20 °C.* 300  300[.]00\n")
