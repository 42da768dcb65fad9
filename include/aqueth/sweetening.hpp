// SPDX-License-Identifier: BSL-1.0
#pragma once

#include <aqueth/composition.hpp>
#include <aqueth/density.hpp>
#include <aqueth/error.hpp>
#include <aqueth/hydrometer.hpp>
#include <aqueth/parcel.hpp>
#include <aqueth/plain/sweetening.hpp>
#include <aqueth/strength.hpp>
#include <aqueth/units.hpp>

namespace aqueth::inline AQUETH_ABI {

/// Gram per litre, the unit of sugar in a liqueur: the same as kg/m3.
inline constexpr auto gram_per_litre = units::mass_density::from_value(1.0);

/// A parcel with dissolved sugar: a liqueur, a sweetened spirit. Its alcohol and water are a parcel.
///
/// Its volume is that of the parcel plus the volume that the sugar takes in the same water without ethanol.
/// Without sugar every figure is that of the parcel, to the last digit. Nothing is known about its freezing
/// or boiling.
/// @par Accuracy
/// Analyses agree: wines to 14 % vol with at most 22 g/L, beers of about 5 % vol with up to 66 g/L of malt
/// extract (`checked_by_analyses`). Nothing measured was read beyond: 1 % in the sugar's volume at 300 g/L is
/// 1.9 kg/m3, or 1.0 % vol in a strength read at 40 % vol (`strength_doubt`).
/// @par Source
/// @ref source_sugar_solution
class [[nodiscard]] sweetened {
public:
    /// @param spirit the ethanol and water in it, 0 to 40 °C
    /// @param sugar  mass of the sugar, 0 to what the water dissolves: sucrose 70 % of sugar and water,
    ///               glucose 50 %, fructose and invert sugar 48 %
    /// @param kind   which sugar, without water of crystallization
    /// @return the sweetened spirit, at the temperature of the parcel
    /// @throws refusal if the mass of the sugar or the temperature is outside its range
    static sweetened of(parcel const& spirit, units::mass sugar, sweetener kind = sweetener::sucrose) {
        plain::sweetened<double> const made{static_cast<plain::parcel<double> const&>(spirit), sugar.value(),
                                            kind};
        detail::accept(property, plain::sweetened_range(made));
        return sweetened(spirit, sugar, kind);
    }
    /// @param volume      volume at `temperature`, 0 or more
    /// @param strength    alcoholic strength by volume of the whole
    /// @param sugar       sugar at 20 °C, `300 * gram_per_litre`
    /// @param temperature 0 to 40 °C
    /// @param kind        which sugar
    /// @return the sweetened spirit
    /// @throws refusal if an argument is outside its range, or the strength leaves no water for the sugar
    static sweetened of(units::volume volume, volume_fraction strength, units::mass_density sugar,
                        units::temperature temperature, sweetener kind = sweetener::sucrose) {
        if (sugar.value() == 0.0) return of(parcel::of(volume, strength, temperature), units::mass(), kind);
        require_range(property, argument::volume, in(volume, litre), "L", 0.0, unlimited);
        auto const w = detail::answer(
            property, plain::sweet_composition_from_strength(strength.value(), sugar.value(), kind));
        double const mass =
            volume.value() *
            detail::answer(property, plain::sweet_density_kg_m3(w, kind, temperature.celsius()));
        return of(parcel::of(mass * (1.0 - w.sugar) * kilogram, mass_fraction(w.ethanol / (1.0 - w.sugar)),
                             temperature),
                  mass * w.sugar * kilogram, kind);
    }

    /// @return the ethanol and water in it
    parcel const& spirit() const { return spirit_; }
    /// @return mass of the sugar
    units::mass sugar() const { return sugar_; }
    /// @return which sugar
    sweetener kind() const { return kind_; }
    /// @return mass of the whole
    units::mass mass() const { return spirit_.mass() + sugar_; }
    /// @return temperature
    units::temperature temperature() const { return spirit_.temperature(); }

    /// @param t temperature, 0 to 40 °C
    /// @return volume there
    /// @throws refusal if the temperature is outside its range
    units::volume volume(units::temperature t) const {
        if (sugar_.value() == 0.0) return spirit_.volume(t);
        return detail::answer(property, plain::sweetened_litres(numbers(), t.celsius())) * litre;
    }
    /// @return volume at its own temperature
    units::volume volume() const { return volume(temperature()); }
    /// @param t temperature, as for `volume`
    /// @return density there
    /// @throws refusal if the temperature is outside its range
    units::mass_density density(units::temperature t) const {
        if (sugar_.value() == 0.0) return aqueth::density(spirit_.composition(), t);
        return mass() / volume(t);
    }
    /// @return density at its own temperature
    units::mass_density density() const { return density(temperature()); }
    /// @return alcoholic strength by volume at 20 °C of the whole
    volume_fraction strength() const {
        if (sugar_.value() == 0.0) return spirit_.strength();
        return volume_fraction(in(spirit_.pure_alcohol(), volume(celsius(20))));
    }
    /// @return sugar per volume at 20 °C
    units::mass_density sugar_concentration() const {
        return sugar_.value() == 0.0 ? 0.0 * gram_per_litre : sugar_ / volume(celsius(20));
    }
    /// @return volume that the sugar adds at 20 °C
    units::volume volume_of_the_sugar() const { return volume(celsius(20)) - spirit_.volume(celsius(20)); }

    /// @return whether analyses checked the density of such a liquid: whether an analysed wine or beer is at
    ///         least as strong and as sweet, or there is no sugar
    bool checked_by_analyses() const {
        return plain::sweetening_checked(strength().value(), sugar_concentration().value());
    }
    /// @return half width of the doubt of a strength that is read from its density at its own temperature,
    ///         volume fraction: 1 % in the sugar's volume
    double strength_doubt() const {
        return detail::answer(property, plain::strength_doubt_from_sugar(strength().value(),
                                                                         sugar_concentration().value(), kind_,
                                                                         temperature().celsius()));
    }

    /// @param t temperature, 0 to 40 °C
    /// @return the same liquid at another temperature
    /// @throws refusal if the temperature is outside its range
    sweetened at(units::temperature t) const { return of(spirit_.at(t), sugar_, kind_); }

    /// @return its numbers, as the functions of `aqueth::plain` take them
    plain::sweetened<double> numbers() const {
        return {static_cast<plain::parcel<double> const&>(spirit_), sugar_.value(), kind_};
    }

private:
    static constexpr char const* property = "sweetened spirit";

    sweetened(parcel const& spirit, units::mass sugar, sweetener kind)
        : spirit_(spirit), sugar_(sugar), kind_(kind) {}

    parcel spirit_;
    units::mass sugar_;
    sweetener kind_;
};

/// What a hydrometer shows in a sweetened spirit at the spirit's temperature. An alcoholometer shows less
/// than the strength: the difference is the obscuration.
/// @tparam Scale scale of the instrument
/// @param meter   the instrument
/// @param of_this the sweetened spirit
/// @return reading
/// @throws refusal if the reading would be off the scale, as on an alcoholometer in what is denser than water
/// @par Accuracy
/// As `sweetened`.
template <hydrometer_scale Scale>
Scale reading(hydrometer<Scale> const& meter, sweetened const& of_this) {
    return meter.reading_in(of_this.density(), of_this.temperature());
}

/// @name Strength behind the sugar: obscuration undone
/// @par Accuracy
/// As `sweetened`.
/// @par Source
/// @ref source_sugar_solution
/// @{

/// Strength from a density.
/// @param rho   density at `t`
/// @param t     temperature, 0 to 40 °C
/// @param sugar sugar at 20 °C, `300 * gram_per_litre`, from the recipe or an analysis
/// @param kind  which sugar
/// @return alcoholic strength by volume at 20 °C of the whole
/// @throws refusal if an argument is outside its range or nothing with this much sugar has that density
inline volume_fraction strength_behind_sugar(units::mass_density rho, units::temperature t,
                                             units::mass_density sugar, sweetener kind = sweetener::sucrose) {
    return volume_fraction(detail::answer(
        "strength", plain::strength_behind_sugar(rho.value(), t.celsius(), sugar.value(), kind)));
}
/// Strength from a hydrometer.
/// @tparam Scale scale of the instrument
/// @param meter the instrument
/// @param shown what the stem shows
/// @param t     temperature of liquid and instrument, 0 to 40 °C
/// @param sugar sugar at 20 °C, `300 * gram_per_litre`, from the recipe or an analysis
/// @param kind  which sugar
/// @return alcoholic strength by volume at 20 °C of the whole
/// @throws refusal if an argument is outside its range or nothing with this much sugar gives the reading
template <hydrometer_scale Scale>
volume_fraction strength_behind_sugar(hydrometer<Scale> const& meter, Scale shown, units::temperature t,
                                      units::mass_density sugar, sweetener kind = sweetener::sucrose) {
    if (sugar.value() == 0.0) return meter.template strength<volume_fraction>(shown, t);
    return strength_behind_sugar(meter.density(shown, t), t, sugar, kind);
}
/// @}

/// Sugar of a sweetened spirit from its density at 20 °C and its strength, as from a distilled sample: dry
/// extract by additive apparent volumes.
/// @param rho      density at 20 °C
/// @param strength alcoholic strength by volume at 20 °C of the whole
/// @param kind     which sugar
/// @return sugar at 20 °C, in g/L
/// @throws refusal if an argument is outside its range
/// @par Accuracy
/// As `sweetened`: 1 % in the sugar's volume is 1.6 % of the sugar.
/// @par Source
/// @ref source_sugar_solution
inline units::mass_density sugar_behind_density(units::mass_density rho, volume_fraction strength,
                                                sweetener kind = sweetener::sucrose) {
    return detail::answer("sugar",
                          plain::sugar_behind_density_g_per_litre(rho.value(), strength.value(), kind)) *
           gram_per_litre;
}

/// Dry extract by Tabarie's relation, counted as sucrose.
/// @param rho      density of the sample at 20 °C
/// @param strength its alcoholic strength at 20 °C, to 18 % mass of ethanol: about 22 % vol
/// @return extract at 20 °C, in g/L
/// @throws refusal if an argument is outside its range
/// @par Accuracy
/// Within the uncertainty of measurement below 5 % sucrose and 18 % ethanol by mass (@ref source_wash,
/// Hackbarth). Not for liqueurs: use `sugar_behind_density`.
/// @par Source
/// @ref source_wash
inline units::mass_density tabarie_extract(units::mass_density rho, volume_fraction strength) {
    return detail::answer("extract", plain::tabarie_extract_g_per_litre(rho.value(), strength.value())) *
           gram_per_litre;
}

/// What to weigh for a sweetened spirit.
struct [[nodiscard]] sweetening_plan {
    parcel spirit;                      ///< spirit to take
    units::mass water;                  ///< water to add
    units::mass sugar;                  ///< sugar to add, without water of crystallization
    sweetened product;                  ///< what becomes of it, at 20 °C
    units::volume contraction;          ///< volume lost by spirit and water in mixing, at 20 °C
    units::volume volume_of_the_sugar;  ///< volume that the dissolved sugar adds, at 20 °C
};

/// Water and sugar that turn a spirit into a sweetened one of a wanted strength.
/// @param spirit   the spirit, 0 to 40 °C
/// @param strength alcoholic strength by volume wanted, of the whole
/// @param sugar    sugar wanted at 20 °C, `300 * gram_per_litre`
/// @param kind     which sugar
/// @return the plan
/// @throws refusal if an argument is outside its range, or this spirit does not reach the strength with this
///         much sugar
/// @par Accuracy
/// The masses are exact for the mixture they make. Its volume, and so its strength, is as good as the sugar's
/// volume: 1 % of it at 300 g/L is 0.2 % of the volume, 0.08 % vol at 40 % vol.
/// @par Source
/// @ref source_sugar_solution
inline sweetening_plan sweeten(parcel const& spirit, volume_fraction strength, units::mass_density sugar,
                               sweetener kind = sweetener::sucrose) {
    auto const plan =
        detail::answer("sweetening", plain::sweeten(static_cast<plain::parcel<double> const&>(spirit),
                                                    strength.value(), sugar.value(), kind));
    double const liquid = plan.spirit_kg + plan.water_kg;
    parcel const diluted =
        parcel::of(liquid * kilogram,
                   mass_fraction(liquid > 0.0 ? in(spirit.ethanol(), liquid * kilogram) : 0.0), celsius(20));
    return {spirit,
            plan.water_kg * kilogram,
            plan.sugar_kg * kilogram,
            sweetened::of(diluted, plan.sugar_kg * kilogram, kind),
            plan.contraction_litres * litre,
            plan.sugar_litres * litre};
}

/// Spirit, water and sugar for a volume of a sweetened spirit.
/// @param volume   volume wanted at 20 °C, 0 or more
/// @param strength alcoholic strength by volume wanted, of the whole
/// @param sugar    sugar wanted at 20 °C
/// @param spirit   the spirit to take, 0 to 40 °C
/// @param kind     which sugar
/// @return the plan
/// @throws refusal as `sweeten` of a parcel
/// @par Accuracy
/// As `sweeten` of a parcel.
/// @par Source
/// @ref source_sugar_solution
inline sweetening_plan sweeten(units::volume volume, volume_fraction strength, units::mass_density sugar,
                               liquid const& spirit, sweetener kind = sweetener::sucrose) {
    require_range("sweetening", argument::volume, in(volume, litre), "L", 0.0, unlimited);
    parcel const one = parcel::of(kilogram, spirit);
    double const litres = in(sweeten(one, strength, sugar, kind).product.volume(), litre);
    return sweeten(one.with_mass(in(volume, litre) / litres * kilogram), strength, sugar, kind);
}

/// Strength of a sweetened spirit or a wash from a sample that was distilled and made up with water.
/// @param sample          volume of the sample, above 0
/// @param sample_at       its temperature, 0 to 40 °C
/// @param made_up         volume that the distillate was made up to, above 0
/// @param distillate      strength of the made-up distillate, in any basis
/// @param made_up_at      temperature at which it was made up, 0 to 40 °C
/// @param lost            share of the alcohol lost in distilling, 0 to 0.1
/// @return alcoholic strength by volume at 20 °C of the sample
/// @throws refusal if an argument is outside its range
/// @par Accuracy
/// That of the readings: `measurement_model::volume_fraction_of_distilled_sample` gives the uncertainty.
/// @par Source
/// @ref source_oiml_r22; the procedure is common practice
template <strength_basis Strength>
volume_fraction strength_of_distilled_sample(units::volume sample, units::temperature sample_at,
                                             units::volume made_up, Strength distillate,
                                             units::temperature made_up_at, double lost = 0.0) {
    return volume_fraction(
        detail::answer("strength", plain::strength_of_distilled_sample(
                                       in(sample, litre), sample_at.celsius(), in(made_up, litre),
                                       to<mass_fraction>(distillate).value(), made_up_at.celsius(), lost)));
}

}  // namespace aqueth::inline AQUETH_ABI
