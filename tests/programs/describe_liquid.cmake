# SPDX-License-Identifier: BSL-1.0
# Flash points within 2 K of the published list (40 % vol: 26 °C); viscosity of Bingham and Jackson, 40 % mass at 20 °C:
# 2.91 mPa s; speed of sound, DOI 10.1016/j.jct.2018.02.022: x = 0.1294 (27.5 % mass) at 25 °C 1613.29 m/s.
answers(describe_liquid.flammable "aqueth describe_liquid --strength '40 %vol' --temperature '26 C'"
    "^The vapour can be lit at 26 °C: no flame.*flash point +2[5-8][.][0-9] °C under 101[.]3 kPa [(]lower in thinner air[)], standard uncertainty 2.*lower limit from +24.*Local codes decide[.]\nCaution: spirit")
answers(describe_liquid.close "aqueth describe_liquid --strength '40 %vol' --temperature '15 C'"
    "^The vapour is close to its lower flammable limit at 15 °C: treat it as flammable")
answers(describe_liquid.lean "aqueth describe_liquid --strength '8 %vol' --temperature '15 C'"
    "^The vapour over the still liquid is too lean to burn at 15 °C, by more than 15")
answers(describe_liquid.wider_margin "aqueth describe_liquid --strength '8 %vol' --temperature '15 C' --margin '50 K'"
    "^The vapour is close to")
answers(describe_liquid.published_viscosity "aqueth describe_liquid --strength '40 %mass' --temperature '20 C'"
    "viscosity +2[.](8[6-9]|9[0-6])[0-9]* mPa s, standard uncertainty 2 %")
answers(describe_liquid.published_sound "aqueth describe_liquid --strength '12.94 %mol' --temperature '25 C'"
    "sound travels +161[2-4][.][0-9] m/s, standard uncertainty 0[.]1 %.*conducts heat +not offered here, only for a temperature of -[0-9.]+ to 20[.0]* °C")
# In the mountains the same vapour is a larger part of the air.
answers(describe_liquid.altitude "aqueth describe_liquid --strength '40 %vol' --temperature '23 C' --altitude '2000 m'"
    "^The vapour can be lit")
answers(describe_liquid.us "aqueth describe_liquid --strength '80 proof' --temperature '79 F'"
    "^The vapour can be lit at 79 °F.*flash point +8[01][.][0-9] °F")
# By hand from R 22: 80 proof has 950.86 kg/m3 at 60 °F, 7.9265 lb in 231 cubic inches in air. 20 °C are 68 °F.
answers(describe_liquid.us_asked_for "aqueth describe_liquid --us --strength '80 proof'"
    "at 60 °F.*liquid +80[.]0 US proof.*density +7[.]926[45] lb/US gal in air\n")
answers(describe_liquid.us_range "aqueth describe_liquid --us --strength '12.94 %mol' --temperature '77 F'"
    "conducts heat +not offered here, only for a temperature of [-0-9.]+ to 68 °F\n")
answers(describe_liquid.us_boiling "aqueth describe_liquid --us --strength '8 %vol' --temperature '203 F'"
    "vapour +the liquid boils at 20[01][.][0-9] °F under 29[.]92 inHg\n")
# The flash point is that of the standard's pressure, and says so; the lower limit is that of the place.
answers(describe_liquid.flash_point_names_its_pressure "aqueth describe_liquid --strength '40 %vol' --altitude '3000 m'"
    "flash point +27[.]2 °C under 101[.]3 kPa [(]lower in thinner air[)].*lower limit from +18[.]1 °C under 70[.]1")
answers(describe_liquid.flash_point_names_its_pressure_in_json "aqueth describe_liquid --strength '40 %vol' --altitude '3000 m' --json"
    "\"flash_point_pressure_kPa\": 101[.]325")
# boiling_point gives the same 83.8 °C.
answers(describe_liquid.boils "aqueth describe_liquid --strength '40 %vol' --temperature '99 C'"
    "vapour +the liquid boils at 83[.]8 °C under 101[.]3 kPa\n")
answers(describe_liquid.json "aqueth describe_liquid --strength '40 %vol' --temperature '18 C' --json"
    [=["vapour_hazard": "near_lower_limit".*"speed_of_sound_m_s": null.*"thermal_conductivity_W_mK": 0[.]3[6-9]]=])
answers(describe_liquid.water "aqueth describe_liquid --strength '0 %vol'"
    "^The vapour over the still liquid is too lean.*flash point +not offered here, only for a mass fraction of 3[.]9[0]* to 100[.0]* % mass")
answers(describe_liquid.hot "aqueth describe_liquid --strength '8 %vol' --temperature '95 C'"
    "^The vapour can be lit.*vapour +the liquid boils at 9[34][.][0-9] °C under 101[.]3 kPa.*density +not offered")

refuses(describe_liquid.cold "aqueth describe_liquid --strength '40 %vol' --temperature '-5 C'"
    "--temperature '-5 C': temperature -5 °C is outside 0[.]01 to 100 °C")
refuses(describe_liquid.thin_air "aqueth describe_liquid --strength '40 %vol' --pressure '30 kPa'"
    "--pressure '30 kPa': pressure 30 kPa is outside 60 to 200 kPa")
refuses(describe_liquid.nan "aqueth describe_liquid --strength '40 %vol' --temperature 'nan C'" "not a number")
refuses(describe_liquid.margin "aqueth describe_liquid --strength '40 %vol' --margin '60 K'"
    "--margin '60 K': margin of temperature 60 K is outside 0 to 50 K")
refuses(describe_liquid.negative_margin "aqueth describe_liquid --strength '40 %vol' --margin '-5 K'" "--margin '-5 K'")
refuses(describe_liquid.strength "aqueth describe_liquid --strength '140 %vol'" "140 % vol at 20 °C is outside 0 to 100")
refuses(describe_liquid.unit "aqueth describe_liquid --strength '40 %vol' --temperature '20 kPa'" "--temperature '20 kPa'")
