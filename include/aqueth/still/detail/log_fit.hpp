// SPDX-License-Identifier: BSL-1.0
#pragma once

#include <aqueth/boiling_curve.hpp>
#include <aqueth/error.hpp>
#include <aqueth/numeric/probability.hpp>
#include <aqueth/still/column.hpp>
#include <aqueth/still/detail/column_solver.hpp>
#include <aqueth/still/detail/log_forecast.hpp>
#include <aqueth/still/head.hpp>
#include <aqueth/still/learned.hpp>
#include <aqueth/still/run_log.hpp>
#include <aqueth/still/still.hpp>
#include <aqueth/units.hpp>

#include <Eigen/Dense>

#include <algorithm>
#include <array>
#include <cmath>
#include <cstddef>
#include <limits>
#include <optional>
#include <span>
#include <utility>
#include <vector>

/// @file
/// The fit of a still to its logs. The only header that needs Eigen (3.4 or later), beside `learning.hpp`,
/// which includes it.

namespace aqueth::inline AQUETH_ABI::detail {

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

}  // namespace aqueth::inline AQUETH_ABI::detail
