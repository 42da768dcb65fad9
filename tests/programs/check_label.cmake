# SPDX-License-Identifier: BSL-1.0
# Probabilities by the normal distribution: z = (45.30 - 45.12) / 0.08 = 2.25, Phi = 0.9878.
set(label "--label '45 %vol'")
set(bottle "--bottle '500 mL' --contents '492 mL'")

answers(check_label.kept "aqueth check_label ${label} --measured '45.12 %vol' --uncertainty '0.08 %vol'"
    [[^Strength: within the tolerance, with 98[.]8 % probability [(]95 % wanted[)][.]
.*permitted +44[.]70 to 45[.]30 % vol
.*to pass +the mean must be between 44[.]84 and 45[.]16 % vol
.*1169/2011.*without prejudice.*local law]])
answers(check_label.broken "aqueth check_label ${label} --measured '45.6 %vol' --uncertainty '0.08 %vol'"
    "^Strength: outside the tolerance, with more than 99[.]99 % probability")
answers(check_label.undecided "aqueth check_label ${label} --measured '45.3 %vol' --uncertainty '0.08 %vol'"
    "^Strength: the measurement cannot tell; within the tolerance, with 50[.]0 % probability")
# 0.3 / 1.959964 = 0.153 at the middle, 0.2^2 / (0.153^2 - 0.05^2) = 1.9
answers(check_label.more_readings
    "aqueth check_label ${label} --measured '45 %vol' --uncertainty '0.05 %vol' --repeatability '0.2 %vol'"
    "the measurement cannot tell.*enough +2 readings with the mean and scatter unchanged: standard uncertainty 0[.]150 % vol\n")
answers(check_label.readings_do_not_help
    "aqueth check_label ${label} --measured '45.21 %vol' --uncertainty '0.1 %vol' --repeatability '0.08 %vol'"
    "enough +a standard uncertainty of 0[.]054 % vol; more readings do not help: 0[.]10 % vol is systematic\n")
answers(check_label.too_uncertain "aqueth check_label ${label} --measured '45 %vol' --uncertainty '0.2 %vol'"
    "the measurement cannot tell.*to pass +impossible: the standard uncertainty must first be below 0[.]15")
# mean 45.1, s/sqrt(3) = 0.0577, t = 0.2 / 0.0577 = 3.464 with 2 degrees of freedom: 0.963 below, less 0.010
answers(check_label.repeated
    "aqueth check_label ${label} --measured '45.1 %vol' --measured '45.2 %vol' --measured '45.0 %vol'"
    "^Strength: within the tolerance, with 95[.]3 % probability.*45[.]100 % vol, standard uncertainty 0[.]058")
# The example of conformity_test.cpp: t(10) at 95 % is 1.8125, and 3 readings with 0.133 are not enough; 4 have
# sqrt(0.15275^2/4 + 0.1^2) = 0.126 and 22 degrees of freedom, 0.2333/0.126 = 1.85 is above t(22) = 1.717.
answers(check_label.verdict_and_needed_agree
    "aqueth check_label --label '43 %vol' --measured '42.8 %vol' --measured '43.1 %vol' --measured '42.9 %vol' --uncertainty '0.1 %vol'"
    [[^Strength: the measurement cannot tell; within the tolerance, with 93[.]4 % probability [(]95 % wanted[)][.]

  enough +4 readings with the mean and scatter unchanged: standard uncertainty 0[.]126 % vol
  measured +42[.]93 % vol, standard uncertainty 0[.]13 % vol, 3 readings
]])
answers(check_label.mean_outside "aqueth check_label ${label} --measured '45.35 %vol' --uncertainty '0.08 %vol'"
    "the measurement cannot tell.*enough +nothing: the mean is outside the tolerance, and a better measurement can only confirm that")
# In the middle of the tolerance a bad measurement finds no fault: 0.3/10 of a standard deviation to each side is 2.4 %.
answers(check_label.hopeless_is_no_fault "aqueth check_label ${label} --measured '45 %vol' --uncertainty '10 %vol'"
    "^Strength: the measurement cannot tell; within the tolerance, with 2[.]4 % probability")
# The repeatability is from experience: 0.1/sqrt(2) = 0.071, whatever these two scatter by.
answers(check_label.repeatability_of_experience
    "aqueth check_label ${label} --measured '45.1 %vol' --measured '45.0 %vol' --repeatability '0.1 %vol'"
    "^Strength: within the tolerance.*45[.]050 % vol, standard uncertainty 0[.]071 % vol, 2 readings")
answers(check_label.proof "aqueth check_label --label '80 proof' --tolerance us-spirits --measured '80.2 proof' --uncertainty '0.05 %vol'"
    "within the tolerance.*40[.]100 % vol at 60 °F.*39[.]70 to 40[.]30 % vol at 60 °F.*27 CFR 19[.]356")
answers(check_label.own_tolerance
    "aqueth check_label ${label} --tolerance '0.5 %vol' --measured '45.3 %vol' --uncertainty '0.08 %vol'"
    "^Strength: within the tolerance.*44[.]50 to 45[.]50.*as told")
answers(check_label.contents "aqueth check_label ${bottle} --contents-uncertainty '1.5 mL'"
    [[^Contents: the batch must average 500 mL; this bottle is 8[.]0 mL short, within the tolerance for one bottle[.]
.*only a few may be below 485 mL; it is not, with more than 99[.]99 % .*lowest allowed +470 mL for any bottle; .*on average not below the label.*76/211/EEC]])
# Directive 76/211/EEC, annex I, 1: the average is not below the label. (688 - 685)/1 = 3 standard deviations: 99.87 %.
answers(check_label.average_first "aqueth check_label --bottle '700 mL' --contents '688 mL' --contents-uncertainty '1 mL'"
    [[^Contents: the batch must average 700 mL; this bottle is 12[.]0 mL short, within the tolerance for one bottle[.]

  enough +several bottles: .*685 mL; it is not, with 99[.]87 %.*lowest allowed +670 mL for any bottle]])
set(batch "aqueth check_label --bottle '700 mL' --contents-uncertainty '0.2 mL' --contents '708 mL' --contents '702 mL'")
# Mean 703.67, s = 3.786: t = 3.67/sqrt(3.786^2/3 + 0.04) = 1.67; with 2 degrees of freedom 88 %.
# Five: u = 1.705, t(4) at 95 % is 2.132, 3.635 is below 3.667; four: u = 1.903, t(3) = 2.353, 4.48 is not.
answers(check_label.average_undecided "${batch} --contents '701 mL'"
    [[^Contents: these bottles cannot tell whether the batch averages 700 mL: 88[.]2 % probability [(]95 % wanted[)][.]

  enough +5 bottles with the average and scatter unchanged: standard uncertainty 1[.]7[01] mL
.*permitted +700[.]0 mL or more
  to pass +the average must be 706[.]5 mL or more
  shortest bottle +701[.]00 mL, not short]])
answers(check_label.average_kept "${batch} --contents '705 mL' --contents '705 mL'"
    "^Contents: the average of the batch reaches 700 mL, with 9[5-9][.][0-9]+ % probability")
answers(check_label.average_short
    "aqueth check_label --bottle '700 mL' --contents-uncertainty '0.2 mL' --contents '690 mL' --contents '691 mL' --contents '689 mL'"
    "^Contents: the average of the batch is below 700 mL, with 99[.][0-9]+ % probability")
answers(check_label.below_the_lowest "${batch} --contents '668 mL'"
    "^Contents: a bottle is below 670 mL, the lowest allowed for any; these bottles cannot tell")
answers(check_label.one_below_the_lowest "aqueth check_label --bottle '700 mL' --contents '668 mL' --contents-uncertainty '1 mL'"
    "^Contents: the batch must average 700 mL; this bottle is 32[.]0 mL short, below the lowest contents allowed for any bottle")
answers(check_label.contents_us
    "aqueth check_label --bottle '750 mL' --contents '733 mL' --contents-uncertainty '1 mL' --filling us --contents-temperature '60 F'"
    "^Contents: outside the tolerance, with 97[.]7 % .*735[.]0 to 765[.]0 mL.*27 CFR 19[.]356.*60 °F is NIST Handbook 133, from memory")
# 750 mL at 60 °F are 752.31 mL at 20 °C: 736 mL at 20 °C are 733.74 mL and short, though above 735.
set(us "--bottle '750 mL' --contents '736 mL' --contents-uncertainty '0.5 mL' --filling us")
answers(check_label.us_label_at_60 "aqueth check_label ${us} --strength '40 %vol'"
    "^Contents: outside the tolerance, with 99[.]4[0-9] % .*measured +733[.]74 mL.*measured at 20 °C; figures above are at 60 °F, 0[.]31 % less")
answers(check_label.us_units "aqueth check_label --label '90 proof' --measured '90 proof' --uncertainty '0.1 %vol'"
    "^Strength: within the tolerance.*44[.]70 to 45[.]30 % vol at 60 °F.*27 CFR 19[.]356")
answers(check_label.us_flag "aqueth check_label --us --bottle '750 mL' --contents '736 mL' --contents-uncertainty '0.5 mL' --strength '40 %vol'"
    "^Contents: outside the tolerance, .*measured at 68 °F; figures above are at 60 °F, 0[.]31 % less")
answers(check_label.at_the_label_temperature "aqueth check_label ${bottle} --contents-uncertainty '1.5 mL'"
    "temperature +measured at 20 °C, the temperature of the label")
answers(check_label.us_label_tells_the_strength "aqueth check_label ${us} --label '80 proof'"
    "^Contents: outside the tolerance, .*measured +733[.]7[34] mL")
answers(check_label.warm_contents_in_europe
    "aqueth check_label --bottle '700 mL' --contents '702 mL' --contents-uncertainty '1 mL' --contents-temperature '26 C' --strength '40 %vol'"
    "this bottle is 1[.]01 mL short.*measured at 26 °C; figures above are at 20 °C, 0[.]4[0-9] % less")
answers(check_label.us_bottles "${batch} --filling us --contents-temperature '60 F' --contents '680 mL'"
    "^Contents: the worst bottle is outside the tolerance.*these bottles +2 over the label, 1 under")
refuses(check_label.us_without_strength "aqueth check_label ${us}"
    "--contents-temperature '20 C': the label refers to 60 °F: give --strength")
answers(check_label.both
    "aqueth check_label ${label} --measured '45.12 %vol' --uncertainty '0.08 %vol' ${bottle} --contents-uncertainty '1 mL'"
    "^Strength: .*\n\nContents: ")
answers(check_label.json "aqueth check_label ${label} --measured '45.12 %vol' --uncertainty '0.08 %vol' --json"
    [["probability_of_conformity": 0[.]98777.*"decision": "within the tolerance"]])
answers(check_label.laws "aqueth check_label --laws" "eu-spirits +±0[.]3 % vol at 20 °C.*us-spirits.*60 °F.*local law")
answers(check_label.laws_of_contents "aqueth check_label --laws"
    "eu-macerated .*drinks that contain macerated fruit .*filtered drink item 4.*us +volumes at 60 °F: about as many.*19[.]1 names no temperature .*Handbook 133, from memory")
answers(check_label.laws_json "aqueth check_label --laws --json" [["tolerance": "eu-spirits",.*"source_seen": "read"]])

refuses(check_label.no_measurement "aqueth check_label ${label}" "give both --label and --measured")
refuses(check_label.one_without_uncertainty "aqueth check_label ${label} --measured '45 %vol'"
    "--uncertainty is required: a single measurement does not show its own uncertainty")
refuses(check_label.certain "aqueth check_label ${label} --measured '45 %vol' --uncertainty '0 %vol'"
    "--uncertainty '0 %vol': the uncertainty must be above 0")
refuses(check_label.negative "aqueth check_label ${label} --measured '45 %vol' --uncertainty '-0.1 %vol'"
    "difference -0[.]1 % vol is outside 0 to 100")
refuses(check_label.not_a_number "aqueth check_label ${label} --measured '45 %vol' --uncertainty 'nan %vol'" "not a number")
refuses(check_label.same_readings "aqueth check_label ${label} --measured '45 %vol' --measured '45 %vol'"
    "readings that do not differ need --uncertainty")
refuses(check_label.in_kelvin "aqueth check_label ${label} --measured '45 %vol' --uncertainty '0.1 K'" "'K' is the unit of a temp")
refuses(check_label.by_mass "aqueth check_label ${label} --measured '45 %vol' --uncertainty '0.1 %mass'"
    "expected a difference of strengths: %vol or proof")
refuses(check_label.unknown_law "aqueth check_label ${label} --measured '45 %vol' --uncertainty '0.1 %vol' --tolerance moon"
    "--tolerance 'moon': neither a tolerance")
refuses(check_label.no_tolerance
    "aqueth check_label ${label} --measured '45 %vol' --uncertainty '0.1 %vol' --tolerance '0 %vol'"
    "difference 0 % vol is outside 0[.]001 to 100")
refuses(check_label.european_label_in_us
    "aqueth check_label ${label} --measured '45 %vol' --uncertainty '0.1 %vol' --tolerance us-spirits"
    "--label '45 %vol': this tolerance needs a label in proof or '%vol at 60 F'")
answers(check_label.own_tolerance_of_proof "aqueth check_label --tolerance '0.3 %vol' --label '80 proof' --measured '80.2 proof' --uncertainty '0.05 %vol'"
    "^Strength: within the tolerance.*permitted +39[.]70 to 40[.]30 % vol at 60 °F")
refuses(check_label.proof_in_europe "aqueth check_label --tolerance eu-spirits --label '90 proof' --measured '45 %vol' --uncertainty '0.1 %vol'"
    "--label '90 proof': this tolerance needs a label in %vol")
refuses(check_label.scatter_beyond_experience
    "aqueth check_label ${label} --measured '45.1 %vol' --measured '46 %vol' --repeatability '0.1 %vol'"
    "--repeatability '0[.]1 %vol': the measurements scatter by 0[.]64 % vol, more than three times as much")
foreach(option "--strength '40 %vol'" "--contents-temperature '22 C'" "--filling us")
  string(REGEX MATCH "^--[a-z-]+" name "${option}")
  refuses(check_label.useless_${name} "aqueth check_label ${label} --measured '45 %vol' --uncertainty '0.1 %vol' ${option}"
      "${name} .*needs --bottle and --contents")
endforeach()
refuses(check_label.useless_tolerance "aqueth check_label ${bottle} --contents-uncertainty '1 mL' --tolerance eu-beer"
    "--tolerance 'eu-beer': needs --label and --measured")
refuses(check_label.even_odds "aqueth check_label ${label} --measured '45 %vol' --uncertainty '0.1 %vol' --confidence '50 %'"
    "probability 50 % is outside 51 to 99[.]9999 %")
refuses(check_label.bottle_alone "aqueth check_label --bottle '700 mL'" "give all of --bottle, --contents and --contents-unc")
refuses(check_label.certain_contents "aqueth check_label ${bottle} --contents-uncertainty '0 mL'" "the uncertainty must be above 0")
refuses(check_label.unknown_rule "aqueth check_label ${bottle} --contents-uncertainty '1 mL' --filling uk" "expected eu or us")
refuses(check_label.barrel "aqueth check_label --bottle '20 L' --contents '20 L' --contents-uncertainty '1 mL'"
    "--bottle '20 L': label volume 20000 mL is outside 5 to 10000 mL")
# What the law demands of the batch is no finding about these bottles.
answers(check_label.us_batch "aqueth check_label --us --label '40 %vol' --bottle '750 mL' --contents '750.2 mL' --contents '750.1 mL' --contents-uncertainty '0.3 mL'"
    "^Contents: the worst bottle is within the tolerance, .*; the batch must have about as many bottles over as under the label.*0 over the label, 2 under")
answers(check_label.difference_in_proof "aqueth check_label --us --label '90 proof' --measured '90.1 proof' --uncertainty '0.1 proof'"
    "^Strength: within the tolerance, .*standard uncertainty 0[.]05[0]* % vol")

# The standard uncertainty of a strength that was judged is carried on, and nothing else of that answer.
answers(check_label.judged "cd $(mktemp -d) && aqueth correct_reading --reading '43.8 %vol' --temperature '22 C' --json >reading.json && \
    aqueth judge_uncertainty --from reading.json --json >doubt.json && \
    aqueth check_label --label '43 %vol' --from reading.json --from doubt.json | cat"
    "measured +43[.]0[0-9]* % vol, standard uncertainty 0[.][0-9]+ .*--uncertainty '0[.][0-9]+ %vol' from doubt[.]json")

# A mean on a limit is permitted; no uncertainty is small enough to show it.
foreach(pair "43;42.7" "43;43.3" "40;40.3")
  list(GET pair 0 on_label)
  list(GET pair 1 mean)
  answers(check_label.on_the_limit_${on_label}_${mean} "aqueth check_label --label '${on_label} %vol' --measured '${mean} %vol' --uncertainty '0.08 %vol'"
      "enough +nothing: the mean is on the limit, and no uncertainty is small enough there\n")
endforeach()
# Below water and above ethanol there is nothing: these ends are no limits.
answers(check_label.water "aqueth check_label --label '0 %vol' --measured '0 %vol' --uncertainty '0.08 %vol' --tolerance '0.3 %vol'"
    "^Strength: within the tolerance, with more than 99[.]99 %.*permitted +0[.]00 to 0[.]30 % vol\n +to pass +the mean must be 0[.]16 % vol or less")
answers(check_label.ethanol "aqueth check_label --label '100 %vol' --measured '100 %vol' --uncertainty '0.08 %vol'"
    "^Strength: within the tolerance, with more than 99[.]99 %.*permitted +99[.]70 to 100[.]00 % vol\n +to pass +the mean must be 99[.]84 % vol or more")
refuses(check_label.beer_of_43 "aqueth check_label --label '43 %vol' --measured '43 %vol' --uncertainty '0.08 %vol' --tolerance eu-beer"
    "--label '43 %vol': the tolerance eu-beer is for beer up to 5[.]5 % vol")
answers(check_label.strong_beer "aqueth check_label --label '5.5 %vol' --measured '5.5 %vol' --uncertainty '0.08 %vol' --tolerance eu-beer" "^Strength: within .*for beer up to 5[.]5 % vol")
refuses(check_label.weak_spirit "aqueth check_label --label '1 %vol' --measured '1 %vol' --uncertainty '0.08 %vol'"
    "--label '1 %vol': the tolerance eu-spirits is for drinks above 1[.]2 % vol")
answers(check_label.scope "aqueth check_label --label '43 %vol' --measured '43 %vol' --uncertainty '0.08 %vol' --tolerance eu-cider" "for beer above 5[.]5 % vol, cider, perry")
