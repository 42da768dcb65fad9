# SPDX-License-Identifier: BSL-1.0
# By hand: 0.96^4 = 0.84935 of the ethanol, 0.98^4 = 0.92237 of the water of 50 L of 62 % vol (45.18 kg by the balance,
# 54.1 % mass) are 39.9 kg of 52.0 % mass, 59.9 % vol by OIML R 22.
answers(keep_cask.four_years "aqueth keep_cask --amount '50 L' --strength '62 %vol' --period '4 years, ethanol 4 %, water 2 %'"
    "^After 4 years the cask holds 43[.]9[0-9] L of 59[.]9[0-9] % vol[.]\n.*the strength falls\n.*alcohol lost +15[.]0[67] % in all, 4[.]00 % a year.*not a forecast")
answers(keep_cask.equal_parts_keep_the_strength "aqueth keep_cask --amount '50 L' --strength '62 %vol' --period '4 years, ethanol 3 %, water 3 %'"
    "of 62[.]00 % vol[.]\n.*the strength stays")
answers(keep_cask.turns "aqueth keep_cask --amount '50 L' --strength '62 %vol' --period '18 months, ethanol legal spirits, water 2 %' --period '2 years, ethanol 2 %, water 5 %'"
    "the strength falls\n.*the strength rises\n.*strength turns +after 1[.]5 years, at 60[.]45 % vol")
answers(keep_cask.there_and_back "aqueth keep_cask --amount '50 L' --strength '62 %vol' --later-amount '43.92 L' --later-strength '59.95 %vol' --after '4 years'"
    "^Each year took (3[.]99|4[.]0[01]) % of the ethanol and (1[.]9[89]|2[.]0[0-2]) % of the water: the strength falls")
answers(keep_cask.damp "aqueth keep_cask --amount '50 L' --strength '62 %vol' --period '4 years, ethanol 2 %, water -1 %'" "the strength falls")
# France, CGI, annexe III, article 111-00 C
answers(keep_cask.law "aqueth keep_cask --law" "spirits +6 % in wood, 1[.]5 % in tight tanks.*article 111-00 C")
answers(keep_cask.us "aqueth keep_cask --amount '13 gal' --strength '124 proof' --temperature '60 F' --period '4 years, ethanol 4 %, water 2 %'"
    "^After 4 years the cask holds 11[.]4[0-9]* US gal of 1(19|20)[.][0-9] US proof")
answers(keep_cask.json "aqueth keep_cask --amount '50 L' --strength '62 %vol' --period '4 years, ethanol 4 %, water 2 %' --json"
    "\"periods\".*\"share_of_alcohol_lost\": 0[.]1506.*\"turns_after_years\": null")

refuses(keep_cask.nothing "aqueth keep_cask" "give --amount and --strength")
refuses(keep_cask.no_question "aqueth keep_cask --amount '50 L' --strength '62 %vol'" "give either --period or --later-amount")
refuses(keep_cask.both "aqueth keep_cask --amount '50 L' --strength '62 %vol' --period '4 years, ethanol 4 %, water 2 %' --later-amount '40 L'" "give either --period or --later-amount")
refuses(keep_cask.half "aqueth keep_cask --amount '50 L' --strength '62 %vol' --later-amount '40 L'" "--later-amount needs --later-strength and --after")
refuses(keep_cask.grows "aqueth keep_cask --amount '50 L' --strength '62 %vol' --later-amount '60 L' --later-strength '62 %vol' --after '4 years'"
    "--later-amount '60 L': yearly loss of ethanol -[0-9.]+ % is outside 0 to 50 %")
refuses(keep_cask.too_much "aqueth keep_cask --amount '50 L' --strength '62 %vol' --period '4 years, ethanol 60 %, water 2 %'" "yearly loss of ethanol 60 % is outside 0 to 50 %")
refuses(keep_cask.no_time "aqueth keep_cask --amount '50 L' --strength '62 %vol' --period '4, ethanol 4 %, water 2 %'" "the unit is missing.*years or months")
refuses(keep_cask.fewer_parts "aqueth keep_cask --amount '50 L' --strength '62 %vol' --period '4 years, 4 %'" "expected time and losses")
refuses(keep_cask.wrong_order "aqueth keep_cask --amount '50 L' --strength '62 %vol' --period '4 years, water 4 %, ethanol 2 %'" "expected 'ethanol ... %', a yearly loss")
refuses(keep_cask.goods "aqueth keep_cask --amount '50 L' --strength '62 %vol' --period '4 years, ethanol legal beer, water 2 %'" "unknown goods; --law lists")
refuses(keep_cask.nan "aqueth keep_cask --amount '50 L' --strength '62 %vol' --period 'nan years, ethanol 4 %, water 2 %'" "not a number")
refuses(keep_cask.centuries "aqueth keep_cask --amount '50 L' --strength '62 %vol' --period '400 years, ethanol 4 %, water 2 %'" "time 400 years is outside 0 to 100 years")

# Water has no alcohol to lose, and nothing whose strength could turn.
answers(keep_cask.water "aqueth keep_cask --amount '50 L' --strength '0 %vol' --period '1 year, ethanol 4 %, water 2 %' | grep -c -E 'nan|alcohol lost|strength' || true" "^0\n$")
answers(keep_cask.water_has_single_gaps "cask=$(aqueth keep_cask --amount '50 L' --strength '0 %vol' --period '1 year, ethanol 4 %, water 2 %'); diff <(echo \"$cask\") <(echo \"$cask\" | cat -s) && echo single" "^single\n$")
answers(keep_cask.water_json "aqueth keep_cask --amount '50 L' --strength '0 %vol' --period '1 year, ethanol 4 %, water 2 %' --json" "\"share_of_alcohol_lost\": null")
answers(keep_cask.water_gauged "aqueth keep_cask --amount '50 L' --strength '0 %vol' --later-amount '40 L' --later-strength '0 %vol' --after '1 year'"
    "^Each year took 20[.]00 % of the water. there was no ethanol[.]\n\n +at first[^\n]*\n +later[^\n]*, after 1 year\n\n")
answers(keep_cask.one_year "aqueth keep_cask --amount '50 L' --strength '62 %vol' --period '1 year, ethanol 4 %, water 2 %'"
    "^After 1 year the cask .* after 1 year  [^\n]*; the strength falls\n\n +alcohol lost[^\n]*\n\nAll volumes")
answers(keep_cask.no_time_passes "aqueth keep_cask --amount '50 L' --strength '62 %vol' --period '0 years, ethanol 4 %, water 2 %'"
    "^After 0 years .*the strength stays\n\n +alcohol lost +0[.]00 % in all; French[^\n]*\n\nAll volumes")
answers(keep_cask.nothing_turns "aqueth keep_cask --amount '50 L' --strength '62 %vol' --period '2 years, ethanol 0 %, water 0 %' | grep -c turns || true" "^0\n$")
