// SPDX-License-Identifier: BSL-1.0
#pragma once

#include <aqueth/composition.hpp>
#include <aqueth/error.hpp>
#include <aqueth/still/column.hpp>
#include <aqueth/still/heating.hpp>
#include <aqueth/strength.hpp>

namespace aqueth::inline AQUETH_ABI {

/// The reflux: the liquid that the condenser returns to the column.
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
    /// @return the reflux ratio, or the greatest one
    double ratio() const noexcept { return ratio_; }
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
    double number_ = 0.0;
    char const* unit_ = "";
    double (*shown_)(double) = nullptr;
};

/// A still: pot, column, neck, reflux, and how the flows are found.
struct still {
    vessel pot;                                             ///< the heated pot
    column tower = column::none();                          ///< the column on the pot
    aqueth::reflux returned = reflux::none();               ///< reflux from the condenser
    flow_model flow = flow_model::constant_molar_overflow;  ///< model of the flows inside the column
    aqueth::neck neck = aqueth::neck::insulated();          ///< the neck from there to the condenser
};

}  // namespace aqueth::inline AQUETH_ABI
