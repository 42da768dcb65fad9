// SPDX-License-Identifier: BSL-1.0
#pragma once

#include <aqueth/attenuation.hpp>
#include <aqueth/composition.hpp>
#include <aqueth/error.hpp>
#include <aqueth/parcel.hpp>
#include <aqueth/plain/refraction.hpp>
#include <aqueth/specific_gravity.hpp>
#include <aqueth/strength.hpp>
#include <aqueth/sweetening.hpp>
#include <aqueth/units.hpp>
#include <aqueth/wash.hpp>

#include <compare>

namespace aqueth::inline AQUETH_ABI {

/// Refractive index at 20 °C for light of 589 nm (the sodium D lines), relative to air.
class [[nodiscard]] refractive_index {
public:
    static constexpr char const* name = "refractive index";  ///< as printed
    static constexpr char const* unit = "";                  ///< as printed

    /// @param value 1.3 to 1.6
    /// @throws refusal if outside that range or not a number
    explicit constexpr refractive_index(double value)
        : value_(require_range("refraction", argument::refractive_index, value, unit, 1.3, 1.6)) {}

    /// @return the number
    constexpr double value() const noexcept { return value_; }

    friend constexpr auto operator<=>(refractive_index, refractive_index) = default;  ///< by value

private:
    double value_;
};

/// What a refractometer in degrees Brix shows at 20 °C: the mass percentage of the sucrose solution of the
/// same refractive index. It is the sugar only where there is nothing but sucrose and water: alcohol bends
/// light too.
class [[nodiscard]] brix {
public:
    static constexpr char const* name = "refractometer reading";  ///< as printed
    static constexpr char const* unit = "°Bx";                    ///< as printed

    /// @param degrees degrees Brix, 0 to 70
    /// @throws refusal if outside that range or not a number
    explicit constexpr brix(double degrees)
        : degrees_(require_range("refraction", argument::refractometer_reading, degrees, unit, 0.0,
                                 plain::detail::highest_brix)) {}

    /// @return degrees Brix, 0 to 70
    constexpr double degrees() const noexcept { return degrees_; }

    friend constexpr auto operator<=>(brix, brix) = default;  ///< by value

private:
    double degrees_;
};

/// @name Index and degrees Brix
/// @{

/// Refractive index from degrees Brix.
/// @param shown reading of a refractometer at 20 °C
/// @return refractive index at which it shows that
/// @par Accuracy
/// Root mean square 0.00003, largest 0.00009 against the handbook: 0.02 and 0.06 °Bx.
/// @par Source
/// @ref source_refraction
inline refractive_index refractive_index_of(brix shown) {
    return refractive_index(detail::answer("refraction", plain::refractive_index_from_brix(shown.degrees())));
}
/// Degrees Brix from a refractive index.
/// @param index refractive index, from that of water to that of 70 °Bx
/// @return what a refractometer in degrees Brix shows
/// @throws refusal if the index is outside its range
/// @par Source
/// @ref source_refraction
inline brix brix_of(refractive_index index) {
    return brix(detail::answer("refraction", plain::brix_from_refractive_index(index.value())));
}
/// @}

/// @name Refractive index of a liquid
/// At 20 °C, whatever its temperature.
/// @par Accuracy
/// Root mean square 0.00005 for ethanol and 0.00004 for sugars against the handbook, whose last digit is
/// 0.0001. The model assumes that ethanol and sugar do not change each other's refraction.
/// @par Source
/// @ref source_refraction
/// @{

/// Refractive index of a spirit.
/// @param strength strength of a spirit without sugar, in any basis, to 98 % mass
/// @return refractive index
/// @throws refusal if the strength is outside its range
template <strength_basis Strength>
refractive_index refractive_index_of(Strength strength) {
    plain::sweet_composition<double> const w{to<mass_fraction>(strength).value(), 0.0};
    return refractive_index(detail::answer("refraction", plain::refractive_index(w, sweetener::sucrose)));
}
/// Refractive index of a sweetened spirit.
/// @param of_this sweetened spirit, ethanol to 98 % mass of ethanol and water
/// @return refractive index
/// @throws refusal if the strength is outside its range
inline refractive_index refractive_index_of(sweetened const& of_this) {
    double const mass = of_this.mass().value();
    if (!(mass > 0.0)) return refractive_index_of(of_this.spirit().composition());
    plain::sweet_composition<double> const w{of_this.spirit().ethanol().value() / mass,
                                             of_this.sugar().value() / mass};
    return refractive_index(detail::answer("refraction", plain::refractive_index(w, of_this.kind())));
}
/// Refractive index of a wash.
/// @param of_this wash; its extract counts as sucrose
/// @return refractive index
/// @throws refusal if its extract has less water than sucrose needs
inline refractive_index refractive_index_of(wash const& of_this) {
    return refractive_index_of(sweetened::of(of_this.liquid(), of_this.solids()));
}
/// @}

/// Alcohol and extract of a wash from its density and its refractive index: a strength without an original
/// gravity.
/// @param volume      volume of the wash at `temperature`
/// @param gravity     specific gravity 20/20 °C, from a hydrometer (`true_gravity`)
/// @param shown       reading of a refractometer at 20 °C
/// @param temperature temperature of the wash, 0 to 40 °C
/// @return the wash; its extract counts as sucrose
/// @throws refusal if an argument is outside its range, or no ethanol and sucrose give both readings
/// @par Accuracy
/// An index known to 0.0001 (0.07 °Bx) and a gravity known to 0.0001 give the alcohol to 0.08 % mass and the
/// extract to 0.04 %. Where the extract is not sucrose the doubt is larger. The volumes of `wash` and of this
/// model differ: a wash of 10 % mass and 10 % extract by 0.013 %.
/// @par Source
/// @ref source_refraction, @ref source_sugar_solution
inline wash wash_from_gravity_and_index(units::volume volume, specific_gravity gravity,
                                        refractive_index shown, units::temperature temperature) {
    detail::accept("wash", plain::detail::sweet_temperature_range(temperature.celsius()));
    double const rho = gravity.value() * plain::detail::water_at_20_celsius<double>;
    return detail::typed(plain::wash_from_density_and_index(rho, shown.value()), volume, temperature);
}
/// @copydoc wash_from_gravity_and_index
inline wash wash_from_gravity_and_index(units::volume volume, specific_gravity gravity, brix shown,
                                        units::temperature temperature) {
    return wash_from_gravity_and_index(volume, gravity, refractive_index_of(shown), temperature);
}
/// The fermented wash of an original gravity in which a refractometer shows a reading now.
/// @param volume      volume at `temperature`, 0 or more
/// @param original    gravity 20/20 °C before fermentation, to 30 °P
/// @param shown       reading of a refractometer at 20 °C
/// @param temperature temperature of the wash, 0 to 40 °C
/// @return the fermented wash
/// @throws refusal if an argument is outside its range: the bounds are the readings with all extract
///         fermented and with none
/// @par Accuracy
/// Of the alcohol, 0.1 °Bx is 0.07 % mass. An extract that is not sucrose adds to that.
/// @par Source
/// @ref source_balling, @ref source_refraction
inline wash fermented_wash(units::volume volume, specific_gravity original, brix shown,
                           units::temperature temperature) {
    detail::accept("fermented wash", plain::detail::sweet_temperature_range(temperature.celsius()));
    return detail::typed(plain::wash_from_original_gravity_and_brix(original.value(), shown.degrees()),
                         volume, temperature);
}

/// Methanol in an unsweetened spirit, from its density and its refractive index.
struct [[nodiscard]] methanol_in_spirit {
    double share;            ///< mass of methanol over that of both alcohols; noise may put it outside 0 to 1
    mass_fraction alcohol;   ///< both alcohols together
    double share_per_index;  ///< what one unit of the index is worth in the share
};

/// Methanol put in place of ethanol in an unsweetened spirit: mixtures of equal density differ in their
/// refractive index.
///
/// It finds substitution, not the limits of law. Those are 10 to 1500 g of methanol in 100 L of pure alcohol,
/// 0.01 to 2 %. What an index known to 0.0002 shows is 0.7 to 11 % of the alcohol. A tenth of a gram of sugar
/// in a litre is already 0.000015 in the index. Safety of a spirit needs a laboratory.
/// @param rho   density at 20 °C, between those of 98 and 5 % mass
/// @param shown refractive index at 20 °C
/// @return share of methanol in the alcohols by mass
/// @throws refusal if an argument is outside its range, or the index is that of no mixture of this density
/// @par Accuracy
/// An index known to 0.0002 gives the share to 11 % at 5 % mass, 2.2 % at 20, 1.3 % at 40, 0.7 % at 90. That
/// the index is linear in the share at one density is an assumption (Leach and Lythgoe, 1905).
/// @par Source
/// @ref source_methanol_index
inline methanol_in_spirit find_methanol(units::mass_density rho, refractive_index shown) {
    auto const found =
        detail::answer("methanol", plain::methanol_from_density_and_index(rho.value(), shown.value()));
    return {found.share, mass_fraction(found.alcohol), found.share_per_index};
}

}  // namespace aqueth::inline AQUETH_ABI
