// SPDX-License-Identifier: BSL-1.0
#pragma once

#include <aqueth/blending.hpp>
#include <aqueth/composition.hpp>
#include <aqueth/error.hpp>
#include <aqueth/liquid.hpp>
#include <aqueth/parcel.hpp>
#include <aqueth/plain/blending.hpp>
#include <aqueth/strength.hpp>
#include <aqueth/units.hpp>
#include <aqueth/weighing.hpp>

#include <array>
#include <optional>
#include <vector>

namespace aqueth::inline AQUETH_ABI {

/// One step of a dilution: the water that is added, and the product once it is as warm as the room.
struct [[nodiscard]] dilution_step : adjustment {
    /// temperature just after mixing, without loss of heat; nothing if a part is below 0 °C, where the heat
    /// of mixing is not known
    std::optional<units::temperature> at_once;
    units::mass scale_shows;  ///< indication of a balance for the product, its vessel counted as tare
};

/// A dilution in steps, as it is done at the bench: add water, mix, let it cool, read, add the next water.
///
/// Masses add, so the steps together take the same water as one dilution to the last strength.
/// @par Source
/// Densities @ref source_oiml_r22; heat of mixing @ref source_excess_gibbs; balance @ref source_oiml_d28
class [[nodiscard]] stepwise_dilution {
public:
    /// @param spirit  parcel to dilute
    /// @param diluent what is added: `water_at(celsius(15))`, or a weaker liquid
    /// @param room    temperature to which each product cools before the next step; every product must be
    ///                liquid there
    stepwise_dilution(parcel const& spirit, liquid const& diluent, units::temperature room)
        : spirit_(spirit), diluent_(diluent), room_(room) {}

    /// Adds a step that ends at a strength.
    /// @param target strength after the step, in any basis, above that of the diluent and not above that of
    ///               the step before
    /// @return the step
    /// @throws refusal as `dilute`
    template <strength_basis Target>
    dilution_step const& down_to(Target target) {
        return done(dilute(current(), target, diluent_, room_));
    }

    /// Adds steps of equal mass that end at a strength.
    /// @param target   strength after the last of them, in any basis
    /// @param portions number of these steps, 1 to 1000
    /// @throws refusal as `dilute`, or if the number of portions is outside its range
    template <strength_basis Target>
    void in_portions(Target target, int portions) {
        parcel const from = current();
        for (adjustment const& each : dilute_in_additions(from, target, portions, diluent_, room_))
            done(each);
    }

    /// @return the spirit before the first step
    parcel const& spirit() const noexcept { return spirit_; }
    /// @return temperature to which each product cools
    units::temperature room() const noexcept { return room_; }
    /// @return the steps so far
    std::vector<dilution_step> const& steps() const noexcept { return steps_; }
    /// @return the liquid after the last step; the spirit itself before the first
    parcel const& current() const { return steps_.empty() ? spirit_ : steps_.back().product; }
    /// @return diluent of all steps together
    parcel all_added() const {
        units::mass sum{};
        for (dilution_step const& each : steps_) sum += each.addition.mass();
        return parcel::of(sum, diluent_);
    }

private:
    dilution_step const& done(adjustment const& a) {
        std::array const parts{current(), a.addition};
        auto const fresh = plain::detail::mix_parts<double>(parts.data(), parts.size(), nullptr);
        dilution_step step{a, std::nullopt,
                           balance_indication(a.product.mass(), a.product.mass() / a.product.volume())};
        if (fresh.status.ok) step.at_once = celsius(fresh.value.product.celsius);
        steps_.push_back(step);
        return steps_.back();
    }

    parcel spirit_;
    liquid diluent_;
    units::temperature room_;
    std::vector<dilution_step> steps_;
};

}  // namespace aqueth::inline AQUETH_ABI
