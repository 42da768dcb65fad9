#!/usr/bin/env bash
# SPDX-License-Identifier: BSL-1.0
# Do the tests notice? Changes the library in one place at a time and demands that a test fails:
#   tests/mutation.sh [--sample N] [GROUP...]
# GROUPs of numbers (the 6th significant digit, or the last one printed if there are fewer; whole numbers too, but not
# indices, sizes and loops), each over the headers of correlation/ and model/ that hold what was published or fitted, and over the
# tables of laws and classes:
#   r22 gibbs raoult saturation freezing water hot-density its90 virial heat-capacity sugar wash atmosphere constants
#   label-figures instrument-figures
# GROUPs of operators (+ - * / < > <= >= && ||):
#   r22-code formulas saturation-code gibbs-code equilibrium-code vapour enthalpy-code blending lots parcel hydrometer
#   strength attenuation sweetening caloric heating trade measured-equilibrium uncertainty monte-carlo conformity labelling instruments
#   column batch-still holdup still-estimate traces
# A GROUP of faults that somebody might make, tests/planted_faults.txt, each with the test that must notice it:
#   planted
# Without a GROUP, all of them. Left out are the first guesses (oiml_r22_inverse_guess.hpp, bubble_point_guess.hpp): no
# published figures, and what they start is checked before it is returned, so that a changed one only costs time.
# --sample N tries N changes of each header, drawn at random but the same ones each time (MUTATION_SEED, 1), where all
# of them would take too long.
# Prints one line for each change that no test noticed (a survivor), then the count of its group. Exit status 1 if
# there is a survivor that tests/mutation_survivors.txt does not list with its reason. Works in a scratch copy of
# the headers; takes one to ten seconds a change. A test that runs for a minute of the processor's time counts as failed. MUTATION_JOBS (1) and EIGEN (/usr/include/eigen3) may be set. The
# compiler is clang++, whose precompiled headers make it several times as quick as g++ here.
set -euo pipefail
cd "$(dirname "${BASH_SOURCE[0]}")/.."

jobs=${MUTATION_JOBS:-1}
known=tests/mutation_survivors.txt
planted=tests/planted_faults.txt
seed=${MUTATION_SEED:-1}
sample=
if [[ ${1-} == --sample ]]; then
    sample=${2:?"--sample needs a number"}
    shift 2
fi
scratch=$(mktemp -d)
trap 'rm -rf "$scratch"' EXIT
compile=(clang++ -std=c++20 -O0 -DAQUETH_TABLES="\"$PWD/tables\"" -Itests)

# The source of a test, the arguments it takes when it is run, and what it is linked with. "fit/NAME" is a fit, asked
# whether the library agrees with what it finds in the tables: the only test that knows fitted coefficients so well.
source_of() {
    case $1 in
        fit/*) echo "src/$1.cpp" ;;
        */*) echo "tests/${1}_test.cpp" ;;
        *) if [[ -e tests/${1}_test.cpp ]]; then echo "tests/${1}_test.cpp"; else find tests -name "${1}_test.cpp"; fi ;;
    esac
}
arguments_of() { case $1 in fit/*) echo tables agreement ;; esac; }
libraries_of() { case $1 in fit/*) ;; *) echo -lgtest_main -lgtest ;; esac; }
options_of() {
    case $1 in
        fit/*) echo -isystem "${EIGEN:-/usr/include/eigen3}" ;;
        # long at -O0
        *learning | *learning_stages | *run_neck) echo -O1 -isystem "${EIGEN:-/usr/include/eigen3}" ;;
        *column | *run_* | *monte_carlo | published/metrology_guides) echo -O1 ;;
    esac
}

# Compiles once, for each test, what its sources include from elsewhere, and sees that it passes without any change.
prepare() { # test...
    local test source room
    for test in "$@"; do
        room="$scratch/$test"
        [[ -e $room/common.hpp ]] && continue
        mkdir -p "$room"
        source=$(source_of "$test")
        grep '^#include <' "$source" | grep -v '<aqueth/' >"$room/common.hpp"
        [[ $test == fit/* ]] && echo '#include <Eigen/Dense>' >>"$room/common.hpp"
        # shellcheck disable=SC2046
        "${compile[@]}" -fpch-instantiate-templates $(options_of "$test") -x c++-header "$room/common.hpp" \
            -o "$room/common.hpp.pch"
        if [[ $(judge include/aqueth/version.hpp "" "$test" < <(cat include/aqueth/version.hpp)) != SURVIVED* ]]; then
            echo "mutation.sh: $test fails without any change" >&2
            exit 2
        fi
    done
}

# Prints the header with change number n; nothing if there are not so many. What was changed goes to standard error.
mutate() { # coefficients|operators header n
    awk -v kind="$1" -v wanted="$3" '
        function changed_digit(number,    i, c, last, seen, zero) {
            last = 0; seen = 0; zero = 0
            for (i = 1; i <= length(number); ++i) {
                c = substr(number, i, 1)
                if (c == "e" || c == "E") break
                if (c !~ /[0-9]/) continue
                zero = i
                if (c != "0" || seen > 0) ++seen
                if (seen > 0 && seen <= 6) last = i
            }
            if (last == 0 && number ~ /[.]/) return number  # there is no sixth digit in it
            if (last == 0) last = zero
            c = substr(number, last, 1)
            return substr(number, 1, last - 1) (c == "9" ? 8 : c + 1) substr(number, last + 1)
        }
        # Whether what stands between these is a number of a formula: not a part of a name, an index or a size.
        function is_figure(before, after,    b, a) {
            b = substr(before, length(before)); a = substr(after, 1, 1)
            return b !~ /[A-Za-z0-9_.<]/ && b != "[" && a !~ /[A-Za-z_>]/ && a != "]"
        }
        function note(old, new,    code) {
            code = $0; sub(/ *\/\/.*/, "", code); gsub(/^ +| +$/, "", code); gsub(/ /, "", old); gsub(/ /, "", new)
            printf "%d: %s -> %s in: %s", NR, old, new, code > "/dev/stderr"; ++found
        }
        BEGIN {
            count = 0; found = 0
            from = "[+]|-|[*]|/|<=|>=|<|>|&&|[|][|]"
            n = split("+ - * / <= >= < > && ||", old, " ")
            split("- + / * > < >= <= || &&", new, " ")
            for (i = 1; i <= n; ++i) other[old[i]] = new[i]
        }
        {
            line = $0; done = ""; comment = ""
            if (line ~ /^ *(\/\/|#|static_assert|template|"|inline constexpr (source|char))/) { print; next }
            if (i = index(line, "//")) { comment = substr(line, i); line = substr(line, 1, i - 1) }
            pattern = kind == "operators" ? " (" from ") " : "[0-9]+([.][0-9]*)?(e[+-]?[0-9]+)?"
            if (kind == "coefficients" && line ~ /size_t|for \(|using /) { print; next }
            while (match(line, pattern)) {
                before = done substr(line, 1, RSTART - 1)
                text = substr(line, RSTART, RLENGTH)
                line = substr(line, RSTART + RLENGTH)
                if (kind == "operators") {
                    with = " " other[substr(text, 2, length(text) - 2)] " "
                } else {
                    with = is_figure(before, line) ? changed_digit(text) : text
                }
                if (with != text && ++count == wanted) { note(text, with); text = with }
                done = before text
            }
            print done line comment
        }
        END { exit found ? 0 : 9 }' "$2"
}

# Runs the tests against the library with one header changed, and prints what came of it: "killed", "stillborn" (does
# not compile) or "SURVIVED", and what was changed. The header is read from standard input.
judge() { # header what test...
    local header=$1 what=$2 room
    shift 2
    room=$(mktemp -d "$scratch/room.XXXXXX")
    mkdir -p "$room/include"
    cp -r include/aqueth "$room/include"
    cat >"$room/$header"
    local test verdict=SURVIVED
    for test in "$@"; do
        # shellcheck disable=SC2046
        if ! "${compile[@]}" $(options_of "$test") -I"$room/include" -include "$scratch/$test/common.hpp" \
            "$(source_of "$test")" -o "$room/test" $(libraries_of "$test") >/dev/null 2>"$room/errors"; then
            verdict=stillborn
            # a test that the compiler makes
            if grep -q 'static.assert' "$room/errors"; then verdict=killed; fi
            break
        elif ! { (ulimit -t 60 && GTEST_FAIL_FAST=1 "$room/test" $(arguments_of "$test")); } >/dev/null 2>&1; then
            verdict=killed
            break
        fi
    done
    rm -rf "$room"
    echo "$verdict $header:$what"
}

# Tries change n of a header.
try() { # kind header n test...
    local changed
    changed=$(mktemp "$scratch/changed.XXXXXX")
    mutate "$1" "$2" "$3" >"$changed" 2>"$changed.what"
    judge "$2" "$(<"$changed.what")" "${@:4}" <"$changed"
    rm "$changed" "$changed.what"
}

# Prints the survivors of a file of verdicts, and the count.
report() { # name results note
    local line
    while read -r line; do
        line=${line#SURVIVED }
        # Listed without its line number, which moves.
        if grep --fixed-strings --quiet -- "$(sed -E 's/:[0-9]+:/:/' <<<"$line")" "$known"; then
            echo "survived, as listed: $line"
        else
            echo "SURVIVED: $line"
            touch "$scratch/failed"
        fi
    done < <(grep '^SURVIVED' "$2" || true)
    printf '%s: %d changes%s, %d noticed, %d do not compile, %d survived\n' "$1" "$(wc -l <"$2")" "$3" \
        "$(grep -c '^killed' "$2" || true)" "$(grep -c '^stillborn' "$2" || true)" \
        "$(grep -c '^SURVIVED' "$2" || true)"
}

group() { # name kind header test...
    local name=$1 kind=$2 header=$3 count=0 n running=0 note=
    shift 3
    prepare "$@"
    local results="$scratch/$name.results"
    : >"$results"
    while mutate "$kind" "$header" $((count + 1)) >/dev/null 2>&1; do count=$((count + 1)); done
    local chosen=$count
    if [[ -n $sample ]] && ((sample < count)); then
        chosen=$sample
        note=" drawn from $count"
    fi
    while read -r n; do
        try "$kind" "$header" "$n" "$@" >>"$results" &
        ((++running < jobs)) || { wait -n; ((running--)) || true; }
    done < <(seq "$count" | shuf -n "$chosen" --random-source=<(yes "$seed") | sort -n)
    wait
    report "$name" "$results" "$note"
}

# Prints a file with a piece of text, which must stand in it once, put in place of another.
replace() { # file old new
    OLD=$2 NEW=$3 awk '
        {
            if (at = index($0, ENVIRON["OLD"])) {
                ++found
                rest = substr($0, at + length(ENVIRON["OLD"]))
                if (index(rest, ENVIRON["OLD"])) ++found
                $0 = substr($0, 1, at - 1) ENVIRON["NEW"] rest
            }
            print
        }
        END { exit found == 1 ? 0 : 9 }' "$1"
}

# A fault of the list is four lines: # what is wrong with it; the header and the test; - what stands there; + what is
# put there.
plant() {
    local results="$scratch/planted.results" line header test old
    : >"$results"
    while IFS= read -r line; do
        case $line in
            '#'* | '') ;;
            '- '*) old=${line#- } ;;
            '+ '*)
                prepare "$test"
                if ! replace "include/aqueth/$header" "$old" "${line#+ }" >"$scratch/planted.hpp"; then
                    echo "mutation.sh: $planted: not once in $header: $old" >&2
                    touch "$scratch/failed"
                    continue
                fi
                judge "include/aqueth/$header" " $old -> ${line#+ }" "$test" <"$scratch/planted.hpp" >>"$results"
                ;;
            *) read -r header test <<<"$line" ;;
        esac
    done <"$planted"
    report planted "$results" ""
}

# A header of formulas by its name: of correlation/ or of model/.
formulas_of() { find include/aqueth/{correlation,model} -name "$1.hpp"; }
numbers() { group "$1" coefficients "$(formulas_of "$2")" "${@:3}"; }
operators() { group "$1" operators "$(formulas_of "$2")" "${@:3}"; }
run() {
    case $1 in
        r22) numbers r22 oiml_r22_coefficients published/oiml_r22_formula ;;
        gibbs) numbers gibbs excess_gibbs_coefficients fit/excess_gibbs ;;
        raoult) numbers raoult modified_raoult published/total_pressures vapour_liquid ;;
        saturation)
            numbers saturation water_saturation_wagner_pruss published/pure_components saturation
            numbers saturation ethanol_saturation_poling published/pure_components saturation
            ;;
        freezing)
            numbers freezing freezing_point_table freezing_point
            numbers freezing freezing_point freezing_point
            ;;
        water) numbers water cipm_2001_water published/water_density cipm_2001_water ;;
        hot-density)
            numbers hot-density iapws_liquid_water published/hot_density
            numbers hot-density ethanol_schroeder published/hot_density
            operators hot-density iapws_liquid_water published/hot_density
            operators hot-density ethanol_schroeder published/hot_density
            operators hot-density hot_density model/hot_density published/hot_density
            ;;
        its90) numbers its90 its90 published/water_density its90 ;;
        virial)
            numbers virial second_virial_crc published/pure_components second_virial
            numbers virial ethanol_second_virial second_virial
            ;;
        heat-capacity)
            numbers heat-capacity heat_capacity_perry published/pure_components heat_capacity_perry
            ;;
        sugar)
            numbers sugar sucrose_density published/sugar_solution wash
            numbers sugar solution_coefficients fit/solutions
            ;;
        wash)
            numbers wash balling published/sugar_solution attenuation
            numbers wash excise_notice_226 published/sugar_solution attenuation
            numbers wash fermentation attenuation
            ;;
        transport)
            numbers transport viscosity_coefficients published/transport
            numbers transport sound_speed_coefficients published/transport
            numbers transport thermal_conductivity_melinder published/transport
            numbers transport flammability published/flash_points flammability
            group transport operators include/aqueth/plain/flammability.hpp flammability published/flash_points ;;
        pycnometer) group pycnometer operators include/aqueth/plain/pycnometer.hpp pycnometer ;;
        mash)
            numbers mash malt_heat published/mash mash
            numbers mash fermentation_heat published/mash mash
            group mash operators include/aqueth/plain/mash.hpp mash published/mash ;;
        cask)
            numbers cask cask_loss_limits published/casks
            group cask operators include/aqueth/plain/cask.hpp cask ;;
        trade-scales)
            numbers trade-scales trade_scales trade_scales published/trade_scales
            group trade-scales operators include/aqueth/plain/trade_scales.hpp trade_scales published/trade_scales ;;
        atmosphere) numbers atmosphere icao_atmosphere atmosphere ;;
        constants)
            numbers constants molar_mass constants
            numbers constants gas_constant constants
            numbers constants air_buoyancy constants
            numbers constants glass_expansion constants
            ;;
        r22-code)
            operators r22-code oiml_r22 published/oiml_r22_formula oiml_r22
            operators r22-code oiml_r22_inverse oiml_r22_inverse strength density
            ;;
        formulas)
            operators formulas cipm_2001_water published/water_density cipm_2001_water
            operators formulas its90 published/water_density its90
            operators formulas freezing_point freezing_point
            operators formulas icao_atmosphere atmosphere
            operators formulas molar_mass constants
            operators formulas air_buoyancy constants
            operators formulas second_virial_crc second_virial published/pure_components
            operators formulas ethanol_second_virial second_virial
            operators formulas heat_capacity_perry published/pure_components heat_capacity_perry
            operators formulas sucrose_density published/sugar_solution wash
            operators formulas balling published/sugar_solution attenuation
            operators formulas excise_notice_226 published/sugar_solution attenuation
            operators formulas fermentation attenuation
            operators formulas sugar_solution plain/sweetening published/sweetened_spirit
            operators formulas refraction plain/refraction published/refraction
            operators formulas methanol_water plain/refraction published/refraction
            operators formulas sample_distillation plain/sweetening
            ;;
        saturation-code)
            operators saturation-code water_saturation_wagner_pruss published/pure_components saturation
            operators saturation-code ethanol_saturation_poling published/pure_components saturation
            operators saturation-code wagner_form published/pure_components saturation
            ;;
        gibbs-code)
            operators gibbs-code skewed_redlich_kister excess_gibbs
            operators gibbs-code excess_gibbs excess_gibbs published/excess_enthalpies published/total_pressures
            ;;
        equilibrium-code)
            operators equilibrium-code modified_raoult published/total_pressures vapour_liquid
            operators equilibrium-code vapour_liquid published/total_pressures vapour_liquid
            ;;
        vapour)
            numbers vapour vapour_deviations vapour_uncertainty
            operators vapour vapour_deviations vapour_uncertainty
            group vapour operators include/aqueth/vapour_uncertainty.hpp vapour_uncertainty
            ;;
        enthalpy-code) operators enthalpy-code enthalpy enthalpy ;;
        blending) group blending operators include/aqueth/plain/blending.hpp blending plain/blending properties ;;
        lots) group lots operators include/aqueth/lot_blending.hpp lot_blending properties ;;
        parcel) group parcel operators include/aqueth/plain/parcel.hpp parcel plain/parcel blending ;;
        hydrometer) group hydrometer operators include/aqueth/plain/hydrometer.hpp hydrometer plain/hydrometer ;;
        freezing-code) group freezing-code operators include/aqueth/freezing.hpp freezing density ;;
        strength) group strength operators include/aqueth/plain/strength.hpp strength plain/strength published/us_gauging_manual ;;
        weighing) group weighing operators include/aqueth/plain/weighing.hpp weighing plain/weighing published/us_gauging_manual ;;
        specific-gravity) group specific-gravity operators include/aqueth/plain/specific_gravity.hpp specific_gravity plain/specific_gravity ;;
        attenuation)
            group attenuation operators include/aqueth/plain/attenuation.hpp plain/attenuation attenuation \
                published/sugar_solution
            group attenuation operators include/aqueth/plain/wash.hpp plain/wash wash
            ;;
        sweetening)
            group sweetening operators include/aqueth/plain/sweetening.hpp plain/sweetening sweetening
            group sweetening operators include/aqueth/plain/refraction.hpp plain/refraction refraction
            ;;
        caloric) group caloric operators include/aqueth/plain/caloric.hpp plain/caloric caloric ;;
        heating)
            group heating operators include/aqueth/still/heating.hpp heating
            group heating operators include/aqueth/numeric/integration.hpp integration
            ;;
        trade)
            group trade operators include/aqueth/still/cooling.hpp cooling
            group trade operators include/aqueth/still/cost.hpp cost
            group trade operators include/aqueth/still/jars.hpp jars
            group trade operators include/aqueth/still/season.hpp season
            ;;
        measured-equilibrium)
            group measured-equilibrium operators include/aqueth/measured_equilibrium.hpp measured_equilibrium \
                measured_equilibrium_verdict
            group measured-equilibrium operators include/aqueth/numeric/monotone_cubic.hpp monotone_cubic
            ;;
        uncertainty)
            group uncertainty operators include/aqueth/metrology/uncertainty.hpp uncertainty published/metrology_guides monte_carlo
            ;;
        monte-carlo)
            group monte-carlo operators include/aqueth/metrology/monte_carlo.hpp monte_carlo published/metrology_guides
            group monte-carlo operators include/aqueth/numeric/random.hpp random
            ;;
        conformity) group conformity operators include/aqueth/metrology/conformity.hpp conformity published/metrology_guides ;;
        labelling) group labelling operators include/aqueth/metrology/labelling.hpp labelling ;;
        label-figures) group label-figures coefficients include/aqueth/metrology/labelling.hpp labelling ;;
        instruments) group instruments operators include/aqueth/metrology/instruments.hpp instruments ;;
        instrument-figures) group instrument-figures coefficients include/aqueth/metrology/instruments.hpp instruments ;;
        column)
            group column operators include/aqueth/still/detail/column_solver.hpp column run_columns
            group column operators include/aqueth/still/column_limits.hpp column
            ;;
        batch-still)
            group batch-still operators include/aqueth/still/detail/batch_run.hpp run_balances run_columns run_conditions
            ;;
        holdup)
            group holdup operators include/aqueth/still/detail/holdup_run.hpp run_holdup
            group holdup coefficients include/aqueth/numeric/diagonally_implicit.hpp diagonally_implicit
            ;;
        still-estimate)
            group still-estimate operators include/aqueth/still/detail/boiling_down.hpp learning_stages
            group still-estimate operators include/aqueth/still/detail/log_forecast.hpp learning
            group still-estimate operators include/aqueth/still/detail/stage_fit.hpp learning_stages
            group still-estimate operators include/aqueth/still/detail/log_fit.hpp learning
            group still-estimate operators include/aqueth/still/learned.hpp learning
            group still-estimate operators include/aqueth/still/run_log.hpp run_log
            group still-estimate operators include/aqueth/numeric/minimum.hpp minimum
            ;;
        traces)
            operators traces traces traces plain/traces published/traces
            group traces operators include/aqueth/plain/traces.hpp traces plain/traces
            group traces operators include/aqueth/still/detail/trace_run.hpp still/traces
            group traces operators include/aqueth/still/detail/held_trace_run.hpp still/traces
            group traces operators include/aqueth/still/traces.hpp still/traces
            ;;
        planted) plant ;;
        *)
            echo "mutation.sh: no group '$1'" >&2
            exit 2
            ;;
    esac
}

if (($# == 0)); then
    set -- r22 gibbs raoult saturation freezing water hot-density its90 virial heat-capacity sugar wash atmosphere constants \
        label-figures instrument-figures r22-code formulas saturation-code gibbs-code equilibrium-code vapour enthalpy-code \
        blending lots parcel hydrometer freezing-code strength weighing specific-gravity \
        attenuation sweetening caloric heating trade measured-equilibrium uncertainty \
        monte-carlo conformity labelling instruments column batch-still holdup still-estimate traces planted
fi
for name in "$@"; do run "$name"; done
[[ ! -e $scratch/failed ]]
