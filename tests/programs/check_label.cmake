# SPDX-License-Identifier: BSL-1.0
# Probabilities by the normal distribution: z = (45.30 - 45.12) / 0.08 = 2.25, Phi = 0.9878.
set(label "--label '45 %vol'")
set(bottle "--bottle '500 mL' --contents '492 mL'")

answers(check_label.kept "check_label ${label} --measured '45.12 %vol' --uncertainty '0.08 %vol'"
    [[^Strength: within the tolerance, with 98[.]8 % probability [(]95 % wanted[)][.]
.*permitted +44[.]70 to 45[.]30 % vol
.*shown by +measured values of 44[.]83 to 45[.]17 % vol
.*needed +standard uncertainty 0[.]11 % vol.*1169/2011.*without prejudice.*local law]])
answers(check_label.broken "check_label ${label} --measured '45.6 %vol' --uncertainty '0.08 %vol'"
    "^Strength: outside the tolerance, with more than 99[.]99 % probability")
answers(check_label.undecided "check_label ${label} --measured '45.3 %vol' --uncertainty '0.08 %vol'"
    "^Strength: the measurement cannot tell; within the tolerance, with 50[.]0 % probability")
# 0.3 / 1.959964 = 0.153 at the middle, 0.2^2 / (0.153^2 - 0.05^2) = 1.9
answers(check_label.more_readings
    "check_label ${label} --measured '45 %vol' --uncertainty '0.05 %vol' --repeatability '0.2 %vol'"
    "the measurement cannot tell.*needed +standard uncertainty 0[.]15 .*readings +2, if one scatters by 0[.]20")
answers(check_label.readings_do_not_help
    "check_label ${label} --measured '45.21 %vol' --uncertainty '0.1 %vol' --repeatability '0.08 %vol'"
    "readings +no number of them would do: what repeating does not mend is 0[.]10")
answers(check_label.too_uncertain "check_label ${label} --measured '45 %vol' --uncertainty '0.2 %vol'"
    "the measurement cannot tell.*shown by +no measured value: the standard uncertainty must be below 0[.]15")
# mean 45.1, s/sqrt(3) = 0.0577, t = 0.2 / 0.0577 = 3.464 with 2 degrees of freedom: 0.963 below, less 0.010
answers(check_label.repeated
    "check_label ${label} --measured '45.1 %vol' --measured '45.2 %vol' --measured '45.0 %vol'"
    "^Strength: within the tolerance, with 95[.]3 % probability.*45[.]100 % vol, standard uncertainty 0[.]058")
answers(check_label.proof "check_label --label '80 proof' --tolerance us-spirits --measured '80.2 proof' --uncertainty '0.05 %vol'"
    "within the tolerance.*40[.]100 % vol at 60 °F.*39[.]70 to 40[.]30 % vol at 60 °F.*27 CFR 19[.]356")
answers(check_label.own_tolerance
    "check_label ${label} --tolerance '0.5 %vol' --measured '45.3 %vol' --uncertainty '0.08 %vol'"
    "^Strength: within the tolerance.*44[.]50 to 45[.]50.*as told")
answers(check_label.contents "check_label ${bottle} --contents-uncertainty '1.5 mL'"
    [[^Contents: within the tolerance, with more than 99[.]99 % probability [(]95 % wanted[)][.]
.*permitted +485[.]00 mL or more.*at the worst +470[.]0 mL.*on average not below the label.*76/211/EEC]])
answers(check_label.contents_us
    "check_label --bottle '750 mL' --contents '733 mL' --contents-uncertainty '1 mL' --filling us"
    "^Contents: outside the tolerance, with 97[.]7 % .*735[.]00 to 765[.]00 mL.*27 CFR 19[.]356")
answers(check_label.both
    "check_label ${label} --measured '45.12 %vol' --uncertainty '0.08 %vol' ${bottle} --contents-uncertainty '1 mL'"
    "^Strength: .*\n\nContents: ")
answers(check_label.json "check_label ${label} --measured '45.12 %vol' --uncertainty '0.08 %vol' --json"
    [["probability_of_conformity": 0[.]98777.*"decision": "within the tolerance"]])
answers(check_label.laws "check_label --laws" "eu-spirits +±0[.]3 % vol at 20 °C.*us-spirits.*60 °F.*local law")
answers(check_label.laws_json "check_label --laws --json" [["tolerance": "eu-spirits",.*"source_seen": "read"]])

refuses(check_label.no_measurement "check_label ${label}" "give both --label and --measured")
refuses(check_label.one_without_uncertainty "check_label ${label} --measured '45 %vol'"
    "--uncertainty is required: one measurement does not say how sure it is")
refuses(check_label.certain "check_label ${label} --measured '45 %vol' --uncertainty '0 %vol'"
    "--uncertainty '0 %vol': no measurement is without uncertainty")
refuses(check_label.negative "check_label ${label} --measured '45 %vol' --uncertainty '-0.1 %vol'"
    "difference -0[.]1 % vol is outside 0 to 100")
refuses(check_label.not_a_number "check_label ${label} --measured '45 %vol' --uncertainty 'nan %vol'" "no number")
refuses(check_label.same_readings "check_label ${label} --measured '45 %vol' --measured '45 %vol'"
    "readings that do not differ need --uncertainty")
refuses(check_label.in_kelvin "check_label ${label} --measured '45 %vol' --uncertainty '0.1 K'" "'K' is the unit of a temp")
refuses(check_label.by_mass "check_label ${label} --measured '45 %vol' --uncertainty '0.1 %mass'"
    "expected a difference of strengths: %vol")
refuses(check_label.unknown_law "check_label ${label} --measured '45 %vol' --uncertainty '0.1 %vol' --tolerance moon"
    "--tolerance 'moon': no such tolerance")
refuses(check_label.no_tolerance
    "check_label ${label} --measured '45 %vol' --uncertainty '0.1 %vol' --tolerance '0 %vol'"
    "difference 0 % vol is outside 0[.]001 to 100")
refuses(check_label.european_label_in_us
    "check_label ${label} --measured '45 %vol' --uncertainty '0.1 %vol' --tolerance us-spirits"
    "--label '45 %vol': this tolerance is for labels in proof, or '%vol at 60 F'")
refuses(check_label.proof_in_europe "check_label --label '90 proof' --measured '45 %vol' --uncertainty '0.1 %vol'"
    "--label '90 proof': this tolerance is for labels in %vol")
refuses(check_label.even_odds "check_label ${label} --measured '45 %vol' --uncertainty '0.1 %vol' --confidence '50 %'"
    "probability 0[.]5 is outside 0[.]51 to 0[.]999999")
refuses(check_label.bottle_alone "check_label --bottle '700 mL'" "give all of --bottle, --contents and --contents-unc")
refuses(check_label.certain_contents "check_label ${bottle} --contents-uncertainty '0 mL'" "without uncertainty")
refuses(check_label.unknown_rule "check_label ${bottle} --contents-uncertainty '1 mL' --filling uk" "expected eu or us")
refuses(check_label.barrel "check_label --bottle '20 L' --contents '20 L' --contents-uncertainty '1 mL'"
    "--bottle '20 L': label volume 20000 mL is outside 5 to 10000 mL")
