# SPDX-License-Identifier: BSL-1.0
# A zero has no sign, however it was written.
answers(convert_strength.negative_zero "aqueth convert_strength --strength '-0 %vol'" "^0 %vol is 0[.]00 % vol at 20 °C, 0[.]00 % mass, 0[.]0 US proof\n$")
answers(convert_strength.negative_zero_json "for zero in -0 -0/1 '-0 0/2'; do aqueth convert_strength --strength \"$zero %vol\" --json | grep -c -- ' -0'; done; true" "^0\n0\n0\n$")
answers(convert_strength.negative_zero_csv "aqueth convert_strength --strength '-0 %vol' --csv | grep -c -- ',-0'; true" "^0\n$")
answers(convert_strength.negative_zero_in_rows "printf 'strength [%%vol]\\n-0\\n' | aqueth many convert_strength --rows - --results us_proof,percent_mass | tail -n 1" "^-0,0,0,\n$")
answers(convert_strength.forty "aqueth convert_strength --strength '40 %vol' --json"
    [["percent_vol_20C": (40[.]0|39[.]99999999|40[.]00000000)[0-9]*,
  "percent_vol_15C": 39[.]922713[0-9]*,
.*  "us_proof": 79[.]862831[0-9]*,
  "percent_mass": 33[.]299642[0-9]*,
  "mole_fraction": 0[.]16334169[0-9]*,
  "g_per_100mL_20C": 31[.]569564[0-9]*,
.*  "density_kg_m3": 948[.]045152[0-9]*,
  "density_in_air_kg_m3": 946[.]987200[0-9]*,
.*  "sg_20C_vacuo": 0[.]94975354[0-9]*,
  "sg_20C_air": 0[.]94969306]])
# OIML table IVa; Canadian Alcoholometric Laboratory Table, 1996: absolute ethanol at 20 degrees Celsius.
answers(convert_strength.published_ethanol "aqueth convert_strength --strength '100 %vol' --all"
    "density in vacuo +789[.]24 kg/m3.*density in air +788[.]16 kg/m3")
# A. J. Cooley, Cyclopaedia of Practical Receipts, 6th edition, 1880: 40.63 % vol at 60 F are 33.917 % mass.
answers(convert_strength.published_mass "aqueth convert_strength --strength '40.63 %vol at 60 F'"
    "^40[.]63 %vol at 60 F is .* 33[.]92 % mass, .*US proof\n$")
# USP 29 (2006), Alcoholometric Table: 30 % vol at 15.56 degrees Celsius are 24.67 % mass.
answers(convert_strength.published_usp "aqueth convert_strength --strength '30 %vol at 15.56 C'"
     "is .* 24[.]67 % mass")
answers(convert_strength.proof "aqueth convert_strength --strength '90 proof' --csv"
    "percent_vol_60F,45,% vol at 60 °F")
answers(convert_strength.moles "aqueth convert_strength --strength '0.16334169299966 mol/mol' --csv"
    "percent_vol_20C,40,")
answers(convert_strength.density "aqueth convert_strength --strength '948.045152878287 kg/m3' --csv"
    "percent_vol_20C,40,")
answers(convert_strength.density_elsewhere
    "aqueth convert_strength --strength '951.328584461326 kg/m3 at 15 C' --csv"
    "percent_vol_20C,40,")
answers(convert_strength.gravity "aqueth convert_strength --strength '0.949753541055331 sg' --csv"
    "percent_vol_20C,40,")
answers(convert_strength.gravity_in_air
    "aqueth convert_strength --strength '0.949693063947661 sg 20/20 C in air' --csv"
    "percent_vol_20C,40,")
answers(convert_strength.concentration "aqueth convert_strength --strength '31.5695649319966 g/100 mL' --csv"
    "percent_vol_20C,40,")
answers(convert_strength.litres_per_hectolitre "aqueth convert_strength --strength '40 L/hL' --csv"
    "percent_vol_20C,40,")
answers(convert_strength.other_temperature "aqueth convert_strength --strength '40 %vol' --temperature '59 F' --all"
    "density in vacuo +951[.]33 kg/m3 at 15 °C")
answers(convert_strength.water "aqueth convert_strength --strength '0 %mass' --csv"
    "percent_vol_20C,0,.*sg_60F_air,1,")

# The Act of 1818: proof spirit is 57.1 % vol at 60 F; Simmonds, 1919: absolute alcohol is 175.35 % of it (R 22: 175.30).
answers(convert_strength.published_british_proof "aqueth convert_strength --degrees '100 UK proof' --csv" "percent_vol_60F,57[.]0[4-9]")
answers(convert_strength.published_over_proof "aqueth convert_strength --strength '100 %vol' --all" "British proof .Sikes. +175[.]3 degrees")
answers(convert_strength.baume_there_and_back
    [=[v=$(aqueth convert_strength --strength '40 %vol' --csv | sed -n 's/^baume_lighter_60F,\([0-9.]*\),.*/\1/p')
aqueth convert_strength --degrees "$v Baume"]=] "is 40[.]00 % vol")
# Must: 1000 (1.0825 - 1) = 82.5 Oechsle; 17*(4.54 + 0.022*17) = 83.538 Oechsle are 17 KMW; 145 - 145/1.0825 = 11.05 Baume.
answers(convert_strength.must "aqueth convert_strength --must '1.0825 sg'" "Oechsle +82[.]5 degrees.*Baumé, modulus 145 +11[.]05 degrees")
answers(convert_strength.kmw "aqueth convert_strength --must '17 KMW'" "^17 KMW is a gravity of 1[.]0835, 20[.]1[0-9] °P.*Oechsle +83[.]5")
answers(convert_strength.plato "aqueth convert_strength --must '20 Plato' --json" "\"kmw\": 16[.]8.*\"plato\": (20[.]0|19[.]99999)")
refuses(convert_strength.two_questions "aqueth convert_strength --strength '40 %vol' --must '17 KMW'" "give one of --strength, --degrees and --must")
refuses(convert_strength.beyond_british_proof "aqueth convert_strength --degrees '180 UK proof'" "--degrees '180 UK proof': degrees of the scale 180 is outside 0 to 175[.]")
refuses(convert_strength.unknown_degrees "aqueth convert_strength --degrees '22 Cartier'" "expected degrees of UK proof, or Baume")
refuses(convert_strength.must_of_spirit "aqueth convert_strength --must '0.95 sg'" "--must '0.95 sg': specific gravity 0[.]95 is outside 1 to 1[.]2168")
refuses(convert_strength.must_unit "aqueth convert_strength --must '17 %vol'" "expected degrees of Oechsle, KMW")
refuses(convert_strength.must_nan "aqueth convert_strength --must 'nan KMW'" "not a number")

refuses(convert_strength.no_unit "aqueth convert_strength --strength '43'"
    "--strength '43': the unit is missing; expected a strength: %vol, %mass")
refuses(convert_strength.percent "aqueth convert_strength --strength '43%'" "%vol, %mass or %mol")
answers(convert_strength.comma "aqueth convert_strength --strength '43,5 %vol'" "^43,5 %vol is 43[.]50 % vol at 20")
answers(convert_strength.grams_per_litre "aqueth convert_strength --strength '350 g/L'" "^350 g/L is 44[.]3[45] % vol at 20")
refuses(convert_strength.nan "aqueth convert_strength --strength 'nan %vol'" "not a number")
refuses(convert_strength.minus_infinity "aqueth convert_strength --strength '-inf %vol'" "not a number")
refuses(convert_strength.hexadecimal "aqueth convert_strength --strength '0x2b %vol'" "unknown unit 'x2b %vol'")
refuses(convert_strength.empty "aqueth convert_strength --strength ''" "the value is empty")
refuses(convert_strength.only_a_unit "aqueth convert_strength --strength '%vol'" "not a number")
refuses(convert_strength.other_proof "aqueth convert_strength --strength '43 UK proof'"
    "unknown unit 'UK proof'")
refuses(convert_strength.proof_above_200 "aqueth convert_strength --strength '201 proof'"
    "201 US proof is outside 0 to 200 US proof")
refuses(convert_strength.proof_elsewhere "aqueth convert_strength --strength '90 proof at 20 C'"
    "defined at 60 F")
refuses(convert_strength.moles_above_one "aqueth convert_strength --strength '1.2 mol/mol'"
    "mole fraction 120 % mol is outside 0 to 100")
refuses(convert_strength.above_pure "aqueth convert_strength --strength '79.5 g/100 mL'"
    "79[.]5 g/100 mL is outside 0 to 78[.]92")
refuses(convert_strength.heavier_than_water "aqueth convert_strength --strength '1200 kg/m3'"
    "density 1200 kg/m3 is outside 789[.]2391 to 998[.]2012")
refuses(convert_strength.heavier_than_water_by_gravity "aqueth convert_strength --strength '1.02 sg'"
    "--strength '1.02 sg': density")
refuses(convert_strength.gravity_without_scale "aqueth convert_strength --strength '0.9345 sg 20/20'"
    "sg 20/20 C")
refuses(convert_strength.gravity_in_water "aqueth convert_strength --strength '0.9345 sg 60/60 F in water'"
    "sg 60/60 F in air")
refuses(convert_strength.reference_without_unit "aqueth convert_strength --strength '43 %vol at 20'"
    "the unit is missing; expected a temperature")
refuses(convert_strength.unknown_reference "aqueth convert_strength --strength '43 %vol at 25 C'"
    "20 C, 15 C, 15.56 C or 60 F")
refuses(convert_strength.volume "aqueth convert_strength --strength '43 L'"
    "'L' is the unit of a volume; expected a strength")
refuses(convert_strength.unknown_temperature "aqueth convert_strength --strength '43 %vol' --temperature '20 X'"
    "unknown unit 'X'; expected a temperature")
refuses(convert_strength.ice "aqueth convert_strength --strength '0 %vol' --temperature '-5 C'"
    "--temperature '-5 C': temperature -5 °C is outside 0 to 99[.]9[0-9]* °C .*freezing point")
refuses(convert_strength.frozen "aqueth convert_strength --strength '12 %vol' --temperature '-10 C'"
    "--temperature '-10 C': temperature -10 °C is outside .*freezing point")
refuses(convert_strength.too_hot "aqueth convert_strength --strength '12 %vol' --temperature '95 C'"
    "--temperature '95 C': temperature 95 °C is outside -4[.][0-9]+ to 91[.][0-9]+ °C .*boiling point")
refuses(convert_strength.mass_with_reference "aqueth convert_strength --strength '45 %mass at 60 F'"
    "--strength '45 %mass at 60 F': a mass fraction does not depend on temperature")
refuses(convert_strength.moles_with_reference "aqueth convert_strength --strength '0.2 mol/mol at 20 C'"
    "a mole fraction does not depend on temperature")
refuses(convert_strength.long [[aqueth convert_strength --strength "43 $(printf 'very%.0s' {1..1000}) strong"]]
    "unknown unit 'very.*[.][.][.]'; expected a strength")
# 27 CFR 30.11: proof is twice the % vol at 60 °F.
answers(convert_strength.us "aqueth convert_strength --strength '90 proof'" "^90 proof is 45[.]00 % vol at 60 °F, .*90[.]0 US proof")
answers(convert_strength.us_wanted "aqueth convert_strength --strength '43 %vol' --us" "^43 %vol is 42[.]93 % vol at 60 °F")
answers(convert_strength.metric "aqueth convert_strength --strength '90 proof' --metric" "^90 proof is 45[.]06 % vol at 20 °C")
