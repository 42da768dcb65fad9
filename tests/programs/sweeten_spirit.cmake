# SPDX-License-Identifier: BSL-1.0
set(liqueur "--strength '75 %vol' --temperature '21 C' --target '28 %vol' --sugar '250 g/L'")

# 5 L at 250 g/L is 1.25 kg of sugar, which a balance in air shows 0.08 % short (OIML D 28).
answers(sweeten_spirit.make "aqueth sweeten_spirit --make '5 L' ${liqueur}"
    "^Add 1[.]249 kg of sucrose and 2[.]41[0-9] kg of water by the balance[.].*liqueur +5[.]000 L of 28[.]00 % vol with 250[.]0 g/L.*sugar adds +77[0-9].*alcoholometer +nothing: the liqueur is denser than water.*density meter +10[56][0-9].*refractometer +3[0-9].*wines to 14 % vol, at most 22 g/L, and\nbeers of about 5 % vol, to 66 g/L of malt extract[.]\nNone of them was as strong and as sweet as this liquid[.].*wrong by 1[.]2 % vol.*may not dissolve[.]\nCaution")
answers(sweeten_spirit.json "aqueth sweeten_spirit --make '5 L' ${liqueur} --json"
    "\"sugar_kg\": 1[.](25|2499999)[0-9]*,.*\"volume_L_20C\": [45][.][09]+[0-9]*,.*\"strength_percent_vol_20C\": (28[.]0|27[.]99999|28[.]00000)[0-9]*,.*\"checked_by_analyses\": false")
answers(sweeten_spirit.amount "aqueth sweeten_spirit --amount '1.868 L' ${liqueur}" "^Add 1[.]2[45][0-9] kg of sucrose and 2[.]4")
# Without sugar it is a dilution: dilute_spirit, which printed tables check, adds the same water.
answers(sweeten_spirit.no_sugar "aqueth sweeten_spirit --amount '2 L' --strength '80 %vol' --target '40 %vol' --sugar '0 g/L'"
    "^Add 0 g of sucrose and 2[.]071 kg of water")
answers(sweeten_spirit.no_sugar_by_dilution "aqueth dilute_spirit --amount '2 L' --strength '80 %vol' --temperature '20 C' --target '40 %vol'"
    "^Add 2[.]071 kg of water")
answers(sweeten_spirit.weak_is_checked "aqueth sweeten_spirit --make '1 L' --strength '20 %vol' --target '12 %vol' --sugar '0.8 g/100 mL' --kind 'invert sugar'"
    "of invert sugar.*with 8[.]0 g/L.*alcoholometer +[0-9].*At least one of them was as strong and as sweet as this liquid[.][^\n]*\n[^\n]*\nCaution")
# The beers have 66 g/L at 5 % vol and the wines 14 % vol with 1 g/L: neither checks a liquid that is both.
answers(sweeten_spirit.strong_and_sweet_is_not_checked "aqueth sweeten_spirit --make '1 L' --strength '75 %vol' --target '13 %vol' --sugar '60 g/L'"
    "None of them was as strong and as sweet as this liquid[.][^\n]*\n[^\n]*\nCaution")
answers(sweeten_spirit.strong_and_sweet_is_not_checked_in_json "aqueth sweeten_spirit --make '1 L' --strength '75 %vol' --target '13 %vol' --sugar '60 g/L' --json"
    "\"checked_by_analyses\": false")
answers(sweeten_spirit.beer_is_checked "aqueth sweeten_spirit --make '1 L' --strength '75 %vol' --target '4.8 %vol' --sugar '60 g/L' --json"
    "\"checked_by_analyses\": true")
answers(sweeten_spirit.may_not_dissolve "aqueth sweeten_spirit --amount '1 L' --strength '99.9 %vol' --target '90 %vol' --sugar '100 g/L'"
    "Spirit dissolves less sugar.*may not dissolve[.]\nCaution")
# By hand: 3.785412 L hold 946.35 g at 250 g/L, which are 33.38 oz of 28.349523 g; 2.0866 lb, of which a balance in air
# shows 2.085 (OIML D 28). The same with a target in proof or --us: JSON stays metric.
set(us_liqueur "--make '1 gal' --strength '150 proof' --target '56 proof' --sugar '250 g/L'")
answers(sweeten_spirit.us "aqueth sweeten_spirit ${us_liqueur}"
    "^Add 2[.]085 lb of sucrose and [0-9.]+ lb of water by the balance[.].*spirit +[0-9.]+ lb, [0-9.]+ US fl oz at 60 °F, 150[.]0 US proof\n +liqueur +1[.]0000 US gal of 56[.]0 US proof with 250[.]0 g/L [(]33[.]38 oz/US gal[)] at 68 °F\n +density +8[.]83[0-9]* lb/US gal in air at 68 °F.*At 60 °F instruments show.*proof hydrometer +nothing: .*refractometer +[0-9.]+ °Bx at 68 °F.*wrong by 2[.]4 US proof")
answers(sweeten_spirit.us_asked_for "aqueth sweeten_spirit --us --make '3.785411784 L' ${liqueur}"
    "^Add 2[.]085 lb of sucrose.*liqueur +1[.]0000 US gal of 55[.]9 US proof with 250[.]0 g/L [(]33[.]38 oz/US gal[)] at 68 °F")
answers(sweeten_spirit.us_json "aqueth sweeten_spirit ${us_liqueur} --json" "\"sugar_kg\": 0[.]94635[0-9]*,.*\"volume_L_20C\": 3[.]78541[0-9]*,")
# 27 CFR 30.32 counts 0.4 degrees of proof for 100 mg in 100 mL: 2 for 5 g/L.
answers(sweeten_spirit.us_obscuration "aqueth sweeten_spirit --make '1 gal' --strength '150 proof' --target '80 proof' --sugar '5 g/L'"
    "of 80[.]0 US proof.*proof hydrometer +7[78][.][0-9] US proof")
refuses(sweeten_spirit.too_strong "aqueth sweeten_spirit --make '5 L' --strength '40 %vol' --target '39 %vol' --sugar '250 g/L'"
    "--target '39 %vol': alcoholic strength by volume 39 % vol is outside 0 to 3[0-9][.][0-9]+ % vol [(]what this spirit reaches with this much sugar[)]")
refuses(sweeten_spirit.too_sweet "aqueth sweeten_spirit --make '5 L' --strength '75 %vol' --target '28 %vol' --sugar '2000 g/L'"
    "--sugar '2000 g/L': sugar concentration 2000 g/L is outside 0 to ")
refuses(sweeten_spirit.negative_sugar "aqueth sweeten_spirit --make '5 L' --strength '75 %vol' --target '28 %vol' --sugar '-1 g/L'"
    "--sugar '-1 g/L': sugar concentration -1 g/L is not a number of at least 0 g/L")
refuses(sweeten_spirit.unit "aqueth sweeten_spirit --make '5 L' --strength '75 %vol' --target '28 %vol' --sugar '250 kg'"
    "--sugar '250 kg': .*expected a sugar concentration")
refuses(sweeten_spirit.kind "aqueth sweeten_spirit --make '5 L' ${liqueur} --kind lactose" "--kind 'lactose': expected sucrose, glucose, fructose or 'invert sugar'")
refuses(sweeten_spirit.both "aqueth sweeten_spirit --make '5 L' --amount '1 L' ${liqueur}" "give either --amount or --make")
refuses(sweeten_spirit.neither "aqueth sweeten_spirit ${liqueur}" "give either --amount or --make")
refuses(sweeten_spirit.hot "aqueth sweeten_spirit --make '5 L' --strength '75 %vol' --temperature '50 C' --target '28 %vol' --sugar '250 g/L'"
    "--temperature '50 C': temperature 50 °C is outside")
refuses(sweeten_spirit.nothing "aqueth sweeten_spirit --make '5 L' --strength '75 %vol' --target '0 %vol' --sugar '250 g/L'"
    "--target '0 %vol': alcoholic strength by volume 0 % vol is outside")
