// SPDX-License-Identifier: BSL-1.0
#pragma once

#include <aqueth/blending.hpp>
#include <aqueth/boiling_curve.hpp>
#include <aqueth/error.hpp>
#include <aqueth/hydrometer.hpp>
#include <aqueth/numeric/root.hpp>
#include <aqueth/parcel.hpp>
#include <aqueth/still/run.hpp>
#include <aqueth/still/run_plan.hpp>
#include <aqueth/still/still.hpp>
#include <aqueth/strength.hpp>
#include <aqueth/units.hpp>
#include <aqueth/wash.hpp>

#include <algorithm>
#include <cmath>
#include <concepts>
#include <cstddef>
#include <optional>
#include <utility>
#include <vector>

namespace aqueth::inline AQUETH_ABI {

/// Jars of equal volume that are filled one after the other.
struct jar_plan {
    units::volume jar;  ///< what goes into a jar, volume at 20 °C, 1 mL to 1 m3
    /// collected before the first jar and discarded, volume at 20 °C
    units::volume foreshots = units::volume();

    /// Checks the ranges above.
    /// @throws refusal if one of the figures is outside its range
    void require_possible() const {
        require_range("jars", argument::volume_of_a_jar, in(jar, litre), "L", 1e-3, 1e3);
        require_range("jars", argument::discarded_volume, in(foreshots, litre), "L", 0.0, unlimited);
    }
};

/// What an alcoholometer for % vol shows.
/// @param strength strength of the liquid
/// @param t        temperature of the liquid, -20 to 40 °C
/// @return reading; empty where it would be off the scale or the liquid frozen
/// @par Source
/// @ref source_oiml_r22
template <strength_basis Strength>
std::optional<volume_fraction> reading_at(Strength strength, units::temperature t) {
    auto const found =
        plain::alcoholometer<double>().reading(to<mass_fraction>(strength).value(), t.celsius());
    if (!found.status.ok) return std::nullopt;
    return volume_fraction(found.value);
}

/// A jar of a run.
struct [[nodiscard]] jar {
    parcel content;   ///< at the plan's product temperature
    run_point begin;  ///< state when the distillate began to run into it
    run_point end;    ///< state when it was full, or the run at its end
    /// what an alcoholometer shows in it at the spout's temperature; empty where that is off the scale
    std::optional<volume_fraction> reading;
    std::optional<volume_fraction> reading_at_end;  ///< the same in what runs when the jar is full
    parcel so_far;                                  ///< this jar and all before it, mixed
};

/// A run in jars.
struct [[nodiscard]] run_in_jars {
    distillation run;       ///< the run; its fractions are the foreshots, if any, and the jars
    std::vector<jar> jars;  ///< in their order; the last one may not be full
};

namespace detail {

/// by how much the last jar may be too full, before there is another one
inline constexpr double overfull = 1e-3;

}  // namespace detail

/// Distils a charge into jars of equal volume. The last jar may lack some, or be a thousandth too full.
/// @param charge   the wash
/// @param s        the still
/// @param plan     ends, start and steps of the run, and the temperature of its spout; without cuts
/// @param into     the jars
/// @param mixture  the equilibrium at the pressure of the day
/// @param progress as for `distil`
/// @return the run and its jars
/// @throws refusal as `distil`; if the plan has cuts, the run would fill more than a thousand jars, or all of
///                 it
///         is foreshots
/// @par Accuracy
/// as `distil`; the jars and the residue add up to the charge
template <boiling_mixture M, std::invocable<run_progress> Progress>
run_in_jars fill_jars(wash const& charge, still const& s, run_plan plan, jar_plan const& into,
                      M const& mixture, Progress const& progress) {
    into.require_possible();
    require_range("jars", argument::number_of_cuts, static_cast<double>(plan.cuts.size()), "", 0.0, 0.0,
                  "the jars are the fractions");
    run_plan whole = plan;
    whole.points = 0;
    units::volume const collected =
        distil(charge, s, whole, mixture, progress).fractions.back().end.collected;
    require_range("jars", argument::discarded_volume, in(into.foreshots, litre), "L", 0.0,
                  in(collected, litre) * (1.0 - 1e-9), "less than the run gives");
    double const jars = (std::max)(1.0, std::ceil(in(collected - into.foreshots, into.jar) - 1e-3));
    require_range("jars", argument::number_of_jars, jars, "", 1.0, run_plan::most_cuts - 10.0);
    if (into.foreshots.value() > 0.0) plan.cuts.push_back({condition::collected(into.foreshots), false});
    for (int k = 1; k < jars; ++k) plan.cuts.push_back({condition::collected(into.jar)});
    distillation run = distil(charge, s, plan, mixture, progress);
    // Jars apart hold a little more than all of it together, which contracts: that may fill one more.
    while (run.fractions.back().product.volume(celsius(20)) > (1.0 + detail::overfull) * into.jar) {
        plan.cuts.push_back({condition::collected(into.jar)});
        run = distil(charge, s, plan, mixture, progress);
    }
    std::vector<jar> filled;
    for (run_fraction const& f : run.fractions) {
        if (!f.kept) continue;
        parcel const so_far = filled.empty()
                                  ? f.product
                                  : mix({filled.back().so_far, f.product}, plan.product_temperature).product;
        filled.push_back({f.product, f.begin, f.end,
                          reading_at(f.product.composition(), plan.spout_temperature),
                          reading_at(f.end.distillate, plan.spout_temperature), so_far});
    }
    return {std::move(run), std::move(filled)};
}

/// The same without progress.
/// @param charge  the wash
/// @param s       the still
/// @param plan    as above
/// @param into    the jars
/// @param mixture the equilibrium at the pressure of the day
/// @return as above
/// @throws refusal as above
template <boiling_mixture M>
run_in_jars fill_jars(wash const& charge, still const& s, run_plan const& plan, jar_plan const& into,
                      M const& mixture) {
    return fill_jars(charge, s, plan, into, mixture, [](run_progress const&) {});
}

/// Where to stop adding jars, so that together they have a strength.
struct [[nodiscard]] jar_cut {
    int first;                               ///< number of the first jar that is taken, from 1
    int full;                                ///< number of jars that are taken whole
    units::volume part;                      ///< and of the next one, volume at 20 °C as it runs in
    parcel product;                          ///< all of this together
    run_point at;                            ///< state of the run at that moment
    std::optional<volume_fraction> reading;  ///< of an alcoholometer at the spout at that moment
};

/// Where to cut so that all jars from one on have an average strength: the last moment at which they have it.
/// The strength of a mixture is that of the liquid, not the mean of the jars' strengths.
/// @param charge  the wash, as for the jars
/// @param s       the still, as for the jars
/// @param plan    the plan, as for the jars
/// @param into    the jars
/// @param filled  the jars of that run
/// @param average strength that they have together, in any basis
/// @param first   number of the first jar that is taken, from 1; those before it are heads
/// @param mixture the equilibrium of that run
/// @return the moment, and what has been collected
/// @throws refusal if there is no such jar, or no moment of the run gives that average: the bounds are the
///         strengths of all of them, and of the first distillate
/// @par Accuracy
/// as `distil`; a millionth of a jar in the volume
template <boiling_mixture M, strength_basis Strength>
jar_cut cut_for_average(wash const& charge, still const& s, run_plan plan, jar_plan const& into,
                        run_in_jars const& filled, Strength average, int first, M const& mixture) {
    auto const number = static_cast<double>(filled.jars.size());
    require_range("jars", argument::number_of_the_first_jar, first, "", 1.0, number);
    auto const begin = static_cast<std::size_t>(first - 1);
    double const wanted = to<mole_fraction>(average).value();
    auto const mole_share = [](parcel const& p) { return to<mole_fraction>(p.composition()).value(); };
    // all jars from the first one to each
    std::vector<parcel> sums{filled.jars[begin].content};
    for (std::size_t k = begin + 1; k < filled.jars.size(); ++k)
        sums.push_back(mix({sums.back(), filled.jars[k].content}, plan.product_temperature).product);
    std::vector<double> averages;
    for (parcel const& each : sums) averages.push_back(mole_share(each));
    double const from_start = filled.jars[begin].begin.distillate.value();
    double const strongest = (std::max)(from_start, *std::max_element(averages.begin(), averages.end()));
    if (!(averages.back() <= wanted && wanted < strongest)) {
        auto const shown = [](double x) { return to<Strength>(mole_fraction(x)).number(); };
        raise_error(refusal("jars", argument::average_of_the_jars, average.number(), Strength::unit,
                            shown(averages.back()), shown(strongest),
                            "from all jars to the first distillate in them"));
    }
    std::size_t full = averages.size();  // jars that can be taken whole
    while (full > 0 && averages[full - 1] < wanted) --full;
    if (full == averages.size()) {  // all of them
        return {first,       static_cast<int>(full), units::volume(),
                sums.back(), filled.jars.back().end, filled.jars.back().reading_at_end};
    }

    // the run again, with so many m3 of the next jar as a fraction
    plan.points = 0;
    plan.cuts.clear();
    if (into.foreshots.value() > 0.0) plan.cuts.push_back({condition::collected(into.foreshots), false});
    for (std::size_t k = 0; k < begin + full; ++k) plan.cuts.push_back({condition::collected(into.jar)});
    std::size_t const last = plan.cuts.size();
    plan.cuts.push_back({condition::collected(into.jar)});
    auto const next = [&](double part) {
        plan.cuts.back().end = condition::collected(part * cubic_metre);
        return distil(charge, s, plan, mixture).fractions[last];
    };
    auto const with = [&](parcel const& next_one) {
        return full == 0 ? next_one : mix({sums[full - 1], next_one}, plan.product_temperature).product;
    };
    double const most = filled.jars[begin + full].content.volume(celsius(20)).value();
    auto const excess = [&](double part) {
        if (full > 0 && part == 0.0) return averages[full - 1] - wanted;
        if (part == most) return averages[full] - wanted;
        return mole_share(with(next(part).product)) - wanted;
    };
    double const found = numeric::bracketed_root(excess, full > 0 ? 0.0 : 1e-6 * most, most, 1e-10);
    double const part =
        (std::min)((std::max)(std::isnan(found) ? 0.0 : found, 1e-6 * most), most * (1.0 - 1e-6));
    run_fraction const rest = next(part);
    return {first,
            static_cast<int>(full),
            part * cubic_metre,
            with(rest.product),
            rest.end,
            reading_at(rest.end.distillate, plan.spout_temperature)};
}

}  // namespace aqueth::inline AQUETH_ABI
