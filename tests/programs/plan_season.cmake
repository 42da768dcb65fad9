# SPDX-License-Identifier: BSL-1.0
set(season "aqueth plan_season --wash '200 L' --strength '9 %vol' --pot-charge '24 L' --strip-end 'distillate 3 %vol' --power '2 kW' --heat-loss '10 %'")
set(cut "--discard '150 mL' --cuts 'distillate 60 %vol' --end 'distillate 10 %vol'")
set(run "${season} ${cut}")

answers(plan_season.answer "${run}"
    "^Hearts of a lot: 2[0-9.]+ L at 72[.][0-9]+ % vol, 1[67][.][0-9]+ L of pure alcohol [(]9[0-9] %[)][.]\n9 strips and 4 spirit runs, [0-9]+ h [0-9]+ min in all[.]\n\n  lot .*\n    1 +3 .*\n    2 +4 .*\n  and so on\n.*  low wines +6[0-9.]+ L at 2[78][.].*  of the alcohol +9[0-9.]+ % in hearts, .* 0[.]0 % lost\n.*never close or leave")
# What goes in comes out, of ethanol and of water.
answers(plan_season.closes "${run} --lost '2 %' --dilute-to '25 %vol' --json"
    "\"ethanol\": {.*\"balance\": -?(0[.]0|[0-9.]+e-(09|1[0-9]))\n.*\"water\": {.*\"added_kg\": [1-9].*\"balance\": -?(0[.]0|[0-9.]+e-(09|1[0-9]))\n")
answers(plan_season.json "${run} --price 0.3 --json"
    "^{\n  \"task\": \"plan_season\",\n  \"version\": \"[0-9.]+\",\n  \"schema\": \"urn:aqueth:answers:1\",\n  \"strips\": 9,.*\"warming_min\": .*\"spirit_runs\": 4,.*\"yield\": 0[.]9.*\"hours\": [0-9.]+,\n  \"heat_kWh\": [0-9.]+,\n  \"cost\": {\n    \"bought_kWh\": .*\"lots\": ")
answers(plan_season.heads_returned "${run} --return-heads" " 0[.]0 % discarded, ")
answers(plan_season.loses "${run} --lost '2 %'" " 89[.][0-9] % in hearts, .* 4[.][0-9] % lost\n")
answers(plan_season.diluted "${run} --dilute-to '25 %vol'" "\n    1 .* at 25[.]00 % vol .*  water to add +[0-9.]+ kg to the charges of a lot\n")
answers(plan_season.water_and_money "${run} --water-in '12 C' --price 0.12 --heating-efficiency '40 %' --water-price 4"
    "  cooling water +[0-9.]+ L\n  cost +[0-9.]+ kWh for [0-9.]+, [0-9.]+ L of water for [1-9][0-9.]*, [0-9]+ h [0-9]+ min; [0-9.]+ in all, [0-9.]+ per litre of hearts\n")
answers(plan_season.bottles "${run} --price 2.5 --gas-heat '46 MJ/kg' --heating-efficiency '40 %' --bottle '700 mL of 40 %vol'"
    "  cost +[0-9.]+ kWh [(][0-9.]+ kg of gas[)] for [1-9][0-9.]*, [0-9]+ h [0-9]+ min; .*, [0-9.]+ for each of 6[0-9][.][0-9] bottles of 700 mL of 40 %vol\n")
answers(plan_season.bottles_in_json "${run} --price 0.3 --bottle '700 mL of 40 %vol' --json" "\"bottles\": 6[0-9][.].*\"price_per_bottle\": 0[.]")
refuses(plan_season.bottle_without_strength "${run} --bottle '700 mL'" "--bottle '700 mL': expected a volume and a strength: '700 mL of 40 %vol'")
refuses(plan_season.bottle_of_water "${run} --bottle '700 mL of 0 %vol'" "the bottle holds no alcohol")
refuses(plan_season.cold_gas "${run} --gas-heat '0 MJ/kg'" "--gas-heat '0 MJ/kg': heating value of the fuel 0 kWh/kg is outside 0[.]1 to 100")
answers(plan_season.between "a=$(${run} --json | grep hours); b=$(${run} --between '60 min' --json | grep hours); echo \"[$a $b]\" | sed 's/ *\"hours\": *//g; s/[][,]/ /g' | awk '{printf \"[%.6f]\", $2 - $1}' | sed 's/.*/{\"more\": &}/'"
    "^{\"more\": .13[.]000000.}$")
answers(plan_season.column "${season} --plates 4 --reflux 2 --discard '150 mL' --cuts 'distillate 80 %vol' --end 'distillate 20 %vol'" "^Hearts of a lot: [0-9.]+ L at 8[0-9.]+ % vol")
answers(plan_season.us "${run} --us" "^Hearts of a lot: [0-9.]+ US gal at 14[0-9.]+ US proof, [0-9.]+ proof gal")

refuses(plan_season.thimble "aqueth plan_season --wash '200 L' --strength '9 %vol' --pot-charge '0.1 L' --strip-end 'distillate 3 %vol' --power '2 kW' ${cut}"
    "--pot-charge '0.1 L': number of runs 2000 is outside 1 to 1000")
refuses(plan_season.loses_all "${run} --lost '30 %'" "--lost '30 %': share that is lost 30 % is outside 0 to 20 %")
refuses(plan_season.negative_time "${run} --between '-1 h'" "--between '-1 h': time between runs -1 h is outside 0 to 1000")
refuses(plan_season.nothing_to_return "${season} --cuts 'distillate 60 %vol' --end 'distillate 10 %vol' --return-heads" "--return-heads needs --discard")
refuses(plan_season.no_hearts "${season} --discard '150 mL' --end 'distillate 10 %vol' --return-heads" "number of hearts 0 is outside 1 to")
refuses(plan_season.strip_past "aqueth plan_season --wash '200 L' --strength '9 %vol' --pot-charge '24 L' --strip-end 'pot 10 %vol' --power '2 kW' ${cut}"
    "--strip-end 'pot 10 %vol': strength in the still 10 % vol")
refuses(plan_season.strip_keeps "aqueth plan_season --wash '200 L' --strength '9 %vol' --pot-charge '24 L' --strip-end 'strength lost' --power '2 kW' ${cut}" "--strip-end 'strength lost': a strip keeps no strength")
refuses(plan_season.stray_price "${run} --water-price 4" "--water-price needs --water-in, --water-out or --receiver")
refuses(plan_season.diluted_to_water "${run} --dilute-to '0.5 %vol'" "--dilute-to '0.5 %vol': strongest charge 0[.]5 % vol at 20 °C is outside 1 to 100")
refuses(plan_season.no_wash "aqueth plan_season --wash '0 L' --strength '9 %vol' --pot-charge '24 L' --strip-end 'distillate 3 %vol' --power '2 kW' ${cut}" "--wash '0 L': volume 0 L is outside")

# A pot that takes the whole lot: one of each.
answers(plan_season.one_of_each "aqueth plan_season --wash '20 L' --strength '9 %vol' --pot-charge '25 L' --strip-end 'distillate 3 %vol' --power '2 kW' --end 'distillate 10 %vol'"
    "\n1 strip and 1 spirit run, ")
