# SPDX-License-Identifier: BSL-1.0
set(run "aqueth follow_traces --charge '25 L' --strength '11 %vol' --power '2 kW' --end 'distillate 5 %vol'")
set(folder "d=$(mktemp -d) && trap 'rm -r $d' EXIT && cd $d &&")

# The figures are those of the library, whose own tests hold them to closed forms and balances.
answers(follow_traces.pot "${run} --trace 'methanol 50 g/hL' --trace 'ethyl acetate 40 g/hL' --discard '100 mL'"
    [[^Hearts: [0-9.]+ to [0-9.]+ g/hL of methanol, the charge 50[.]0[.]
.*  foreshots, 100[.]0 mL at 57[.]9[0-9] % vol
    methanol +3[67][.][0-9] .*
    ethyl acetate +4[0-9][0-9] .*left in the still, share of the charge
    methanol +[0-9.]+ % .*Methanol comes over with all fractions: no cut removes it.*No measured run was found.*never close]])
answers(follow_traces.upper_bound "${run} --trace 'acetaldehyde 20 g/hL'" "Acetaldehyde is an upper bound")
# By hand: of 8.246 L of 31.83 % vol and 100.0 mL of 57.96 % vol at 20 °C, R 22 makes 8.225 L and 99.62 mL at 60 °F:
# 2.173 gallons of 3.785412 L, and 3.368 of their 128 parts. The proof is twice the % vol at 60 °F, 31.76 and 57.90.
answers(follow_traces.us "${run} --us --temperature '20 C' --trace 'methanol 50 g/hL' --discard '100 mL'"
    [[^Hearts: 46[.]5 to 47[.]8 g/hL of methanol, the charge 50[.]0[.]
.*  foreshots, 3[.]368 US fl oz at 115[.]8 US proof
.*  hearts, 2[.]17(2[5-9]|3[0-3]) US gal at 63[.]5 US proof
]])
answers(follow_traces.us_by_its_charge "aqueth follow_traces --charge '6.6 gal' --strength '22 proof' --power '2 kW' --end 'distillate 10 proof' --trace 'methanol 50 g/hL'"
    "at [0-9.]+ US proof")
answers(follow_traces.us_drawing
    "${folder} ${run} --us --trace 'methanol 50 g/hL' --draw traces.svg >/dev/null && grep -c 'collected, US gal at 60 °F' traces.svg | sed 's/.*/{\"labels\": &}/'"
    [[^{"labels": 1}]])
# Every gram of the charge is in a fraction or in the residue.
answers(follow_traces.conserves
    "${run} --plates 4 --reflux 3 --cuts 'distillate 80 %vol' --trace '3-methyl-1-butanol 100 g/hL' --json | sed 's/[{},]/ /g' | awk '/\"charge_g\"/ {all = $2} /\"mass_g\"/ {want = 1} /\"residue_g\"/ {want = 1} /\"expected\"/ && want {sum += $2; want = 0} END {d = sum / all - 1; printf \"{\\\"kept\\\": %d}\", (d < 1e-9 && d > -1e-9)}'"
    [[^{"kept": 1}]])
answers(follow_traces.milligrams_per_litre_of_the_charge "${run} --trace 'furfural 3 mg/L' --json"
    [["charge_g": 0[.](075|0749999|0750000)]])
answers(follow_traces.csv "${run} --trace 'ethyl acetate 40 g/hL' --points 3 --csv"
    "^collected_L_20C,distillate_percent_vol_20C,ethyl_acetate_mg_per_L,ethyl_acetate_mg_per_L_lower,ethyl_acetate_mg_per_L_upper\n0,58[.][0-9]+,[0-9.]+,[0-9.]+,[0-9.]+\n[^\n]+\n[^\n]+\n$")
answers(follow_traces.draws
    "${folder} ${run} --trace 'methanol 50 g/hL' --trace 'acetic acid 100 mg/L' --draw traces.svg >/dev/null && grep -c '<svg' traces.svg | sed 's/.*/{\"pictures\": &}/'"
    [[^{"pictures": 1}]])
answers(follow_traces.keeps_an_old_picture
    "${folder} echo old >traces.svg; ${run} --trace 'methanol 50 g/hL' --draw traces.svg 2>/dev/null; sed 's/.*/{\"file\": \"&\"}/' traces.svg"
    [[^{"file": "old"}]])
# A weaker pressure than those the volatilities are known for.
refuses(follow_traces.too_high_up "${run} --trace 'methanol 50 g/hL' --altitude '2500 m'"
    "pressure 74[.][0-9]+ kPa is outside 80 to 110 kPa")
refuses(follow_traces.unknown_trace "${run} --trace 'water 50 g/hL'"
    "--trace 'water 50 g/hL': expected a trace and its amount, as 'methanol 50 g/hL'; known are methanol, acetaldehyde, .*acetic acid")
refuses(follow_traces.no_amount "${run} --trace methanol" "expected a trace and its amount")
refuses(follow_traces.other_unit "${run} --trace 'methanol 50 ppm'" "expected g/hL .*or mg/L")
refuses(follow_traces.negative "${run} --trace 'methanol -1 g/hL'" "concentration of methanol -1 g/hL is outside 0 to 100000 g/hL")
refuses(follow_traces.not_a_number "${run} --trace 'methanol much g/hL'" "not a number")
refuses(follow_traces.twice "${run} --trace 'methanol 1 g/hL' --trace 'methanol 2 g/hL'" "methanol is given twice")
refuses(follow_traces.points_alone "${run} --trace 'methanol 1 g/hL' --points 5" "--points .*--csv or --draw")
refuses(follow_traces.cut_that_never_comes "${run} --trace 'methanol 1 g/hL' --cuts 'distillate 80 %vol'"
    "--cuts 'distillate 80 %vol'")

# Regulation (EC) 110/2008, annex II, category 9: at most 1000 g/hL of methanol in most fruit spirits.
answers(follow_traces.much_methanol "${run} --trace 'methanol 1200 g/hL'" "\nMore than 1000 g/hL of methanol, above the limit for most fruit spirits in the European Union[.] Do not drink it[.]\nMethanol comes")
answers(follow_traces.much_methanol_in_a_fraction "${run} --trace 'methanol 900 g/hL' --cuts 'distillate 45 %vol'" "Do not drink it")
answers(follow_traces.little_methanol "${run} --trace 'methanol 50 g/hL' | grep -c 'Do not drink\\|dilute traces' | sed 's/.*/{\"lines\": &}/'; true" [[^{"lines": 0}]])
# 80 kg/m3 of alcohol of 789.24 kg/m3 (OIML R 22): 10.1 %.
answers(follow_traces.no_trace "${run} --trace 'methanol 8000 g/hL'"
    "Do not drink it[.]\nThe figures hold for dilute traces only[.] The methanol is 10[.]1 % of the ethanol by mass; above 5 % it is no trace[.]\n")
answers(follow_traces.tiny_figures
    "aqueth follow_traces --trace 'acetaldehyde 10 mg/L' --charge '25 L' --strength '11 %vol' --power '2 kW' --plates 10 --reflux 20 --discard '1000 mL' --end 'distillate 50 %vol'"
    "^Hearts: less than 0[.]05 g/hL of acetaldehyde, the charge [0-9.]+[.]\n\ng/hL of pure alcohol, with the band of the volatility; 0 is less than 0[.]05\n.*  hearts, .*\n    acetaldehyde +0 [(]0 to 0[)]\n")
answers(follow_traces.lots_with_extract "${run} --extract '2 plato' --trace 'methanol 50 g/hL' --json"
    "\"charge\": {\n +\"mass_kg\": 24[.].*\"volume_L\": (25[.]0|24[.]99999)[0-9]*,.*\"real_extract_P\": 2[.]0")
