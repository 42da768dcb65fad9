# SPDX-License-Identifier: BSL-1.0
# The wash of judge_wash: 1.085 to 0.992 is 12.41 % vol and 2.18 °P by Balling's balance and the density.
answers(read_refractometer.two_readings "aqueth read_refractometer --reading '6.5 brix' --gravity '0.992 sg'"
    "^The wash holds 12[.]40 % vol and 2[.]17 °P, give or take 0[.]40 and 0[.]13 [(]95 %[)][.].*uncertainty +[0-9]+ % from the refractometer.*counts as sucrose.*66 g/L of malt extract")
answers(read_refractometer.three_ways "aqueth read_refractometer --reading '6.5 brix' --gravity '0.992 sg' --original '1.085 sg'"
    "original, gravity 12[.]41 % vol and 2[.]18 °P.*original, index +12[.]4[0-9] % vol and 2[.]1[0-9] °P")
answers(read_refractometer.original "aqueth read_refractometer --reading '6.5 brix' --original '1.085 sg'"
    "^The wash holds 12[.]4 % vol and 2[.]2 °P[.].*before +20[.]47 °P.*gravity now +0[.]9919.*0[.]1 °Bx +is 0[.]087 % vol")
answers(read_refractometer.must "aqueth read_refractometer --reading '20 brix' --original '20 plato'" "^The wash holds 0[.]0 % vol and 20[.]0 °P")
answers(read_refractometer.both_by_refractometer "aqueth read_refractometer --reading '6.5 brix' --original '20.47 brix'" "^The wash holds 12[.]4 % vol and 2[.]2 °P")
answers(read_refractometer.json "aqueth read_refractometer --reading 1.34254 --gravity '990.22 kg/m3' --json"
    "\"strength_percent_vol_20C\": 12[.]39.*\"extract_P\": 2[.]1.*\"refractometer_Bx\": 6[.](49|50)")
# CRC Handbook, 102nd edition: 33 % mass (40 % vol) of ethanol between 1.3546 at 32 % and 1.3557 at 34 %.
answers(read_refractometer.spirit "aqueth read_refractometer --strength '40 %vol'" "^A refractometer shows 14[.]7[0-9] °Bx at 20 °C[.].*refractive index +1[.]355[0-9]+.*alone it gives no strength")
# The same: sucrose of 20 % mass has 1.3639.
answers(read_refractometer.sugar "aqueth read_refractometer --strength '0 %vol' --sugar '216.2 g/L'" "^A refractometer shows (19[.]9|20[.]0)[0-9] °Bx.*1[.]363[89]")
# By hand from R 22: 80 proof has 947.94 kg/m3 at 20 °C, which is 7.9021 lb in 231 cubic inches of it in air.
answers(read_refractometer.us "aqueth read_refractometer --strength '80 proof'"
    "^A refractometer shows 14[.]7[0-9] °Bx at 68 °F[.].*refractive index +1[.]355[0-9]+ at 68 °F, 589 nm\n +liquid +80[.]0 US proof with 0[.]0 g/L [(]0 oz/US gal[)] of sucrose\n +density +7[.]902[01] lb/US gal in air at 68 °F")
# Ethanol shrinks by 0.48 % from 20 °C to 60 °F, this wash by 0.1: 12.41 % vol become 12.36 or 12.37 (as in judge_wash).
answers(read_refractometer.us_wash "aqueth read_refractometer --us --reading '6.5 brix' --gravity '0.992 sg' --original '1.085 sg'"
    "^The wash holds 12[.]3[56] % vol at 60 °F and 2[.]17 °P, give or take 0[.]40 and 0[.]13 .*[(]68 °F, 589 nm[)]\n +density +8[.]25[45][0-9] lb/US gal in air at 68 °F.*original, gravity 12[.]3[67] % vol at 60 °F and 2[.]18 °P")
answers(read_refractometer.us_original "aqueth read_refractometer --us --reading '6.5 brix' --original '1.085 sg'"
    "^The wash holds 12[.]4 % vol at 60 °F and 2[.]2 °P[.].*gravity now +0[.]9919, as a hydrometer would show at 68 °F")
answers(read_refractometer.us_methanol "aqueth read_refractometer --us --methanol --reading 1.3530 --gravity '948.0 kg/m3'"
    "^Methanol is 16[.]5 % of the alcohol by mass.*density +7[.]902[56] lb/US gal in air at 68 °F")
answers(read_refractometer.us_json "aqueth read_refractometer --strength '80 proof' --json" "\"density_kg_m3_20C\": 947[.]9.*\"strength_percent_vol_20C\": 40[.]06")
answers(read_refractometer.methanol "aqueth read_refractometer --methanol --reading 1.3530 --gravity '948.0 kg/m3'"
    "^Methanol is 16[.]5 % of the alcohol by mass, give or take 2[.]8 [(]95 %[)][.] Do not drink it[.].*not the limits of law.*far below.*no test of safety.*laboratory")
answers(read_refractometer.no_methanol "aqueth read_refractometer --methanol --reading 1.3553 --gravity '948.0 kg/m3'"
    "^No methanol is shown; less than 3[.]2 % of the alcohol cannot be seen [(]95 %[)][.].*not the limits of law")
refuses(read_refractometer.neither "aqueth read_refractometer --gravity '0.992 sg'" "give either --reading or --strength")
refuses(read_refractometer.alone "aqueth read_refractometer --reading '6.5 brix'" "give --gravity or --original beside --reading")
refuses(read_refractometer.methanol_alone "aqueth read_refractometer --methanol --reading '6.5 brix'" "--methanol needs --gravity")
refuses(read_refractometer.methanol_strength "aqueth read_refractometer --methanol --strength '40 %vol'" "--methanol needs --reading")
refuses(read_refractometer.methanol_original "aqueth read_refractometer --methanol --reading 1.3553 --gravity '948 kg/m3' --original '1.08 sg'" "--original '1.08 sg': is of no use with --methanol")
refuses(read_refractometer.stray_sugar "aqueth read_refractometer --reading '6.5 brix' --gravity '0.992 sg' --sugar '5 g/L'" "--sugar '5 g/L': needs --strength")
refuses(read_refractometer.stray_gravity "aqueth read_refractometer --strength '40 %vol' --gravity '0.992 sg'" "--gravity '0.992 sg': needs --reading")
refuses(read_refractometer.stray_error "aqueth read_refractometer --reading '6.5 brix' --original '1.085 sg' --gravity-error '1 kg/m3'" "--gravity-error '1 kg/m3': needs --gravity")
refuses(read_refractometer.unit "aqueth read_refractometer --reading '6.5 kg' --gravity '0.992 sg'" "--reading '6.5 kg': ")
refuses(read_refractometer.low_index "aqueth read_refractometer --reading 1.2 --gravity '0.992 sg'" "--reading '1.2': refractive index 1[.]2 is outside 1[.]3 to 1[.]6")
refuses(read_refractometer.not_a_number "aqueth read_refractometer --reading nan --gravity '0.992 sg'" "--reading 'nan': ")
refuses(read_refractometer.too_high_brix "aqueth read_refractometer --reading '80 brix' --gravity '0.992 sg'" "--reading '80 brix': refractometer reading 80 °Bx is outside 0 to 70")
refuses(read_refractometer.fits_nothing "aqueth read_refractometer --reading '1 brix' --gravity '0.992 sg'" "--reading '1 brix': refractometer reading 1 °Bx is outside 1[.]86 to .*what ethanol and sugar of this density can show")
refuses(read_refractometer.above_original "aqueth read_refractometer --reading '25 brix' --original '1.085 sg'" "--reading '25 brix': refractometer reading 25 °Bx is outside .*from all extract fermented to none")
refuses(read_refractometer.syrup "aqueth read_refractometer --reading '25 brix' --original '1.2 sg'" "--original '1.2 sg': original extract 44[.0-9]* °P is outside")
refuses(read_refractometer.density "aqueth read_refractometer --reading '6.5 brix' --gravity '700 kg/m3'" "--gravity '700 kg/m3': density 700 kg/m3 is outside")
refuses(read_refractometer.sweet_methanol "aqueth read_refractometer --methanol --reading 1.39 --gravity '948 kg/m3'" "--reading '1.39': refractive index 1[.]39 is outside .*ethanol to methanol at this density")
refuses(read_refractometer.pure "aqueth read_refractometer --strength '100 %vol'" "--strength '100 %vol': mass fraction 100 % mass is outside 0 to 98 % mass")
# A charge needs its extract, which a refractometer alone does not show.
refuses(read_refractometer.brix_of_a_charge "aqueth forecast_run --charge '25 L' --strength '11 %vol' --extract '8 brix' --power '2 kW' --discard '100 mL' --cuts 'distillate 50 %vol' --end 'distillate 20 %vol'"
    "--extract '8 brix': Brix is what a refractometer shows, and alcohol raises it[.] .*'plato'.*read_refractometer")

# 0.9319 sg is 50 % vol, which shows 17.19 °Bx. A reading above that is an error of the refractometer: it makes the limit
# of detection no better, and within its limits of error it is no reason to refuse.
foreach(shown 17.2 17.3 17.35 17.4)
  answers(read_refractometer.limit_of_detection_${shown} "aqueth read_refractometer --gravity '0.9319 sg' --methanol --reading '${shown} brix'"
      "^No methanol is shown. less than 2[.]3 % of the alcohol cannot be seen")
endforeach()
answers(read_refractometer.limit_of_detection_by_index "aqueth read_refractometer --gravity '0.9319 sg' --methanol --reading 1.35959"
    "^No methanol is shown. less than 2[.]3 % of the alcohol cannot be seen")
refuses(read_refractometer.beyond_spirit "aqueth read_refractometer --gravity '0.9319 sg' --methanol --reading '17.6 brix'"
    "--reading '17.6 brix': refractometer reading 17[.]6 °Bx is outside [0-9.]+ to 17[.]4[0-9]* °Bx [(]ethanol to methanol")
refuses(read_refractometer.less_than_its_wort "aqueth read_refractometer --reading '4.9 brix' --gravity '5 plato'"
    "--reading '4.9 brix': refractometer reading 4[.]9 °Bx is outside (5|[45][.][0-9]+) to [0-9.]+ °Bx [(]what ethanol and sugar")
# The error of a density near the end of the tables reaches beyond them, which is no reason to refuse.
answers(read_refractometer.near_the_end_of_the_tables "aqueth read_refractometer --methanol --gravity '989.2 kg/m3' --reading 1.3362"
    "^No methanol is shown. less than 2[0-9] % of the alcohol cannot be seen")
