// SPDX-License-Identifier: BSL-1.0
#pragma once

#include <aqueth/error.hpp>
#include <aqueth/units.hpp>

#include <cmath>

namespace aqueth::inline AQUETH_ABI {

/// The column between boiler and condenser: a number of equilibrium stages, without the boiler. The boiler is
/// one more stage, so a pot without a column separates once.
///
/// A stage of Murphree efficiency E changes the vapour by the share E of the change to equilibrium.
///
/// Liquid stays on plates and in packing while the still runs: the holdup. Unless given it is left out.
class [[nodiscard]] column {
public:
    static constexpr double most_stages = 100.0;  ///< greatest number of stages or plates

    /// @return a pot without a column: no stage above the boiler
    static column none() { return column(0, 1.0, 0.0); }
    /// @param number theoretical stages above the boiler, 0 to 100; a fraction is a topmost stage of that
    ///               efficiency
    /// @return the column
    /// @throws refusal if the number is outside that range
    static column of_stages(double number) {
        require_range("column", argument::number_of_stages, number, "", 0.0, most_stages);
        double const whole = std::floor(number);
        return column(static_cast<int>(whole), 1.0, number - whole);
    }
    /// @param number     real plates above the boiler, 0 to 100
    /// @param efficiency Murphree vapour efficiency of each, above 0 to 1; common practice for small plates
    ///                   is 0.5 to 0.7
    /// @return the column
    /// @throws refusal if an argument is outside its range
    static column of_plates(int number, double efficiency) {
        require_range("column", argument::number_of_plates, number, "", 0.0, most_stages);
        require_range("column", argument::murphree_efficiency, efficiency, "", 0.01, 1.0);
        return column(number, efficiency, 0.0);
    }
    /// @param height height of the packing, above 0
    /// @param hetp   height equivalent to a theoretical plate, from the maker or from an earlier run; common
    ///               practice for columns under 0.6 m wide: about the width, not below 0.3 m (from memory of
    ///               Kister, Distillation Design, 1992); fine laboratory packing does better
    /// @return the column
    /// @throws refusal if an argument is not positive, or there are more than 100 stages
    static column of_packing(units::length height, units::length hetp) {
        require_range("column", argument::height_of_the_packing, height.value(), "m", 1e-3, unlimited);
        require_range("column", argument::height_equivalent_to_a_theoretical_plate, hetp.value(), "m", 1e-3,
                      unlimited);
        return of_stages(in(height, hetp));
    }

    /// The same column with liquid on its plates or stages.
    /// @param each volume at 20 °C on each plate or theoretical stage, 0 to 1 m3; for packing the volume that
    ///             stays in a height equivalent to a theoretical plate
    /// @return the column
    /// @throws refusal if the volume is outside that range
    column holding(units::volume each) const {
        require_range("column", argument::holdup, in(each, litre), "L", 0.0, 1000.0);
        column result = *this;
        result.holdup_ = each;
        return result;
    }
    /// The same column with liquid spread evenly over its plates or stages.
    /// @param all volume at 20 °C in the whole column, 0 to 1 m3; 0 for a pot without a column
    /// @return the column
    /// @throws refusal if the volume is outside that range
    column holding_in_all(units::volume all) const {
        double const stages = whole_ + topmost_;
        require_range("column", argument::holdup, in(all, litre), "L", 0.0, stages > 0.0 ? 1000.0 : 0.0,
                      stages > 0.0 ? "" : "without plates or stages there is none");
        return stages > 0.0 ? holding(all / stages) : *this;
    }

    /// @return number of plates or whole stages
    int whole() const noexcept { return whole_; }
    /// @return Murphree efficiency of each of them
    double efficiency() const noexcept { return efficiency_; }
    /// @return efficiency of a further stage above them, 0 to below 1
    double topmost() const noexcept { return topmost_; }
    /// @return liquid on each plate or whole stage, volume at 20 °C; a topmost stage in part holds its share
    units::volume holdup() const noexcept { return holdup_; }

private:
    column(int whole, double efficiency, double topmost)
        : whole_(whole), efficiency_(efficiency), topmost_(topmost) {}
    int whole_;
    double efficiency_;
    double topmost_;
    units::volume holdup_ = units::volume();
};

/// The neck from the pot or column to the condenser: a partial condenser. A share of the vapour condenses
/// there and runs back, in equilibrium with the vapour that goes on. The cause is heat lost by neck and head,
/// or cooling water around a head.
///
/// The liquid from the condenser runs into the column below the neck.
class [[nodiscard]] neck {
public:
    static constexpr double greatest_share = 0.9;  ///< greatest share that may condense

    /// @return a neck in which nothing condenses
    static neck insulated() { return neck(0.0, 0.0); }
    /// @param share share of the vapour's moles that condenses, 0 to 0.9; the neck's heat loss in W divided
    ///              by the power that boils the pot
    /// @return the neck
    /// @throws refusal if the share is outside that range
    static neck condensing(double share) {
        require_range("neck", argument::share_of_the_vapour_that_condenses, share, "", 0.0, greatest_share);
        return neck(share, 0.0);
    }
    /// A neck that loses heat to the room of the pot. The share that condenses follows from the vapour's flow
    /// and temperature at each moment.
    /// @param coefficient heat lost for each kelvin that the vapour is warmer than the room, 0 to 10 kW/K:
    ///                    about 10 W/K for each m2 of bare metal (common practice, as for `vessel`)
    /// @return the neck
    /// @throws refusal if the coefficient is outside that range
    static neck losing(units::thermal_conductance coefficient) {
        require_range("neck", argument::heat_loss_coefficient, coefficient.value(), "W/K", 0.0, 1e4);
        return neck(0.0, coefficient.value());
    }

    /// @return share of the vapour's moles that condenses; 0 for a neck that loses heat by a coefficient
    double share() const noexcept { return share_; }
    /// @return heat lost for each kelvin that the vapour is warmer than the room; 0 if the share is given
    units::thermal_conductance loss() const { return loss_ * watt_per_kelvin; }

private:
    neck(double share, double loss) : share_(share), loss_(loss) {}
    double share_;
    double loss_;  // W/K
};

/// Models of the flows inside a column.
enum class flow_model {
    /// equal moles condense and boil on a stage: the flows are equal on all stages
    constant_molar_overflow,
    /// flows from the enthalpies of liquid and vapour, stage by stage
    enthalpy_balance
};

}  // namespace aqueth::inline AQUETH_ABI
