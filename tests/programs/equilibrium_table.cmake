# SPDX-License-Identifier: BSL-1.0
set(tables ${PROJECT_SOURCE_DIR}/tables)
set(carey_lewis ${tables}/carey_lewis_1932.csv)

answers(equilibrium_table.isobar "equilibrium_table --liquids '0 to 90 %vol by 10' --altitude '650 m'"
    [[^Equilibrium of ethanol and water under 93[.]757 kPa
.*azeotrope .*
 +liquid +vapour +boils at +relative
 +% vol +% mass +% mol +% vol +% mass +% mol +°C +volatility
 +0[.]00 .*
 +90[.]00 +85[.]66 +70[.]03 +92[.]2]])
answers(equilibrium_table.isotherm "equilibrium_table --temperature '70 C' --liquids '0 to 100 %mol by 50'"
    "at 70[.]00 °C.*pressure.*kPa.*\n +0[.]00 .* 31[.]20 +1[0-9.]*\n.*\n +100[.]00 .*72[.][0-9]* +0[.]9")
answers(equilibrium_table.csv "equilibrium_table --liquids '40 %vol' --csv"
    [[^liquid_percent_vol_20C,liquid_percent_mass,.*,relative_volatility
40,33[.]2996[0-9]*,16[.]334[0-9]*,.*,101[.]325,[0-9.]*
$]])
answers(equilibrium_table.json "equilibrium_table --json"
    [["pressure_kPa": 101[.]325,.*"azeotrope": {.*"rows": .*"liquid_percent_mol": 5[.]0.*"relative_volatility"]])
answers(equilibrium_table.out_of_range_rows
    "equilibrium_table --pressure '230 kPa' --liquids '0 to 20 %vol by 10'"
    "\n +0[.]00 +0[.]00 +0[.]00 +- +- +- +- +-\n +10[.]00.*-: outside")
# A measured point is given back: J. S. Carey and W. K. Lewis, Ind. Eng. Chem. 24 (1932) 882, x = 0.3273.
answers(equilibrium_table.measured_point "equilibrium_table --measured ${carey_lewis} --liquids '32.73 %mol'"
    [[^Equilibrium of ethanol and water as measured under 101[.]33 kPa
.*The points can be trusted.*points +15, 1[.]90 to 89[.]43 % mol
.*area test +[0-9][.][0-9] % .*temperature +off the model by.*
.* 32[.]73 .* 58[.]26 +81[.]50 ]])
answers(equilibrium_table.measured_beyond
    "equilibrium_table --measured ${carey_lewis} --liquids '0 to 100 %mol by 50' --csv"
    "\n0,0,0,,,,,101[.]325,\n78.*,50,.*\n100,100,100,,,,,101[.]325,\n$")
answers(equilibrium_table.measured_in_json "equilibrium_table --measured ${tables}/lai_2014.csv --json"
    "\"consistency\": {.*\"trusted\": true,.*\"points\": 16,.*\"rows\"")
answers(equilibrium_table.one_pressure_of_several
    "equilibrium_table --measured ${tables}/beebe_1942.csv --pressure '380 mmHg'" "points +[12][0-9], ")
answers(equilibrium_table.own_file
    "equilibrium_table --liquids '10 %mol' \\
        --measured <(printf 'x,y\\r\\n0.05,0.32\\n0.1,0.44\\n0.3,0.57\\n0.6,0.69\\n')"
    "points +4, 5[.]00 to 60[.]00 % mol.* 44[.]00 +- ")
answers(equilibrium_table.points_not_to_be_trusted
    "equilibrium_table --measured <(printf '0.05,0.2\\n0.1,0.3\\n0.3,0.45\\n0.6,0.6\\n') --liquids '10 %mol'"
    "Do not trust the points")

refuses(equilibrium_table.two_conditions "equilibrium_table --temperature '70 C' --pressure '1 bar'"
    "either --temperature or a pressure")
refuses(equilibrium_table.measured_at_a_temperature
    "equilibrium_table --temperature '70 C' --measured ${carey_lewis}"
    "goes with a pressure")
refuses(equilibrium_table.too_hot "equilibrium_table --temperature '130 C'"
    "--temperature '130 C': temperature 130 °C is outside 0.01 to 120 °C")
refuses(equilibrium_table.no_row "equilibrium_table --pressure '900 kPa'"
    "--pressure '900 kPa': pressure 900 kPa is outside")
refuses(equilibrium_table.strength_above_100 "equilibrium_table --liquids '90 to 110 %vol by 10'"
    "110 % vol at 20 °C is outside")
refuses(equilibrium_table.no_unit "equilibrium_table --liquids '0 to 100'" "no unit")
refuses(equilibrium_table.temperatures "equilibrium_table --liquids '10 to 20 C'" "expected a strength")
refuses(equilibrium_table.no_file "equilibrium_table --measured /nonexistent/x.csv"
    "--measured '/nonexistent/x.csv': cannot be read: No such file")
refuses(equilibrium_table.folder "equilibrium_table --measured /" "cannot be read: Is a directory")
refuses(equilibrium_table.endless_file "equilibrium_table --measured /dev/zero" "longer than 1 MiB")
refuses(equilibrium_table.no_text "equilibrium_table --measured <(printf 'a\\0b')" "no text")
refuses(equilibrium_table.empty_file "equilibrium_table --measured /dev/null" "--measured '/dev/null': no point in it\n$")
refuses(equilibrium_table.other_pressure "equilibrium_table --measured ${carey_lewis} --altitude '1500 m'"
    "no point in it for 84[.]56 kPa; 15 of other pressures")
refuses(equilibrium_table.three_points
    "equilibrium_table --measured <(printf '0.1,0.4\\n0.2,0.5\\n0.3,0.6\\n')"
    "number of points 3 is outside 4")
refuses(equilibrium_table.percent_for_fractions
    "equilibrium_table --measured <(printf '10,44\\n20,52\\n30,57\\n40,61\\n')"
    "mole fraction 1000 % mol is outside 0 to 100")
refuses(equilibrium_table.decimal_commas "equilibrium_table --measured <(printf 'x;y\\n0,1;0,44\\n')"
    "numbers in line 2")
refuses(equilibrium_table.words "equilibrium_table --measured <(printf 'x,y\\n0.1,much\\n')"
    "numbers in line 2")
refuses(equilibrium_table.named_words
    "equilibrium_table --measured <(printf 'x_ethanol,y_ethanol\\n0.1,much\\n')"
    "point 1, y_ethanol 'much': no number")
refuses(equilibrium_table.short_row
    "equilibrium_table --measured <(printf 'x_ethanol,y_ethanol\\n0.1\\n')" "point 1: fewer cells")
refuses(equilibrium_table.no_liquid
    "equilibrium_table --measured <(printf 'x_ethanol,y_ethanol\\n,0.1\\n')" "point 1: no mole fraction")
