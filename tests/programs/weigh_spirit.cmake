# SPDX-License-Identifier: BSL-1.0
# USP 29 (2006), Alcoholometric Table: 32 % mass (38.46 % vol at 60 °F) has a specific gravity in air of 0.9498 at
# 25/25 °C; half a digit of that is 0.03 % mass. A flask weighed against water measures that gravity by definition.
answers(weigh_spirit.published_gravity
    "aqueth weigh_spirit --empty '45 g' --with-water '145 g' --with-spirit '139.98 g' --temperature-with-water '25 C' --temperature '25 C'"
    "^The spirit has 38[.][45][0-9] % vol, give or take 0[.]1[0-9] .95 %.*, (31[.]9[7-9]|32[.]0[0-3]) % mass.*flask holds +100[.]4")
# Water weighed as a spirit: no alcohol, to the digit.
answers(weigh_spirit.water_is_water "aqueth weigh_spirit --empty '45 g' --with-water '145 g' --with-spirit '145 g'"
    "^The spirit has 0[.]00 % vol")
answers(weigh_spirit.budget
    "aqueth weigh_spirit --empty '58.42 g' --with-water '158.13 g' --with-spirit '149.61 g' --temperature '21 C'"
    [=[strength of the spirit: 57[.]88[0-9] % vol, standard uncertainty 0[.]05[0-9] .by draws 0[.]05[0-9].
.*temperature of the spirit +5[0-9][.][0-9] % of the variance.*Dissolved sugar.*Caution: spirit]=])
# Thinner air weighs less down: at 3000 m the same weighings mean a little less spirit.
answers(weigh_spirit.altitude
    "aqueth weigh_spirit --empty '58.42 g' --with-water '158.13 g' --with-spirit '149.61 g' --altitude '3000 m'"
    "air +0[.]83[0-9] kg/m3")
# 50.7 kg by the balance, R 22 at 17 °C: 50.7 kg * (1 - 1.2/8000)/(1 - 1.2/907.0) = 50.76 kg, 55.96 L; by hand.
answers(weigh_spirit.demijohn
    "aqueth weigh_spirit --gross '63.1 kg' --tare '12.4 kg' --strength '62 %vol' --temperature '17 C' --balance '50 g'"
    "^The vessel holds 55[.]96 L; pure alcohol 34[.]79 L at 20 °C, give or take 0[.]1[5-7] L .95 %.*50[.]70 kg by the balance, 50[.]76 kg in vacuo")
answers(weigh_spirit.demijohn_us "aqueth weigh_spirit --gross '139 lb' --tare '27 lb' --strength '124 proof' --temperature '60 F' --balance '0.1 lb'"
    "^The vessel holds 14[.]80? US gal|^The vessel holds 14[.]79[0-9] US gal; pure alcohol 18[.]34[0-9] proof gal")
answers(weigh_spirit.json "aqueth weigh_spirit --empty '58.42 g' --with-water '158.13 g' --with-spirit '149.61 g' --json"
    "\"percent_vol_20C\": 58[.][0-9]+.*\"flask_mL\": 99[.]9|\"budget\"")

refuses(weigh_spirit.nothing "aqueth weigh_spirit" "give --empty, --with-water and --with-spirit for a flask, or --gross")
refuses(weigh_spirit.both "aqueth weigh_spirit --empty '58 g' --gross '60 kg'" "for a flask, or --gross for a vessel")
refuses(weigh_spirit.half_a_flask "aqueth weigh_spirit --empty '58 g' --with-water '158 g'" "a flask needs all of")
refuses(weigh_spirit.no_tare "aqueth weigh_spirit --gross '60 kg' --strength '40 %vol'" "--gross needs --tare and --strength")
refuses(weigh_spirit.volume_for_mass "aqueth weigh_spirit --empty '58 mL' --with-water '158 g' --with-spirit '150 g'" "--empty '58 mL'.*expected a mass")
refuses(weigh_spirit.empty_not_empty "aqueth weigh_spirit --empty '158 g' --with-water '58 g' --with-spirit '150 g'"
    "--with-water '58 g': indication with water 0[.]058 kg .*heavier than the empty flask")
refuses(weigh_spirit.syrup "aqueth weigh_spirit --empty '58 g' --with-water '158 g' --with-spirit '170 g'"
    "--with-spirit '170 g': density 11[0-9][0-9][.][0-9]* kg/m3 is outside")
refuses(weigh_spirit.hot "aqueth weigh_spirit --empty '58 g' --with-water '158 g' --with-spirit '150 g' --temperature '60 C'"
    "--temperature '60 C': temperature 60 °C is outside")
refuses(weigh_spirit.nan "aqueth weigh_spirit --empty 'nan g' --with-water '158 g' --with-spirit '150 g'" "not a number")
refuses(weigh_spirit.lighter_than_its_tare "aqueth weigh_spirit --gross '10 kg' --tare '12 kg' --strength '40 %vol'"
    "--gross '10 kg': mass 10 kg is not a number of at least 12 kg")
refuses(weigh_spirit.thin_air "aqueth weigh_spirit --empty '58 g' --with-water '158 g' --with-spirit '150 g' --pressure '10 kPa'"
    "--pressure '10 kPa': pressure 10 kPa is outside 50 to 110")

# The budget shows the proof of the heading, which is that at 60 °F and not twice the % vol at 20 °C; JSON is metric.
answers(weigh_spirit.one_proof "aqueth weigh_spirit --empty '2 oz' --with-water '5.5 oz' --with-spirit '5.2 oz'"
    "^The spirit has 116[.]6 US proof, .*strength of the spirit: 116[.](5[5-9]|6[0-4]) US proof, ")
answers(weigh_spirit.metric_json "aqueth weigh_spirit --empty '2 oz' --with-water '5.5 oz' --with-spirit '5.2 oz' --json"
    "\"quantity\": \"strength of the spirit\",\n *\"unit\": \"% vol\",\n *\"estimate\": 58[.]3[56]")
answers(weigh_spirit.metric_json_of_a_vessel
    "aqueth weigh_spirit --gross '139 lb' --tare '27 lb' --strength '124 proof' --temperature '60 F' --balance '0.1 lb' --json"
    "\"quantity\": \"volume\",\n *\"unit\": \"L at 20 °C\",\n *\"estimate\": 56[.].*\"pure alcohol\",\n *\"unit\": \"L at 20 °C\",\n *\"estimate\": 3[45][.]")
answers(weigh_spirit.one_proof_gallon
    "aqueth weigh_spirit --gross '139 lb' --tare '27 lb' --strength '124 proof' --temperature '60 F' --balance '0.1 lb'"
    "pure alcohol 18[.]34[0-9]* proof gal, give.*pure alcohol: 18[.]3[45][0-9]* proof gal, ")
# Errors of 10 g in 100 g of liquid: no strength is excluded.
answers(weigh_spirit.tells_nothing
    "aqueth weigh_spirit --empty '58.42 g' --with-water '158.13 g' --with-spirit '149.61 g' --balance '10 g'"
    "^The spirit has 58[.]24 % vol, but the errors are too large: this measurement tells nothing[.]\nThe interval covers all of 0 to 100 % vol")
answers(weigh_spirit.only_half_possible "aqueth weigh_spirit --empty '45 g' --with-water '145 g' --with-spirit '145 g'"
    "\nThe errors reach impossible values. of the interval only 0[.]000? to 0[.]1[0-9]* % vol is possible[.]")
answers(weigh_spirit.volume_once "aqueth weigh_spirit --gross '30 kg' --tare '5 kg' --strength '62 %vol'"
    "  volume +27[.]67 L at 20 °C\n")
