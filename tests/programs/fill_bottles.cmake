# SPDX-License-Identifier: BSL-1.0
set(spirit "--amount '3.37 L' --strength '43 %vol' --temperature '22 C'")

answers(fill_bottles.half_litres "aqueth fill_bottles ${spirit} --bottle '500 mL'"
    [[^Fill 500[.]7 mL at 22 °C, or 471[.]0 g, into each bottle: 6 bottles[.]
.*pure alcohol +215[.]0 mL at 20 °C per bottle
.*left over .* 365[.]5 mL at 22 °C.*room +the bottle must hold 508 mL to the cork: .*bursts]])
answers(fill_bottles.at_20
    "aqueth fill_bottles --amount '2.1 L' --strength '40 %vol' --temperature '20 C' --bottle '70 cl'"
    "^Fill 700[.]0 mL at 20 °C, or 662[.]9 g, into each bottle: 3 bottles[.]")
answers(fill_bottles.one
    "aqueth fill_bottles --amount '1 L' --strength '40 %vol' --temperature '20 C' --bottle '0.7L'"
    ": 1 bottle[.]")
answers(fill_bottles.json "aqueth fill_bottles ${spirit} --bottle '500 mL' --json"
    [["bottles": 6.0,.*"fill_volume_L": 0[.]50074576.*"fill_mass_kg": 0[.]4715282.*"fill_balance_indication_kg": 0[.]47099]])
answers(fill_bottles.us
    "aqueth fill_bottles --amount '2 gal' --strength '90 proof' --temperature '68 F' --bottle '750 mL' --us"
    "^Fill 25[.]4[45] US fl oz at 68 °F.*: 10 bottles.*label volume +750 mL at 60 °F.*from memory")
# 750 mL at 60 °F are 752.31 mL at 20 °C for 40 % vol (bottling_test.cpp).
answers(fill_bottles.us_label
    "aqueth fill_bottles --amount '10 L' --strength '40 %vol' --temperature '20 C' --bottle '750 mL' --filling us"
    "^Fill 752[.]3 mL at 20 °C.*label volume +750 mL at 60 °F\n +27 CFR 19[.]1 names no temperature")
answers(fill_bottles.us_label_json
    "aqueth fill_bottles --amount '10 L' --strength '40 %vol' --temperature '20 C' --bottle '750 mL' --filling us --json"
    [["fill_volume_L": 0[.]75231.*"label_volume_L": 0[.]75,.*"label_temperature_C": 15[.]555]])
answers(fill_bottles.european_label_in_us_units
    "aqueth fill_bottles --amount '2 gal' --strength '90 proof' --temperature '68 F' --bottle '750 mL' --us --filling eu"
    "^Fill 25[.]36 US fl oz at 68 °F.*750 mL at 20 °C")
refuses(fill_bottles.other_rule "aqueth fill_bottles ${spirit} --bottle '500 mL' --filling uk" "--filling 'uk': expected eu or us")

refuses(fill_bottles.more_than_there_is
    "aqueth fill_bottles --amount '0.5 L' --strength '40 %vol' --temperature '20 C' --bottle '0.7L'"
    "--bottle '0[.]7L': larger than the whole amount: --amount '0[.]5 L' is 500[.]0 mL at 20 °C")
refuses(fill_bottles.no_bottle "aqueth fill_bottles ${spirit}" "--bottle is required")
refuses(fill_bottles.empty_bottle "aqueth fill_bottles ${spirit} --bottle '0 mL'"
    "--bottle '0 mL': volume 0 L is outside")
refuses(fill_bottles.negative_bottle "aqueth fill_bottles ${spirit} --bottle '-700 mL'"
    "--bottle '-700 mL': volume -0[.]7 L is outside")
refuses(fill_bottles.bottle_without_unit "aqueth fill_bottles ${spirit} --bottle 700"
    "--bottle '700': the unit is missing; expected a volume: mL")
refuses(fill_bottles.bottle_by_weight "aqueth fill_bottles ${spirit} --bottle '700 g'"
    "'g' is the unit of a mass; expected a volume")
refuses(fill_bottles.bottle_in_degrees "aqueth fill_bottles ${spirit} --bottle '20 C'"
    "'C' is the unit of a temperature; expected a volume")
answers(fill_bottles.comma "aqueth fill_bottles ${spirit} --bottle '0,7 L'" "Fill ")
refuses(fill_bottles.strength_above_100
    "aqueth fill_bottles --amount '3 L' --strength '450 %vol' --temperature '22 C' --bottle '700 mL'"
    "450 % vol at 20 °C is outside 0 to 100")
refuses(fill_bottles.negative_strength
    "aqueth fill_bottles --amount '3 L' --strength '-45 %vol' --temperature '22 C' --bottle '700 mL'"
    "-45 % vol at 20 °C is outside 0 to 100")
refuses(fill_bottles.hot
    "aqueth fill_bottles --amount '3 L' --strength '45 %vol' --temperature '90 C' --bottle '700 mL'"
    "90 °C is outside -20 to 83[.]")
refuses(fill_bottles.frozen
    "aqueth fill_bottles --amount '3 L' --strength '8 %vol' --temperature '-12 C' --bottle '700 mL'"
    "--temperature '-12 C': temperature -12 °C is outside .*freezing")
refuses(fill_bottles.slightly_frozen
    "aqueth fill_bottles --amount '3 L' --strength '2 %vol' --temperature '-2 C' --bottle '700 mL'"
    "--temperature '-2 C': temperature -2 °C is outside .*freezing")
foreach(zero "-0 C" "1e-300 C" "31.9999999999 F" "273.15 K")  # as somebody would have written it
  answers(fill_bottles.freezing.${zero}
      "aqueth fill_bottles --amount '3 L' --strength '45 %vol' --temperature '${zero}' --bottle '500 mL'"
      "^Fill 492[.]8 mL at 0 °C, ")
endforeach()
refuses(fill_bottles.too_many "aqueth fill_bottles --amount '1e9 L' --strength '40 %vol' --temperature '20 C' --bottle '1e-6 L'"
    "--bottle '1e-6 L': label volume 1e-06 L .*no more than 1e12 bottles")

# A bottle that is filled hotter than 40 °C must hold the filling itself.
answers(fill_bottles.warm "aqueth fill_bottles --amount '10 L' --strength '43 %vol' --temperature '45 C' --bottle '700 mL'"
    "^Fill 714[.]0 mL at 45 °C, .*must hold 714 mL to the cork: its filling at 45 °C\n")
answers(fill_bottles.warm_json "aqueth fill_bottles --amount '10 L' --strength '43 %vol' --temperature '75 C' --bottle '100 mL' --json"
    "\"volume_at_40C_L\": 0[.]10[12].*\"bottle_to_the_cork_L\": 0[.]104[78].*\"temperature_of_that_C\": 75[.]")
# The room is rounded up: a bottle of 26.0 fl oz does not hold 26.04.
answers(fill_bottles.room_is_rounded_up "aqueth fill_bottles --amount '2 gal' --strength '86 proof' --temperature '120 F' --bottle '750 mL'"
    "^Fill 26[.]04 US fl oz at 120 °F.*must hold 26[.]1 US fl oz to the cork: its filling at 120 °F")
