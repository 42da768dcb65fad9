// SPDX-License-Identifier: BSL-1.0
#pragma once

#include <aqueth/error.hpp>
#include <aqueth/numeric/number_text.hpp>
#include <aqueth/still/still.hpp>
#include <aqueth/units.hpp>

#include <algorithm>
#include <cmath>
#include <cstddef>
#include <optional>
#include <string>
#include <vector>

/// @file
/// Questions and answers of `learning.hpp`: figures of a still, and how well its logs determine them.

namespace aqueth::inline AQUETH_ABI {

/// Greatest number of theoretical stages that an estimate tries.
inline constexpr double most_estimated_stages = 20.0;

/// Figures of a still that a log can tell of.
enum class still_figure {
    stages,            ///< theoretical stages above the pot
    plate_efficiency,  ///< Murphree efficiency of each plate
    neck_share,        ///< share of the vapour that condenses in the neck
    reflux_ratio,      ///< reflux ratio of the runs whose log does not give it
    pot_loss,          ///< heat loss of the pot, W/K
    plate_holdup       ///< liquid on each plate or theoretical stage, volume at 20 °C, mL
};

/// @param f a figure
/// @return its name
constexpr char const* name_of(still_figure f) {
    switch (f) {
    case still_figure::stages: return "stages";
    case still_figure::plate_efficiency: return "plate efficiency";
    case still_figure::neck_share: return "neck share";
    case still_figure::reflux_ratio: return "reflux ratio";
    case still_figure::pot_loss: return "pot loss";
    case still_figure::plate_holdup: break;
    }
    return "holdup of a plate";
}
/// @param f a figure
/// @return the unit of its value; empty for a plain number
constexpr char const* unit_of(still_figure f) {
    return f == still_figure::pot_loss ? "W/K" : f == still_figure::plate_holdup ? "mL" : "";
}

/// The quantities that a log tells of.
enum class log_quantity {
    strength,          ///< of the distillate at the spout, % vol
    jar_strength,      ///< of what was collected between two rows, % vol
    head_temperature,  ///< °C
    pot_temperature,   ///< °C
    time               ///< at which a volume was reached, min
};

/// @param q a quantity of a log
/// @return its name
constexpr char const* name_of(log_quantity q) {
    switch (q) {
    case log_quantity::strength: return "strength";
    case log_quantity::jar_strength: return "jar strength";
    case log_quantity::head_temperature: return "head temperature";
    case log_quantity::pot_temperature: return "pot temperature";
    case log_quantity::time: break;
    }
    return "time";
}
/// @param q a quantity of a log
/// @return the unit of its residuals
constexpr char const* unit_of(log_quantity q) {
    switch (q) {
    case log_quantity::strength:
    case log_quantity::jar_strength: return "% vol";
    case log_quantity::head_temperature:
    case log_quantity::pot_temperature: return "K";
    case log_quantity::time: break;
    }
    return "min";
}

/// An unknown figure of a still, and what is known of it beforehand.
struct still_unknown {
    still_figure what;  ///< figure to estimate
    /// a value from elsewhere, such as a measured reflux ratio; it counts as one more reading
    std::optional<double> known{};
    double uncertainty = 0.0;  ///< standard uncertainty of that value, above 0
};

/// Standard uncertainties of the readings of a log.
struct log_uncertainties {
    double strength = 0.5;                     ///< of strengths at the spout and in jars, 0.01 to 5 % vol
    double head_temperature = 0.5;             ///< 0.01 to 10 K
    double pot_temperature = 0.5;              ///< 0.01 to 10 K
    units::volume volume = 10.0 * millilitre;  ///< of the volume collected, 0 to 1 m3
    units::time time = 1.0 * minute;           ///< 1 s to 1 h
};

/// An estimated figure.
struct learned_figure {
    still_figure what;   ///< figure
    double value;        ///< estimate
    double uncertainty;  ///< standard uncertainty; infinity if the logs do not determine the figure
    double lowest;       ///< lower end of the interval of 95 %, not below the range of the figure
    double highest;      ///< its upper end, not above the range of the figure
    bool at_limit;       ///< whether the estimate is an end of the range of the figure
};

/// Figures that can change together while the forecast of the logs stays nearly the same.
struct alike_figures {
    /// a figure and its change
    struct change {
        still_figure what;  ///< figure
        double by;          ///< change, in the unit of the figure
    };
    std::vector<change> together;  ///< these changes together; a single figure has no effect on the logs
    double correlation;            ///< of two figures; 0 for one figure or more than two
};

/// Readings less forecast of one quantity.
struct log_residuals {
    log_quantity what;        ///< quantity
    std::size_t count;        ///< number of readings
    double mean;              ///< mean of reading less forecast
    double root_mean_square;  ///< of reading less forecast
    double relative;          ///< root mean square over the stated uncertainty: about 1 is to be expected
    double largest;           ///< reading less forecast where it is largest over its uncertainty
    std::size_t log;          ///< log of that reading, from 0
    std::size_t row;          ///< its row, from 0
};

/// A still as its logs show it.
struct [[nodiscard]] learned_still {
    still found;                                    ///< the still with the estimated figures
    std::vector<learned_figure> figures;            ///< in the order of the unknowns
    std::vector<std::vector<double>> correlations;  ///< between the figures, in that order
    std::vector<alike_figures> not_told_apart;      ///< what the logs do not tell apart; empty is best
    std::vector<log_residuals> residuals;           ///< quantity by quantity
    double chi_squared;         ///< sum of squares of the residuals over their standard uncertainties
    double degrees_of_freedom;  ///< readings less unknowns, 0 or more
    bool consistent;            ///< whether logs and forecast agree at 95 %
    double scatter;  ///< factor on the stated uncertainties, 1 or more, by which the residuals exceed them
    double coverage_factor;  ///< of the intervals of 95 %
    int forecasts;           ///< number of runs that were forecast
    bool stopped;            ///< whether the search was stopped before its end
};

/// Progress of learning.
struct learning_progress {
    int forecasts;       ///< runs forecast so far
    double chi_squared;  ///< best so far; infinity before the first
};

/// In words: what the logs do not tell apart.
/// @param a figures that change together
/// @return one sentence without a full stop
inline std::string in_words(alike_figures const& a) {
    auto const change = [](alike_figures::change const& c) {
        std::string const unit = unit_of(c.what);
        return std::string(name_of(c.what)) + (c.by < 0.0 ? " lower by " : " higher by ") +
               numeric::text_of(std::abs(c.by), 2) + (unit.empty() ? "" : " " + unit);
    };
    if (a.together.size() == 1)
        return "the logs say nothing about the " + std::string(name_of(a.together[0].what));
    std::string names, changes;
    for (std::size_t k = 0; k < a.together.size(); ++k) {
        bool const last = k + 1 == a.together.size();
        char const* const joint = k == 0 ? "" : last ? " and " : ", ";
        names += joint + std::string(name_of(a.together[k].what));
        changes += joint + change(a.together[k]);
    }
    return "the logs do not tell " + names + " apart: " + changes + " together give nearly the same readings";
}

/// The remedy for figures that logs do not tell apart.
/// @param a figures that change together
/// @return what to measure or to add
inline std::string remedy_for(alike_figures const& a) {
    auto const has = [&](still_figure f) {
        return std::any_of(a.together.begin(), a.together.end(), [=](auto const& c) { return c.what == f; });
    };
    if (has(still_figure::reflux_ratio))
        return "measure the reflux (volume returned over volume taken), or add the log of a run with "
               "another, "
               "known reflux";
    if (has(still_figure::pot_loss))
        return "log time and volume of a run with known power; for the loss alone, let the hot pot cool and "
               "log "
               "its temperature";
    if (has(still_figure::plate_holdup))
        return "log the first strengths after a time at total reflux, or drain the column after a run and "
               "measure "
               "what runs out";
    if (has(still_figure::neck_share) && a.together.size() > 1)
        return "insulate the neck, or add the log of a run without the column";
    return "log strengths at the spout over the whole run, down to weak distillate";
}

/// Effective stages of a still, for one assumed reflux.
struct [[nodiscard]] stage_estimate {
    double stages;   ///< stages above the boiler that come nearest to what was measured; infinity if it is
                     ///< the most that is tried, so that no number would be too many
    double lowest;   ///< lower end of the range by the standard uncertainty, 0 or more
    double highest;  ///< its upper end; infinity if no number of stages is too many
    double disagreement;  ///< root mean square of forecast less measured strengths, % vol
    double uncertainty;  ///< standard uncertainty of one strength behind the range, % vol: the stated one, or
                         ///< the scatter of the runs if that is larger
    bool explains;       ///< whether runs and forecasts are consistent at 95 %
};

/// An assumed reflux with the fitted stages.
struct [[nodiscard]] still_candidate {
    double reflux_ratio;      ///< assumed
    stage_estimate estimate;  ///< the stages that fit with it
};

}  // namespace aqueth::inline AQUETH_ABI
