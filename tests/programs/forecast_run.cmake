# SPDX-License-Identifier: BSL-1.0
set(run "aqueth forecast_run --charge '25 L' --strength '11 %vol' --power '2 kW'")
set(folder "d=$(mktemp -d) && trap 'rm -r $d' EXIT && cd $d &&")

# The figures are those of the library, whose own tests hold them to Rayleigh's equation and to a fine quadrature.
answers(forecast_run.pot "${run} --end 'collected 2 L'"
    [[^Distillate: 2[.]000 L at 53[.]70 % vol[.] Kept in all: 1[.]07[0-9]+ L of pure alcohol [(]39 %[)][.]
1 h 03 min of warming and 0 h 27 min of boiling[.]
.*  distillate +2[.]000 L +53[.]70 % vol.*left in the pot.*heat .*kWh per litre.*never close or leave a running still]])
answers(forecast_run.conserves "${run} --stages 5 --reflux 3 --end 'still 0.5 %vol' --json"
    [["balance_relative_to_charge": {
 +"ethanol": -?(0[.]0|[0-9.]+e-(09|1[0-9])),
 +"water": -?(0[.]0|[0-9.]+e-(09|1[0-9])),
 +"energy": -?(0[.]0|[0-9.]+e-(09|1[0-9]))
]])
answers(forecast_run.fractions
    "${run} --stages 5 --reflux 3 --discard '100 mL' --cuts 'distillate 80 %vol; boiling 99 C' --end 'elapsed 6 h; still 0.2 %vol'"
    "\n  foreshots +100[.]0 mL.*\n  hearts 1 .*80[.]00 % vol.*\n  hearts 2 .*and 99 °C\n  tails ")
answers(forecast_run.keeps_a_strength
    "${run} --plates 8 --plate-efficiency '70 %' --keep-strength '88 %vol' --reflux 10 --cuts 'collected 1 L' --end 'distillate 60 %vol'"
    "\n  hearts +1[.]000 L +88[.]00 % vol +[^\n]* 88[.]00 % vol,.*  strength kept +until [0-9] h [0-9]+ min, [0-9.]+ L collected, [0-9.]+ % vol in the pot; reflux 10 from there")
answers(forecast_run.packing_is_stages
    "a=$(${run} --packing '1.2 m' --hetp '30 cm' --reflux 3 --end 'collected 1 L'); b=$(${run} --stages 4 --reflux 3 --end 'collected 1 L'); [ \"$a\" = \"$b\" ] && echo same"
    "^same\n$")
answers(forecast_run.enthalpy_balance "${run} --stages 5 --reflux 3 --flows enthalpy --end 'collected 2 L'"
    "Kept in all: 1[.][67]")
answers(forecast_run.csv "${run} --end 'collected 1 L' --points 3 --csv"
    "^elapsed_min,collected_L_20C,[a-z_A-Z0-9,]+\n0,0,0,11,58[.]1[^\n]*\n[^\n]*\n[0-9.]+,1,0[.]56[^\n]*\n$")
# The states in JSON are those of the CSV; 200 unless told.
answers(forecast_run.json_points "${run} --end 'collected 1 L' --points 2 --json"
    [=["points": .
    {
      "elapsed_min": 0[.]0,
      "collected_L_20C": 0[.]0,
      "pure_alcohol_L_20C": 0[.]0,
      "still_percent_vol_20C": 1[01][.][0-9]+,
      "distillate_percent_vol_20C": 58[.]1[0-9]+,
      "boiling_C": 91[.]6[0-9]+,
      "vapour_C": 91[.]6[0-9]+,
      "reflux_ratio": 0[.]0,
      "condenser_W": 1[89][0-9][0-9][.][0-9]+
    },
    {
      "elapsed_min": 13[.]00[0-9]+,
      "collected_L_20C": (0[.]9999999|1[.]0)[0-9]*,
      "pure_alcohol_L_20C": 0[.]56[0-9]+,
[^]]*
  .
}
$]=])
answers(forecast_run.json_points_number
    "echo \"{\\\"json\\\": $(${run} --end 'collected 1 L' --json | grep -c vapour_C), \\\"csv\\\": $(${run} --end 'collected 1 L' --csv | wc -l)}\""
    [[^{"json": 200, "csv": 201}
$]])
# The charge is written as the other parcels are, so that the balances can be worked out anew.
answers(forecast_run.json_charge "${run} --extract '2 plato' --end 'collected 1 L' --json"
    "^{\n  \"task\": \"forecast_run\",\n  \"version\": \"[0-9.]+\",\n  \"schema\": \"urn:aqueth:answers:1\",\n  \"charge\": {\n    \"mass_kg\": 24[.][0-9]+,\n    \"balance_indication_kg\": 24[.][0-9]+,\n    \"volume_L\": [0-9.]+,\n    \"temperature_C\": 20[.]0,.*\"pure_alcohol_L_20C\": 2[.]7(5|499999)[0-9]*,[^}]*},\n  \"charge_extract_kg\": 0[.][45][0-9]+,")
foreach(quantity mass_kg pure_alcohol_L_20C)
  answers(forecast_run.charge_is_the_sum_of_${quantity}
      "${run} --stages 4 --reflux 3 --discard '100 mL' --cuts 'collected 1 L' --end 'still 1 %vol' --points 2 --json | sed '/balance_rel/,$d' | awk -F '[:,]' '/\"${quantity}\"/ {n += 1; if (n == 1) all = $2; rest += n > 1 ? $2 : 0} END {d = rest / all - 1; printf \"[%d, %d]\", n, (d < 1e-8 && d > -1e-8)}' | sed 's/.*/{\"sum\": &}/'"
      "^{\"sum\": .5, 1.}$")
endforeach()
# Nothing kept: no heat for each litre of it.
set(nothing_kept "${run} --discard '100 mL' --end 'collected 100 mL'")
answers(forecast_run.nothing_kept "${nothing_kept}" "^Kept: nothing[.]\n.*\n  heat +2[.][0-9]+ kWh\n")
answers(forecast_run.nothing_kept_json "${nothing_kept} --json" "\"per_litre_of_kept_alcohol\": null")
foreach(form json csv)
  refuses(forecast_run.us_in_${form} "${run} --end 'collected 1 L' --${form} --us" "--us cannot be used with --json or --csv")
endforeach()
answers(forecast_run.us "${run} --end 'collected 1 L' --us"
    "^Distillate: [0-9.]+ US fl oz at .*Kept in all: [0-9.]+ proof gal.*boils at +197[.]0 °F")
refuses(forecast_run.points_for_nothing "${run} --end 'collected 1 L' --points 50" "--points needs --csv, --json or --draw")
answers(forecast_run.many_points
    "${run} --stages 100 --reflux 1000 --flows enthalpy --keep-strength '97 %vol' --end 'still 0.5 %vol' --points 5000 --csv | wc -l"
    "^5001\n$")
answers(forecast_run.altitude "${run} --end 'collected 1 L' --altitude '1500 m'" "boils at +8[67][.].*the mean at 1500 m")
answers(forecast_run.extract "${run} --extract '10 plato' --end 'collected 1 L' --json" "\"residue_extract_kg\": 2[.]5")

answers(forecast_run.drawing "${folder} ${run} --end 'collected 1 L' --draw a.svg && grep -c '</svg>' a.svg" "drawing +a[.]svg.*\n1\n$")
answers(forecast_run.drawing_replaced
    "${folder} echo old > a.svg; ${run} --end 'collected 1 L' --draw a.svg --replace > /dev/null && grep -c old a.svg || true" "^0\n$")
foreach(form "" --csv --json)  # an answer that cannot be written leaves no picture
  add_case(forecast_run.no_drawing_without_an_answer${form}
      "${folder} ${run} --end 'collected 1 L' --draw a.svg ${form} >/dev/full; status=$?; ls; exit $status" 1
      "^$" "standard output cannot be written: No space left")
endforeach()
refuses(forecast_run.drawing_there "${folder} echo old > a.svg; ${run} --end 'collected 1 L' --draw a.svg" "the file exists already; --replace")
refuses(forecast_run.drawing_pdf "${run} --end 'collected 1 L' --draw a.pdf" "SVG or PNG")

refuses(forecast_run.more_than_there_is "${run} --end 'collected 30 L'"
    "collected volume 30 L is outside 0 to 24[.]5[0-9]* L .*no still is boiled dry")
refuses(forecast_run.past_already "${run} --end 'still 12 %vol'" "strength in the still 12 % vol at 20 °C is outside 0 to 11 ")
foreach(amount "25 L" "25 kg" "3 gal")  # there already, however the charge was measured
  refuses(forecast_run.there_already.${amount} "aqueth forecast_run --charge '${amount}' --strength '11 %vol' --power '2 kW' --end 'elapsed 1 h; still 11 %vol'"
      "--end 'still 11 %vol': strength in the still 11 % vol at 20 °C is outside 0 to (11|10[.]99999[0-9]*) .*is already met at the start of the run")
endforeach()
refuses(forecast_run.discards_too_much "${run} --discard '30 L' --end 'collected 1 L'" "--discard '30 L': collected volume 30 L is outside 0 to 1 L")
refuses(forecast_run.names_the_cut "${run} --cuts 'collected 100 mL; still 12 %vol' --end 'collected 1 L'"
    "--cuts 'still 12 %vol': strength in the still 12 % vol at 20 °C is outside 0 to 10[.]")
refuses(forecast_run.names_the_end "${run} --cuts 'collected 100 mL' --end 'boiling 120 C; elapsed 9 h'" "--end 'boiling 120 C': boiling temperature")
answers(forecast_run.hot_room "${run} --pot-loss '3 W/K' --room '45 C' --end 'collected 1 L'" "Kept in all: ")
refuses(forecast_run.hotter_room "${run} --pot-loss '3 W/K' --room '61 C' --end 'collected 1 L'"
    "--room '61 C': temperature of the room 61 °C is outside -40 to 60 °C")
foreach(extract "0 plato" "5 plato")  # the range told is the one that holds
  refuses(forecast_run.hot.${extract} "${run} --temperature 95C --extract '${extract}' --end 'collected 1 L'"
      "--temperature '95C': temperature 95 °C is outside -[34][.][0-9]+ to 91[.][0-9]+ °C .*boiling point")
  refuses(forecast_run.glowing.${extract} "${run} --temperature 1e6K --extract '${extract}' --end 'collected 1 L'"
      "--temperature '1e6K': temperature 999726[.][89] °C is outside -[34][.][0-9]+ to 91")
endforeach()
refuses(forecast_run.frozen "${run} --temperature -10C --end 'collected 1 L'" "--temperature '-10C': temperature -10 °C is outside -3[.]8")
refuses(forecast_run.frozen_wash "${run} --temperature -10C --extract '5 plato' --end 'collected 1 L'" "--temperature '-10C': temperature -10 °C is outside")
refuses(forecast_run.too_hot "${run} --end 'boiling 120 C'" "boiling temperature 120 °C is outside 91[.]6[0-9]* to 99[.]9")
refuses(forecast_run.late_cut "${run} --cuts 'collected 2 L' --end 'collected 1 L'"
    "collected volume 2 L is outside 0 to 1 L .*the cut comes later")
refuses(forecast_run.azeotrope "aqueth forecast_run --charge '25 L' --strength '98 %vol' --power '2 kW' --end 'collected 1 L'"
    "strength of the charge 98 % vol at 20 °C is outside .* to 97[.][0-9]+ .*azeotrope")
refuses(forecast_run.water "aqueth forecast_run --charge '25 L' --strength '0 %vol' --power '2 kW' --end 'collected 1 L'"
    "strength of the charge 0 % vol")
refuses(forecast_run.no_power "aqueth forecast_run --charge '25 L' --strength '11 %vol' --power '0 W' --end 'collected 1 L'"
    "--power '0 W': power 0 W is outside")
refuses(forecast_run.negative_power "aqueth forecast_run --charge '25 L' --strength '11 %vol' --power '-2 kW' --end 'collected 1 L'"
    "--power '-2 kW': power -2000 W is outside")
refuses(forecast_run.loses_all "${run} --pot-loss '30 W/K' --end 'collected 1 L'"
    "power 2000 W is not a number of at least 215[0-9.]* W .*loses to the room")
refuses(forecast_run.reflux_cannot_keep "${run} --stages 4 --reflux 3 --keep-strength '96 %vol' --end 'collected 1 L'"
    "strength of the distillate to keep 96 % vol at 20 °C is outside 58[.]1[0-9]* to 91[.]4")
refuses(forecast_run.negative_reflux "${run} --stages 4 --reflux -1 --end 'collected 1 L'" "--reflux '-1': number -1 is outside 0 to 1000")
refuses(forecast_run.no_number "${run} --stages 4 --reflux nan --end 'collected 1 L'" "--reflux 'nan': not a number")
refuses(forecast_run.two_columns "${run} --stages 4 --plates 4 --end 'collected 1 L'" "give only one of --stages, --plates and --packing")
refuses(forecast_run.no_hetp "${run} --packing '1 m' --end 'collected 1 L'" "--packing needs --hetp")
refuses(forecast_run.hetp_of_nothing "${run} --packing 1m --hetp 0m --end 'collected 1 L'" "--hetp '0m': height equivalent to a theoretical plate 0 m")
refuses(forecast_run.packing_of_nothing "${run} --packing 0m --hetp 1m --end 'collected 1 L'" "--packing '0m': height of the packing 0 m")
refuses(forecast_run.packing_too_high "${run} --packing 300m --hetp 1m --end 'collected 1 L'" "--packing '300m': number of stages 300 is outside 0 to 100")
refuses(forecast_run.no_points "${run} --end 'collected 1 L' --csv --points 0" "--points '0': expected a whole number from 2 to 100000")
refuses(forecast_run.efficiency "${run} --plates 4 --plate-efficiency '120 %' --end 'collected 1 L'" "Murphree efficiency 120 % is outside")
refuses(forecast_run.heat_loss "${run} --heat-loss '95 %' --end 'collected 1 L'" "--heat-loss '95 %': share of the vapour that condenses 95 % is outside 0 to 90 %")
refuses(forecast_run.strange_end "${run} --end 'taste 3 L'" "expected 'distillate' and a strength, 'pot' and a strength or a temperature")
refuses(forecast_run.empty_end "${run} --end ''" "--end '': expected 'distillate'")
refuses(forecast_run.strange_time "${run} --end 'elapsed 4 km'" "expected a time: s, min or h")
refuses(forecast_run.one_point "${run} --end 'collected 1 L' --csv --points 1" "--points '1'")
refuses(forecast_run.syrup "${run} --extract '60 plato' --end 'collected 1 L'" "60 °P is outside 0 to 50")
refuses(forecast_run.thin_air "${run} --pressure '3 kPa' --end 'collected 1 L'" "--pressure '3 kPa': pressure 3 kPa is outside 5 to 170")
refuses(forecast_run.strange_flows "${run} --stages 4 --reflux 3 --flows other --end 'collected 1 L'" "'constant' or 'enthalpy'")

refuses(forecast_run.extract_beside_mass
    "aqueth forecast_run --charge '25 kg' --strength '11 %mass' --extract '10 plato' --power '2 kW' --end 'elapsed 1 h'"
    "--strength '11 %mass': with --extract, give the strength of the whole wash in %vol")
refuses(forecast_run.extract_beside_moles
    "aqueth forecast_run --charge '25 kg' --strength '5 %mol' --extract '10 plato' --power '2 kW' --end 'elapsed 1 h'"
    "--strength '5 %mol': with --extract, give the strength of the whole wash in %vol")
refuses(forecast_run.extract_beside_density
    "aqueth forecast_run --charge '25 kg' --strength '984 kg/m3' --extract '10 plato' --power '2 kW' --end 'elapsed 1 h'"
    "--strength '984 kg/m3': with --extract, give the strength of the whole wash in %vol")

# Vapour that condenses in the neck of a bare pot runs back and enriches, as one equilibrium stage whose only reflux
# it is: figures of a separate computation (Rayleigh's equation through such a stage).
foreach(case "0 %;1[.]646;54[.]12" "5 %;1[.]842;55[.]00" "10 %;2[.]018;55[.]93" "20 %;2[.]314;57[.]96")
  list(GET case 0 loss)
  list(GET case 1 litres)
  list(GET case 2 strength)
  answers("forecast_run.neck.${loss}" "aqueth forecast_run --charge '25 L' --strength '11 %vol' --power '1.5 kW' --pot-loss '3 W/K' --heat-loss '${loss}' --discard '100 mL' --cuts 'distillate 50 %vol' --end 'distillate 10 %vol'"
      "^Hearts: ${litres} L at ${strength} % vol[.] Kept in all: ")
endforeach()
# Plates whose only reflux condenses in the head.
answers(forecast_run.plates_under_a_cooled_head "${run} --plates 4 --heat-loss '50 %' --end 'collected 1 L'"
    "^Distillate: 1[.]000 L at 77[.][0-9]+ % vol.*\"?assumed.*plates of efficiency 0[.]6 [(]--plate-efficiency[)]")
foreach(column "--plates 4" "--stages 3.5" "--packing 1m --hetp 0.3m")
  refuses("forecast_run.no_reflux.${column}" "${run} ${column} --end 'collected 1 L'"
      "--[a-z]+ has no effect without reflux: give --reflux, or --heat-loss")
endforeach()
answers(forecast_run.no_reflux_on_purpose "${run} --plates 4 --reflux 0 --end 'collected 1 L'" "^Distillate: ")

# The strength that is kept: when it is lost is told, and ends a run; the strength itself is there from the start.
set(keeping "${run} --plates 4 --reflux 6 --keep-strength '85 %vol'")
answers(forecast_run.ends_with_the_strength "${keeping} --end 'strength lost'"
    "^Distillate: [0-9.]+ L at 85[.]00 % vol.*  strength kept +until 1 h 1[0-9] min,")
answers(forecast_run.strength_lost_json "${keeping} --cuts 'strength lost' --end 'distillate 40 %vol' --json"
    "\"strength_lost\": {\n +\"elapsed_min\": 7[0-9][.][0-9]+,.*\"reflux_ratio\": (6[.]0|5[.]99999)")
answers(forecast_run.strength_never_lost "${keeping} --end 'collected 100 mL'" "  strength kept +to the end\n")
refuses(forecast_run.strength_there_already "${keeping} --end 'distillate 85 %vol'"
    "--end 'distillate 85 %vol': strength of the distillate 85 .*keeps that strength; wait until the strength is lost")
refuses(forecast_run.lost_without_keeping "${run} --plates 4 --reflux 6 --end 'strength lost'"
    "--end 'strength lost': needs --keep-strength")
refuses(forecast_run.lost_twice "${keeping} --cuts 'strength lost, strength lost' --end 'pot 0.5 %vol'"
    "--cuts 'strength lost': strength that is kept 85 % vol at 20 °C is outside 0 to 8[45][.]")

# Everything that was assumed is named, and only that.
answers(forecast_run.assumed "${run} --plates 4 --reflux 3 --end 'collected 1 L'"
    "  assumed +plates of efficiency 0[.]6 [(]--plate-efficiency[)], equal flows on all stages [(]--flows[)],\n +no liquid stays in the column [(]--plate-holds[)],\n +reflux as hot as it boils [(]--reflux-temperature[)],\n +no vapour condenses in neck and head [(]--heat-loss[)], the pot loses no heat [(]--pot-loss[)],\n +the metal of the pot takes up no heat [(]--pot-heat[)], no extract in the charge [(]--extract[)],\n +a charge of 20 °C to warm up [(]--temperature[)]\n")
answers(forecast_run.assumed_json "${run} --plates 4 --reflux 3 --heat-loss 0 --end 'collected 1 L' --points 2 --json"
    "\"assumed\": {\n    \"--plate-efficiency\": \"0[.]6\",\n    \"--flows\": \"constant\",\n    \"--plate-holds\": \"0 mL\",\n    \"--reflux-temperature\": \"boiling\",\n    \"--pot-loss\": \"0 W/K\",\n    \"--pot-heat\": \"0 kJ/K\",\n    \"--extract\": \"0 plato\",\n    \"--temperature\": \"20 C\"\n  }")
answers(forecast_run.nothing_assumed "${run} --heat-loss '5 %' --pot-loss '3 W/K' --pot-heat '4 kJ/K' --extract '1 plato' --temperature 18C --end 'collected 1 L'"
    "  condenser +[0-9]+ W at the start\n\nCaution")

# Fractions have names: the trade's, or the user's. Lists take commas and semicolons, "pot" a strength or a
# temperature, as the table shows both.
set(three "--discard '100 mL' --cuts 'pot 5 %vol' --end 'pot 99 C'")
answers(forecast_run.usual_names "${run} ${three}" "^Hearts: .*at its end: distillate, pot\n  foreshots .*\n  hearts .* 5[.]00 % vol and [0-9.]+ °C\n  tails .* and 99 °C\n")
answers(forecast_run.names "${run} ${three} --names 'first, good, last'" "^Kept: .*\n  first .*\n  good .*\n  last ")
answers(forecast_run.names_json "${run} ${three} --names 'Vorlauf; Herz; Nachlauf' --json" "\"name\": \"Vorlauf\".*\"name\": \"Herz\".*\"name\": \"Nachlauf\"")
answers(forecast_run.hearts_together "${run} --cuts 'collected 1 L, collected 1 L' --end 'pot 0.5 %vol'" "^Hearts: 2[.]000 L at 53[.][67][0-9] % vol")
answers(forecast_run.one_separator
    "a=$(${run} --cuts 'collected 1 L, pot 98 C' --end 'still 0.5 %vol, elapsed 9 h'); b=$(${run} --cuts 'collected 1 L; boiling 98 C' --end 'pot 0.5 %vol; elapsed 9 h'); [ \"$a\" = \"$b\" ] && echo same"
    "^same\n$")
refuses(forecast_run.too_few_names "${run} ${three} --names 'a, b'" "--names 'a, b': 2 names for 3 fractions")
refuses(forecast_run.empty_name "${run} ${three} --names 'a,,b'" "--names 'a,,b': a name is empty")
refuses(forecast_run.pot_without_unit "${run} --end 'pot 1'" "--end 'pot 1': '1': the unit is missing; expected the pot's strength or temperature")

# A charge of 0.1 % vol balances as well as a strong one.
answers(forecast_run.weak_charge_conserves "aqueth forecast_run --charge '25 L' --strength '0.1 %vol' --power '2 kW' --end 'pot 0.01 %vol' --points 2 --json"
    "\"ethanol\": -?(0[.]0|[0-9.]+e-(09|1[0-9])),")

# The doubt about the vapour, carried through the run: over a wash a lower vapour is worth a fifth and more.
answers(forecast_run.how_sure "aqueth forecast_run --charge '25 L' --strength '11 %vol' --power '1.5 kW' --discard '100 mL' --cuts 'distillate 50 %vol' --end 'distillate 10 %vol'"
    "^Hearts: 1[.]646 L at 54[.]12 % vol.*\n  uncertainty +1[.][23][0-9]+ L at 5[23][.][0-9]+ % vol, 2[0-9] % less alcohol, if the vapour is weaker by one standard uncertainty\n")
answers(forecast_run.how_sure_json "${run} --end 'collected 1 L' --points 2 --json"
    "\"with_vapour_weaker_by_standard_uncertainty\": {\n +\"product\": {.*\"strength_percent_vol_20C\": 5[0-9][.].*\"alcohol_over_that_of_the_forecast\": 0[.]9[0-9]+,")
answers(forecast_run.not_sure_in_a_vacuum_us "${run} --pressure '20 kPa' --end 'collected 1 L' --us"
    "\n  uncertainty +not known: vapours were measured from 7[.]38 to 88[.]6 inHg only\n")
answers(forecast_run.not_sure_in_a_vacuum "${run} --pressure '20 kPa' --end 'collected 1 L'" "\n  uncertainty +not known: vapours were measured from 25 to 300 kPa only\n")
answers(forecast_run.no_such_run_with_less "${run} --plates 4 --reflux 6 --keep-strength '88 %vol' --end 'collected 1 L'"
    "\n  uncertainty +not known: with a vapour weaker by one standard uncertainty this plan cannot be run\n")

# What would be passed over is refused.
set(column "needs a column: --stages, --plates or --packing")
refuses(forecast_run.stray_hetp "${run} --stages 4 --hetp rubbish --end 'collected 1 L'" "--hetp needs --packing")
refuses(forecast_run.stray_efficiency "${run} --stages 4 --plate-efficiency rubbish --end 'collected 1 L'"
    "--plate-efficiency needs --plates")
refuses(forecast_run.stray_reflux "${run} --reflux 3 --end 'collected 1 L'" "--reflux ${column}")
refuses(forecast_run.stray_strength "${run} --keep-strength '80 %vol' --end 'collected 1 L'" "--keep-strength ${column}")
refuses(forecast_run.stray_flows "${run} --flows enthalpy --end 'collected 1 L'" "--flows ${column}")
refuses(forecast_run.stray_room "${run} --room '30 C' --end 'collected 1 L'" "--room needs --pot-loss")
refuses(forecast_run.stray_replace "${run} --replace --end 'collected 1 L'" "--replace needs --draw")
refuses(forecast_run.strength_without_reflux "${run} --stages 4 --keep-strength '80 %vol' --end 'collected 1 L'"
    "--keep-strength needs --reflux")

# Pots that cannot be.
refuses(forecast_run.pot_heat "${run} --pot-heat '1e300 kJ/K' --end 'collected 1 L'"
    "--pot-heat '1e300 kJ/K': heat capacity 1e[+]303 J/K is outside 0 to 1e[+]09 J/K")
refuses(forecast_run.negative_pot_heat "${run} --pot-heat '-1 J/K' --end 'collected 1 L'" "--pot-heat '-1 J/K': heat capacity -1 J/K is outside")
refuses(forecast_run.pot_loss "${run} --pot-loss '2e6 W/K' --end 'collected 1 L'"
    "--pot-loss '2e6 W/K': heat loss coefficient 2000000 W/K is outside 0 to 1000000 W/K")
refuses(forecast_run.endless "aqueth forecast_run --charge '1e9 L' --strength '11 %vol' --power '0.001 W' --end 'still 1 %vol'"
    "--power '0.001 W': power 0[.]001 W is not a number of at least 6[0-9]+[.][0-9]+ W .*a million hours")
refuses(forecast_run.too_many_ends "${run} --end \"$(printf 'elapsed 1 h;%.0s' {1..20}) elapsed 1 h\""
    "--end '.*': number of ends of the run 21 is outside 1 to 20")
refuses(forecast_run.too_many_cuts "${run} --cuts \"$(printf 'elapsed 1 s;%.0s' {1..1000}) elapsed 1 s\" --end 'elapsed 1 h'"
    "--cuts '.*': number of cuts 1001 is outside 0 to 1000")
refuses(forecast_run.end_without_unit "${run} --end 'still 0.5'" "--end 'still 0.5': '0.5': the unit is missing; expected a strength")

# What a small still really does: against the figures of an independent dynamic model (a partial condenser of 20 %
# before the total one: 2.191 L at 87.3 %; without it 1.942 L at 85.7 %; within 1 %).
set(column "aqueth forecast_run --charge '25 L' --strength '11 %vol' --power '1.5 kW' --pot-loss '3 W/K' --plates 4 --reflux 3 --discard '100 mL' --cuts 'distillate 80 %vol' --end 'distillate 20 %vol'")
answers(forecast_run.column_alone "${column}" "^Hearts: 1[.]9[45][0-9]+ L at 85[.][67]")
answers(forecast_run.neck_on_a_column "${column} --heat-loss '20 %'" "^Hearts: 2[.](1[789]|20)[0-9]* L at 87[.][234]")
answers(forecast_run.neck_in_watts "${column} --heat-loss '0 W/K'" "^Hearts: 1[.]9[45][0-9]+ L at 85[.][67]")
answers(forecast_run.neck_loses_more "${column} --heat-loss '2 W/K'" "^Hearts: 2[.]0[0-9]+ L at 86[.]")
answers(forecast_run.partial_condenser
    "aqueth forecast_run --charge '25 L' --strength '11 %vol' --power '1.5 kW' --plates 3 --partial-condenser '70 %' --end 'distillate 80 %vol' --json"
    "\"partial_condenser\": [1-9]")
answers(forecast_run.partial_condenser_by_its_water
    "aqueth forecast_run --charge '25 L' --strength '11 %vol' --power '1.5 kW' --plates 3 --partial-condenser '0.4 L/min, 15 C, 45 C' --end 'distillate 80 %vol'"
    "^Distillate: ")
answers(forecast_run.cold_reflux "${column} --reflux-temperature '40 C'" "^Hearts: 2[.]0[0-9]+ L at 8[56]")
# The same model: 60 mL on a plate and 10 mL in the condenser 2.057 L at 85.5 % vol; 120 and 20 mL 2.122 L at 85.2 %,
# and after 30 min at total reflux 2.111 L.
answers(forecast_run.holdup "${column} --plate-holds '60 mL' --head-holds '10 mL'" "^Hearts: 2[.]0[4567][0-9]* L at 85[.][456]")
answers(forecast_run.holdup_of_the_column "${column} --column-holds '240 mL' --head-holds '10 mL'" "^Hearts: 2[.]0[4567][0-9]* L at 85[.][456]")
answers(forecast_run.more_holdup "${column} --plate-holds '120 mL' --head-holds '20 mL'" "^Hearts: 2[.]1[123][0-9]* L at 85[.][123]")
answers(forecast_run.holdup_at_total_reflux "${column} --plate-holds '120 mL' --head-holds '20 mL' --total-reflux '30 min'" "^Hearts: 2[.](09|1[012])[0-9]* L at 85[.][345]")
answers(forecast_run.holdup_conserves "${column} --plate-holds '60 mL' --head-holds '10 mL' --points 2 --json"
    "\"balance_relative_to_charge\": {\n +\"ethanol\": -?(0[.]0|[0-9.]+e-(09|1[0-9])),\n +\"water\": -?(0[.]0|[0-9.]+e-(09|1[0-9])),\n +\"energy\": -?(0[.]0|[0-9.]+e-(09|1[0-9]))\n")
refuses(forecast_run.holdup_by_enthalpy "${column} --plate-holds '60 mL' --flows enthalpy" "--plate-holds '60 mL': holdup 0[.]06 L is outside 0 to 0 L .*only with constant molar overflow")
refuses(forecast_run.holds_too_much "${column} --plate-holds '6 L'" "--plate-holds '6 L': holdup 24 L is outside 0 to 3[.]")
refuses(forecast_run.head_holds_a_vat "${column} --head-holds '2000 L'" "--head-holds '2000 L': holdup 2000 L is outside 0 to 1000 L")
refuses(forecast_run.steps_power_off "${column} --steps 'power 0 W from collected 1 L'" "--steps 'power 0 W from collected 1 L': power 0 W is outside")
refuses(forecast_run.negative_start "${column} --total-reflux '-5 min'" "--total-reflux '-5 min': time at total reflux -5 min is outside 0 to")
refuses(forecast_run.start_without_a_condenser "${run} --partial-condenser '50 %' --total-reflux '10 min' --end 'collected 1 L'" "--total-reflux '10 min': .*only a total condenser can return everything")
refuses(forecast_run.takes_too_much "${run} --plates 4 --take-off '2 L/min' --end 'collected 1 L'" "--take-off '2 L/min': take-off rate 2000 mL/min is outside 0 to")
answers(forecast_run.take_off
    "aqueth forecast_run --charge '25 L' --strength '11 %vol' --power '1.5 kW' --plates 4 --take-off '20 mL/min' --end 'elapsed 60 min'"
    "^Distillate: 1[.]2[0-9]+ L at")
answers(forecast_run.total_reflux "${column} --total-reflux '30 min'" "[0-9] h [0-9]+ min of boiling.*\n  foreshots +100[.]0 mL +[0-9.]+ % vol +0 h 3[0-9] min")
answers(forecast_run.head_and_spout
    "${run} --plates 4 --reflux 3 --cuts 'head 82 C; spout 85 %vol' --spout-temperature '30 C' --end 'pot 99 C'"
    "\n  hearts .*\n  hearts 2 ")
answers(forecast_run.steps
    "${column} --steps 'reflux 5 from collected 1 L; power 1 kW from pot 99 C; take-off 10 mL/min from elapsed 90 h'"
    "  steps +reflux 5 from collected 1 L: [0-9] h [0-9]+ min, 1[.]000 L collected\n +power 1 kW from pot 99 C: [^\n]* collected\n +take-off 10 mL/min from elapsed 90 h: not before the run ends\n")
answers(forecast_run.preheated "a=$(${run} --pot-heat '4 kJ/K' --filled-at '70 C' --end 'collected 1 L'); echo \"$a\"" "0 h 2[0-9] min of warming")

# Water, load and money.
answers(forecast_run.cooling "${column} --water-in '12 C' --water-out '50 C' --receiver '18 C' --column-width '54 mm'"
    "  cooling water +[0-9.]+ mL a minute at most, [0-9.]+ L in all, from 12 °C to 50 °C; UA [0-9]+ W/K\n  receiver +18 °C. the water is at 1[2-9][.][0-9] °C .*\n  column at the top 0[.][345][0-9] m/s, F-factor 0[.][45][0-9] Pa.0.5 at most")
answers(forecast_run.cooling_json "${column} --water-in '12 C' --column-width '54 mm' --price 0.3 --water-price 4 --points 2 --json"
    "\"cooling\": {\n +\"water_in_C\": 12[.]0,.*\"water_L_per_min\": 0[.].*\"partial_condenser\": null\n.*\"f_factor_root_Pa\": 0[.].*\"bought_kWh\": [0-9.]+,\n.*\"price_per_L_20C\": ")
answers(forecast_run.cost "${run} --price 0.12 --heating-efficiency '40 %' --end 'collected 1 L'"
    "\n  heat +2[.][0-9]+ kWh.*\n  cost +6[.]3[0-9]+ kWh for 0[.]76, [0-9]+ h [0-9]+ min; 0[.]76 in all, 0[.]76 per litre of distillate\n")

refuses(forecast_run.two_heads "${run} --plates 4 --reflux 3 --partial-condenser '50 %' --end 'collected 1 L'"
    "give only one of --reflux, --take-off and --partial-condenser")
refuses(forecast_run.two_holdups "${run} --plates 4 --reflux 3 --plate-holds '60 mL' --column-holds '200 mL' --end 'collected 1 L'"
    "give either --plate-holds or --column-holds")
refuses(forecast_run.stray_holdup "${run} --plate-holds '60 mL' --end 'collected 1 L'" "--plate-holds needs a column: --stages, --plates or --packing")
refuses(forecast_run.stray_reflux_temperature "${run} --plates 4 --heat-loss '5 %' --reflux-temperature '40 C' --end 'collected 1 L'"
    "--reflux-temperature needs --reflux or --take-off")
refuses(forecast_run.loss_in_metres "${run} --heat-loss '2 m' --end 'collected 1 L'" "--heat-loss '2 m'.*a share or a heat loss")
refuses(forecast_run.negative_loss "${run} --heat-loss '-2 W/K' --end 'collected 1 L'" "--heat-loss '-2 W/K': heat loss coefficient -2 W/K is outside 0 to 10000")
refuses(forecast_run.partial_share "${run} --partial-condenser '100 %' --end 'collected 1 L'" "--partial-condenser '100 %': share of the vapour that condenses 100 % is outside 0 to 99 %")
refuses(forecast_run.partial_two "${run} --partial-condenser '1 L/min, 15 C' --end 'collected 1 L'" "expected a share, or its water as 'FLOW, TEMP in, TEMP out'")
refuses(forecast_run.partial_backwards "${run} --partial-condenser '1 L/min, 45 C, 15 C' --end 'collected 1 L'" "--partial-condenser '1 L/min, 45 C, 15 C': warming of the cooling water -30 K is outside")
refuses(forecast_run.flow_in_litres "${run} --plates 4 --take-off '2 L' --end 'collected 1 L'" "--take-off '2 L'.*expected a volume in a time")
refuses(forecast_run.strange_step "${run} --steps 'stir 3 from collected 1 L' --end 'collected 2 L'" "expected 'reflux' and a ratio, 'power' and a power, or 'take-off' and a rate")
refuses(forecast_run.step_without_from "${run} --steps 'power 1 kW' --end 'collected 2 L'" "expected a change, 'from' and a condition")
refuses(forecast_run.reading_in_proof "${run} --end 'spout 80 proof'" "expected the reading of an alcoholometer in %vol at 20 C")
refuses(forecast_run.warm_water "${run} --water-in '60 C' --end 'collected 1 L'" "--water-in '60 C': temperature of the water in 60 °C is outside 0 to 40")
refuses(forecast_run.water_backwards "${run} --water-in '20 C' --water-out '15 C' --receiver '25 C' --end 'collected 1 L'" "--water-out '15 C': temperature of the water out 15 °C is outside 20")
refuses(forecast_run.cold_receiver "${run} --water-in '20 C' --receiver '18 C' --end 'collected 1 L'" "--receiver '18 C': temperature of the receiver 18 °C is outside 20")
refuses(forecast_run.water_too_hot "${column} --water-out '90 C'" "--water-out '90 C': temperature of the water out 90 °C is outside")
refuses(forecast_run.no_width "${run} --column-width '0 mm' --end 'collected 1 L'" "--column-width '0 mm': diameter of the column 0 mm is outside 1 to")
refuses(forecast_run.negative_price "${run} --price -1 --end 'collected 1 L'" "--price '-1': number -1 is outside 0")
refuses(forecast_run.no_efficiency "${run} --heating-efficiency 0 --end 'collected 1 L'" "--heating-efficiency '0': efficiency of the heating 0 is outside")
refuses(forecast_run.filled_boiling "${run} --filled-at '95 C' --end 'collected 1 L'" "--filled-at '95 C': temperature of the charge 95 °C is outside 0 to 91[.]")
