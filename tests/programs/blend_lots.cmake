# SPDX-License-Identifier: BSL-1.0
set(two "--lot '3.2 L, 62 %vol, 18 C' --lot '4 L, 41.5 %vol, 18 C'")

answers(blend_lots.plain "aqueth blend_lots ${two}"
    [[^Lot 1: take 2[.]896 kg by the balance.*100[.]0 %.*
Lot 2: take 3[.]784 kg.*
  product +6[.]680 kg, 7[.]201 L at 20 °C, 50[.]69 % vol
.*before mixing +7[.]211 L.*comes to +18[.][0-2] °C, 7[.]19 *[0-9]* *L, if it takes up no heat.*
.*fresh mixture is often warm.*Caution: spirit and its vapour catch fire]])
answers(blend_lots.most "aqueth blend_lots ${two} --target '50 %vol'"
    "^Lot 1: take 2[.]525 kg.*Lot 2: take 3[.]784 kg.*, 50[.]00 % vol")
answers(blend_lots.volume
    "aqueth blend_lots ${two} --lot '0.5 kg, 55 %vol, 20 C, at least 0.5 kg' --target '50 %vol' --volume '5 L'"
    "Lot 3: take 500[.]0 g by the balance, .*100[.]0 %.*product .*5[.]000 L at 20 °C, 50[.]00 % vol")
answers(blend_lots.one "aqueth blend_lots --lot '1 L,40%vol,20C'"
    "^Lot 1: take 947[.]0 g.*lost in mixing +0 mL [(]0[.]00 %[)]\n")
answers(blend_lots.csv "aqueth blend_lots ${two} --csv"
    [[^lot,mass_kg,balance_indication_kg,volume_L,temperature_C,strength_percent_vol_20C,share_of_lot
1,2[.]8998864[0-9]*,2[.]89648[0-9]*,3[.]2,18,62,1
2,3[.]787813[0-9]*,3[.]78358[0-9]*,4,18,41[.]5,1
$]])
answers(blend_lots.json "aqueth blend_lots ${two} --json"
    [["lots": .*"share_of_lot": 1.0.*"product": .*"contraction_L": 0[.]0109]])
# 27 CFR 30.67: 1000 gal of 190 proof measured at 76 F are 991 gal at 60 F.
answers(blend_lots.published_volume
    "aqueth blend_lots --lot '1000 gal, 190 proof, 76 F' --mixture-temperature '60 F' --us"
    "product .* lb, 99(0[.][5-9]|1[.][0-4])[0-9]* US gal at 60 °F")
# 27 CFR 30.51: 4308.48 gal of 86.8 proof measured at 72 F are 3721.1 proof gallons
# (with a factor rounded to three decimals).
answers(blend_lots.published_proof_gallons "aqueth blend_lots --lot '4308.48 gal, 86.8 proof, 72 F' --us"
    "pure alcohol +37(19|2[0-3])[.0-9]* proof gal")

# 27 CFR 30.64: 81000 lb of 190 proof, by the printed factors 0.14718 and 0.27964 a pound, are 11921.6 wine gallons and
# 22650.8 proof gallons; half a unit of the factors' fifth digit is 0.4 gallons. Nothing but the lot is in US units.
answers(blend_lots.published_weight "aqueth blend_lots --lot '81000 lb, 190 proof, 60 F'"
    "product +81000 lb, 1192(1[.][2-9]|2[.][01]) *[0-9]* *US gal at 60 °F, 190[.]0 US proof.*pure alcohol +2265[0-2][.][0-9] proof gal")

refuses(blend_lots.empty_lot "aqueth blend_lots --lot ''" "--lot number 1 '': expected amount, strength, temperature")
refuses(blend_lots.short_lot "aqueth blend_lots --lot '3.2 L, 62 %vol'"
    "expected amount, strength, temperature")
refuses(blend_lots.long_lot "aqueth blend_lots --lot '3.2 L, 62 %vol, 18 C, at least 1 L, please'"
    "expected amount, strength, temperature")
answers(blend_lots.decimal_comma "a=$(aqueth blend_lots --lot '3,2 L, 62,5 %vol, 18 C' --lot '4 L,40 %vol,18 C'); \
    [ \"$a\" = \"$(aqueth blend_lots --lot '3.2 L, 62.5 %vol, 18 C' --lot '4 L, 40 %vol, 18 C')\" ] && echo same" "^same\n$")
refuses(blend_lots.two_readings "aqueth blend_lots --lot '1,200 L, 62 %vol, 18 C'" "'1,200' can mean 1.200 or 1200")
refuses(blend_lots.wrong_order "aqueth blend_lots --lot '3.2 L, 18 C, 62 %vol'"
    "'C' is the unit of a temperature; expected a strength")
refuses(blend_lots.negative "aqueth blend_lots --lot '-3.2 L, 62 %vol, 18 C'" "volume -3.2 L is outside")
refuses(blend_lots.frozen "aqueth blend_lots --lot '3.2 L, 5 %vol, -10 C'"
    "--lot number 1 '-10 C': temperature -10 °C is outside .*freezing")
refuses(blend_lots.frozen_third "aqueth blend_lots ${two} --lot '1 L, 0 %vol, -1 C'"
    "--lot number 3 '-1 C': temperature -1 °C is outside 0 to 99[.]9[0-9]* °C .*freezing")
refuses(blend_lots.frozen_in_the_mixture
    "aqueth blend_lots ${two} --lot '1 L, 1 %vol, 18 C' --mixture-temperature '-15 C'"
    "--mixture-temperature '-15 C': temperature -15 °C is outside .*freezing")
refuses(blend_lots.unknown_limit
    "aqueth blend_lots ${two} --lot '1 L, 50 %vol, 18 C, at most 1 L' --target '50 %vol'"
    "'at least' and an amount")
refuses(blend_lots.limit_above_the_lot
    "aqueth blend_lots --lot '3.2 L, 62 %vol, 18 C, at least 4 L' --target '62 %vol'"
    "^aqueth blend_lots: --lot number 1 'at least 4 L': the lot has 3[.]2 L\n$")
refuses(blend_lots.limit_above_the_second_lot
    "aqueth blend_lots --lot '3.2 L, 62 %vol, 18 C' --lot '4 L, 41.5 %vol, 18 C, at least 5 L' --target '50 %vol'"
    "--lot number 2 'at least 5 L': the lot has 4 L\n")
answers(blend_lots.limit_of_the_whole_lot "aqueth blend_lots --lot '3.3 L, 62 %vol, 18 C, at least 3300 mL' --target '62 %vol'"
    "^Lot 1: take .*100[.]0 %")
refuses(blend_lots.limit_without_target "aqueth blend_lots --lot '3.2 L, 62 %vol, 18 C, at least 1 L'"
    "needs --target")
# The lots alone are too strong, or too little: water is offered. 3 L of 62 % vol and 4 L of 41.5 % vol hold
# 3.2 * 0.62 + 4 * 0.415 = 3.64 L of alcohol at 18 °C, which makes 9.1 L of 40 % vol.
answers(blend_lots.too_strong "aqueth blend_lots ${two} --target '40 %vol'"
    "^The lots alone are too strong[.] With water the blend has 40[.]00 % vol:\nLot 1: .*100[.]0 %.*Lot 2: .*100[.]0 %.*\nWater: add [0-9.]+ kg by the balance, .*product .* 9[.]1[0-9]+ L at 20 °C, 40[.]00 % vol")
answers(blend_lots.too_little "aqueth blend_lots ${two} --target '45 %vol' --volume '7.5 L'"
    "^The lots alone are too little[.].*\nWater: add .*product .* 7[.]500 L at 20 °C, 45[.]00 % vol")
answers(blend_lots.water_in_json "aqueth blend_lots ${two} --target '40 %vol' --water-temperature '12 C' --json"
    "\"water\": {.*\"temperature_C\": 12[.]0")
answers(blend_lots.no_water_in_json "aqueth blend_lots ${two} --target '50 %vol' --json" "\"water\": null")
refuses(blend_lots.ice "aqueth blend_lots ${two} --target '40 %vol' --water-temperature '-5 C'"
    "--water-temperature '-5 C': temperature -5 °C is outside")
refuses(blend_lots.out_of_reach "aqueth blend_lots ${two} --target '70 %vol'"
    "--target '70 %vol': target strength 70 % vol at 20 °C is outside 0[.]0001[0-9]* to 62 % vol at 20 °C [(]what the lots and water reach")
# By hand: 3.64 L of alcohol at 18 °C make 12.1 L of 30 % vol.
refuses(blend_lots.too_much_with_water "aqueth blend_lots ${two} --target '30 %vol' --volume '50 L'"
    "--volume '50 L': volume wanted 50 L is outside 0 to 12[.]1[0-9]* L [(]what the lots and water reach")
answers(blend_lots.too_strong_for_a_volume "aqueth blend_lots ${two} --target '30 %vol' --volume '10 L'"
    "^The lots alone are too strong[.] With water the blend has 30[.]00 % vol:\n")
# 1 L of 62 % vol holds 0.62 L of alcohol, which makes 2.07 L of 30 % vol.
refuses(blend_lots.least_volume_with_water "aqueth blend_lots --lot '3 L, 62 %vol, 20 C, at least 1 L' --target '30 %vol' --volume '1 L'"
    "--volume '1 L': volume wanted 1 L is outside 2[.]06[0-9]* to 6[.]2[0-9]* L ")
# 60 % vol is stronger than the lots together: water does not stretch them. 3.2 L of 62 % vol take 0.3 L of the other.
refuses(blend_lots.too_much_of_a_strong_blend "aqueth blend_lots ${two} --target '60 %vol' --volume '50 L'"
    "--volume '50 L': volume wanted 50 L is outside 0 to 3[.]5[0-9]* L ")
refuses(blend_lots.too_strong_at_this_volume "aqueth blend_lots ${two} --target '60 %vol' --volume '5 L'"
    "--target '60 %vol': target strength 60 % vol at 20 °C is outside 0[.]0001[0-9]* to 5[4-5][.][0-9]* % vol .*what the lots and water reach at this volume")
answers(blend_lots.too_hot "aqueth blend_lots --lot '1 L, 96 %vol, 78 C' --lot '0.5 L, 0 %vol, 99 C'"
    "comes to +its boiling point: let the parts cool.*Caution: this mixture can boil up.*\nCaution: spirit and its vapour catch fire")
answers(blend_lots.water_beside_limits
    "aqueth blend_lots --lot '3.2 L, 62 %vol, 18 C, at least 3.2 L' --lot '4 L, 41.5 %vol, 18 C' --target '45 %vol'"
    "^The lots alone are too strong[.] .*\nLot 1: .*100[.]0 %.*\nWater: add .* 45[.]00 % vol")
refuses(blend_lots.too_much "aqueth blend_lots ${two} --target '50 %vol' --volume '50 L'"
    "--volume '50 L': volume wanted 50 L is outside 0 to 7[.]")
refuses(blend_lots.mass_as_volume "aqueth blend_lots ${two} --target '50 %vol' --volume '5 kg'"
    "expected a volume")
refuses(blend_lots.volume_without_target "aqueth blend_lots ${two} --volume '2 L'"
    "--volume needs --target")
refuses(blend_lots.two_forms "aqueth blend_lots ${two} --json --csv" "either --json or --csv")
foreach(form json csv)  # which are metric
  refuses(blend_lots.us_in_${form} "aqueth blend_lots ${two} --us --${form}"
      "--us cannot be used with --json or --csv")
endforeach()
# Semicolons as well, as --cuts and --run have them.
answers(blend_lots.semicolons "aqueth blend_lots --lot '3 L; 60 %vol; 20 C' --lot '3 L; 40 %vol; 20 C; at least 1 L' --target '50 %vol'"
    "^Lot 1: take .*60[.]00 % vol.*Lot 2: take .*40[.]00 % vol")
refuses(blend_lots.unquoted "aqueth blend_lots --lot 3 L 40 %vol" "'L' is not expected: put quotes round '3 L'")
