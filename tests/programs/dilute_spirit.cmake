# SPDX-License-Identifier: BSL-1.0
set(warm "--amount '1.85 L' --reading '81.5 %vol' --temperature '28 C'")
set(strong "--strength '80 %vol' --temperature '20 C'")
set(spirit "--amount '1.85 L' ${strong}")
set(to_43 "--target '43 %vol'")

answers(dilute_spirit.warm "aqueth dilute_spirit ${warm} ${to_43} --water-temperature '15 C'"
    [[^Add 1[.]600 kg of water by the balance, or 1[.]604 L of it at 15 °C[.]
.*product +3[.]180 kg, 3[.]376 L at 20 °C, 43[.]00 % vol
.*before mixing +3[.]440 L.*lost in mixing +64[.]34 mL [(]1[.]87 %[)]
.*comes to +27[.]4 °C, 3[.]39[45] L, if no heat is lost: let it cool.*
.*check reading +43[.]00 at 20 °C
.*44[.]95 at 25 °C
.*46[.]86 at 30 °C
.*check reading +45[.]8[0-9]* at 27[.][34][0-9]* °C
.*stated at 20 °C.*A fresh mixture is often warm, and full of bubbles[.][^
]*
Caution: spirit and its vapour catch fire[.][^
]*
$]])
answers(dilute_spirit.json "aqueth dilute_spirit ${warm} ${to_43} --json"
    [["water": {.*"mass_kg": 1[.]60212970.*"balance_indication_kg": 1[.]60044.*"contraction_percent": 1[.]8701982.*"check_readings"]])
# By hand: 0.75 kg at 77 °C and 0.072 kg of water at 99 °C come to 79 °C but for the heat of mixing; 90 % vol boils at
# 78.5 °C.
answers(dilute_spirit.near_the_boil
    "aqueth dilute_spirit --amount '1 L' --strength '96 %vol' --temperature '77 C' --target '90 %vol' --water-temperature '99 C'"
    "comes to +78[.][0-9] °C.*Caution: this mixture can boil up.*\nCaution: spirit and its vapour catch fire")
answers(dilute_spirit.near_the_boil_measured_warm
    "aqueth dilute_spirit --amount '1 L' --strength '96 %vol' --temperature '77 C' --target '90 %vol' --water-temperature '99 C' --mixture-temperature '20 C'"
    "Caution: this mixture can boil up.*\nCaution: spirit and its vapour catch fire")
answers(dilute_spirit.hot_water_boils_cold_spirit
    "aqueth dilute_spirit --amount '1 L' --strength '96 %vol' --temperature '20 C' --target '90 %vol' --water-temperature '99 C'"
    "Caution: this mixture can boil up")
answers(dilute_spirit.warm_water_scalds
    "aqueth dilute_spirit --amount '1 L' --strength '60 %vol' --temperature '20 C' --target '50 %vol' --water-temperature '60 C'"
    "Caution: hot liquid scalds")
# Weak spirit and water take more room together: R 22 at 20 °C, 961.2 g and 1990 g.
answers(dilute_spirit.gains_volume "aqueth dilute_spirit --amount '1 L' --strength '30 %vol' --temperature '20 C' --target '10 %vol'"
    "\n  gained in mixing  4[.]490 mL [(]0[.]15 %[)]\n")
answers(dilute_spirit.gains_little "aqueth dilute_spirit --amount '1 L' --strength '10 %vol' --temperature '20 C' --target '9.9 %vol'"
    "\n  gained in mixing  0[.]014[0-9]* mL [(]0[.]00 %[)]\n")
answers(dilute_spirit.nothing_is_no_negative_loss
    "aqueth dilute_spirit --amount '3.3 L' --strength '96 %vol' --temperature '18 C' --target '96 %vol'"
    "\n  lost in mixing    0 mL [(]0[.]00 %[)]\n")
# A cold spirit warms to the room.
answers(dilute_spirit.cold_spirit
    "aqueth dilute_spirit --amount '1 L' --strength '60 %vol' --temperature '5 C' --water-temperature '5 C' --steps '50 %vol' --target '40 %vol'"
    "  8[.]3 °C .*Let each step come to 20 °C.*comes to +10[.]7 °C, 1[.]510 L, if it takes up no heat: let it warm before you read it\n")
answers(dilute_spirit.fresh_mixture_in_json "aqueth dilute_spirit ${warm} ${to_43} --water-temperature '15 C' --json"
    "\"fresh_mixture\": {.*\"temperature_C\": 27[.]3")
answers(dilute_spirit.cold_parts
    "aqueth dilute_spirit --amount '1.85 L' --strength '80 %vol' --temperature '-5 C' ${to_43}"
    "product .*43[.]00 % vol.*comes to +not known: the heat of mixing is known from 0 °C to the boiling point")
# Spirits at 0 °C cool one another: the answer stands, at the temperature of the product.
answers(dilute_spirit.cools
    "aqueth dilute_spirit --amount '1 L' --strength '50 %vol' --temperature '0 C' --target '75 %vol' \
        --fortify-with '95 %vol' --fortify-temperature '0 C'"
    "product .*75[.]00 % vol.*comes to +not known: the heat of mixing is known from 0 °C to the boiling point")
# 1.600 kg in all, as in one addition; masses add, so the scale shows spirit and water: 1.580 kg and 3 times 533.5 g.
answers(dilute_spirit.portions "aqueth dilute_spirit ${warm} ${to_43} --portions 3"
    "^Add 1[.]600 kg of water by the balance.*\n  step +add +scale shows .*\n  1 +533[.]5 g +2[.]113 kg .*\n  2 +533[.]5 g +2[.]647 kg .*\n  3 +533[.]5 g +3[.]180 kg +[0-9.]+ °C +3[.]376 L +43[.]00\n")
answers(dilute_spirit.steps
    "aqueth dilute_spirit --amount '1.85 L' --strength '70 %vol' --temperature '24 C' --steps '60 %vol, 50 %vol' --target '43 %vol' --room '18 C'"
    "\n  1 .* 5[89][.][0-9]+\n  2 .* 4[89][.][0-9]+\n  3 .* 4[12][.][0-9]+\n.*Let each step come to 18 °C")
answers(dilute_spirit.steps_in_json "aqueth dilute_spirit ${warm} ${to_43} --portions 3 --json"
    "\"steps\": .*\"scale_shows_kg\": 3[.]1800.*\"just_mixed_C\": .*\"stem_shows\": (43[.]0|42[.]99).*\"room_C\": 20[.]0")
answers(dilute_spirit.make_in_steps
    "aqueth dilute_spirit --make '5 L' --strength '70 %vol' --temperature '20 C' --steps '60 %vol' --target '43 %vol'"
    "^Add [0-9.]+ kg of the spirit.*\n  2 .* 5[.]000 L +4[23][.][0-9]+\n")
set(folder "d=$(mktemp -d) && trap 'rm -r $d' EXIT && cd $d &&")
answers(dilute_spirit.ladder "${folder} aqueth dilute_spirit ${warm} ${to_43} --portions 3 --draw a.svg && grep -c 'A dilution in steps' a.svg"
    "  drawing +a[.]svg.*\n[1-9]\n$")
answers(dilute_spirit.ladder_in_png "${folder} aqueth dilute_spirit ${warm} ${to_43} --portions 3 --draw a.png >/dev/null && head -c 4 a.png | tail -c 3"
    "^PNG$")
# 2 is the status of bad input, 1 that of a gnuplot that cannot draw PNG.
add_case(dilute_spirit.no_png
    "${folder} printf '#!/bin/sh\necho \"unknown or ambiguous terminal type\" >&2; exit 1\n' >gnuplot; chmod +x gnuplot; PATH=$d:$PATH aqueth dilute_spirit ${warm} ${to_43} --portions 3 --draw a.png; status=$?; ls *.png 2>/dev/null; exit $status"
    1 "^$" "this gnuplot cannot draw PNG, .* name a file [.]svg")
refuses(dilute_spirit.steps_upwards "aqueth dilute_spirit ${spirit} ${to_43} --steps '60 %vol, 70 %vol'"
    "--steps '70 %vol': target strength 70 % vol at 20 °C is outside .* to 60 % vol")
refuses(dilute_spirit.steps_past_the_target "aqueth dilute_spirit ${spirit} ${to_43} --steps '40 %vol'"
    "--steps '40 %vol': a strength on the way cannot be below --target '43 %vol'")
refuses(dilute_spirit.empty_step "aqueth dilute_spirit ${spirit} ${to_43} --steps '60 %vol,,50 %vol'"
    "expected strengths with commas between")
refuses(dilute_spirit.steps_and_portions "aqueth dilute_spirit ${spirit} ${to_43} --steps '60 %vol' --portions 2"
    "give either --steps or --portions")
refuses(dilute_spirit.stray_room "aqueth dilute_spirit ${spirit} ${to_43} --room '18 C'" "--room needs --steps or --portions")
refuses(dilute_spirit.stray_drawing "aqueth dilute_spirit ${spirit} ${to_43} --draw a.svg" "--draw needs --steps or --portions")
refuses(dilute_spirit.frozen_room "aqueth dilute_spirit ${spirit} ${to_43} --portions 2 --room '-30 C'" "--room '-30 C'")
# 27 CFR 30.64: 1000 lb of 200 proof take 82.03 lb of water to become 190 proof.
answers(dilute_spirit.published_reduction
    "aqueth dilute_spirit --amount '1000 lb' --strength '200 proof' --temperature '60 F' --target '190 proof' --us"
    "^Add 82[.]0[0-9]* lb of water by the balance.*at 60 °F.*check reading +190[.]00 at 60 °F.*read on +an alcoholometer marked in US proof")
# Input in pounds or proof is answered in US units without --us. 27 CFR 30.64 gives 302.58 proof gallons for 1000 lb of
# 200 proof, and 11921.6 wine gallons, 22650.8 proof gallons for 81000 lb of 190 proof (factors of five digits).
answers(dilute_spirit.published_proof_gallons
    "aqueth dilute_spirit --amount '1000 lb' --strength '200 proof' --temperature '60 F' --target '190 proof'"
    "pure alcohol +302[.](5[7-9]|6[0-2]) proof gal")
answers(dilute_spirit.published_wine_gallons
    "aqueth dilute_spirit --amount '81000 lb' --strength '190 proof' --temperature '60 F' --target '180 proof'"
    "spirit +81000 lb, 1192[12][.][0-9] US gal at 60 °F, 190[.]0 US proof.*pure alcohol +2265[0-2][.][0-9] proof gal")
answers(dilute_spirit.metric_words
    "aqueth dilute_spirit --amount '1000 lb' --strength '200 proof' --temperature '60 F' --target '190 proof' --metric"
    "^Add 37[.][0-9]* kg of water by the balance.*at 20 °C.*read on +an alcoholometer marked in % vol at 20 °C")
# What a balance shows goes in and comes out: a kilogram of spirit by the balance is 1.0012 kg of mass.
answers(dilute_spirit.balance_in_and_out
    "aqueth dilute_spirit --amount '1 kg' --strength '50 %mass' --temperature '20 C' --target '40 %mass' --json"
    "\"spirit\": {[^}]*\"mass_kg\": 1[.]0011[0-9]*,[^}]*\"balance_indication_kg\": (1[.]0|0[.]99999999[0-9]*|1[.]00000000[0-9]*),")
answers(dilute_spirit.make
    "aqueth dilute_spirit --make '5 L' --strength '96 %vol' --temperature '20 C' ${to_43}"
    [[^Add 1[.]806 kg of the spirit by the balance, or 2[.]240 L of it at 20 °C[.]
Add 2[.]904 kg of water by the balance]])
answers(dilute_spirit.fortify
    "aqueth dilute_spirit --amount '5 L' --strength '36 %vol' --temperature '20 C' ${to_43} --fortify-with '96 %vol'"
    "^Add 511[.]3 g of the stronger spirit by the balance, or 634[.]1 mL of it at 20 °C")
answers(dilute_spirit.measured_mixture "aqueth dilute_spirit ${spirit} ${to_43} --mixture-temperature '27 C'"
    "at 27 °C, 43[.]00 % vol\n.*lost in mixing[^\n]*\n  check reading +45[.]72 at 27 °C\n.*fresh mixture is often warm.*Caution: spirit and its vapour catch fire")
answers(dilute_spirit.target_by_mass
    "aqueth dilute_spirit --amount '1 kg' --strength '50 %mass' --temperature '20 C' --target '25 %mass'"
    "^Add 1[.]000 kg of water by the balance")
answers(dilute_spirit.target_is_the_strength
    "aqueth dilute_spirit --amount '1 kg' --strength '50 %mass' --temperature '20 C' --target '50 %mass'"
    "^Add 0 g of water by the balance")

refuses(dilute_spirit.target_above "aqueth dilute_spirit ${spirit} --target '85 %vol'"
    "target strength 85 % vol at 20 °C is outside .* to 80 % vol.*water only weakens")
refuses(dilute_spirit.target_zero "aqueth dilute_spirit ${spirit} --target '0 %vol'"
    "--target '0 %vol': target strength 0 % vol at 20 °C is outside 0[.]0001[0-9]* to 80 % vol")
refuses(dilute_spirit.make_zero "aqueth dilute_spirit --make '5 L' ${strong} --target '0 %vol'"
    "--target '0 %vol': target strength 0 % vol at 20 °C is outside 0[.]0001[0-9]* to 80 % vol")
refuses(dilute_spirit.target_above_100 "aqueth dilute_spirit ${spirit} --target '145 %vol'"
    "--target '145 %vol': .*145 % vol at 20 °C is outside 0 to 100")
refuses(dilute_spirit.target_without_unit "aqueth dilute_spirit ${spirit} --target 43"
    "--target '43': the unit is missing; expected a strength: %vol")
refuses(dilute_spirit.volume_as_target "aqueth dilute_spirit ${spirit} --target '43 L'"
    "'L' is the unit of a volume; expected a strength")
refuses(dilute_spirit.target_left_out "aqueth dilute_spirit ${spirit}" "--target is required")
refuses(dilute_spirit.negative_amount
    "aqueth dilute_spirit --amount '-2 L' ${strong} ${to_43}" "--amount '-2 L': volume -2 L is outside")
refuses(dilute_spirit.no_amount
    "aqueth dilute_spirit ${strong} ${to_43}" "either --amount or --make")
refuses(dilute_spirit.zero_amount
    "aqueth dilute_spirit --amount '0 kg' ${strong} ${to_43}" "mass 0 kg is outside")
refuses(dilute_spirit.huge_amount
    "aqueth dilute_spirit --amount '1e300 L' ${strong} ${to_43}" "is outside 1e-06 to 1e[+]09 L")
refuses(dilute_spirit.temperature_as_amount
    "aqueth dilute_spirit --amount '2 C' ${strong} ${to_43}"
    "'C' is the unit of a temperature; expected a volume or a mass")
refuses(dilute_spirit.strength_as_amount
    "aqueth dilute_spirit --amount '2 %vol' ${strong} ${to_43}" "'%vol' is the unit of a strength")
refuses(dilute_spirit.unknown_unit
    "aqueth dilute_spirit --amount '2 bushels' ${strong} ${to_43}"
    "unknown unit 'bushels'; expected a volume or a mass: mL")
refuses(dilute_spirit.spaced_thousands
    "aqueth dilute_spirit --amount '1 000 L' ${strong} ${to_43}" "no thousands separator")
refuses(dilute_spirit.comma_thousands
    "aqueth dilute_spirit --amount '1,000 L' ${strong} ${to_43}" "'1,000' can mean 1.000 or 1000")
refuses(dilute_spirit.no_portions "aqueth dilute_spirit ${spirit} ${to_43} --portions 0"
    "whole number from 1 to 1000")
refuses(dilute_spirit.half_a_portion "aqueth dilute_spirit ${spirit} ${to_43} --portions 2.5"
    "whole number from 1 to 1000")
refuses(dilute_spirit.many_portions "aqueth dilute_spirit ${spirit} ${to_43} --portions 99999999999"
    "whole number")
refuses(dilute_spirit.ice "aqueth dilute_spirit ${spirit} ${to_43} --water-temperature '-5 C'"
    "--water-temperature '-5 C': temperature -5 °C is outside .*freezing point")
foreach(cold -1 -300)  # the range told is the one that holds for water
  refuses(dilute_spirit.cold_water.${cold} "aqueth dilute_spirit ${spirit} ${to_43} --water-temperature '${cold} C'"
      "--water-temperature '${cold} C': temperature ${cold} °C is outside 0 to 99[.]9")
endforeach()
refuses(dilute_spirit.hot_water "aqueth dilute_spirit ${spirit} ${to_43} --water-temperature '101 C'"
    "--water-temperature '101 C': temperature 101 °C is outside 0 to 99[.]9.*boiling point")
refuses(dilute_spirit.frozen_spirit
    "aqueth dilute_spirit --amount '1.85 L' --strength '20 %vol' --temperature '-18 C' --target '10 %vol'"
    "--temperature '-18 C': temperature -18 °C is outside .*freezing")
refuses(dilute_spirit.frozen_reading
    "aqueth dilute_spirit --amount '1.85 L' --reading '1 %vol' --temperature '-10 C' --target '0.5 %vol'"
    "--temperature '-10 C': temperature -10 °C is outside .*freezing")
refuses(dilute_spirit.frozen_stronger_spirit
    "aqueth dilute_spirit --amount '1.85 L' --strength '2 %vol' --temperature '20 C' --target '3 %vol' \
    --fortify-with '10 %vol' --fortify-temperature '-18 C'"
    "--fortify-temperature '-18 C': temperature -18 °C is outside .*freezing")
refuses(dilute_spirit.make_from_frozen
    "aqueth dilute_spirit --make '1.85 L' --strength '20 %vol' --temperature '-18 C' --target '10 %vol'"
    "--temperature '-18 C': temperature -18 °C is outside .*freezing")
refuses(dilute_spirit.make_frozen
    "aqueth dilute_spirit --make '1.85 L' ${strong} --target '5 %vol' --mixture-temperature '-5 C'"
    "--mixture-temperature '-5 C': temperature -5 °C is outside .*freezing")
refuses(dilute_spirit.frozen_mixture
    "aqueth dilute_spirit ${spirit} --target '5 %vol' --mixture-temperature '-10 C'"
    "--mixture-temperature '-10 C': temperature -10 °C is outside .*freezing")
refuses(dilute_spirit.hot_mixture "aqueth dilute_spirit ${spirit} ${to_43} --mixture-temperature '90 C'"
    "--mixture-temperature '90 C': temperature 90 °C is outside 0 to 8[0-9]")
refuses(dilute_spirit.mixture_with_frozen_water "aqueth dilute_spirit ${spirit} ${to_43} --mixture-temperature '-15 C'"
    "--mixture-temperature '-15 C': temperature -15 °C is outside 0 to [0-9.]+ °C .*freezing point")
refuses(dilute_spirit.fortified_downwards "aqueth dilute_spirit ${spirit} ${to_43} --fortify-with '96 %vol'"
    "--target '43 %vol': target strength 43 % vol at 20 °C is outside 80 to 96")
refuses(dilute_spirit.fortified_with_a_weaker
    "aqueth dilute_spirit --amount '1.85 L' --strength '40 %vol' --temperature '20 C' --target '50 %vol' \
    --fortify-with '30 %vol'"
    "--fortify-with '30 %vol': strength of the stronger spirit 30 % vol at 20 °C is outside 40 to 100 % vol")
refuses(dilute_spirit.fortified_to_the_stock
    "aqueth dilute_spirit ${spirit} --target '96 %vol' --fortify-with '96 %vol'"
    "--fortify-with '96 %vol': .*no finite amount")
refuses(dilute_spirit.stray_temperature "aqueth dilute_spirit ${spirit} ${to_43} --fortify-temperature '20 C'"
    "--fortify-with")
refuses(dilute_spirit.water_and_fortify
    "aqueth dilute_spirit ${spirit} --target '85 %vol' --fortify-with '96 %vol' --portions 2"
    "cannot be used with --fortify-with")
refuses(dilute_spirit.make_a_mass "aqueth dilute_spirit --make '5 kg' ${strong} ${to_43}"
    "'kg' is the unit of a mass; expected a volume")
refuses(dilute_spirit.make_and_amount "aqueth dilute_spirit ${spirit} --make '5 L' ${to_43}"
    "either --amount or --make")
refuses(dilute_spirit.make_and_fortify
    "aqueth dilute_spirit --make '5 L' ${strong} ${to_43} --fortify-with '96 %vol'" "needs --amount, not --make")
refuses(dilute_spirit.make_too_strong
    "aqueth dilute_spirit --make '5 L' --strength '40 %vol' --temperature '20 C' ${to_43}"
    "--target '43 %vol': target strength 43 % vol at 20 °C is outside .* to 40 % vol.*no higher")
refuses(dilute_spirit.reading_and_strength "aqueth dilute_spirit ${spirit} --reading '80 %vol' ${to_43}"
    "either --strength or --reading")
refuses(dilute_spirit.proof_on_volume_scale
    "aqueth dilute_spirit --amount '1.85 L' --reading '160 proof' --scale '%vol' --temperature '20 C' ${to_43}"
    "the scale is % vol at 20 °C")
