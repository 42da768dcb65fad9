// SPDX-License-Identifier: BSL-1.0
#pragma once

#include <aqueth/composition.hpp>
#include <aqueth/error.hpp>
#include <aqueth/still/column.hpp>
#include <aqueth/strength.hpp>
#include <aqueth/units.hpp>

#include <optional>

namespace aqueth::inline AQUETH_ABI {

/// The reflux of a total condenser: the liquid that it returns to the column.
class [[nodiscard]] reflux {
public:
    /// @return no reflux: everything that condenses is taken
    static reflux none() { return constant(0.0); }
    /// @param ratio liquid returned per distillate taken, 0 to 1000
    /// @return a constant reflux ratio
    /// @throws refusal if the ratio is outside that range
    static reflux constant(double ratio) {
        require_range("reflux", argument::reflux_ratio, ratio, "", 0.0, 1000.0);
        return reflux(ratio, -1.0);
    }
    /// A reflux that rises to keep the strength of the distillate. At the greatest ratio it stays constant,
    /// and the strength falls.
    /// @param strength       strength that the distillate keeps
    /// @param greatest_ratio the ratio not to exceed, 0 to 1000
    /// @return the reflux
    /// @throws refusal if the ratio is outside that range
    template <strength_basis Strength>
    static reflux constant_strength(Strength strength, double greatest_ratio) {
        require_range("reflux", argument::greatest_reflux_ratio, greatest_ratio, "", 0.0, 1000.0);
        reflux kept(greatest_ratio, to<mole_fraction>(strength).value());
        kept.number_ = strength.number();
        kept.unit_ = Strength::unit;
        kept.shown_ = [](double x) { return to<Strength>(mole_fraction(x)).number(); };
        return kept;
    }
    /// A reflux that follows from what is taken: all that condenses beyond it.
    /// @param rate distillate taken, volume at 20 °C in a time: 1 µL/min to 60 m3/min
    /// @return the reflux
    /// @throws refusal if the rate is outside that range
    static reflux of_take_off(units::volume_flow rate) {
        require_range("reflux", argument::take_off_rate, rate.value() * 6e7, "mL/min", 1e-3, 6e7);
        reflux taken(0.0, -1.0);
        taken.take_off_ = rate.value();
        return taken;
    }
    /// @return the reflux ratio, or the greatest one; 0 if it follows from what is taken
    double ratio() const noexcept { return ratio_; }
    /// @return whether it follows from what is taken
    bool follows_take_off() const noexcept { return take_off_ > 0.0; }
    /// @return distillate taken, volume at 20 °C in a time; 0 if it follows from the reflux
    units::volume_flow take_off() const { return units::volume_flow::from_value(take_off_); }
    /// @return whether the distillate keeps its strength
    bool keeps_strength() const noexcept { return strength_ >= 0.0; }
    /// @return mole fraction of the distillate that is kept; negative if none is
    double kept() const noexcept { return strength_; }
    /// @return the strength to keep, as the user gave it
    double number() const noexcept { return number_; }
    /// @return the unit of `number`
    char const* unit() const noexcept { return unit_; }
    /// @param x mole fraction of ethanol
    /// @return the same in `unit`; only if a strength is kept
    double shown(double x) const { return shown_(x); }

private:
    reflux(double ratio, double strength) : ratio_(ratio), strength_(strength) {}
    double ratio_;
    double strength_;
    double take_off_ = 0.0;  // m3/s
    double number_ = 0.0;
    char const* unit_ = "";
    double (*shown_)(double) = nullptr;
};

/// Water that cools a condenser.
struct cooling_water {
    units::volume_flow flow;  ///< volume of water in a time, above 0, at most 1 m3/s
    units::temperature in;    ///< where it enters, 0 to 99 °C
    units::temperature out;   ///< where it leaves: warmer than it enters, at most 100 °C

    /// Checks the ranges above.
    /// @throws refusal if one of the figures is outside its range
    void require_possible() const {
        require_range("cooling water", argument::flow_of_the_cooling_water, in_litres_per_minute(), "L/min",
                      1e-6, 6e4);
        require_range("cooling water", argument::temperature, in.celsius(), "°C", 0.0, 99.0);
        require_range("cooling water", argument::warming_of_the_cooling_water, out.celsius() - in.celsius(),
                      "K", 1e-3, 100.0 - in.celsius(), "up to boiling water");
    }
    /// @return heat that the water takes up: flow x 4.18 MJ/(m3 K) x warming, within 1 % from 0 to 100 °C
    ///         (from memory of steam tables: 4.18 kJ/(kg K) and 1000 kg/m3 at 20 °C)
    units::power heat() const { return flow.value() * 4.18e6 * (out.celsius() - in.celsius()) * watt; }

private:
    double in_litres_per_minute() const { return flow.value() * 6e4; }
};

/// The head of a still: what it does with the vapour from the column and the neck.
///
/// A total condenser condenses all of it and returns a part as reflux; the rest is taken. A partial condenser
/// condenses a part, which runs back in equilibrium with the vapour that goes on. That vapour is condensed
/// elsewhere and taken. Without a head everything is condensed and taken.
class [[nodiscard]] head {
public:
    /// Kinds of heads.
    enum class kind {
        none,              ///< everything that condenses is taken
        total_condenser,   ///< everything condenses; a part is returned
        partial_condenser  ///< a part condenses and runs back; the rest is taken
    };
    static constexpr double greatest_share = 0.99;  ///< greatest share that a partial condenser may condense

    /// @return no head: everything that condenses is taken
    static head none() { return head(kind::none, reflux::none(), 0.0); }
    /// @param returned reflux: what the condenser returns to the column
    /// @return a total condenser
    static head total_condenser(reflux const& returned) { return head(kind::total_condenser, returned, 0.0); }
    /// @param share share of the moles of the vapour at the head that condenses, 0 to 0.99
    /// @return a partial condenser
    /// @throws refusal if the share is outside that range
    static head partial_condenser(double share) {
        require_range("partial condenser", argument::share_of_the_vapour_that_condenses, share, "", 0.0,
                      greatest_share);
        return head(kind::partial_condenser, reflux::none(), share);
    }
    /// A partial condenser of which the cooling water is known. The share that condenses follows from the
    /// heat the water takes up and the vapour's flow at each moment.
    /// @param water its cooling water
    /// @return a partial condenser
    /// @throws refusal if a figure of the water is outside its range
    static head partial_condenser(cooling_water const& water) {
        water.require_possible();
        head result(kind::partial_condenser, reflux::none(), 0.0);
        result.water_ = water;
        return result;
    }

    /// The same total condenser with a reflux that comes back colder than it boils. It condenses vapour at
    /// the top of the column until it boils, so more liquid runs down the column.
    /// @param t temperature of the reflux where it enters the column, 0 to 100 °C; it counts as boiling if
    ///          that is above its boiling temperature
    /// @return the head
    /// @throws refusal if the temperature is outside that range, or the head returns no reflux of its own
    head reflux_at(units::temperature t) const {
        require_total(argument::temperature_of_the_reflux, t.celsius(), "°C",
                      "only a total condenser has a reflux line");
        require_range("head", argument::temperature_of_the_reflux, t.celsius(), "°C", 0.0, 100.0);
        head result = *this;
        result.reflux_temperature_ = t;
        return result;
    }
    /// The same total condenser with another reflux.
    /// @param returned what it returns
    /// @return the head
    /// @throws refusal if something is to be returned and the head is not a total condenser
    head returning(reflux const& returned) const {
        constexpr char const* reason = "only a total condenser returns a reflux that can be set";
        if (returned.follows_take_off()) {
            require_total(argument::take_off_rate, returned.take_off().value() * 6e7, "mL/min", reason);
        } else if (returned.ratio() > 0.0) {
            require_total(argument::reflux_ratio, returned.ratio(), "", reason);
        }
        head result = *this;
        result.returned_ = returned;
        return result;
    }
    /// The same head with liquid in its condenser and reflux line.
    /// @param volume liquid in them, at 20 °C, 0 to 1 m3
    /// @return the head
    /// @throws refusal if the volume is outside that range
    head holding(units::volume volume) const {
        require_range("head", argument::holdup, aqueth::in(volume, litre), "L", 0.0, 1000.0);
        head result = *this;
        result.holdup_ = volume;
        return result;
    }

    /// @return which kind of head
    kind what() const noexcept { return kind_; }
    /// @return what a total condenser returns; none for other heads
    reflux const& returned() const noexcept { return returned_; }
    /// @return share of the vapour's moles that a partial condenser condenses; 0 if its water is known, and
    ///         for other heads
    double share() const noexcept { return share_; }
    /// @return the cooling water of a partial condenser, if that is known
    std::optional<cooling_water> const& water() const noexcept { return water_; }
    /// @return temperature of the reflux; empty: it boils
    std::optional<units::temperature> const& reflux_temperature() const noexcept {
        return reflux_temperature_;
    }
    /// @return liquid in condenser and reflux line, volume at 20 °C
    units::volume holdup() const noexcept { return holdup_; }

private:
    head(kind what, reflux const& returned, double share) : kind_(what), returned_(returned), share_(share) {}

    /// refuses a figure of a reflux for a head that has none
    void require_total(argument what, double value, char const* unit, char const* reason) const {
        if (kind_ != kind::total_condenser) raise_error(refusal("head", what, value, unit, 0.0, 0.0, reason));
    }

    kind kind_;
    reflux returned_;
    double share_;
    std::optional<cooling_water> water_;
    std::optional<units::temperature> reflux_temperature_;
    units::volume holdup_ = units::volume();
};

}  // namespace aqueth::inline AQUETH_ABI
