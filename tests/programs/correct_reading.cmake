# SPDX-License-Identifier: BSL-1.0
# At the temperature of the scale nothing is corrected; the rest of a difference is no negative zero.
answers(correct_reading.no_negative_zero "for r in -0 0 0.1 0.3 1.1 7.7 12.3 33.3 45.5 50 61.7 77.7 88.8 99.9 100; do aqueth correct_reading --reading \"$r %vol\" --temperature '20 C'; done | grep -- '-0[.]00'; echo none" "^none\n$")
answers(correct_reading.warm "aqueth correct_reading --reading '81.5 %vol' --temperature '28 C'"
    [[^True strength 79[.]10 % vol at 20 °C
.*correction +-2[.]40]])
answers(correct_reading.inverse "aqueth correct_reading --strength '43 %vol' --temperature '27 C'"
    "^The instrument will show 45[.]72 at 27 °C")
answers(correct_reading.inverse_in_air_temperature
    "aqueth correct_reading --strength '43 %vol' --temperature '300.15 K'"
    "^The instrument will show 45[.]72 at 27 °C")
# 27 CFR 30.61: a hydrometer shows 193 at 75 F, the true proof is 189.5.
answers(correct_reading.published_proof
    "aqueth correct_reading --scale proof --reading '193 proof' --temperature '75 F'"
    "^True strength 189[.](4[5-9]|5[0-4]) US proof")
answers(correct_reading.us_text
    "aqueth correct_reading --reading '193 proof' --temperature '75 F'"
    "^True strength 189[.][45][0-9] US proof.*scale +US proof.*per °F.*at 75 °F.*189[.]5 US proof, 94[.]7[0-9] % vol at 60 °F.*lb/US gal in air at 60 °F")
answers(correct_reading.metric_words
    "aqueth correct_reading --reading '193 proof' --temperature '75 F' --metric" "at 23[.]89 °C.*% vol at 20 °C.*kg/m3")
answers(correct_reading.at_its_own_temperature
    "aqueth correct_reading --reading '43.5 %vol' --temperature '68 F'"
    "^True strength 43[.]50 .*correction +[+]?0[.]00")
answers(correct_reading.borosilicate
    "aqueth correct_reading --reading '81.5 %vol' --temperature '28 C' --glass borosilicate"
    "^True strength 79[.]06 ")
answers(correct_reading.expansion_in_numbers
    "aqueth correct_reading --reading '81.5 %vol' --temperature '28 C' --glass '10e-6 /K'" "^True strength 79[.]06 ")
answers(correct_reading.density_scale
    "aqueth correct_reading --scale 'kg/m3 at 15 C' --reading '935 kg/m3' --temperature '25 C'"
    "^True strength 45[.]62 % vol at 20")
answers(correct_reading.density_scale_in_grams
    "aqueth correct_reading --scale 'g/cm3 at 15 C' --reading '0.935 g/cm3' --temperature '25 C'"
    "^True strength 45[.]62 % vol at 20")
answers(correct_reading.gravity_scale
    "aqueth correct_reading --scale 'sg 20/20 C' --reading '0.94 sg' --temperature '20 C'"
    "^True strength 45[.]68 % vol at 20")
answers(correct_reading.mass_scale
    "aqueth correct_reading --scale '%mass at 20 C' --reading '38 %mass' --temperature '10 C'"
    "^True strength 41[.]52 % mass")
answers(correct_reading.older_scale
    "aqueth correct_reading --scale '%vol at 15 C' --reading '81.5 %vol at 15 C' --temperature '15 C'"
    "^True strength 81[.]50 % vol at 15")
answers(correct_reading.json "aqueth correct_reading --reading '81.5 %vol' --temperature '28 C' --json"
    [["reading": 81.5,.*"temperature_C": 28.0,.*"true_strength": 79.0989376.*"us_proof": 158.130]])

refuses(correct_reading.nothing_read "aqueth correct_reading --temperature '28 C'"
    "either --reading or --strength")
refuses(correct_reading.both_ways
    "aqueth correct_reading --reading '81.5 %vol' --strength '80 %vol' --temperature '28 C'"
    "either --reading or --strength")
refuses(correct_reading.no_temperature "aqueth correct_reading --reading '81.5 %vol'" "--temperature is required")
refuses(correct_reading.reading_without_unit "aqueth correct_reading --reading 81.5 --temperature '28 C'"
    "--reading '81[.]5': the unit is missing; expected a reading: %vol")
refuses(correct_reading.temperature_without_unit "aqueth correct_reading --reading '81.5 %vol' --temperature 28"
    "--temperature '28': the unit is missing; expected a temperature: C, F or K")
refuses(correct_reading.proof_on_volume_scale
    "aqueth correct_reading --reading '163 proof' --scale '%vol' --temperature '28 C'"
    "--reading '163 proof'.*the scale is % vol at 20 °C")
refuses(correct_reading.volume_on_proof_scale
    "aqueth correct_reading --scale proof --reading '81.5 %vol' --temperature '75 F'"
    "--reading '81[.]5 %vol'.*the scale is US proof")
refuses(correct_reading.other_reference
    "aqueth correct_reading --reading '81.5 %vol at 15 C' --scale '%vol' --temperature '28 C'"
    "the scale is % vol at 20 °C")
refuses(correct_reading.temperature_as_reading "aqueth correct_reading --reading '28 C' --temperature '28 C'"
    "'C' is the unit of a temperature")
refuses(correct_reading.strength_as_temperature
    "aqueth correct_reading --reading '81.5 %vol' --temperature '28 %vol'"
    "'%vol' is the unit of a strength; expected a temperature")
refuses(correct_reading.volume_as_temperature "aqueth correct_reading --reading '81.5 %vol' --temperature '2 L'"
    "'L' is the unit of a volume; expected a temperature")
refuses(correct_reading.percent_of_what "aqueth correct_reading --reading '81.5 %' --temperature '28 C'"
    "%vol, %mass or %mol")
answers(correct_reading.decimal_comma "aqueth correct_reading --reading '81,5 %vol' --temperature '28,0 C'"
    "^True strength 79[.]10 ")
refuses(correct_reading.nan_reading "aqueth correct_reading --reading 'nan %vol' --temperature '28 C'"
    "'nan %vol': not a number")
refuses(correct_reading.infinite_temperature "aqueth correct_reading --reading '81.5 %vol' --temperature 'inf C'"
    "'inf C': not a number")
refuses(correct_reading.huge_temperature "aqueth correct_reading --reading '81.5 %vol' --temperature '1e308 C'"
    "temperature 1e[+]308 °C is outside -20 to 99[.]9")
refuses(correct_reading.overflow "aqueth correct_reading --reading '1e999 %vol' --temperature '28 C'"
    "too large or too small")
refuses(correct_reading.negative_reading "aqueth correct_reading --reading '-1 %vol' --temperature '28 C'"
    "-1 % vol at 20 °C is outside 0 to 100")
refuses(correct_reading.reading_above_100 "aqueth correct_reading --reading '101 %vol' --temperature '28 C'"
    "101 % vol at 20 °C is outside 0 to 100")
refuses(correct_reading.proof_above_200
    "aqueth correct_reading --scale proof --reading '201 proof' --temperature '60 F'"
    "201 US proof is outside 0 to 200")
refuses(correct_reading.too_hot "aqueth correct_reading --reading '81.5 %vol' --temperature '101 C'"
    "temperature 101 °C is outside -20 to 99[.]9")
refuses(correct_reading.too_hot_in_fahrenheit "aqueth correct_reading --reading '81.5 %vol' --temperature '215 F'"
    "'215 F': temperature 215 °F is outside -4 to 211[.]9")
refuses(correct_reading.too_cold "aqueth correct_reading --reading '81.5 %vol' --temperature '-30 C'"
    "temperature -30 °C is outside -20 to 99[.]9")
refuses(correct_reading.frozen "aqueth correct_reading --reading '5 %vol' --temperature '-15 C'"
    "--temperature '-15 C': temperature -15 °C is outside .*freezing point")
refuses(correct_reading.frozen_inverse "aqueth correct_reading --strength '10 %vol' --temperature '-15 C'"
    "--temperature '-15 C': temperature -15 °C is outside .*freezing point")
refuses(correct_reading.no_such_mixture "aqueth correct_reading --reading '100 %vol' --temperature '10 C'"
    "reading 100 % vol .*is outside 0 to 98")
refuses(correct_reading.off_the_scale "aqueth correct_reading --strength '100 %vol' --temperature '40 C'"
    "--strength '100 %vol': with --temperature '40 C' the hydrometer floats off its scale")
refuses(correct_reading.no_such_density
    "aqueth correct_reading --scale 'kg/m3' --reading '500 kg/m3' --temperature '20 C'"
    "reading 500 kg/m3 is outside 789")
refuses(correct_reading.no_such_gravity
    "aqueth correct_reading --scale sg --reading '0.3 sg' --temperature '20 C'"
    "specific gravity 0.3 is outside 0.5 to 2")
refuses(correct_reading.unknown_scale
    "aqueth correct_reading --scale baker --reading '81.5 %vol' --temperature '28 C'"
    "unknown unit 'baker'; expected a strength")
refuses(correct_reading.unknown_reference
    "aqueth correct_reading --scale '%vol at 18 C' --reading '81.5 %vol' --temperature '28 C'"
    "20 C, 15 C, 15.56 C or 60 F")
refuses(correct_reading.reference_of_ice
    "aqueth correct_reading --scale '%mass at 1 F' --reading '38 %mass' --temperature '20 C'"
    "--scale '%mass at 1 F': reference temperature 1 °F is outside 32 to 104 °F")
refuses(correct_reading.half_a_gravity
    "aqueth correct_reading --scale 'sg 20 C' --reading '0.95 sg' --temperature '20 C'" "sg 20/20 C")
refuses(correct_reading.unknown_glass
    "aqueth correct_reading --reading '81.5 %vol' --temperature '28 C' --glass steel"
    "--glass 'steel'.*soda-lime, borosilicate")
refuses(correct_reading.wild_glass
    "aqueth correct_reading --reading '81.5 %vol' --temperature '28 C' --glass '25 /K'"
    "cubic expansion 25 /K is outside 0 to 0.0003 /K")
refuses(correct_reading.empty_reading "aqueth correct_reading --reading '' --temperature '28 C'"
    "--reading '': the value is empty")
refuses(correct_reading.blank_temperature "aqueth correct_reading --reading '81.5 %vol' --temperature '  '"
    "the value is empty")
refuses(correct_reading.value_left_out "aqueth correct_reading --reading --temperature '28 C'"
    "--reading needs a value")
refuses(correct_reading.twice "aqueth correct_reading --reading '81.5 %vol' --reading '82 %vol' --temperature '28 C'"
    "^aqueth correct_reading: --reading is given more than once\n$")
answers(correct_reading.line_break "aqueth correct_reading --reading '81.5 %vol' --temperature $'28\\nC\\r'"
    "^True strength 79[.]10 ")
# What is refused can be told from the range.
refuses(correct_reading.hair_too_cold "aqueth correct_reading --reading '40 %vol' --temperature '-20.00000001 C'"
    "temperature -20[.]00000001 °C is outside -20 to 99[.]9")
# What the parser of options refuses is said in plain words.
refuses(correct_reading.nothing_behind "aqueth correct_reading --reading '40 %vol' --temperature"
    "^aqueth correct_reading: --temperature needs a value\n$")
answers(correct_reading.us_density_stem "aqueth correct_reading --us --reading '0.9345 sg' --temperature '80 F'"
    "^True strength 92[.]0 US proof\n")

# Above 40 °C the answer says that no law stands behind it: 0.05 % at 50 °C and 0.1 % at 75 °C make 0.06 % at 55 °C.
answers(correct_reading.hot "aqueth correct_reading --reading '50 %vol' --temperature '55 C'"
    "uncertainty +0[.]06 % of the density .*no law")
answers(correct_reading.hot_json "aqueth correct_reading --reading '50 %vol' --temperature '55 C' --json"
    "\"density_formulation\": \"fit_above_40_C\"")
answers(correct_reading.lawful_json "aqueth correct_reading --reading '50 %vol' --temperature '40 C' --json"
    "\"density_formulation\": \"oiml_r22\"")

set(in_folder "d=$(mktemp -d) && trap 'rm -r $d' EXIT && cd $d &&")
answers(correct_reading.drawing "${in_folder} aqueth correct_reading --reading '81.5 %vol' --temperature '28 C' --draw a.svg && grep -c 'Correction of readings' a.svg"
    "correction +-2[.]40.*  drawing +a[.]svg.*\n[1-9]\n$")
refuses(correct_reading.drawing_of_a_gravity "aqueth correct_reading --reading '0.95 sg 20/20 C' --temperature '28 C' --draw a.svg"
    "only a scale of strength has corrections to draw")
refuses(correct_reading.stray_replace "aqueth correct_reading --reading '81.5 %vol' --temperature '28 C' --replace" "--replace needs --draw")

# The curves of a chart hold the certificate: +2 lifts their axis, which else goes down to -8.
answers(correct_reading.chart_of_the_stem "${in_folder} aqueth correct_reading --reading '81.5 %vol' --temperature '28 C' --draw a.svg >/dev/null && \
    aqueth correct_reading --reading '81.5 %vol' --temperature '28 C' --correction '+2' --draw b.svg >/dev/null && \
    for f in a b; do grep -c 'with its certificate' $f.svg; grep -c '>-8<\\| -8<' $f.svg; done | paste -s -d ' '" "^0 1 1 0\n$")

# One unit: that of the scale.
answers(correct_reading.grams_in_a_litre "aqueth correct_reading --reading '350 g/L' --temperature '25 C'"
    "^True strength 334[.]57 g/L\n.*reading +350[.]00 at 25 °C\n +correction +-15[.]43\n")
answers(correct_reading.grams_in_a_litre_json "aqueth correct_reading --reading '350 g/L' --temperature '25 C' --json"
    "\"reading_unit\": \"g/L\".*\"true_strength\": 334[.]57.*\"true_strength_unit\": \"g/L\"")
answers(correct_reading.two_corrections "aqueth correct_reading --reading '81.5 %vol' --temperature '28 C' --correction '+0.2'"
    " certificate +[+]0[.]20\n +temperature +-2[.]40\n +correction +-2[.]20\n")
answers(correct_reading.beyond_the_certificate "aqueth correct_reading --reading '90 %vol' --temperature '20 C' --correction '+0.2 at 40, -0.1 at 60'"
    " certificate +-0[.]10, kept beyond its points: its last point is at 60\n")
answers(correct_reading.before_the_certificate "aqueth correct_reading --reading '30 %vol' --temperature '20 C' --correction '+0.2 at 40, -0.1 at 60'"
    " certificate +[+]0[.]20, kept beyond its points: its first point is at 40\n")
answers(correct_reading.within_the_certificate "aqueth correct_reading --reading '50 %vol' --temperature '20 C' --correction '+0.2 at 40, -0.1 at 60'"
    " certificate +[+]0[.]05\n")
refuses(correct_reading.denser_than_the_scale "aqueth correct_reading --strength '0 %vol' --temperature '4 C'"
    "--strength '0 %vol': with --temperature '4 C' the hydrometer floats off its scale, % vol at 20 °C: it floats as in 999[.]57 kg/m3")
refuses(correct_reading.lighter_than_the_scale "aqueth correct_reading --strength '96 %vol' --temperature '75 C'"
    "--strength '96 %vol': with --temperature '75 C' the hydrometer floats off its scale")
refuses(correct_reading.bare_percent "aqueth correct_reading --reading '81.5%' --temperature '20 C'"
    "--reading '81[.]5%': '%' alone is ambiguous")
refuses(correct_reading.colder_than_the_formula "aqueth correct_reading --reading '81.5 %vol' --temperature '-25 C'"
    "temperature -25 °C is outside -20 to 99[.]9743 °C [(]OIML R 22 begins at -20 °C[)]")
