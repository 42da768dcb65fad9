# SPDX-License-Identifier: BSL-1.0
set(fell "--volume '25 L' --original '1.085 sg' --final '0.992 sg'")

# Balling's factors: 0.4361 for 20.47 degrees Plato (table of 1865, between its rows 20 and 21), times the fall of 22.55,
# times 0.99022/0.78924 (density of the wash, density of ethanol): 12.3 % vol. Excise Notice 226: 93 x 0.135 = 12.56.
answers(judge_wash.strength "aqueth judge_wash ${fell}"
    [[^The wash holds 12[.]4 % vol: 3[.]10[0-9] L of pure alcohol in 25[.]00 L[.]
.*before +20[.]47 °P, gravity 1[.]0850 at 20 °C
 +now +-2[.]09 °P apparent.*boils at +90[.]9[0-9] °C under 101[.]3.*Balling's factors 12[.]3[0-9] % vol
 +fall in gravity +12[.]5[56] % vol.*carbon dioxide is heavy]])
answers(judge_wash.json "aqueth judge_wash ${fell} --json"
    "\"strength_percent_vol_20C\": 12[.]41.*\"original_extract_P\": 20[.]46.*\"pressure_kPa\": 101[.]325")
answers(judge_wash.plato "aqueth judge_wash --volume '20 L' --original '12 plato' --final '2 plato'"
    "original|before +12[.]00 °P.*Balling's factors 5[.]3")
answers(judge_wash.warm "aqueth judge_wash --volume '25 L' --original '1.085 sg' --final '0.990 sg' --final-temperature '28 C'"
    "now +-2[.]0[0-9] °P apparent, gravity 0[.]992[0-9] at 20 °C")
# Read cold a wash shows more than its original gravity, read hot less than anything fermented at 20 °C: neither is wrong.
answers(judge_wash.cold_reading_above_the_original
    "aqueth judge_wash --volume '25 L' --original '1.085 sg' --final '1.0855 sg' --final-temperature '10 C'"
    "^The wash holds 0[.]2 % vol.*now +20[.]06 °P apparent, gravity 1[.]0832 at 20 °C")
answers(judge_wash.hot_reading_below_the_driest
    "aqueth judge_wash --volume '25 L' --original '1.085 sg' --final '0.980 sg' --final-temperature '35 C'"
    "^The wash holds 13[.]4 % vol.*now +-3[.]99 °P apparent, gravity 0[.]9848 at 20 °C")
answers(judge_wash.both_read_cold
    "aqueth judge_wash --volume '25 L' --original '1.05 sg' --original-temperature '12 C' --final '1.05 sg' --final-temperature '12 C'"
    "^The wash holds 0[.]0 % vol.*before +12[.]02 °P, gravity 1[.]0484")
answers(judge_wash.strongest_and_hot
    "aqueth judge_wash --volume '25 L' --original '30 plato' --final '0.966 sg' --final-temperature '40 C'"
    "^The wash holds 21[.]1 % vol.*gravity 0[.]9746 at 20 °C.*usual weights +does not apply [(]")
answers(judge_wash.nothing_fermented "aqueth judge_wash --volume '25 L' --original '1.085 sg' --final '1.085 sg'"
    "^The wash holds 0[.]0 % vol: 0 ")
answers(judge_wash.a_way_does_not_apply "aqueth judge_wash --volume '25 L' --original '1.02 sg' --final '1.00 sg'"
    "Balling's factors does not apply [(].*5[.]09[0-9]* °P is outside 6 to 30")
# 12.41 and 12.54 % vol at 20 °C: to 60 °F ethanol shrinks by 0.48 % (OIML R 22), the wash by 0.1 %.
answers(judge_wash.us "aqueth judge_wash ${fell} --us" "^The wash holds 12[.]4 % vol at 60 °F: 1[.]63[0-9] proof gal in 6[.]59[0-9]+ US gal[.].*boils at +195[.]6.*balance +12[.]37 % vol.*weights +12[.]50 % vol")

# J. L. Gay-Lussac (1815): 0.53834 g from 1 g of sucrose. 25 L of 11 % vol hold 2.1704 kg of ethanol: 4.0316 kg,
# which a balance in air shows as 4.0316 (1 - 1.2/1587)/(1 - 1.2/8000) = 4.0292 kg.
answers(judge_wash.sugar "aqueth judge_wash --volume '25 L' --wanted '11 %vol'"
    "^Add 4[.]48[0-9] kg of sucrose and 22[.]61 kg of water[.]\n.*minimum +4[.]029 kg in theory.*yield assumed +89[.]9 %")
answers(judge_wash.glucose "aqueth judge_wash --volume '25 L' --wanted '11 %vol' --sugar glucose --yield '100 %' --json"
    "\"sugar_kg\": 4[.]24[34].*\"share_of_stoichiometric_yield\": 1[.]0")

answers(judge_wash.glucose_is_anhydrous "aqueth judge_wash --volume '25 L' --wanted '11 %vol' --sugar glucose"
    "^Add 4[.]718 kg of anhydrous glucose and 22[.]39 kg of water[.].*sold as dextrose .*'glucose monohydrate'")
# 198.17/180.16 of the anhydrous one; both make the same 27.139 kg with their water, in true mass.
answers(judge_wash.monohydrate "aqueth judge_wash --volume '25 L' --wanted '11 %vol' --sugar 'glucose monohydrate'"
    "^Add 5[.]190 kg of glucose monohydrate and 21[.]92 kg of water[.].*in the crystals +472[.][0-9]+ g of water.*before +17[.]40 °P")

# A refractometer shows alcohol as sugar: read as a saccharometer's, 20 -> 8 would be 6.8 % vol.
foreach(unit brix Brix bx)
  answers(judge_wash.refractometer.${unit} "aqueth judge_wash --volume '25 L' --original '20 plato' --final '8 ${unit}'"
      "^The wash holds 10[.]7 % vol.*before +20[.]00 °P")
endforeach()
# The wash of 1.085 to 0.992 shows 6.5 (read_refractometer): the same strength within 0.1.
answers(judge_wash.same_by_refractometer "aqueth judge_wash --volume '25 L' --original '1.085 sg' --final '6.5 brix'" "^The wash holds 12[.]4 % vol.*gravity 0[.]99(19|20)")
answers(judge_wash.original_brix "aqueth judge_wash --volume '25 L' --original '20 brix' --final '2 plato'" "before +20[.]00 °P")
refuses(judge_wash.warm_refractometer "aqueth judge_wash --volume '25 L' --original '20 plato' --final '8 brix' --final-temperature '28 C'"
    "--final-temperature '28 C': is for hydrometers: a refractometer is read at 20 C")
refuses(judge_wash.warm_original_brix "aqueth judge_wash --volume '25 L' --original '20 brix' --original-temperature '28 C' --final '8 brix'"
    "--original-temperature '28 C': is for hydrometers")
refuses(judge_wash.brix_above_original "aqueth judge_wash --volume '25 L' --original '20 plato' --final '21 brix'"
    "--final '21 brix': refractometer reading 21 °Bx is outside .*from all extract fermented to none")
refuses(judge_wash.no_brix "aqueth judge_wash --volume '25 L' --original '20 plato' --final 'many brix'" "--final 'many brix': ")
refuses(judge_wash.sugar_without_wanted "aqueth judge_wash ${fell} --sugar lead" "--sugar 'lead': needs --wanted")
refuses(judge_wash.yield_without_wanted "aqueth judge_wash ${fell} --yield much" "--yield 'much': needs --wanted")
foreach(option --original-temperature --final-temperature --pressure --altitude)
  refuses(judge_wash.wanted_with${option} "aqueth judge_wash --volume '25 L' --wanted '11 %vol' ${option} rubbish"
      "${option} 'rubbish': needs .*, not --wanted")
endforeach()
refuses(judge_wash.too_cold_to_be_true
    "aqueth judge_wash --volume '25 L' --original '1.085 sg' --final '1.0895 sg' --final-temperature '10 C'"
    "--final '1[.]0895 sg': reading 1[.]0895 is outside 0[.]984[0-9]* to 1[.]0873[0-9]* [(]at that temperature")
refuses(judge_wash.too_hot_to_be_true
    "aqueth judge_wash --volume '25 L' --original '1.085 sg' --final '0.970 sg' --final-temperature '35 C'"
    "--final '0[.]970 sg': reading 0[.]97 is outside 0[.]97[0-9]* to 1[.]0")
refuses(judge_wash.water "aqueth judge_wash --volume '25 L' --original '1.0 sg' --final '1.0 sg'"
    "--original '1[.]0 sg': original extract 0 °P is outside 0[.]01 to 30 °P")
refuses(judge_wash.half "aqueth judge_wash --volume '25 L' --original '1.085 sg'" "give both --original and --final")
refuses(judge_wash.both_questions "aqueth judge_wash ${fell} --wanted '10 %vol'" "--wanted cannot be used with")
refuses(judge_wash.rises "aqueth judge_wash --volume '25 L' --original '1.085 sg' --final '1.09 sg'"
    "--final '1[.]09 sg': reading 1[.]09 is outside 0[.]98[0-9]* to 1[.]085")
refuses(judge_wash.too_dry "aqueth judge_wash --volume '25 L' --original '1.040 sg' --final '0.97 sg'"
    "--final '0[.]97 sg': reading 0[.]97 is outside 0[.]99")
refuses(judge_wash.syrup "aqueth judge_wash --volume '25 L' --original '1.2 sg' --final '1.0 sg'"
    "--original '1[.]2 sg': original extract 44[.]0[0-9]* °P is outside 0[.]01 to 30 °P [(]Balling[)]")
refuses(judge_wash.no_gravity "aqueth judge_wash --volume '25 L' --original '85 kg' --final '0.992 sg'"
    "'kg' is the unit of a mass; expected a gravity")
refuses(judge_wash.hot "aqueth judge_wash ${fell} --final-temperature '90 C'" "--final-temperature '90 C': temperature 90 °C is outside")
refuses(judge_wash.too_strong "aqueth judge_wash --volume '25 L' --wanted '25 %vol'" "25 % vol at 20 °C is outside .* 20 .*the highest strength that yeast survives, common practice")
refuses(judge_wash.nothing_wanted "aqueth judge_wash --volume '25 L' --wanted '0 %vol'"
    "--wanted '0 %vol': strength 0 % vol at 20 °C is outside 0[.]01 to 20 .*[(]up to the highest strength that yeast survives")
refuses(judge_wash.wanted_begins_as_syrup
    "aqueth judge_wash --volume '25 L' --wanted '20 %vol' --sugar 'glucose monohydrate' --yield 30%"
    "--wanted '20 %vol': strength 20 % vol at 20 °C is outside 0[.]01 to [0-9]+[.][0-9]+ .*at 30 % of the stoichiometric yield; more would begin above 30 °P")
foreach(option original final)
  refuses(judge_wash.hot_${option} "aqueth judge_wash ${fell} --${option}-temperature 81C"
      "--${option}-temperature '81C': temperature 81 °C is outside 0 to 80 °C [(]water liquid, ICUMSA")
endforeach()
refuses(judge_wash.other_sugar "aqueth judge_wash --volume '25 L' --wanted '10 %vol' --sugar lactose" "--sugar 'lactose': expected sucrose, glucose [(]anhydrous[)], glucose monohydrate [(]sold as dextrose[)] or fructose")
refuses(judge_wash.poor_yield "aqueth judge_wash --volume '25 L' --wanted '10 %vol' --yield '20 %'"
    "--yield '20 %': yield 20 % is outside 30 to 100 %")
refuses(judge_wash.no_volume "aqueth judge_wash --volume '0 L' --wanted '10 %vol'" "--volume '0 L': volume 0 L is outside")
refuses(judge_wash.two_airs "aqueth judge_wash ${fell} --pressure '1 bar' --altitude '10 m'" "either --pressure or --altitude")
refuses(judge_wash.thin_air "aqueth judge_wash ${fell} --pressure '3 kPa'" "--pressure '3 kPa': pressure 3 kPa is outside 5 to 170")
answers(judge_wash.us_gravities "aqueth judge_wash --us --volume '6.6 gal' --original '1.085 sg' --final '0.992 sg'"
    "gravity 1[.]0850 at 68 °F.*gravity 0[.]9920 at 68 °F")
# OIML D 28: a balance in air shows water and wash 0.1 % short.
answers(judge_wash.on_the_balance "aqueth judge_wash --volume '25 L' --original '1.085 sg' --final '0.992 sg' --json"
    "\"mass_kg\": 24[.]75[0-9]*,\n  \"balance_indication_kg\": 24[.]7[0-9]*,")
