# SPDX-License-Identifier: BSL-1.0
# By the rule of the Brewing Room Book 1984/85 (read in a quotation): malt of 2 % moisture and 27 °C, 268 kg of water for
# 100 kg, (0.39*27 + 2.68*69)/(0.39 + 2.68) + 2.3 = 65.97 °C.
answers(plan_mash.published_mash
    "aqueth plan_mash --grain '100 kg' --mash-water '268 kg' --moisture '2 %' --grain-temperature '27 C' --mash-temperature '65.97 C'"
    "^Heat the mash water to (68[.]9|69[.]0|69[.]1) °C[.]\n")
answers(plan_mash.vessel "aqueth plan_mash --grain '6 kg' --mash-water '18 L' --vessel '5 kJ/K'" "^Heat the mash water to 7[2-3][.][0-9] °C")
# 6 kg of grain at 65 % give 3.9 kg in 25 L: CRC Handbook, sucrose of 14.7 % mass has 1.0599 (20/20 °C).
answers(plan_mash.wort "aqueth plan_mash --grain '6 kg' --volume '25 L' --extract-yield '65 %'"
    "^The wort has a gravity of 1[.]0600 .14[.]7[34] °P.: 28[.]51 kg of water in all[.]\n.*3[.]900 kg of extract.*scald")
answers(plan_mash.both "aqueth plan_mash --grain '6 kg' --mash-water '18 L' --volume '25 L'" "^Heat the mash water.*The wort has a gravity")
# 25 L of 11 % vol need 25.4 L before pitching; by hand 47.1 mol of ethanol at 53 kJ/mol and 24.6 kg at 4.3 kJ/(kg K).
answers(plan_mash.fermentation "aqueth plan_mash --wash '25 L' --strength '11 %vol'"
    "^Before pitching there are 25[.]44 L at gravity 1[.]0677: take a vessel of 31[.]80 L or more[.]\nIf no heat were lost, the wash would warm from 20 °C to 43[.][0-9] °C.*Above 35 °C most yeasts suffer.*carbon dioxide is heavy")
answers(plan_mash.glucose_gives_less_heat "aqueth plan_mash --wash '25 L' --strength '8 %vol' --sugar glucose --json" "\"rise_K\": 1[34][.]")
answers(plan_mash.us "aqueth plan_mash --wash '6 gal' --strength '16 proof' --pitch-temperature '68 F'" "^Before pitching there are 6[.]0[0-9]+ US gal.*68 °F to [0-9.]+ °F")

# 2.5 gal for 6 lb are 10 qt, 1.67 qt/lb; 1 L/kg is 0.479 qt/lb.
answers(plan_mash.us_mash "aqueth plan_mash --grain '6 lb' --mash-water '2.5 gal' --volume '3 gal'"
    "mash +6[.]000 lb of grain and 20[.]8[0-9]* lb of water, 1[.]67 US qt/lb\n +after stirring +149 °F, within about 2 °F; .*stays in grain +[0-9.]+ lb [(]0[.]479 US qt/lb[)]")
answers(plan_mash.metric_mash "aqueth plan_mash --grain '6 kg' --mash-water '18 L' --volume '25 L'"
    "of water, 3 L/kg\n +after stirring +65 °C, within about 1 K; .*[(]1 L/kg[)]")
refuses(plan_mash.nothing "aqueth plan_mash" "give either --grain or --wash")
refuses(plan_mash.both_kinds "aqueth plan_mash --grain '6 kg' --wash '25 L' --strength '8 %vol'" "give either --grain or --wash")
refuses(plan_mash.grain_alone "aqueth plan_mash --grain '6 kg'" "--grain needs --volume .* or --mash-water")
refuses(plan_mash.no_strength "aqueth plan_mash --wash '25 L'" "--wash needs --strength")
refuses(plan_mash.too_strong "aqueth plan_mash --wash '25 L' --strength '30 %vol'" "--strength '30 %vol': .*30 % vol at 20 °C is outside")
refuses(plan_mash.boiling_is_too_cold "aqueth plan_mash --grain '6 kg' --mash-water '3 L' --mash-temperature '75 C'"
    "--mash-temperature '75 C': temperature wanted 75 °C is outside 30 to [5-7][0-9].*boiling water")
refuses(plan_mash.hot_mash "aqueth plan_mash --grain '6 kg' --mash-water '18 L' --mash-temperature '95 C'" "temperature wanted 95 °C is outside 30 to 80 °C")
refuses(plan_mash.wet_grain "aqueth plan_mash --grain '6 kg' --mash-water '18 L' --moisture '14 %'" "--moisture '14 %': moisture 14 % mass is outside 0 to 8 % mass")
refuses(plan_mash.too_much_extract "aqueth plan_mash --grain '60 kg' --volume '25 L'" "^aqueth plan_mash: --grain '60 kg': mass of the extract 39 kg is outside 0 to")
refuses(plan_mash.too_high_a_yield "aqueth plan_mash --grain '60 kg' --volume '25 L' --extract-yield '70 %'"
    "^aqueth plan_mash: --extract-yield '70 %': mass of the extract 42 kg is outside 0 to")
refuses(plan_mash.volume_of_grain "aqueth plan_mash --grain '6 L' --mash-water '18 L'" "--grain '6 L': expected a mass")
refuses(plan_mash.vessel_unit "aqueth plan_mash --grain '6 kg' --mash-water '18 L' --vessel '5 kJ'" "--vessel '5 kJ'")
refuses(plan_mash.nan "aqueth plan_mash --grain 'nan kg' --volume '25 L'" "not a number")
refuses(plan_mash.sugar "aqueth plan_mash --wash '25 L' --strength '8 %vol' --sugar honey" "expected sucrose, malt, glucose")
refuses(plan_mash.yield "aqueth plan_mash --grain '6 kg' --volume '25 L' --extract-yield '120 %'" "--extract-yield '120 %'")

# A share written in percent is refused in percent.
refuses(plan_mash.no_room "aqueth plan_mash --wash '20 L' --strength '8 %vol' --head-space '100 %'" "--head-space '100 %': head space 100 % is outside 0 to 90 %")
refuses(plan_mash.yield_in_percent "aqueth plan_mash --grain '6 kg' --volume '25 L' --extract-yield '120 %'" "extract yield 120 % is outside 0 to 100 %")
