// SPDX-License-Identifier: BSL-1.0
#pragma once

#include <aqueth/boiling_curve.hpp>
#include <aqueth/composition.hpp>
#include <aqueth/error.hpp>
#include <aqueth/numeric/minimum.hpp>
#include <aqueth/numeric/number_text.hpp>
#include <aqueth/numeric/probability.hpp>
#include <aqueth/numeric/root.hpp>
#include <aqueth/still/column.hpp>
#include <aqueth/still/detail/boiling_down.hpp>
#include <aqueth/still/detail/column_solver.hpp>
#include <aqueth/still/detail/log_forecast.hpp>
#include <aqueth/still/head.hpp>
#include <aqueth/still/heating.hpp>
#include <aqueth/still/run_log.hpp>
#include <aqueth/still/still.hpp>
#include <aqueth/strength.hpp>
#include <aqueth/units.hpp>

#include <Eigen/Dense>

#include <algorithm>
#include <array>
#include <cmath>
#include <concepts>
#include <cstddef>
#include <limits>
#include <optional>
#include <span>
#include <string>
#include <utility>
#include <vector>

/// @file
/// Learning a still from its earlier runs. The only header that needs Eigen (3.4 or later), so `aqueth.hpp`
/// leaves it out.

namespace aqueth::inline AQUETH_ABI {

// --- figures of a still from logs --------------------------------------------------------------------------

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

namespace detail {

/// range, first guesses and natural step of a figure
struct figure_range {
    double least, most;
    std::array<double, 3> starts;
    double step;  ///< a change that a distiller would call small but real
};

/// @param greatest_loss   loss that leaves a tenth of the power for boiling, W/K
/// @param greatest_holdup a fifth of the charge, divided by the plates, mL
inline figure_range range_of(still_figure f, double greatest_loss, double greatest_holdup) {
    auto const shares_of = [](double most, double step) {
        return figure_range{0.0, most, {0.05 * most, 0.2 * most, 0.5 * most}, step};
    };
    switch (f) {
    case still_figure::stages: return {0.0, most_estimated_stages, {1.0, 3.0, 7.0}, 1.0};
    case still_figure::plate_efficiency: return {0.05, 1.0, {0.3, 0.55, 0.8}, 0.1};
    case still_figure::neck_share: return {0.0, 0.6, {0.02, 0.1, 0.25}, 0.05};
    case still_figure::reflux_ratio: return {0.0, 50.0, {1.0, 3.0, 8.0}, 1.0};
    case still_figure::pot_loss: return shares_of(greatest_loss, 1.0);
    case still_figure::plate_holdup: break;
    }
    return shares_of(greatest_holdup, 20.0);
}

/// Weighted least squares over the logs of a still.
///
/// The method is that of Levenberg and Marquardt. The unknowns stay in their ranges: one at an end that wants
/// to leave it is held there for the step. Derivatives are differences of forecasts. Singular values of the
/// weighted derivatives show what the logs do not determine.
template <boiling_mixture M, class Progress>
class log_fit {
public:
    log_fit(still const& known, std::span<run_log const> logs, std::span<still_unknown const> unknowns,
            log_uncertainties const& u, M const& mixture, Progress const& progress)
        : known_(known), logs_(logs), unknowns_(unknowns), u_(u), mixture_(mixture), progress_(progress) {
        constexpr char const* learning = "learning a still";
        require_range(learning, argument::number_of_past_runs, static_cast<double>(logs.size()), "", 1.0,
                      1e3);
        require_range(learning, argument::number_of_input_quantities, static_cast<double>(unknowns.size()),
                      "", 1.0, 5.0, "figures to estimate");
        auto const uncertain = [&](char const* words, double value, char const* unit, double least,
                                   double most) {
            require_range(learning, argument_name{argument::standard_uncertainty, words}, value, unit, least,
                          most);
        };
        require_range(learning, argument::uncertainty_of_the_strength, u.strength, "% vol", 0.01, 5.0);
        uncertain("standard uncertainty of the head temperature", u.head_temperature, "K", 0.01, 10.0);
        uncertain("standard uncertainty of the pot temperature", u.pot_temperature, "K", 0.01, 10.0);
        uncertain("standard uncertainty of the volume", in(u.volume, litre), "L", 0.0, 1000.0);
        uncertain("standard uncertainty of the time", in(u.time, minute), "min", 1.0 / 60.0, 60.0);
        double greatest_loss = 1e4, greatest_holdup = 1e5;
        for (run_log const& log : logs) {
            require_log(log);
            readings_.push_back(readings_of(log));
            count_ += readings_.back().size();
            greatest_holdup =
                (std::min)(greatest_holdup, 0.2 * in(log.charge.liquid().volume(celsius(20)), millilitre));
            if (log.power) {  // a boiling pot is at 105 °C at most; a tenth of the power is left for boiling
                greatest_loss =
                    (std::min)(greatest_loss, 0.9 * log.power->value() / (105.0 - known.pot.room.celsius()));
            }
        }
        require_range(
            learning, argument::number_of_readings, static_cast<double>(count_), "", 1.0, unlimited,
            "the logs hold no strength, no temperature, and no time beside a volume under known power");
        for (std::size_t j = 0; j < unknowns.size(); ++j) {
            still_unknown const& each = unknowns[j];
            ranges_.push_back(
                range_of(each.what, greatest_loss, greatest_holdup / (std::max)(1, known.tower.whole())));
            auto const same_kind = [&](still_unknown const& other) {
                bool const column = is_of_column(each.what) && is_of_column(other.what);
                return column || other.what == each.what;
            };
            double const kinds =
                static_cast<double>(std::count_if(unknowns.begin(), unknowns.end(), same_kind));
            require_range(learning, argument_name{argument::number_of_input_quantities, name_of(each.what)},
                          kinds, "", 1.0, 1.0, "each figure once; either the stages or the plate efficiency");
            bool const has_stages =
                known.tower.whole() >= 1 ||
                std::any_of(unknowns.begin(), unknowns.end(),
                            [](still_unknown const& other) { return other.what == still_figure::stages; });
            if (each.what == still_figure::plate_efficiency ||
                (each.what == still_figure::plate_holdup && !has_stages)) {
                require_range(learning, argument::number_of_plates, known.tower.whole(), "", 1.0,
                              column::most_stages, "efficiency and holdup need a column with plates");
            }
            if (each.what == still_figure::reflux_ratio) require_reflux();
            if (!each.known) continue;
            require_range(learning, argument_name{argument::estimate, name_of(each.what)}, *each.known,
                          unit_of(each.what), ranges_[j].least, ranges_[j].most);
            uncertain("standard uncertainty of a known figure", each.uncertainty, unit_of(each.what), 1e-6,
                      1e6);
            ++priors_;
        }
    }

    learned_still learn() {
        point best = first_guess();
        double damping = 1e-3;
        for (int i = 0; i < most_iterations && !stopped_; ++i) {
            Eigen::MatrixXd const slopes = derivatives(best);
            if (stopped_) break;
            point next = improved(best, slopes, damping);
            double const gain = best.squares - next.squares;
            if (gain > 0.0) {
                best = std::move(next);
                reweigh(best);
            }
            if (!(gain > negligible * (1.0 + best.squares))) break;
        }
        return report(best);
    }

private:
    /// values of the unknowns with the forecasts of all logs
    struct point {
        Eigen::VectorXd figures;
        std::vector<log_forecast> forecasts;
        Eigen::VectorXd residuals;  ///< over their uncertainties; those of known figures come last
        double squares = std::numeric_limits<double>::infinity();
    };

    static constexpr int most_iterations = 60;
    static constexpr double negligible = 1e-7;  ///< gain of the sum of squares that ends the search

    /// a reflux ratio belongs to a total condenser
    void require_reflux() const {
        bool const possible = known_.head.what() != head::kind::partial_condenser;
        require_range("learning a still", argument::reflux_ratio, 0.0, "", 0.0, possible ? 1.0 : -1.0,
                      "only a total condenser has a reflux ratio");
    }
    static bool is_of_column(still_figure f) {
        return f == still_figure::stages || f == still_figure::plate_efficiency;
    }

    void require_log(run_log const& log) const {
        constexpr char const* learning = "learning a still";
        if (log.reflux_ratio) require_reflux();
        require_range(learning, argument::number_of_readings, static_cast<double>(log.rows.size()), "", 1.0,
                      1e5, "rows of a log");
        units::volume const most = 0.97 * log.charge.liquid().volume(celsius(20));
        units::volume before;
        units::time earlier;
        bool any = false;
        for (log_row const& row : log.rows) {
            double const seconds = row.elapsed ? row.elapsed->value() : 0.0;
            if (!row.collected) {
                if (!row.elapsed) {
                    raise_error(refusal(learning, argument::elapsed_time,
                                        std::numeric_limits<double>::quiet_NaN(), "min", 0.0, unlimited,
                                        "a row has neither time nor volume"));
                }
                if (!log.power) {
                    raise_error(refusal(learning, argument::power, std::numeric_limits<double>::quiet_NaN(),
                                        "W", 1e-3, unlimited,
                                        "a row without a volume needs the power of its run"));
                }
            } else {
                require_range(learning, argument::collected_volume, in(*row.collected, litre), "L",
                              in(before, litre), in(most, litre), "not falling, and less than the charge");
                if (row.jar_strength && !(*row.collected > before)) {
                    raise_error(refusal(learning, argument::collected_volume, in(*row.collected, litre), "L",
                                        in(before, litre) + 1e-6, in(most, litre),
                                        "a jar's strength needs a volume above that of the row before"));
                }
                before = *row.collected;
            }
            require_range(learning, argument::elapsed_time, seconds / 60.0, "min",
                          row.elapsed ? in(earlier, minute) : 0.0, 6e4, "times of a log do not fall");
            if (row.elapsed) earlier = *row.elapsed;
            any = any || (row.collected ? row.collected->value() > 0.0 : seconds > 0.0);
        }
        if (!any) {
            raise_error(refusal(learning, argument::collected_volume, in(before, litre), "L", 1e-6,
                                in(most, litre), "a log must go on after its first moment"));
        }
    }

    /// the head of the still with this reflux ratio
    head head_returning(double ratio) const {
        head h = head::total_condenser(reflux::constant(ratio)).holding(known_.head.holdup());
        auto const& t = known_.head.reflux_temperature();
        return t ? h.reflux_at(*t) : h;
    }

    /// the still with these figures
    still still_with(Eigen::VectorXd const& figures) const {
        still s = known_;
        units::volume held = known_.tower.holdup();
        for (std::size_t j = 0; j < unknowns_.size(); ++j) {
            double const value = figures[static_cast<Eigen::Index>(j)];
            switch (unknowns_[j].what) {
            case still_figure::stages: s.tower = column::of_stages(value); break;
            case still_figure::plate_efficiency:
                s.tower = column::of_plates(known_.tower.whole(), value);
                break;
            case still_figure::neck_share: s.neck = neck::condensing(value); break;
            case still_figure::reflux_ratio: s.head = head_returning(value); break;
            case still_figure::pot_loss: s.pot.loss = value * watt_per_kelvin; break;
            case still_figure::plate_holdup: held = value * millilitre; break;
            }
        }
        s.tower = s.tower.holding(held);
        return s;
    }

    /// the still with these figures and the settings of a run
    still still_in(run_log const& log, Eigen::VectorXd const& figures) const {
        still s = still_with(figures);
        if (log.reflux_ratio) s.head = head_returning(*log.reflux_ratio);
        s.pot.power = log.power.value_or(1.0 * kilowatt);
        if (!log.power) s.pot.loss = units::thermal_conductance();  // no time is read
        return s;
    }

    /// forecasts for these figures, judged with the present effects of the places
    point at(Eigen::VectorXd const& figures) {
        point p;
        p.figures = figures;
        p.forecasts.reserve(logs_.size());
        for (run_log const& log : logs_) {
            if (stopped_) return p;
            p.forecasts.emplace_back(log, still_in(log, figures), mixture_);
            ++forecasts_;
            stopped_ = !progress_(learning_progress{forecasts_, least_});
        }
        judge(p);
        return p;
    }

    double stated(log_quantity what) const {
        switch (what) {
        case log_quantity::strength:
        case log_quantity::jar_strength: return u_.strength;
        case log_quantity::head_temperature: return u_.head_temperature;
        case log_quantity::pot_temperature: return u_.pot_temperature;
        case log_quantity::time: break;
        }
        return in(u_.time, minute);
    }

    /// Calls f with the place, the log and each reading.
    template <class F>
    void for_each_reading(F const& f) const {
        Eigen::Index place = 0;
        for (std::size_t k = 0; k < logs_.size(); ++k)
            for (log_reading const& r : readings_[k]) f(place++, k, r);
    }

    /// The effect of the uncertain place of a reading: of the volume, or of the time where there is no
    /// volume, by the slope of the forecast; over the stated uncertainty of the reading.
    Eigen::VectorXd place_effects_at(point const& p) const {
        Eigen::VectorXd h(static_cast<Eigen::Index>(count_));
        for_each_reading([&](Eigen::Index place, std::size_t k, log_reading const& r) {
            double const litres = logs_[k].rows[r.row].collected
                                      ? in(u_.volume, litre)
                                      : in(u_.time, minute) * p.forecasts[k].rate(r.row);
            h[place] = p.forecasts[k].read(r).per_litre * litres / stated(r.what);
        });
        return h;
    }

    /// Calls f with the first place of each row and the number of its readings.
    template <class F>
    void for_each_row(F const& f) const {
        Eigen::Index first = 0, end = 0;
        std::size_t log = 0, row = 0;
        for_each_reading([&](Eigen::Index at, std::size_t k, log_reading const& r) {
            if (at > first && (k != log || r.row != row)) {
                f(first, at - first);
                first = at;
            }
            log = k;
            row = r.row;
            end = at + 1;
        });
        f(first, end - first);
    }

    /// Sets residuals and their sum of squares. An error of the place changes all readings of a row together,
    /// so their covariance over the stated uncertainties is I + h h', h being the effects of the place. Its
    /// inverse square root, I - (1 - 1/sqrt(1 + h'h)) h h'/h'h, makes them independent.
    void judge(point& p) {
        p.residuals.resize(static_cast<Eigen::Index>(count_ + priors_));
        for_each_reading([&](Eigen::Index place, std::size_t k, log_reading const& r) {
            p.residuals[place] = (r.measured - p.forecasts[k].read(r).value) / stated(r.what);
        });
        for_each_row([&](Eigen::Index first, Eigen::Index number) {
            auto const h = place_effects_.segment(first, number);
            double const all = h.squaredNorm();
            if (!(all > 0.0)) return;
            auto row = p.residuals.segment(first, number);
            double const along = (1.0 - 1.0 / std::sqrt(1.0 + all)) / all * h.dot(row);
            row -= along * h;
        });
        auto place = static_cast<Eigen::Index>(count_);
        for (std::size_t j = 0; j < unknowns_.size(); ++j) {
            if (!unknowns_[j].known) continue;
            double const off = *unknowns_[j].known - p.figures[static_cast<Eigen::Index>(j)];
            p.residuals[place++] = off / unknowns_[j].uncertainty;
        }
        p.squares = p.residuals.squaredNorm();
        least_ = (std::min)(least_, p.squares);
    }

    /// The best of a few stills, because contradictory logs can have several valleys.
    point first_guess() {
        place_effects_ = Eigen::VectorXd::Zero(static_cast<Eigen::Index>(count_));
        std::size_t combinations = 1;
        std::vector<std::size_t> choices;
        for (std::size_t j = 0; j < unknowns_.size(); ++j) {
            // Beyond three figures a search from the middle is as good as 81 stills.
            bool const one = unknowns_[j].known || j >= 3 || unknowns_[j].what == still_figure::plate_holdup;
            choices.push_back(one ? 1 : ranges_[j].starts.size());
            combinations *= choices.back();
        }
        point best;
        for (std::size_t i = 0; i < combinations && !stopped_; ++i) {
            Eigen::VectorXd figures(static_cast<Eigen::Index>(unknowns_.size()));
            std::size_t rest = i;
            for (std::size_t j = 0; j < unknowns_.size(); ++j) {
                std::size_t const start = choices[j] == 1 ? 1 : rest % choices[j];
                rest /= choices[j];
                // Without holdup a forecast takes a tenth of the time.
                figures[static_cast<Eigen::Index>(j)] =
                    unknowns_[j].what == still_figure::plate_holdup
                        ? 0.0
                        : unknowns_[j].known.value_or(ranges_[j].starts[start]);
            }
            point p = at(figures);
            if (p.squares < best.squares || best.figures.size() == 0) best = std::move(p);
        }
        for (std::size_t j = 0; j < unknowns_.size() && !stopped_; ++j) {
            if (unknowns_[j].what != still_figure::plate_holdup) continue;
            best.figures[static_cast<Eigen::Index>(j)] = unknowns_[j].known.value_or(ranges_[j].starts[0]);
            best = at(best.figures);
        }
        if (!stopped_) reweigh(best);
        return best;
    }

    void reweigh(point& p) {
        place_effects_ = place_effects_at(p);
        judge(p);
    }

    /// Derivatives of the residuals with respect to the figures over their steps, from one side.
    Eigen::MatrixXd derivatives(point const& p) {
        return differences(p, Eigen::VectorXd::Constant(p.figures.size(), 0.005), false);
    }
    /// The same from both sides, over the distance that the readings leave to each figure by itself: figures
    /// such as stages change the readings unevenly, and the uncertainty is that over such a distance.
    Eigen::MatrixXd derivatives_over_uncertainty(point const& p) {
        Eigen::MatrixXd const local = derivatives(p);
        if (stopped_) return local;
        Eigen::VectorXd reach(p.figures.size());
        for (Eigen::Index j = 0; j < reach.size(); ++j)
            reach[j] = (std::min)(1.0, (std::max)(0.02, 1.0 / (std::max)(1e-6, local.col(j).norm())));
        return differences(p, reach, true);
    }
    /// @param reach differences of the figures over their steps
    Eigen::MatrixXd differences(point const& p, Eigen::VectorXd const& reach, bool both_sides) {
        auto const columns = static_cast<Eigen::Index>(unknowns_.size());
        Eigen::MatrixXd slopes(static_cast<Eigen::Index>(count_ + priors_), columns);
        for (Eigen::Index j = 0; j < columns && !stopped_; ++j) {
            figure_range const& range = ranges_[static_cast<std::size_t>(j)];
            double const h = reach[j] * range.step;
            double const above = (std::min)(p.figures[j] + h, range.most);
            double const below = (std::max)(p.figures[j] - h, range.least);
            Eigen::VectorXd figures = p.figures;
            bool const upwards = above - p.figures[j] >= p.figures[j] - below;
            figures[j] = upwards ? above : below;
            point const one = at(figures);
            double from = p.figures[j];
            Eigen::VectorXd residuals = p.residuals;
            bool const other_side = both_sides && above > p.figures[j] && below < p.figures[j];
            if (other_side && !stopped_) {
                from = upwards ? below : above;
                Eigen::VectorXd opposite = p.figures;
                opposite[j] = from;
                residuals = at(opposite).residuals;
            }
            if (!stopped_) slopes.col(j) = (one.residuals - residuals) * (range.step / (figures[j] - from));
        }
        return slopes;
    }

    /// A better point, or the same if there is none nearby.
    point improved(point const& p, Eigen::MatrixXd const& slopes, double& damping) {
        Eigen::VectorXd const downhill = -(slopes.transpose() * p.residuals);
        Eigen::MatrixXd normal = slopes.transpose() * slopes;
        for (Eigen::Index j = 0; j < downhill.size(); ++j) {
            figure_range const& range = ranges_[static_cast<std::size_t>(j)];
            bool const held = (p.figures[j] <= range.least && downhill[j] < 0.0) ||
                              (p.figures[j] >= range.most && downhill[j] > 0.0);
            if (!held) continue;
            normal.row(j).setZero();
            normal.col(j).setZero();
        }
        double const largest = (std::max)(1e-12, normal.diagonal().maxCoeff());
        for (int tries = 0; tries < 12 && !stopped_; ++tries) {
            Eigen::MatrixXd damped = normal;
            for (Eigen::Index j = 0; j < downhill.size(); ++j)
                damped(j, j) += damping * (std::max)(normal(j, j), 1e-6 * largest);
            Eigen::VectorXd const step = damped.ldlt().solve(downhill);
            Eigen::VectorXd figures = p.figures;
            bool moves = false;
            for (Eigen::Index j = 0; j < step.size(); ++j) {
                figure_range const& range = ranges_[static_cast<std::size_t>(j)];
                bool const held = normal(j, j) == 0.0;
                if (!held) figures[j] += range.step * step[j];
                figures[j] = (std::min)(range.most, (std::max)(range.least, figures[j]));
                moves = moves || std::abs(figures[j] - p.figures[j]) > 1e-7 * range.step;
            }
            if (!moves) break;
            point next = at(figures);
            if (!stopped_ && next.squares < p.squares) {
                damping = (std::max)(1e-9, 0.1 * damping);
                return next;
            }
            damping *= 8.0;
        }
        return p;
    }

    learned_still report(point const& best) {
        learned_still result{
            still_with(best.figures), {}, {}, {}, {}, best.squares, 0.0, false, 1.0, 0.0, 0, false};
        auto const columns = static_cast<Eigen::Index>(unknowns_.size());
        Eigen::MatrixXd const slopes = stopped_ ? Eigen::MatrixXd() : derivatives_over_uncertainty(best);
        result.stopped = stopped_;
        result.forecasts = forecasts_;
        result.degrees_of_freedom =
            (std::max)(0.0, static_cast<double>(count_ + priors_) - static_cast<double>(columns));
        double const freedom = result.degrees_of_freedom;
        result.consistent = best.squares <= numeric::chi_squared_quantile(0.95, (std::max)(1.0, freedom));
        if (freedom >= 1.0) result.scatter = (std::max)(1.0, std::sqrt(best.squares / freedom));
        result.coverage_factor = result.scatter > 1.0 ? numeric::student_quantile(0.975, freedom)
                                                      : numeric::normal_quantile(0.975);
        set_figures(result, best, slopes);
        set_residuals(result, best);
        return result;
    }

    /// width of a figure's range in steps of the figure
    double width(std::size_t j) const { return (ranges_[j].most - ranges_[j].least) / ranges_[j].step; }

    void set_figures(learned_still& result, point const& best, Eigen::MatrixXd const& slopes) {
        std::size_t const columns = unknowns_.size();
        Eigen::MatrixXd covariance;
        if (!result.stopped) {
            Eigen::JacobiSVD<Eigen::MatrixXd> const svd(slopes, Eigen::ComputeThinU | Eigen::ComputeFullV);
            Eigen::VectorXd inverse = Eigen::VectorXd::Constant(static_cast<Eigen::Index>(columns), 1e12);
            for (Eigen::Index j = 0; j < svd.singularValues().size(); ++j)
                inverse[j] = 1.0 / (std::max)(1e-6, svd.singularValues()[j]);
            covariance = svd.matrixV() * inverse.array().square().matrix().asDiagonal() *
                         svd.matrixV().transpose() * (result.scatter * result.scatter);
            name_directions(result, svd.matrixV(), inverse * result.scatter);
        }
        for (std::size_t j = 0; j < columns; ++j) {
            auto const at = static_cast<Eigen::Index>(j);
            figure_range const& range = ranges_[j];
            double const value = best.figures[at];
            double const u = result.stopped ? unlimited : std::sqrt(covariance(at, at));
            bool const known = u < 0.5 * width(j);  // else the logs leave the figure anywhere in its range
            double const uncertainty = known ? u * range.step : unlimited;
            double const reach = result.coverage_factor * uncertainty;
            result.figures.push_back({unknowns_[j].what, value, uncertainty,
                                      known ? (std::max)(range.least, value - reach) : range.least,
                                      known ? (std::min)(range.most, value + reach) : range.most,
                                      value <= range.least || value >= range.most});
        }
        if (result.stopped) return;
        for (Eigen::Index j = 0; j < covariance.rows(); ++j) {
            result.correlations.emplace_back();
            for (Eigen::Index k = 0; k < covariance.cols(); ++k) {
                result.correlations.back().push_back(
                    j == k ? 1.0 : covariance(j, k) / std::sqrt(covariance(j, j) * covariance(k, k)));
            }
        }
        name_pairs(result, covariance);
    }

    bool named(learned_still const& result, still_figure a, still_figure b) const {
        auto const holds = [](alike_figures const& all, still_figure f) {
            return std::any_of(all.together.begin(), all.together.end(),
                               [=](alike_figures::change const& c) { return c.what == f; });
        };
        return std::any_of(result.not_told_apart.begin(), result.not_told_apart.end(),
                           [&](alike_figures const& all) { return holds(all, a) && holds(all, b); });
    }

    /// Combinations along which the logs leave the figures anywhere in their ranges.
    void name_directions(learned_still& result, Eigen::MatrixXd const& directions,
                         Eigen::VectorXd const& uncertainties) const {
        for (Eigen::Index k = 0; k < directions.cols(); ++k) {
            Eigen::VectorXd const direction = directions.col(k);
            bool undetermined = false;
            for (Eigen::Index j = 0; j < direction.size(); ++j)
                undetermined = undetermined || std::abs(direction[j]) * uncertainties[k] >=
                                                   0.5 * width(static_cast<std::size_t>(j));
            if (!undetermined) continue;
            alike_figures all{{}, 0.0};
            double const largest = direction.cwiseAbs().maxCoeff();
            double const sign = direction[0] < 0.0 ? -1.0 : 1.0;
            for (Eigen::Index j = 0; j < direction.size(); ++j) {
                auto const place = static_cast<std::size_t>(j);
                if (std::abs(direction[j]) < 0.05 * largest) continue;
                all.together.push_back(
                    {unknowns_[place].what, sign * direction[j] / largest * ranges_[place].step});
            }
            if (all.together.size() == 2)
                all.correlation = all.together[0].by * all.together[1].by > 0.0 ? 1.0 : -1.0;
            result.not_told_apart.push_back(std::move(all));
        }
    }

    /// Figures whose correlation is beyond 0.95: each with all the others that change along with it.
    void name_pairs(learned_still& result, Eigen::MatrixXd const& covariance) const {
        for (std::size_t j = 0; j < unknowns_.size(); ++j) {
            auto const change = [&](std::size_t k) {
                auto const at = static_cast<Eigen::Index>(k);
                double const u = std::sqrt(covariance(at, at)) * ranges_[k].step;
                return alike_figures::change{unknowns_[k].what, result.correlations[j][k] * u};
            };
            alike_figures all{{change(j)}, 0.0};
            for (std::size_t k = j + 1; k < unknowns_.size(); ++k) {
                double const r = result.correlations[j][k];
                if (std::abs(r) < 0.95 || named(result, unknowns_[j].what, unknowns_[k].what)) continue;
                all.together.push_back(change(k));
                all.correlation = r;
            }
            if (all.together.size() > 2) all.correlation = 0.0;
            if (all.together.size() > 1) result.not_told_apart.push_back(std::move(all));
        }
    }

    void set_residuals(learned_still& result, point const& best) const {
        if (best.forecasts.size() < logs_.size()) return;  // stopped before the first
        for (auto const what :
             {log_quantity::strength, log_quantity::jar_strength, log_quantity::head_temperature,
              log_quantity::pot_temperature, log_quantity::time}) {
            log_residuals sum{what, 0, 0.0, 0.0, 0.0, 0.0, 0, 0};
            double worst = -1.0;
            for_each_reading([&](Eigen::Index place, std::size_t k, log_reading const& r) {
                if (r.what != what) return;
                double const off = r.measured - best.forecasts[k].read(r).value;
                double const relative = off / (stated(what) * std::hypot(1.0, place_effects_[place]));
                ++sum.count;
                sum.mean += off;
                sum.root_mean_square += off * off;
                sum.relative += relative * relative;
                if (std::abs(relative) <= worst) return;
                worst = std::abs(relative);
                sum.largest = off;
                sum.log = k;
                sum.row = r.row;
            });
            if (sum.count == 0) continue;
            double const n = static_cast<double>(sum.count);
            sum.mean /= n;
            sum.root_mean_square = std::sqrt(sum.root_mean_square / n);
            sum.relative = std::sqrt(sum.relative / n);
            result.residuals.push_back(sum);
        }
    }

    still known_;
    std::span<run_log const> logs_;
    std::span<still_unknown const> unknowns_;
    log_uncertainties u_;
    M const& mixture_;
    Progress const& progress_;
    std::vector<figure_range> ranges_;
    std::vector<std::vector<log_reading>> readings_;  ///< log by log
    std::size_t count_ = 0, priors_ = 0;
    Eigen::VectorXd place_effects_;  ///< of the best point so far
    double least_ = std::numeric_limits<double>::infinity();
    int forecasts_ = 0;
    bool stopped_ = false;
};

}  // namespace detail

/// Estimates figures of a still from the logs of earlier runs, by weighted least squares.
///
/// Each reading counts with its standard uncertainty (type B); the uncertainty of the volume, or of the time
/// where there is no volume, counts through the slope of the forecast. If the readings scatter about the
/// forecast by more than that, all uncertainties are multiplied by the ratio (type A). Intervals then use
/// Student's t. Readings count as independent: an offset of a thermometer is not one more unknown. The doubt
/// of the equilibrium is not included; learning again with `curve_with_vapour_shifted` shows its effect.
/// @param known    the still with the figures that are known; its power does not count, and its unknown figures
///                 are replaced. For an unknown plate efficiency it has plates
/// @param logs     one or more, all of this still
/// @param unknowns 1 to 5 different figures; the stages or the plate efficiency, not both
/// @param u        standard uncertainties of the readings
/// @param mixture  the equilibrium at the pressure of the day
/// @param progress callable: learning_progress -> bool; called after every forecast; false stops the search,
///                 and the best so far is returned without uncertainties
/// @return the figures with their uncertainties and correlations, what the logs do not tell apart, and how
///         well logs and forecast agree
/// @throws refusal if there is no log or no reading, an unknown occurs twice or has no column to belong to, an
///         uncertainty is outside its range, times or volumes fall, a volume is beyond the charge, a row without
///         a volume has no power, or `distil` refuses a run of the still
/// @par Accuracy
/// Of the search: a hundredth of a standard uncertainty. Of the forecast: that of `distil`, interpolated between
/// 150 states. The intervals hold the true value in 90 to 98 % of simulated runs.
/// @par Source
/// Least squares after K. Levenberg, Quarterly of Applied Mathematics 2 (1944) 164 and D. Marquardt, Journal of
/// the Society for Industrial and Applied Mathematics 11 (1963) 431 (from memory); types A and B as
/// `estimate_stages`
template <boiling_mixture M, std::predicate<learning_progress> Progress>
learned_still learn_still(still const& known, std::span<run_log const> logs,
                          std::span<still_unknown const> unknowns, log_uncertainties const& u,
                          M const& mixture, Progress const& progress) {
    return detail::log_fit<M, Progress>(known, logs, unknowns, u, mixture, progress).learn();
}

/// The same without progress.
/// @param known    as above
/// @param logs     as above
/// @param unknowns as above
/// @param u        as above
/// @param mixture  as above
/// @return as above
/// @throws refusal as above
template <boiling_mixture M>
learned_still learn_still(still const& known, std::span<run_log const> logs,
                          std::span<still_unknown const> unknowns, log_uncertainties const& u,
                          M const& mixture) {
    return learn_still(known, logs, unknowns, u, mixture, [](learning_progress const&) { return true; });
}

// --- stages from single strengths ---------------------------------------------------------------------------

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

namespace detail {

inline std::string reflux_in_words(reflux const& r) { return "reflux " + numeric::text_of(r.ratio(), 6); }

/// differences of forecast and measured strengths, in % vol
struct forecast_misses {
    double mean;     ///< mean of forecast less measured
    double squares;  ///< sum of their squares
};

/// Checked past runs, and the fit of a number of stages to them.
template <boiling_mixture M>
class stage_fit {
public:
    stage_fit(std::span<past_run const> past, double uncertainty, M const& mixture)
        : past_(past), stated_(uncertainty), mixture_(mixture) {
        double const azeotrope = column_solver<M>::azeotrope(mixture);
        auto const percent_vol = [](double x) { return to<volume_fraction>(mole_fraction(x)).percent(); };
        require_range("estimate of stages", argument::number_of_past_runs, count(), "", 1.0, 1e4);
        require_range("estimate of stages", argument::uncertainty_of_the_strength, uncertainty, "% vol", 0.01,
                      5.0);
        for (past_run const& p : past) {
            require_range("estimate of stages", argument::mass_of_the_charge, p.charge.mass().value(), "kg",
                          1e-6, unlimited);
            double const x = amounts(p.charge).mole_fraction();
            require_range("estimate of stages", argument::strength_of_the_charge, percent_vol(x),
                          volume_fraction::unit, percent_vol(1e-5), percent_vol(azeotrope - 1e-6),
                          "from some ethanol to below the azeotrope");
            require_range("estimate of stages", argument::discarded_volume, in(p.discarded, litre), "L", 0.0,
                          unlimited);
            require_range("estimate of stages", argument::collected_volume, in(p.collected, litre), "L", 1e-6,
                          unlimited);
            units::volume const most = 0.97 * p.charge.liquid().volume(celsius(20)) - p.discarded;
            if (p.collected >= most) {
                raise_error(refusal("estimate of stages", argument::collected_volume, in(p.collected, litre),
                                    "L", 0.0, in(most, litre),
                                    "the charge less the first fraction and what must stay in the pot"));
            }
            measured_ += p.strength.percent() / count();
            if (x > amounts(strongest().charge).mole_fraction())
                strongest_ = static_cast<std::size_t>(&p - past.data());
        }
    }

    double measured() const { return measured_; }  ///< mean of the measured strengths, % vol

    forecast_misses misses(double stages, known_still const& known) const {
        boiling_down<M> still(strongest().charge, stages, known, mixture_);
        forecast_misses sum{0.0, 0.0};
        for (past_run const& p : past_) {
            double const miss = still.strength(p) - p.strength.percent();
            sum.mean += miss / count();
            sum.squares += miss * miss;
        }
        return sum;
    }

    /// The stages with the least sum of squares, whether or not they explain the runs.
    stage_estimate estimate(known_still const& known) const {
        double const most = most_estimated_stages;
        auto const squares = [&](double stages) { return misses(stages, known).squares; };
        double best = 0.0, least = squares(0.0);
        double const at_most = squares(most);
        for (double n = 1.0; n <= most; n += 1.0) {  // contradictory runs can cause two minima
            double const s = n < most ? squares(n) : at_most;
            if (s < least) {
                best = n;
                least = s;
            }
        }
        double const stages =
            numeric::minimum(squares, (std::max)(0.0, best - 1.0), (std::min)(most, best + 1.0), 1e-5);
        if (squares(stages) < least) {
            best = stages;
            least = squares(stages);
        }
        double const freedom = (std::max)(1.0, count() - 1.0);
        double const found = count() > 1.0 ? std::sqrt(least / freedom) : 0.0;  // one run has no scatter
        double const u = (std::max)(stated_, found);
        double const explained = stated_ * stated_ * numeric::chi_squared_quantile(0.95, freedom);
        // In the range the sum of squares exceeds its minimum by at most one squared standard uncertainty of
        // a strength. For one run that is the stages for the strength plus and minus the uncertainty. If the
        // most stages are as good as the best, the sum has no minimum inside. The range is then the stages
        // that explain the runs, or, if none do, those as good as the most stages.
        double const negligible = 1e-6 * u * u;
        bool const flat = at_most - least <= negligible;
        double const allowed = flat ? (std::max)(least + negligible, explained) : least + u * u;
        auto const beyond = [&](double n) { return squares(n) - allowed; };
        double const lowest = beyond(0.0) <= 0.0 ? 0.0 : numeric::bracketed_root(beyond, 0.0, best, 1e-5);
        double const highest =
            at_most <= allowed ? unlimited : numeric::bracketed_root(beyond, best, most, 1e-5);
        return {flat ? unlimited : best, lowest, highest, std::sqrt(least / count()), u, least <= explained};
    }

private:
    double count() const { return static_cast<double>(past_.size()); }
    past_run const& strongest() const { return past_[strongest_]; }

    std::span<past_run const> past_;
    double stated_;
    M const& mixture_;
    double measured_ = 0.0;
    std::size_t strongest_ = 0;
};

}  // namespace detail

/// Effective stages of a still's column from earlier runs, for the next forecast. They have the least sum of
/// squares of forecast less measured strength. Pot and neck do not count.
///
/// One run gives one strength, which determines only one unknown: the reflux must be known or assumed.
/// `reflux_candidates` shows which other assumptions would also fit.
///
/// The range is that of one standard uncertainty. Each strength counts with the stated uncertainty (type B),
/// or with the scatter of the runs about the fit (type A, as many degrees of freedom as there are runs, less
/// one) if that is larger, so contradictory runs give a wide range. If the most stages fit best, the range
/// holds the stages that explain the runs at 95 %.
/// @param past        one run or more, all on the same still
/// @param returned    reflux of the runs, a constant ratio
/// @param n           the still's neck
/// @param uncertainty standard uncertainty of each of the measured strengths, 0.01 to 5 % vol
/// @param mixture     the equilibrium at the pressure of the day
/// @return the stages, their range, and whether they explain the runs
/// @throws refusal if there is no run, a charge holds no ethanol or is not below the azeotrope, a volume
///         is not positive or larger than possible, or the mean strength is outside the strengths of a bare
///         pot to 20 stages, which are the bounds of the error
/// @par Accuracy
/// Of the search: 1e-4 stages. Of the forecast strengths: 2e-5 % vol from those of `distil`.
/// @par Source
/// Type A and type B: JCGM 100:2008 (GUM), 4.2 and 4.3, from memory
template <boiling_mixture M>
stage_estimate estimate_stages(std::span<past_run const> past, reflux const& returned, neck const& n,
                               double uncertainty, M const& mixture) {
    detail::stage_fit<M> const fit(past, uncertainty, mixture);
    detail::known_still const known{returned, n};
    stage_estimate const e = fit.estimate(known);
    if (e.explains) return e;
    double const weakest = fit.measured() + fit.misses(0.0, known).mean;
    double const strongest = fit.measured() + fit.misses(most_estimated_stages, known).mean;
    require_range("estimate of stages", argument::measured_strength, fit.measured(), volume_fraction::unit,
                  weakest, strongest,
                  "from a bare pot to 20 stages with " + detail::reflux_in_words(returned) +
                      " and the same volume collected");
    return e;
}

/// The stages nearest to the measurements for each of several reflux ratios. The more ratios explain the
/// measurements, the less the data distinguish reflux from stages.
/// @param past        one run or more, all on the same still and with the same reflux
/// @param ratios      reflux ratios to try
/// @param n           the still's neck
/// @param uncertainty standard uncertainty of each of the measured strengths, 0.01 to 5 % vol
/// @param mixture     the equilibrium at the pressure of the day
/// @param progress    callable: std::size_t -> void; called after each ratio with the number of ratios tried
/// @return the ratios in their order, each with its nearest stages, explaining or not
/// @throws refusal as `estimate_stages`, except for the strength: a ratio that cannot give it has a
/// disagreement instead
template <boiling_mixture M, std::invocable<std::size_t> Progress>
[[nodiscard]] std::vector<still_candidate>
nearest_stages(std::span<past_run const> past, std::span<double const> ratios, neck const& n,
               double uncertainty, M const& mixture, Progress const& progress) {
    detail::stage_fit<M> const fit(past, uncertainty, mixture);
    std::vector<still_candidate> result;
    for (double const ratio : ratios) {
        result.push_back({ratio, fit.estimate({reflux::constant(ratio), n})});
        progress(result.size());
    }
    return result;
}

/// The same without progress.
/// @param past        as above
/// @param ratios      as above
/// @param n           as above
/// @param uncertainty as above
/// @param mixture     as above
/// @return as above
/// @throws refusal as above
template <boiling_mixture M>
[[nodiscard]] std::vector<still_candidate> nearest_stages(std::span<past_run const> past,
                                                          std::span<double const> ratios, neck const& n,
                                                          double uncertainty, M const& mixture) {
    return nearest_stages(past, ratios, n, uncertainty, mixture, [](std::size_t) {});
}

/// The pairs of reflux and stages that explain the measurements.
/// @param past        as `nearest_stages`
/// @param ratios      as `nearest_stages`
/// @param n           as `nearest_stages`
/// @param uncertainty as `nearest_stages`
/// @param mixture     as `nearest_stages`
/// @return the ratios with which some number of stages explains the runs, with those stages
/// @throws refusal as `nearest_stages`
template <boiling_mixture M>
[[nodiscard]] std::vector<still_candidate> reflux_candidates(std::span<past_run const> past,
                                                             std::span<double const> ratios, neck const& n,
                                                             double uncertainty, M const& mixture) {
    std::vector<still_candidate> result;
    for (still_candidate const& c : nearest_stages(past, ratios, n, uncertainty, mixture))
        if (c.estimate.explains) result.push_back(c);
    return result;
}

}  // namespace aqueth::inline AQUETH_ABI
