// SPDX-License-Identifier: BSL-1.0
#pragma once

#include <aqueth/correlation/source.hpp>
#include <aqueth/error.hpp>
#include <aqueth/numeric/integration.hpp>
#include <aqueth/numeric/probability.hpp>
#include <aqueth/numeric/root.hpp>

#include <algorithm>
#include <cmath>
#include <limits>

/// @file
/// Conformity assessment of a measured item with a tolerance: JCGM 106:2012. Plain numbers, all in one unit.

namespace aqueth::inline AQUETH_ABI {

/// Citation, range and accuracy of the decisions.
inline constexpr correlation::source jcgm_106_cited{
    "JCGM 106:2012, The role of measurement uncertainty in conformity assessment, clauses 7 to 9",
    "what is known of the quantity is normal, or Student's t",
    "the worked examples of clauses 7, 8.3 and 9.5 as printed"};

/// The permitted values; a missing limit is infinite.
struct [[nodiscard]] tolerance_interval {
    double lower = -unlimited;  ///< least permitted value
    double upper = unlimited;   ///< greatest permitted value
};

/// The result of a measurement.
struct [[nodiscard]] measurement_result {
    double estimate;                        ///< measured value
    double standard_uncertainty;            ///< above 0
    double degrees_of_freedom = unlimited;  ///< 1 or more; of the uncertainty, rounded down
};

namespace detail {

inline constexpr char const* conformity = "conformity";

inline void require_tolerance(tolerance_interval const& t) {
    if (!(t.lower < t.upper) || (t.lower == -unlimited && t.upper == unlimited)) {
        raise_error(refusal(conformity, argument::upper_limit_of_the_tolerance, t.upper, "", t.lower,
                            unlimited, "above the lower one, and one of them finite"));
    }
}

inline void require_result(measurement_result const& m) {
    double const largest = (std::numeric_limits<double>::max)();
    require_range(conformity, argument::measured_value, m.estimate, "", -largest, largest);
    require_range(conformity, argument::standard_uncertainty, m.standard_uncertainty, "",
                  (std::numeric_limits<double>::min)(), unlimited);
    if (m.degrees_of_freedom != unlimited)
        require_range(conformity, argument::degrees_of_freedom, m.degrees_of_freedom, "", 1.0, unlimited);
}

inline double require_systematic(double u) {
    return require_range("number of readings", argument::systematic_uncertainty, u, "", 0.0, unlimited);
}
inline double require_deviation(double s) {
    return require_range("number of readings", argument::standard_deviation_of_a_reading, s, "", 0.0,
                         unlimited);
}

inline void require_confidence(double p) {
    require_range(conformity, argument::confidence, p, "", 0.51, 0.999999, "more often right than wrong");
}

/// probability that the quantity is below a limit
inline double below(double limit, measurement_result const& m) {
    if (limit == unlimited) return 1.0;
    if (limit == -unlimited) return 0.0;
    return numeric::student_probability((limit - m.estimate) / m.standard_uncertainty, m.degrees_of_freedom);
}

}  // namespace detail

/// Probability that a quantity lies within a tolerance, given its measurement.
/// @param tolerance permitted values
/// @param measured  measured value with its uncertainty
/// @return conformance probability, 0 to 1
/// @throws refusal if an argument is outside its range
/// @par Source
/// JCGM 106:2012, 7.1 to 7.4, @ref source_jcgm_106
[[nodiscard]] inline double conformance_probability(tolerance_interval const& tolerance,
                                                    measurement_result const& measured) {
    detail::require_tolerance(tolerance);
    detail::require_result(measured);
    double const p = detail::below(tolerance.upper, measured) - detail::below(tolerance.lower, measured);
    return (std::min)(1.0, (std::max)(0.0, p));  // rounding of the series for Student's t
}

/// The measured values at which a quantity is within a tolerance with at least a stated probability. The
/// guard bands are the parts of the tolerance outside this interval.
/// @param tolerance            permitted values
/// @param standard_uncertainty of the measurement, above 0
/// @param confidence           probability wanted, 0.51 to 0.999999
/// @param degrees_of_freedom   of the uncertainty, 1 or more
/// @return acceptance interval (guarded acceptance)
/// @throws refusal if an argument is outside its range, or the uncertainty is too large for any measured
///         value
/// @par Source
/// JCGM 106:2012, 8.3.2, @ref source_jcgm_106
inline tolerance_interval acceptance_interval(tolerance_interval const& tolerance,
                                              double standard_uncertainty, double confidence,
                                              double degrees_of_freedom = unlimited) {
    detail::require_tolerance(tolerance);
    detail::require_confidence(confidence);
    measurement_result const at{0.0, standard_uncertainty, degrees_of_freedom};
    detail::require_result(at);
    double const nu = degrees_of_freedom == unlimited ? degrees_of_freedom : std::floor(degrees_of_freedom);
    double const one_sided = standard_uncertainty * numeric::student_quantile(confidence, nu);
    if (tolerance.lower == -unlimited) return {tolerance.lower, tolerance.upper - one_sided};
    if (tolerance.upper == unlimited) return {tolerance.lower + one_sided, tolerance.upper};
    double const half = 0.5 * (tolerance.upper - tolerance.lower);
    // Both limits reduce the probability, so the guard band is slightly wider than for one limit alone.
    auto const lacking = [&](double from_middle) {
        measurement_result const m{from_middle, standard_uncertainty, degrees_of_freedom};
        return conformance_probability({-half, half}, m) - confidence;
    };
    if (lacking(0.0) < 0.0) {
        double const largest = half / numeric::student_quantile(0.5 + 0.5 * confidence, nu);
        raise_error(refusal(detail::conformity, argument::standard_uncertainty, standard_uncertainty, "", 0.0,
                            largest, "for that confidence within that tolerance"));
    }
    double const reach = numeric::bracketed_root(lacking, 0.0, half, 0.0);
    double const middle = tolerance.lower + half;
    // An uncertainty near rounding leaves the whole interval; rounding must not widen it.
    return {(std::max)(tolerance.lower, middle - reach), (std::min)(tolerance.upper, middle + reach)};
}

/// Decision at a stated confidence.
enum class conformity_decision {
    conforms,          ///< with at least that probability
    does_not_conform,  ///< with at least that probability
    undecided          ///< the measurement cannot decide
};

/// Guarded acceptance and guarded rejection in one. A measured value inside the tolerance is never rejected:
/// an uncertainty far wider than the tolerance makes conformity improbable, but does not prove nonconformity.
/// @param tolerance  permitted values
/// @param measured   measured value with its uncertainty
/// @param confidence probability wanted, 0.51 to 0.999999
/// @return decision
/// @throws refusal if an argument is outside its range
/// @par Source
/// JCGM 106:2012, 8.3, @ref source_jcgm_106
inline conformity_decision decide(tolerance_interval const& tolerance, measurement_result const& measured,
                                  double confidence) {
    detail::require_confidence(confidence);
    double const p = conformance_probability(tolerance, measured);
    if (p >= confidence) return conformity_decision::conforms;
    bool const inside = tolerance.lower <= measured.estimate && measured.estimate <= tolerance.upper;
    return !inside && 1.0 - p >= confidence ? conformity_decision::does_not_conform
                                            : conformity_decision::undecided;
}

/// The largest standard uncertainty with which a measured value still shows conformity. With the degrees of
/// freedom of the measurement it agrees with `decide`: only an undecided measurement has a larger
/// uncertainty.
/// @param tolerance          permitted values
/// @param measured           measured value, inside the tolerance
/// @param confidence         probability wanted, 0.51 to 0.999999
/// @param degrees_of_freedom of the uncertainty, 1 or more: the same as for `decide`
/// @return largest standard uncertainty, above 0
/// @throws refusal if an argument is outside its range, or the value is not inside the tolerance
/// @par Source
/// JCGM 106:2012, 7.4, solved for the uncertainty, @ref source_jcgm_106
[[nodiscard]] inline double largest_uncertainty(tolerance_interval const& tolerance, double measured,
                                                double confidence, double degrees_of_freedom = unlimited) {
    detail::require_tolerance(tolerance);
    detail::require_confidence(confidence);
    if (!(tolerance.lower < measured && measured < tolerance.upper)) {
        raise_error(refusal(detail::conformity, argument::measured_value, measured, "", tolerance.lower,
                            tolerance.upper, "inside the tolerance"));
    }
    double const nearer = (std::min)(measured - tolerance.lower, tolerance.upper - measured);
    detail::require_result({measured, nearer, degrees_of_freedom});
    double const nu = degrees_of_freedom == unlimited ? degrees_of_freedom : std::floor(degrees_of_freedom);
    double const one_sided = nearer / numeric::student_quantile(confidence, nu);
    double const both = nearer / numeric::student_quantile(0.5 + 0.5 * confidence, nu);
    auto const lacking = [&](double u) {
        return conformance_probability(tolerance, {measured, u, degrees_of_freedom}) - confidence;
    };
    if (lacking(one_sided) >= 0.0) return one_sided;  // the farther limit has no effect
    return numeric::bracketed_root(lacking, 0.5 * both, one_sided, 0.0);
}

/// Number of readings for a wanted uncertainty of their mean, if the standard deviation of a reading is known
/// from long experience.
/// @param wanted        standard uncertainty wanted, above 0
/// @param repeatability standard deviation of one reading, 0 or more
/// @param systematic    standard uncertainty that all readings share, 0 or more
/// @return whole number of readings, 1 or more
/// @throws refusal if an argument is outside its range, the systematic uncertainty alone is too large, or
///         more than a million readings would be needed
/// @par Source
/// GUM 4.2.3 and 5.1.2, @ref source_gum
[[nodiscard]] inline double readings_needed(double wanted, double repeatability, double systematic) {
    char const* const property = "number of readings";
    detail::require_systematic(systematic);
    detail::require_deviation(repeatability);
    require_range(property, argument::wanted_uncertainty, wanted, "", (std::numeric_limits<double>::min)(),
                  unlimited);
    double const room = (wanted - systematic) * (wanted + systematic);
    if (systematic > wanted) {
        raise_error(refusal(property, argument::wanted_uncertainty, wanted, "", systematic, unlimited,
                            "more than the systematic uncertainty"));
    }
    if (repeatability == 0.0) return 1.0;
    double const needed = std::ceil(repeatability * repeatability / room * (1.0 - 1e-12));
    return require_range(property, argument::readings, (std::max)(1.0, needed), "", 1.0, 1e6);
}

/// Origin of the standard deviation of a reading.
enum class deviation_known_from {
    long_experience,  ///< as if from infinitely many readings
    these_readings    ///< the experimental standard deviation of the readings themselves
};

/// Readings of one quantity, with the uncertainty that they share.
struct reading_series {
    double mean;                ///< of the readings
    double count;               ///< whole number; 2 or more if the deviation is that of these readings
    double deviation;           ///< standard deviation of one reading, 0 or more
    deviation_known_from from;  ///< origin of the deviation
    double systematic;          ///< standard uncertainty that all readings share, 0 or more
};

/// Result of a series of readings: mean, standard uncertainty, effective degrees of freedom.
/// @param readings series, its deviation or its systematic uncertainty above 0
/// @return measurement result
/// @throws refusal if a member of the series is outside its range
/// @par Source
/// GUM 4.2.3, 5.1.2 and G.4.1 (Welch-Satterthwaite), @ref source_gum
inline measurement_result result_of(reading_series const& readings) {
    bool const experience = readings.from == deviation_known_from::long_experience;
    double const n = require_range("number of readings", argument::readings, readings.count, "",
                                   experience ? 1.0 : 2.0, 1e6);
    require_range("number of readings", argument::readings, n, "", std::floor(n), std::floor(n),
                  "a whole number");
    double const of_mean = detail::require_deviation(readings.deviation) / std::sqrt(n);
    double const u = std::hypot(of_mean, detail::require_systematic(readings.systematic));
    measurement_result result{readings.mean, u};
    if (!experience && of_mean > 0.0) {
        double const ratio = u / of_mean;
        result.degrees_of_freedom = (n - 1.0) * (ratio * ratio) * (ratio * ratio);
    }
    detail::require_result(result);
    return result;
}

/// Number of readings that show conformity, if mean and standard deviation do not change. It agrees with
/// `decide` of `result_of` the series: only an undecided series needs more readings than it has.
/// @param tolerance  permitted values
/// @param readings   series, its mean inside the tolerance
/// @param confidence probability wanted, 0.51 to 0.999999
/// @return least whole number of readings; 2 or more if the deviation is that of the readings
/// @throws refusal if an argument is outside its range, the mean is not inside the tolerance, the
///         systematic uncertainty alone is too large, or more than a million would be needed
/// @par Source
/// JCGM 106:2012, 8.3.2, and GUM G.4.1, solved for the number of readings, @ref source_jcgm_106
[[nodiscard]] inline double readings_needed(tolerance_interval const& tolerance,
                                            reading_series const& readings, double confidence) {
    char const* const property = "number of readings";
    measurement_result const now = result_of(readings);
    // The systematic uncertainty, which more readings cannot reduce.
    double const most = largest_uncertainty(tolerance, now.estimate, confidence);
    if (readings.systematic > most) {
        raise_error(refusal(property, argument::systematic_uncertainty, readings.systematic, "", 0.0, most,
                            "less, or no number of readings is enough"));
    }
    auto const enough = [&](double count) {
        reading_series series = readings;
        series.count = count;
        return decide(tolerance, result_of(series), confidence) == conformity_decision::conforms;
    };
    double const fewest = readings.from == deviation_known_from::long_experience ? 1.0 : 2.0;
    if (enough(fewest)) return fewest;
    if (!enough(1e6)) {
        double const room = (most - readings.systematic) * (most + readings.systematic);
        double const at_least = readings.deviation * readings.deviation / room;
        raise_error(refusal(property, argument::readings, (std::max)(1e6 + 1.0, at_least), "", fewest, 1e6,
                            "scatter and systematic uncertainty require more"));
    }
    // The uncertainty falls monotonically with the number of readings and with their degrees of freedom:
    // bisection.
    double too_few = fewest, plenty = 2.0 * fewest;
    while (!enough(plenty)) {
        too_few = plenty;
        plenty = (std::min)(2.0 * plenty, 1e6);
    }
    while (plenty - too_few > 1.0) {
        double const middle = std::floor(0.5 * (too_few + plenty));
        (enough(middle) ? plenty : too_few) = middle;
    }
    return plenty;
}

/// Long-run probabilities of a process and its inspection.
struct [[nodiscard]] global_risks {
    double conforming;  ///< probability that an item conforms
    double consumer;    ///< that a nonconforming item is accepted (global consumer's risk)
    double producer;    ///< that a conforming item is rejected (global producer's risk)
};

/// Global risks of an inspection: process and measurement normal.
/// @param tolerance            permitted true values
/// @param acceptance           measured values that are accepted
/// @param process_mean         mean of the product
/// @param process_deviation    its standard deviation, above 0
/// @param standard_uncertainty of a measurement, 1e-4 to 1e4 times the standard deviation
/// @return risks, 0 to 1
/// @throws refusal if an argument is outside its range
/// @par Accuracy
/// Numerical integration, to about 1e-9.
/// @par Source
/// JCGM 106:2012, 9.5, equations 19 and 20, @ref source_jcgm_106
inline global_risks risks(tolerance_interval const& tolerance, tolerance_interval const& acceptance,
                          double process_mean, double process_deviation, double standard_uncertainty) {
    detail::require_tolerance(tolerance);
    detail::require_tolerance(acceptance);
    detail::require_result({process_mean, process_deviation});
    double const ratio =
        require_range("risks", argument::uncertainty_over_the_standard_deviation_of_the_process,
                      standard_uncertainty / process_deviation, "", 1e-4, 1e4);
    auto const standardized = [&](double limit) {
        return (std::min)(9.0, (std::max)(-9.0, (limit - process_mean) / process_deviation));
    };
    auto const accepted = [&](double z) {
        measurement_result const m{process_mean + process_deviation * z, standard_uncertainty};
        return detail::below(acceptance.upper, m) - detail::below(acceptance.lower, m);
    };
    // Beyond 9 standard deviations there is nothing, and a step is fine beside either spread.
    auto const accepted_between = [&](double a, double b) {
        if (!(a < b)) return 0.0;
        int const pairs = static_cast<int>(std::ceil((b - a) / (0.05 * (std::min)(1.0, ratio))));
        return numeric::simpson([&](double z) { return accepted(z) * numeric::normal_density(z); }, a, b,
                                2 * pairs);
    };
    double const low = standardized(tolerance.lower), high = standardized(tolerance.upper);
    double const conforming = numeric::normal_probability(high) - numeric::normal_probability(low);
    return {conforming, accepted_between(-9.0, low) + accepted_between(high, 9.0),
            (std::max)(0.0, conforming - accepted_between(low, high))};
}

}  // namespace aqueth::inline AQUETH_ABI
