// SPDX-License-Identifier: BSL-1.0
#pragma once

#include <aqueth/composition.hpp>
#include <aqueth/error.hpp>
#include <aqueth/still/head.hpp>
#include <aqueth/strength.hpp>
#include <aqueth/units.hpp>

#include <optional>
#include <vector>

namespace aqueth::inline AQUETH_ABI {

/// An event that ends a fraction or the run, or at which something changes.
class [[nodiscard]] condition {
public:
    /// The quantity that a condition watches.
    enum class watched {
        still_strength,       ///< of the liquid in the pot, falling
        boiling_temperature,  ///< of the liquid in the pot, rising
        distillate_strength,  ///< of the distillate at the moment, falling
        head_temperature,     ///< of the vapour at the head, rising
        reading_at_spout,     ///< of an alcoholometer in the distillate at the moment, falling
        kept_strength,        ///< whether the greatest reflux still keeps the strength
        collected_volume,     ///< of the distillate at 20 °C, since the start of the fraction or run
        elapsed_time          ///< since the watching began
    };

    /// @param strength the liquid in the pot (its extract not counted) has fallen to this strength
    /// @return the condition
    template <strength_basis Strength>
    static condition still_strength(Strength strength) {
        return of_strength(watched::still_strength, strength);
    }
    /// @param strength the distillate at the moment has fallen to this strength
    /// @return the condition
    template <strength_basis Strength>
    static condition distillate_strength(Strength strength) {
        return of_strength(watched::distillate_strength, strength);
    }
    /// The greatest reflux ratio no longer keeps the strength. From then on the strength of the distillate
    /// falls. Only for a reflux of `constant_strength`.
    /// @return the condition
    static condition strength_lost() { return condition(watched::kept_strength, 0.0, 0.0, ""); }
    /// @param t the pot boils at this temperature
    /// @return the condition
    static condition boiling_temperature(units::temperature t) {
        return condition(watched::boiling_temperature, t.kelvin(), t.celsius(), "°C");
    }
    /// @param t a thermometer in the vapour at the head shows this: the dew point of the distillate
    /// @return the condition
    static condition head_temperature(units::temperature t) {
        return condition(watched::head_temperature, t.kelvin(), t.celsius(), "°C");
    }
    /// An alcoholometer in the distillate at the moment has fallen to this reading. The temperature of the
    /// distillate there is `run_plan::spout_temperature`.
    /// @param reading reading of an `alcoholometer` for % vol at 20 °C, not corrected for temperature
    /// @return the condition
    static condition reading_at_spout(volume_fraction reading) {
        condition c(watched::reading_at_spout, reading.value(), reading.number(), volume_fraction::unit);
        c.shown_ = [](double value) { return volume_fraction(value).number(); };
        return c;
    }
    /// @param volume distillate at 20 °C, since the fraction began for a cut, since the run began for its end
    ///               and for a step
    /// @return the condition
    /// @throws refusal if the volume is not positive
    static condition collected(units::volume volume) {
        require_range("condition", argument::volume_to_collect, in(volume, litre), "L", 1e-9, unlimited);
        return condition(watched::collected_volume, volume.value(), in(volume, litre), "L");
    }
    /// @param duration since the fraction began for a cut; for the end of the run and for a step since it
    ///                 began to boil
    /// @return the condition
    /// @throws refusal if the duration is not positive
    static condition elapsed(units::time duration) {
        require_range("condition", argument::time_to_elapse, in(duration, minute), "min", 1e-6, unlimited);
        return condition(watched::elapsed_time, duration.value(), in(duration, minute), "min");
    }

    /// @return what is watched
    watched what() const noexcept { return what_; }
    /// @return the value at which it is met: mole fraction, reading as a fraction, K, m3 or s; 0 for
    ///         `strength_lost`
    double value() const noexcept { return value_; }
    /// @return the same value as the user gave it
    double number() const noexcept { return number_; }
    /// @return the unit of `number`
    char const* unit() const noexcept { return unit_; }
    /// @param value a value as `value` has it
    /// @return the same in `unit`
    double shown(double value) const { return shown_(value); }
    /// @return the watched quantity, as errors name it
    argument code() const noexcept {
        switch (what_) {
        case watched::still_strength: return argument::strength_in_the_still;
        case watched::boiling_temperature: return argument::boiling_temperature;
        case watched::distillate_strength: return argument::strength_of_the_distillate;
        case watched::head_temperature: return argument::head_temperature;
        case watched::reading_at_spout: return argument::reading_at_the_spout;
        case watched::kept_strength: return argument::strength_that_is_kept;
        case watched::collected_volume: return argument::collected_volume;
        case watched::elapsed_time: break;
        }
        return argument::elapsed_time;
    }
    /// @return the watched quantity, in words
    char const* name() const noexcept { return name_of(code()); }

private:
    template <class Strength>
    static condition of_strength(watched what, Strength strength) {
        condition c(what, to<mole_fraction>(strength).value(), strength.number(), Strength::unit);
        c.shown_ = [](double x) { return to<Strength>(mole_fraction(x)).number(); };
        return c;
    }
    condition(watched what, double value, double number, char const* unit)
        : what_(what), value_(value), number_(number), unit_(unit) {
        if (what == watched::boiling_temperature || what == watched::head_temperature)
            shown_ = [](double k) { return k - 273.15; };
        if (what == watched::collected_volume) shown_ = [](double v) { return 1000.0 * v; };
        if (what == watched::elapsed_time) shown_ = [](double s) { return s / 60.0; };
    }

    watched what_;
    double value_;
    double number_;
    char const* unit_;
    double (*shown_)(double) = nullptr;
};

/// The end of a fraction.
struct cut {
    condition end;     ///< when to change the receiving vessel
    bool keep = true;  ///< false for foreshots to discard
};

/// A change while the still runs: of what the condenser returns, of the heating power, or of both.
struct plan_step {
    condition when;                       ///< a volume or a time counts from where the boiling began
    std::optional<reflux> returned{};     ///< reflux from then on; only for a total condenser
    std::optional<units::power> power{};  ///< heating power from then on
};

/// The plan of a run. The last fraction begins at the last cut and is kept; if the run ends together with the
/// last cut, there is none.
struct run_plan {
    static constexpr int most_cuts = 1000;      ///< greatest number of cuts
    static constexpr int most_ends = 20;        ///< greatest number of ends
    static constexpr int most_steps = 1000;     ///< greatest number of steps
    static constexpr int most_points = 100000;  ///< greatest number of states to record

    std::vector<cut> cuts;        ///< ends of fractions, in their order; may be empty, 1000 at most
    std::vector<condition> ends;  ///< the run ends with the first of these that is met; 1 to 20
    int points = 0;               ///< states to record, evenly over the moles distilled; 0 or 2 to 100000
    units::temperature product_temperature = celsius(20.0);  ///< final temperature of fractions and residue
    /// temperature with which the charge comes into a pot of the room's temperature, 0 °C to boiling; if
    /// empty, both have the charge's own
    std::optional<units::temperature> charged_at = std::nullopt;
    /// time at total reflux before anything is taken, 0 to 1000 h; only with a total condenser
    units::time start = units::time();
    /// changes while the still runs, in their order; may be empty, 1000 at most. Each is waited for when the
    /// one before it has come. One that does not come before the run ends changes nothing.
    std::vector<plan_step> steps = {};
    /// temperature of the distillate where an alcoholometer is read in it, -20 to 40 °C
    units::temperature spout_temperature = celsius(20.0);
};

/// Progress of the computation of a run: a long plan takes seconds.
struct run_progress {
    double distilled;  ///< share of the charge's moles that is distilled, up to the end of the run
    double recorded;   ///< afterwards: share of the points that is recorded
};

}  // namespace aqueth::inline AQUETH_ABI
