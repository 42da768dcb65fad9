# SPDX-License-Identifier: BSL-1.0
set(sample "--sample '100 mL' --made-up '100 mL' --reading '25.3 %vol' --temperature '20 C'")

# All of 25.3 % vol in the same volume, and 0.2 % of it lost: 25.35.
answers(judge_liqueur.sample "aqueth judge_liqueur ${sample}"
    "^The liqueur has 25[.]35 % vol, give or take 0[.]29 [(]95 %[)][.].*uncertainty +[0-9]+ % from the thermometer.*Guidance only.*Caution")
answers(judge_liqueur.twice_as_much "aqueth judge_liqueur --sample '200 mL' --made-up '100 mL' --reading '25.3 %vol' --temperature '20 C' --loss '0 %'"
    "^The liqueur has 12[.]65")
answers(judge_liqueur.extract "aqueth judge_liqueur ${sample} --density '1060 kg/m3'" "dry extract +24[0-9][.][0-9] g/L, as sucrose, by added volumes\n +Tabarie's relation is for at most 18 % mass")
answers(judge_liqueur.extract_of_a_wine "aqueth judge_liqueur --sample '100 mL' --made-up '100 mL' --reading '12 %vol' --temperature '20 C' --density '0.998 g/cm3'"
    "dry extract +40[.][5-7] g/L.*40[.][6-8] g/L, as sucrose, by Tabarie's relation")
answers(judge_liqueur.json "aqueth judge_liqueur ${sample} --json" "\"strength_percent_vol_20C\": 25[.]35.*\"expanded_uncertainty_percent_vol\": 0[.]2.*\"confidence\": 0[.]95")
# The recipe of sweeten_spirit, read back.
answers(judge_liqueur.recipe_read_back "aqueth judge_liqueur --reading '1059.6 kg/m3' --scale 'kg/m3 at 20 C' --temperature '20 C' --sugar '250 g/L'"
    "^The liqueur has 28[.]0 % vol, give or take 1[.]2 for the sugar's volume[.].*None of them was as strong and as sweet.*wrong by 1[.]2 % vol")
# 27 CFR 30.32 counts 0.4 degrees of proof for 100 mg in 100 mL: 0.2 % vol for a gram in a litre.
answers(judge_liqueur.obscuration "aqueth judge_liqueur --reading '39 %vol' --temperature '20 C' --sugar '5 g/L'"
    "obscuration +1[.][0-3][0-9] % vol: without sugar the reading would mean 39[.]00 % vol")
answers(judge_liqueur.no_sugar "aqueth judge_liqueur --reading '84 %vol' --temperature '31 C' --sugar '0 g/L'" "^The liqueur has 80[.]8 % vol, give or take 0 ")
# US proof is twice the % vol at 60 °F, so half the volume has half the proof; the limits of error count twice, too:
# 0.15 % vol / sqrt(3) * 1.96 alone would be 0.34.
answers(judge_liqueur.us "aqueth judge_liqueur --sample '4 fl oz' --made-up '4 fl oz' --reading '50 proof' --temperature '60 F' --loss '0 %'"
    "^The liqueur has 50[.]0?0 US proof, give or take 0[.]5[0-9] [(]95 %[)][.].*sample +4[.]000 US fl oz at 60 °F\n +distillate +4[.]000 US fl oz of 50[.]0 US proof")
answers(judge_liqueur.us_twice_as_much "aqueth judge_liqueur --sample '8 fl oz' --made-up '4 fl oz' --reading '50 proof' --temperature '60 F' --loss '0 %'"
    "^The liqueur has 25[.]0")
# By hand: 5 g in a litre are 18.927 g in 3.785412 L, 0.6676 oz. At 60 °F a hydrometer is right: without sugar 78 is 78.
answers(judge_liqueur.us_obscuration "aqueth judge_liqueur --reading '78 proof' --temperature '60 F' --sugar '5 g/L'"
    "^The liqueur has 80[.][0-7] US proof, give or take 0[.]0[0-9]+ for.*reading +78[.]0+ at 60 °F\n +density +[0-9.]+ lb/US gal in air at 60 °F\n +sugar +5[.]0 g/L [(]0[.]6676 oz/US gal[)] of sucrose at 68 °F\n +obscuration +2[.][0-7] US proof: without sugar the reading would mean 78[.]0 US proof\n.*wrong by 0[.]0[0-9]+ US proof")
answers(judge_liqueur.us_extract "aqueth judge_liqueur --us ${sample} --density '1060 kg/m3'" "dry extract +24[0-9][.][0-9] g/L [(]3[23][.][0-9]+ oz/US gal[)], as sucrose")
refuses(judge_liqueur.neither "aqueth judge_liqueur --reading '39 %vol' --temperature '20 C'" "give --sugar, or --sample")
refuses(judge_liqueur.both "aqueth judge_liqueur ${sample} --sugar '5 g/L'" "--sugar '5 g/L': is not needed with --sample")
refuses(judge_liqueur.half "aqueth judge_liqueur --sample '100 mL' --reading '25 %vol' --temperature '20 C'" "--sample needs --made-up")
refuses(judge_liqueur.made_up_alone "aqueth judge_liqueur --made-up '100 mL' --sugar '5 g/L' --reading '25 %vol' --temperature '20 C'" "--made-up '100 mL': needs --sample")
refuses(judge_liqueur.stray_error "aqueth judge_liqueur --sugar '5 g/L' --flask-error '1 mL' --reading '25 %vol' --temperature '20 C'" "--flask-error '1 mL': needs --sample")
refuses(judge_liqueur.too_much_alcohol "aqueth judge_liqueur --sample '20 mL' --made-up '100 mL' --reading '25 %vol' --temperature '20 C'"
    "--made-up '100 mL': so much distillate of 25[.]00 % vol means a sample above 95 % vol: with --sample '20 mL' at most 75[.]85 mL")
refuses(judge_liqueur.no_sample "aqueth judge_liqueur --sample '0 mL' --made-up '100 mL' --reading '25 %vol' --temperature '20 C'" "--sample '0 mL': volume")
refuses(judge_liqueur.loss "aqueth judge_liqueur ${sample} --loss '20 %'" "--loss '20 %': share lost in distillation 20 % is outside 0 to 10 %")
refuses(judge_liqueur.hot "aqueth judge_liqueur --reading '39 %vol' --temperature '50 C' --sugar '5 g/L'" "--temperature '50 C': temperature 50 °C is outside")
refuses(judge_liqueur.cold "aqueth judge_liqueur --reading '39 %vol' --temperature '-5 C' --sugar '5 g/L'" "--temperature '-5 C': temperature -5 °C is outside 0 to 40")
refuses(judge_liqueur.unlikely_density "aqueth judge_liqueur ${sample} --density '700 kg/m3'" "--density '700 kg/m3': density 700 kg/m3 is outside")
refuses(judge_liqueur.no_such_liqueur "aqueth judge_liqueur --reading '1400 kg/m3' --temperature '20 C' --sugar '250 g/L'" "--reading '1400 kg/m3': .*is outside")

refuses(judge_liqueur.more_alcohol_than_a_sample_holds "aqueth judge_liqueur --sample '100 mL' --made-up '200 mL' --reading '60 %vol' --temperature '20 C'"
    "--made-up '200 mL': so much distillate of 60[.]00 % vol means a sample above 95 % vol: with --sample '100 mL' at most 158 mL")
