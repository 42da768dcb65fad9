// SPDX-License-Identifier: BSL-1.0
#pragma once

#include <aqueth/blending.hpp>
#include <aqueth/composition.hpp>
#include <aqueth/correlation/oiml_r22.hpp>
#include <aqueth/density.hpp>
#include <aqueth/error.hpp>
#include <aqueth/parcel.hpp>
#include <aqueth/plain/blending.hpp>
#include <aqueth/plain/limit.hpp>
#include <aqueth/strength.hpp>
#include <aqueth/units.hpp>

#include <algorithm>
#include <cmath>
#include <cstddef>
#include <initializer_list>
#include <limits>
#include <numeric>
#include <optional>
#include <span>
#include <utility>
#include <vector>

namespace aqueth::inline AQUETH_ABI {

/// A lot that a blend may use.
struct lot {
    parcel available;        ///< the liquid and its greatest mass
    units::mass at_least{};  ///< the least that must be taken, 0 to the available mass
};

/// The mass of each lot, and the product.
struct [[nodiscard]] lot_blend : blend {
    std::vector<parcel> parts;  ///< one for each lot, in the order given; empty ones have no mass
};

namespace detail {

/// Masses to take from each lot: one or two linear equations within bounds. `blend_to_strength` explains why
/// no general solver is needed.
class lot_problem {
public:
    explicit lot_problem(std::span<lot const> lots) : lots_(lots), by_strength_(lots.size()) {
        require_range(property, argument::number_of_lots, static_cast<double>(lots.size()), "", 1.0,
                      unlimited);
        for (lot const& each : lots) {
            require_range(property, argument::least_mass_of_a_lot, each.at_least.value(), "kg", 0.0,
                          each.available.mass().value(), "no more than is available");
        }
        std::iota(by_strength_.begin(), by_strength_.end(), std::size_t{0});
        std::sort(by_strength_.begin(), by_strength_.end(), [&](auto a, auto b) { return w(a) < w(b); });
    }

    static constexpr char const* property = "blend";
    std::size_t size() const { return lots_.size(); }
    double w(std::size_t i) const { return lots_[i].available.composition().value(); }
    double least(std::size_t i) const { return lots_[i].at_least.value(); }
    double most(std::size_t i) const { return lots_[i].available.mass().value(); }

    /// the lots' indices from the weakest to the strongest, or in reverse
    std::vector<std::size_t> order(bool weakest_first) const {
        return weakest_first ? by_strength_
                             : std::vector<std::size_t>(by_strength_.rbegin(), by_strength_.rend());
    }

    double total(std::vector<double> const& masses) const {
        return std::accumulate(masses.begin(), masses.end(), 0.0);
    }
    double strength(std::vector<double> const& masses) const {
        double ethanol = 0.0;
        for (std::size_t i = 0; i < size(); ++i) ethanol += masses[i] * w(i);
        return ethanol / total(masses);
    }

    std::vector<double> all_least() const {
        std::vector<double> masses(size());
        for (std::size_t i = 0; i < size(); ++i) masses[i] = least(i);
        return masses;
    }
    std::vector<double> all_most() const {
        std::vector<double> masses(size());
        for (std::size_t i = 0; i < size(); ++i) masses[i] = most(i);
        return masses;
    }

    /// a fixed total, taken in the given order: the weakest or the strongest product of that mass
    std::vector<double> greedy(double mass, bool weakest_first) const {
        std::vector<double> masses = all_least();
        double left = mass - total(masses);
        for (std::size_t const i : order(weakest_first)) {
            double const more = std::clamp(left, 0.0, most(i) - least(i));
            masses[i] += more;
            left -= more;
        }
        return masses;
    }

    /// a fixed total: every lot gives the same share of the range between its limits
    std::vector<double> even(double mass) const {
        std::vector<double> masses = all_least();
        double const least_mass = total(masses);
        double const room = total(all_most()) - least_mass;
        double const share = room > 0.0 ? (mass - least_mass) / room : 0.0;
        for (std::size_t i = 0; i < size(); ++i) masses[i] += share * (most(i) - least(i));
        return masses;
    }

    /// a fixed volume: the strength of the weakest or the strongest product of that volume. Its mass is V
    /// rho(w) and w in turn depends on the mass; density changes by at most 0.4 of a change in w, so
    /// substitution converges.
    double extreme_of_volume(units::volume volume, units::temperature t, bool weakest) const {
        double const least_mass = total(all_least());
        double const most_mass = total(all_most());
        double w = weakest ? 0.0 : 1.0;
        for (int k = 0; k < 60; ++k) {
            double const rho = model::hot_density::liquid_density(w, t.celsius());
            w = strength(greedy(std::clamp(volume.value() * rho, least_mass, most_mass), weakest));
        }
        return w;
    }

    /// any total: the weakest or strongest possible product. A lot helps while it is weaker (stronger) than
    /// the rest. Running sums make the cost of each lot independent of their number.
    double extreme(bool weakest) const {
        std::vector<double> masses = all_least();
        double mass = 0.0;
        double ethanol = 0.0;
        auto const add = [&](std::size_t i, double more) {
            mass += more;
            ethanol += more * w(i);
        };
        for (std::size_t i = 0; i < size(); ++i) add(i, least(i));
        for (std::size_t const i : order(weakest)) {
            if (most(i) == 0.0) continue;
            bool const helps = mass == 0.0 || (weakest ? w(i) * mass < ethanol : w(i) * mass > ethanol);
            if (!helps) continue;
            add(i, most(i) - least(i));
            masses[i] = most(i);
        }
        return strength(masses);
    }

    /// any total: the largest product of strength w0. It takes all of the lots on one side of w0, and as much
    /// of the lots on the other side as they balance. The lots farthest from w0 are held back first, because
    /// that costs the least mass. The sum starts from the lower limits: available mass less held mass would
    /// lose all digits for a lot that is nearly all held.
    std::vector<double> most_of(double w0) const {
        std::vector<double> masses = all_most();
        double const strength_of_all = strength(masses);
        if (strength_of_all == w0) return masses;
        bool const too_strong = strength_of_all > w0;
        auto const off = [&](std::size_t i) { return too_strong ? w(i) - w0 : w0 - w(i); };
        double room = 0.0;  // excess (or lack) of ethanol allowed to the other lots above their least masses
        for (std::size_t i = 0; i < size(); ++i) room -= off(i) * (off(i) > 0.0 ? least(i) : most(i));
        for (std::size_t const i : order(too_strong)) {  // the nearest first
            if (off(i) <= 1e-13) continue;  // a lot of the target strength itself is never held back
            double const more = (std::max)(room, 0.0) / off(i);
            if (more < most(i) - least(i)) masses[i] = least(i) + more;
            room -= off(i) * (masses[i] - least(i));
        }
        return masses;
    }

private:
    std::span<lot const> lots_;
    std::vector<std::size_t> by_strength_;
};

}  // namespace detail

/// Reaches a strength by mixing lots, each within its limits.
///
/// With a volume, every lot gives as nearly as possible the same share of the range between its limits.
/// Without one, the blend is as large as the lots allow.
///
/// A general linear or least-squares solver is not needed. For a fixed total mass the product's strength is
/// linear in the masses. It therefore takes every value on the straight line from the even draw to the
/// weakest (or strongest) draw of the same total, and every point of that line keeps all limits. For a free
/// total there is one equation. Its linear-programming optimum holds back the lots farthest from the target
/// first.
///
/// @param lots                at least one lot
/// @param target              strength wanted, in any basis, within what the lots can reach
/// @param product_temperature temperature of the blend when it is measured; every lot must be liquid there
/// @param volume              volume wanted at that temperature; as much as possible if left out
/// @return what to take of each lot; the blend
/// @throws refusal if no blend within the limits has that strength (the bounds are the nearest that can
///         be reached) or volume, a lot's least mass is negative or more than there is, or the temperature is
///         outside its range
/// @par Source
/// Balances of mass and of ethanol; densities @ref source_oiml_r22
template <strength_basis Target>
lot_blend blend_to_strength(std::span<lot const> lots, Target target, units::temperature product_temperature,
                            std::optional<units::volume> volume = std::nullopt) {
    detail::lot_problem const problem(lots);
    require_range(problem.property, argument::mass_of_all_lots, problem.total(problem.all_most()), "kg",
                  (std::numeric_limits<double>::min)(), unlimited);

    auto const reachable = [&](double weakest, double strongest, limit set_by) {
        if (strongest < weakest)
            std::swap(weakest, strongest);  // lots of equal strength: rounding of two summation orders
        return detail::answer(
            problem.property, target,
            plain::detail::reachable(to<mass_fraction>(target).value(), weakest, strongest, set_by));
    };

    std::vector<double> masses;
    if (volume) {
        double const w = to<mass_fraction>(target).value();
        auto const rho = density(mass_fraction(w), product_temperature);
        double const least = problem.total(problem.all_least());
        double const most = problem.total(problem.all_most());
        double const mass = (*volume * rho).value();
        double const to_litres = 1000.0 / rho.value();
        require_range(problem.property, argument::volume_wanted, in(*volume, litre), "L", least * to_litres,
                      most * to_litres * (1.0 + 1e-14), "the sum of the limits of the lots");
        require_range(problem.property, argument::volume_wanted, in(*volume, litre), "L",
                      (std::numeric_limits<double>::min)(), unlimited);
        double const w0 = reachable(problem.extreme_of_volume(*volume, product_temperature, true),
                                    problem.extreme_of_volume(*volume, product_temperature, false),
                                    limit::reach_of_the_lots_at_this_volume);
        std::vector<double> const even = problem.even(mass);
        std::vector<double> const end = problem.greedy(mass, w0 < problem.strength(even));
        double const span = problem.strength(end) - problem.strength(even);
        // Lots of equal strength leave no choice: the even draw is the answer.
        bool const flat = std::abs(span) < 1e-14;
        double const share = flat ? 0.0 : std::clamp((w0 - problem.strength(even)) / span, 0.0, 1.0);
        masses = even;
        for (std::size_t i = 0; i < masses.size(); ++i) masses[i] += share * (end[i] - even[i]);
    } else {
        masses = problem.most_of(
            reachable(problem.extreme(true), problem.extreme(false), limit::reach_of_the_lots));
    }

    std::vector<parcel> parts;
    for (std::size_t i = 0; i < masses.size(); ++i) {
        parts.push_back(lots[i].available.with_mass((std::max)(masses[i], 0.0) * kilogram));
    }
    blend const result = mix(parts, product_temperature);
    return {result, std::move(parts)};
}

/// Reaches a strength by mixing parcels, each of which may be used up or left:
/// `blend_to_strength({heart, tail}, by_volume(62), celsius(20))`.
/// @param parcels             at least one parcel
/// @param target              strength wanted, in any basis, within what the parcels can reach
/// @param product_temperature temperature of the blend when it is measured; every parcel must be liquid
///                            there
/// @param volume              volume wanted at that temperature; as much as possible if left out
/// @return what to take of each parcel; the blend
/// @throws refusal if no blend has that strength (the bounds are the nearest that can be reached) or
///         volume, or the temperature is outside its range
/// @par Source
/// as `blend_to_strength` of lots
template <strength_basis Target>
lot_blend blend_to_strength(std::initializer_list<parcel> parcels, Target target,
                            units::temperature product_temperature,
                            std::optional<units::volume> volume = std::nullopt) {
    std::vector<lot> lots;
    for (parcel const& each : parcels) lots.push_back({each, units::mass()});
    return blend_to_strength(std::span<lot const>(lots), target, product_temperature, volume);
}

/// Reaches a strength with lots and water, where the lots alone are too strong or too little.
///
/// Without a volume all lots are taken whole. With one, every lot gives the same share of the range between
/// its limits. One equation then remains, that of the ethanol; water makes up the mass.
///
/// @param lots                at least one lot
/// @param target              strength wanted, in any basis, above 0 and not above that of the lots taken
/// @param water_temperature   temperature of the water, 0 °C to the boiling point
/// @param product_temperature temperature of the blend when it is measured; every part must be liquid there
/// @param volume              volume wanted at that temperature; as much as possible if left out
/// @return what to take of each lot, and as the last part the water; the blend
/// @throws refusal if the lots are too weak, their limits do not allow so much or so little ethanol, or a
///         temperature is outside its range
/// @par Source
/// as `blend_to_strength`
template <strength_basis Target>
lot_blend blend_with_water(std::span<lot const> lots, Target target, units::temperature water_temperature,
                           units::temperature product_temperature,
                           std::optional<units::volume> volume = std::nullopt) {
    detail::lot_problem const problem(lots);
    require_range(problem.property, argument::mass_of_all_lots, problem.total(problem.all_most()), "kg",
                  (std::numeric_limits<double>::min)(), unlimited);
    double const w = to<mass_fraction>(target).value();
    // mass of the water for a mass of lots of that strength
    auto const water_share = [&](double strength) {
        return detail::answer(problem.property, target, plain::detail::share_to_dilute(strength, w, 0.0));
    };
    std::vector<double> masses = problem.all_most();
    if (volume) {
        static_cast<void>(water_share(problem.extreme(false)));  // the target is above 0 and within reach
        double const ethanol = w * (*volume * density(mass_fraction(w), product_temperature)).value();
        std::vector<double> const least = problem.all_least();
        double least_ethanol = 0.0, range = 0.0;
        for (std::size_t i = 0; i < problem.size(); ++i) {
            least_ethanol += problem.w(i) * least[i];
            range += problem.w(i) * (masses[i] - least[i]);
        }
        double const litres = in(*volume, litre);
        require_range(problem.property, argument::volume_wanted, litres, "L",
                      litres * (least_ethanol / ethanol), litres * ((least_ethanol + range) / ethanol),
                      "the ethanol within the limits of the lots");
        double const share = range > 0.0 ? std::clamp((ethanol - least_ethanol) / range, 0.0, 1.0) : 0.0;
        for (std::size_t i = 0; i < problem.size(); ++i)
            masses[i] = least[i] + share * (masses[i] - least[i]);
    }
    std::vector<parcel> parts;
    for (std::size_t i = 0; i < masses.size(); ++i)
        parts.push_back(lots[i].available.with_mass(masses[i] * kilogram));
    double const taken = problem.total(masses);
    parts.push_back(water(water_share(problem.strength(masses)) * taken * kilogram, water_temperature));
    blend const result = mix(parts, product_temperature);
    return {result, std::move(parts)};
}

}  // namespace aqueth::inline AQUETH_ABI
