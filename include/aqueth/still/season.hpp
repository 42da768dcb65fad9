// SPDX-License-Identifier: BSL-1.0
#pragma once

#include <aqueth/blending.hpp>
#include <aqueth/boiling_curve.hpp>
#include <aqueth/composition.hpp>
#include <aqueth/density.hpp>
#include <aqueth/error.hpp>
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

/// Where a fraction of a spirit run goes.
enum class destination {
    discarded,  ///< it leaves the stillhouse
    hearts,     ///< it is the product
    returned    ///< it goes into the charges of the next cycle
};

/// How a lot of wash is distilled twice: strips give low wines, spirit runs make hearts of them. What is
/// returned joins the low wines of the next lot.
struct season_plan {
    static constexpr double greatest_loss = 0.2;  ///< greatest share that may be lost
    static constexpr int most_runs = 1000;        ///< greatest number of strips, and of spirit runs
    static constexpr int most_cycles = 1000;      ///< so many lots must be enough until it repeats itself

    still stripping_still;                 ///< the still with wash in it
    run_plan strip;                        ///< its plan; without cuts, as all of it is low wines
    units::volume wash_in_a_strip;         ///< most wash that goes into the pot, volume at 20 °C
    still spirit_still;                    ///< the still with low wines in it
    run_plan spirit_run;                   ///< its plan
    units::volume charge_of_a_spirit_run;  ///< most low wines that go into the pot, volume at 20 °C
    /// where the fractions of a spirit run go, in their order. If empty: what the plan does not keep is
    /// discarded, the last of several fractions is returned, the others are hearts.
    std::vector<destination> destinations = {};
    /// share of everything that runs off which is lost: evaporated, or left in hoses and vessels; 0 to 0.2
    double lost = 0.0;
    /// water is added to a charge of a spirit run until it is no stronger than this
    std::optional<volume_fraction> strongest_charge = std::nullopt;
    units::time between_runs = units::time();  ///< to empty, clean and fill the pot, 0 to 1000 h

    /// Checks the ranges above.
    /// @throws refusal if one of the figures is outside its range, or the strip has cuts
    void require_possible() const {
        char const* const property = "season";
        require_range(property, argument::volume_of_the_charge, in(wash_in_a_strip, litre), "L", 1e-3,
                      unlimited);
        require_range(property, argument::volume_of_the_charge, in(charge_of_a_spirit_run, litre), "L", 1e-3,
                      unlimited);
        require_range(property, argument::share_that_is_lost, lost, "", 0.0, greatest_loss);
        require_range(property, argument::time_between_runs, in(between_runs, hour), "h", 0.0, 1000.0);
        require_range(property, argument::number_of_cuts, static_cast<double>(strip.cuts.size()), "", 0.0,
                      0.0, "all that a strip gives is low wines");
        if (strongest_charge)
            require_range(property, argument::strongest_charge, strongest_charge->percent(),
                          volume_fraction::unit, 1.0, 100.0, "the strength to which a charge is diluted");
    }
};

/// One lot of wash on its way.
struct [[nodiscard]] season_cycle {
    int spirit_runs;      ///< number of spirit runs
    parcel charge;        ///< of each of them
    units::mass water;    ///< added to all of them together
    parcel hearts;        ///< of all of them
    parcel returned;      ///< of all of them, for the next lot
    parcel discarded;     ///< of all of them
    distillation spirit;  ///< one of them
};

/// Where a substance of one lot went. All as masses.
struct [[nodiscard]] season_ledger {
    units::mass from_wash;   ///< in the wash
    units::mass added;       ///< in water that was added
    units::mass taken_up;    ///< in what the lot before had returned
    units::mass hearts;      ///< in the hearts
    units::mass returned;    ///< in what is returned to the next lot
    units::mass stillage;    ///< left in the pot by the strips
    units::mass spent_lees;  ///< left in the pot by the spirit runs
    units::mass discarded;   ///< in what is discarded
    units::mass lost;        ///< evaporated, or left in hoses and vessels

    /// @return what went in less what came out, over what went in: rounding and the integrator's error
    double balance() const {
        units::mass const all = from_wash + added + taken_up;
        return in(all - hearts - returned - stillage - spent_lees - discarded - lost, all);
    }
};

/// Result of a season, when one lot is like the one before.
struct [[nodiscard]] season {
    int strips;                        ///< number of strips
    distillation strip;                ///< one of them
    parcel low_wines;                  ///< of all of them, after losses
    std::vector<season_cycle> cycles;  ///< lot after lot from the first one, which has nothing returned to it
    season_ledger ethanol;             ///< of the last lot
    season_ledger water;               ///< of the last lot
    units::time duration;              ///< of the last lot: warming, boiling and what is between
    units::energy energy;              ///< heat supplied to the pots in the last lot

    /// @return the lot that repeats itself
    season_cycle const& steady() const { return cycles.back(); }
    /// @return share of the wash's ethanol that is in the hearts
    double yield() const { return in(ethanol.hearts, ethanol.from_wash); }
};

/// Progress of a season.
struct season_progress {
    int cycle;         ///< lot that is distilled, from 1; 0 for the strip
    run_progress run;  ///< its run
};

namespace detail {

/// the destinations of the fractions of a run
inline std::vector<destination> destinations_of(season_plan const& plan,
                                                std::vector<run_fraction> const& fractions) {
    auto const number = static_cast<double>(fractions.size());
    std::vector<destination> all = plan.destinations;
    if (all.empty()) {
        for (run_fraction const& f : fractions)
            all.push_back(f.kept ? destination::hearts : destination::discarded);
        if (all.size() > 1 && fractions.back().kept) all.back() = destination::returned;
    }
    require_range("season", argument::number_of_destinations, static_cast<double>(all.size()), "", number,
                  number, "one for each fraction of a spirit run");
    auto const hearts = std::count(all.begin(), all.end(), destination::hearts);
    require_range("season", argument::number_of_hearts, static_cast<double>(hearts), "", 1.0, number,
                  "something must leave the stillhouse");
    return all;
}

/// number of equal charges
inline int charges(units::volume all, units::volume most) {
    double const number = (std::max)(1.0, std::ceil(in(all, most) - 1e-9));
    require_range("season", argument::number_of_runs, number, "", 1.0, season_plan::most_runs);
    return static_cast<int>(number);
}

inline parcel nothing_at(units::temperature t) { return parcel::of(units::mass(), mass_fraction(0.0), t); }

/// so many times a parcel
inline parcel times(double factor, parcel const& p) { return p.with_mass(factor * p.mass()); }

}  // namespace detail

/// Distils lot after lot of the same wash until one is like the one before.
///
/// A lot is divided into equal strips. Their low wines and what the lot before returned are divided into
/// equal charges of spirit runs. The number of spirit runs of a lot never falls below that of the lot before.
/// @param lot      all the wash of a lot, at its temperature
/// @param plan     stills, runs and losses
/// @param mixture  the equilibrium at the pressure of the day
/// @param progress callable: season_progress -> void
/// @return runs, hearts, yields, times and heat
/// @throws refusal as `distil`; if a figure of the plan is outside its range, there are too many runs, or the
///                 lots
///         do not repeat themselves
/// @par Accuracy
/// as `distil`; the ledgers close to 1e-9. The last lot differs from the one before by 1e-11 of its ethanol.
template <boiling_mixture M, std::invocable<season_progress> Progress>
season distil_season(wash const& lot, season_plan const& plan, M const& mixture, Progress const& progress) {
    plan.require_possible();
    require_range("season", argument::mass_of_the_charge, lot.mass().value(), "kg", 1e-6, unlimited);
    double const kept = 1.0 - plan.lost;
    int const strips = detail::charges(lot.volume(celsius(20)), plan.wash_in_a_strip);
    wash const each = wash::of(detail::times(1.0 / strips, lot.liquid()), lot.solids() / strips);
    distillation strip = distil(each, plan.stripping_still, plan.strip, mixture, [&](run_progress const& p) {
        progress(season_progress{0, p});
    });
    units::temperature const t = plan.strip.product_temperature;
    parcel const stripped = detail::times(strips, strip.fractions.back().product);
    parcel const low_wines = detail::times(kept, stripped);

    std::vector<season_cycle> cycles;
    parcel returned = detail::nothing_at(t);
    int runs = 1;
    double const accuracy = 1e-11 * lot.liquid().mass().value();
    for (bool repeats = false; !repeats;) {
        int const cycle = static_cast<int>(cycles.size()) + 1;
        require_range("season", argument::number_of_cycles, cycle, "", 1.0, season_plan::most_cycles,
                      "more is returned with every lot");
        parcel all = mix({low_wines, returned}, t).product;
        units::mass const undiluted = all.mass();
        if (plan.strongest_charge && all.strength() > *plan.strongest_charge)
            all = dilute(all, *plan.strongest_charge, water_at(t), t).product;
        runs = (std::max)(runs, detail::charges(all.volume(celsius(20)), plan.charge_of_a_spirit_run));
        parcel const charge = detail::times(1.0 / runs, all);
        distillation spirit =
            distil(wash::of(charge), plan.spirit_still, plan.spirit_run, mixture, [&](run_progress const& p) {
                progress(season_progress{cycle, p});
            });
        auto const destinations = detail::destinations_of(plan, spirit.fractions);
        units::temperature const after = plan.spirit_run.product_temperature;
        auto const going = [&](destination where) {
            std::vector<parcel> parts{detail::nothing_at(after)};
            for (std::size_t k = 0; k < spirit.fractions.size(); ++k)
                if (destinations[k] == where) parts.push_back(spirit.fractions[k].product);
            return parts.size() == 1 ? parts.front() : detail::times(runs * kept, mix(parts, after).product);
        };
        parcel const next = going(destination::returned);
        repeats = std::abs((next.ethanol() - returned.ethanol()).value()) <= accuracy &&
                  std::abs((next.water() - returned.water()).value()) <= accuracy;
        cycles.push_back({runs, charge, all.mass() - undiluted, going(destination::hearts), next,
                          going(destination::discarded), std::move(spirit)});
        if (!repeats) returned = next;
    }
    season_cycle const& last = cycles.back();
    auto const ledger = [&](auto const& substance, units::mass added) {
        units::mass run_off_in_spirit;
        for (run_fraction const& f : last.spirit.fractions) run_off_in_spirit += substance(f.product);
        return season_ledger{substance(lot.liquid()),
                             added,
                             substance(returned),
                             substance(last.hearts),
                             substance(last.returned),
                             strips * substance(strip.residue.liquid()),
                             last.spirit_runs * substance(last.spirit.residue.liquid()),
                             substance(last.discarded),
                             substance(stripped) - substance(low_wines) +
                                 (plan.lost * last.spirit_runs) * run_off_in_spirit};
    };
    auto const ethanol = ledger([](parcel const& p) { return p.ethanol(); }, units::mass());
    auto const water = ledger([](parcel const& p) { return p.water(); }, last.water);
    auto const hours = [&](distillation const& d) {
        return d.warming.duration + d.boiling_time + plan.between_runs;
    };
    units::time const duration = static_cast<double>(strips) * hours(strip) +
                                 static_cast<double>(last.spirit_runs) * hours(last.spirit);
    units::energy const energy = static_cast<double>(strips) * strip.energy() +
                                 static_cast<double>(last.spirit_runs) * last.spirit.energy();
    return {strips, std::move(strip), low_wines, std::move(cycles), ethanol, water, duration, energy};
}

/// The same without progress.
/// @param lot     all the wash of a lot
/// @param plan    stills, runs and losses
/// @param mixture the equilibrium at the pressure of the day
/// @return as above
/// @throws refusal as above
template <boiling_mixture M>
season distil_season(wash const& lot, season_plan const& plan, M const& mixture) {
    return distil_season(lot, plan, mixture, [](season_progress const&) {});
}

}  // namespace aqueth::inline AQUETH_ABI
