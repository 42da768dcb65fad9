// SPDX-License-Identifier: BSL-1.0
#include <aqueth/metrology/conformity.hpp>

#include "expect_refusal.hpp"

#include <boost/math/distributions/normal.hpp>
#include <boost/math/distributions/students_t.hpp>
#include <gtest/gtest.h>

#include <cmath>
#include <limits>
#include <optional>
#include <random>

namespace aqueth {
namespace {

using test::expect_refusal;

double const nan = std::numeric_limits<double>::quiet_NaN();
double const infinity = std::numeric_limits<double>::infinity();

TEST(Conformity, ProbabilitiesStayBetweenZeroAndOne) {
    // Far inside and far outside, where the series for Student's t may round past 1.
    for (double nu = 1.0; nu < 60.0; nu += 1.0) {
        for (double u = 1e-9; u < 1.0; u *= 1.7) {
            for (double const value : {-3.0, 0.0, 0.5, 3.0}) {
                double const p = conformance_probability({-1.0, 1.0}, {value, u, nu});
                EXPECT_GE(p, 0.0);
                EXPECT_LE(p, 1.0);
            }
        }
    }
}

TEST(ConformanceProbability, AddsUpOverTheLine) {
    for (double const nu : {infinity, 5.0}) {
        measurement_result const m{40.1, 0.15, nu};
        double const p = conformance_probability({-infinity, 39.7}, m) +
                         conformance_probability({39.7, 40.3}, m) +
                         conformance_probability({40.3, infinity}, m);
        EXPECT_NEAR(p, 1.0, 1e-15);
    }
    // few readings, less sure
    EXPECT_LT(conformance_probability({39.7, 40.3}, {40.0, 0.15, 4.0}),
              conformance_probability({39.7, 40.3}, {40.0, 0.15}));
}

// By definition: at the ends of the acceptance interval the conformance probability is the confidence.
TEST(AcceptanceInterval, EndsWhereTheConfidenceEnds) {
    for (double const nu : {infinity, 9.0}) {
        for (double const u : {0.01, 0.05, 0.1, 0.13}) {
            for (double const confidence : {0.9, 0.95}) {
                tolerance_interval const t{39.7, 40.3};
                auto const a = acceptance_interval(t, u, confidence, nu);
                EXPECT_NEAR(conformance_probability(t, {a.lower, u, nu}), confidence, 1e-11);
                EXPECT_NEAR(conformance_probability(t, {a.upper, u, nu}), confidence, 1e-11);
                EXPECT_NEAR(a.lower + a.upper, 80.0, 1e-12);
                tolerance_interval const one{39.7, infinity};
                auto const b = acceptance_interval(one, u, confidence, nu);
                EXPECT_NEAR(conformance_probability(one, {b.lower, u, nu}), confidence, 1e-11);
                EXPECT_EQ(b.upper, infinity);
                tolerance_interval const other{-infinity, 40.3};
                auto const c = acceptance_interval(other, u, confidence, nu);
                EXPECT_NEAR(conformance_probability(other, {c.upper, u, nu}), confidence, 1e-11);
                EXPECT_EQ(c.lower, -infinity);
                EXPECT_GE(a.lower, b.lower - 1e-12);
            }
        }
    }
    auto const refused = expect_refusal(
        [] {
            static_cast<void>(acceptance_interval({39.7, 40.3}, 0.16, 0.95));
        },
        "standard uncertainty");
    EXPECT_NEAR(refused.upper(), 0.3 / 1.959964, 1e-6);
    EXPECT_NO_THROW(static_cast<void>(acceptance_interval({39.7, 40.3}, 0.999 * refused.upper(), 0.95)));
}

TEST(Decide, HasThreeAnswers) {
    tolerance_interval const t{39.7, 40.3};
    EXPECT_EQ(decide(t, {40.0, 0.1}, 0.95), conformity_decision::conforms);
    EXPECT_EQ(decide(t, {40.2, 0.1}, 0.95), conformity_decision::undecided);
    EXPECT_EQ(decide(t, {40.4, 0.1}, 0.95), conformity_decision::undecided);
    EXPECT_EQ(decide(t, {40.5, 0.1}, 0.95), conformity_decision::does_not_conform);
    EXPECT_EQ(decide(t, {40.0, 0.2}, 0.95), conformity_decision::undecided);
}

TEST(LargestUncertainty, JustConforms) {
    for (double const nu : {infinity, 9.0}) {
        for (double const y : {39.75, 39.9, 40.0, 40.17}) {
            tolerance_interval const t{39.7, 40.3};
            double const u = largest_uncertainty(t, y, 0.95, nu);
            EXPECT_NEAR(conformance_probability(t, {y, u, nu}), 0.95, 1e-9) << y;
            EXPECT_EQ(decide(t, {y, 0.999 * u, nu}, 0.95), conformity_decision::conforms);
        }
    }
    EXPECT_NEAR(largest_uncertainty({39.7, infinity}, 40.0, 0.95), 0.3 / 1.644854, 1e-6);
    EXPECT_THROW(static_cast<void>(largest_uncertainty({39.7, 40.3}, 40.3, 0.95)), refusal);
    for (double const bad : {39.699, 40.301, 50.0, nan}) {
        expect_refusal(
            [&] {
                static_cast<void>(largest_uncertainty({39.7, 40.3}, bad, 0.95));
            },
            "measured value");
    }
}

TEST(ReadingsNeeded, BringTheUncertaintyDown) {
    EXPECT_EQ(readings_needed(0.1, 0.2, 0.0), 4.0);
    EXPECT_EQ(readings_needed(0.1, 0.2, 0.06), 7.0);  // 0.04 / 0.0064 = 6.25
    EXPECT_EQ(readings_needed(0.1, 0.0, 0.1), 1.0);
    EXPECT_EQ(readings_needed(0.1, 0.01, 0.05), 1.0);
    expect_refusal([] { static_cast<void>(readings_needed(0.1, 0.2, 0.1)); }, "readings");
    expect_refusal([] { static_cast<void>(readings_needed(0.1, 0.2, 0.11)); }, "wanted uncertainty");
    expect_refusal([] { static_cast<void>(readings_needed(1e-5, 0.2, 0.0)); }, "readings");
    for (double const bad : {0.0, -0.1, nan}) {
        expect_refusal([&] { static_cast<void>(readings_needed(bad, 0.2, 0.0)); }, "wanted uncertainty");
    }
    for (double const bad : {-0.1, nan}) {
        expect_refusal([&] { static_cast<void>(readings_needed(0.1, bad, 0.0)); },
                       "standard deviation of a reading");
        expect_refusal([&] { static_cast<void>(readings_needed(0.1, 0.2, bad)); }, "systematic uncertainty");
    }
}

// 42.8, 43.1, 42.9 % vol for a label of 43, and 0.1 % vol that the readings share. The standard deviation is
// 0.15275, so u = sqrt(0.15275^2 / 3 + 0.1^2) = 0.13333 with 2 (1 + 3 (0.1 / 0.15275)^2)^2 = 10.4 degrees of
// freedom. Student's t of 10 at 95 % is 1.8125 in every table: 0.23333 / 1.8125 = 0.1287, less a little for
// the other limit. With the normal distribution 0.14 would be enough, and the readings have that.
TEST(ReadingsNeeded, AgreeWithTheVerdict) {
    tolerance_interval const permitted{42.7, 43.3};
    reading_series const three{128.8 / 3.0, 3.0, std::sqrt(0.07 / 3.0), deviation_known_from::these_readings,
                               0.1};
    auto const m = result_of(three);
    EXPECT_NEAR(m.standard_uncertainty, 0.13333, 5e-6);
    EXPECT_NEAR(m.degrees_of_freedom, 10.449, 5e-4);
    EXPECT_EQ(decide(permitted, m, 0.95), conformity_decision::undecided);
    double const needed = largest_uncertainty(permitted, m.estimate, 0.95, m.degrees_of_freedom);
    EXPECT_LT(needed, 0.1287);
    EXPECT_GT(needed, 0.12);
    EXPECT_EQ(readings_needed(permitted, three, 0.95), 4.0);
    reading_series known = three;
    known.from = deviation_known_from::long_experience;
    EXPECT_EQ(result_of(known).degrees_of_freedom, infinity);
    EXPECT_EQ(readings_needed(permitted, known, 0.95),
              readings_needed(largest_uncertainty(permitted, known.mean, 0.95), known.deviation, 0.1));
}

// Verdict, needed uncertainty and needed readings must be consistent, and each must equal its definition with
// Boost.Math's distributions.
TEST(Conformity, VerdictAndWhatIsNeededAgree) {
    std::mt19937_64 bits(12);
    std::uniform_real_distribution<double> unit;
    int undecided = 0, conforming = 0, hopeless = 0;
    for (int k = 0; k < 2000; ++k) {
        bool const one_sided = unit(bits) < 0.25, experience = unit(bits) < 0.4;
        tolerance_interval const t{-1.0, one_sided ? infinity : 1.0};
        double const confidence = unit(bits) < 0.5 ? 0.95 : 0.6 + 0.395 * unit(bits);
        reading_series const series{
            1.9 * unit(bits) - 0.95, std::floor((experience ? 1.0 : 2.0) + 12.0 * unit(bits) * unit(bits)),
            std::pow(10.0, -1.5 + 1.8 * unit(bits)),
            experience ? deviation_known_from::long_experience : deviation_known_from::these_readings,
            unit(bits) < 0.3 ? 0.0 : 0.6 * unit(bits)};
        auto const probability = [&](double u, double nu) {
            auto const below = [&](double limit) {
                double const z = (limit - series.mean) / u;
                if (std::isinf(z)) return z > 0.0 ? 1.0 : 0.0;
                return nu >= numeric::normal_from
                           ? cdf(boost::math::normal(), z)
                           : cdf(boost::math::students_t(std::floor(nu * (1.0 + 1e-12))), z);
            };
            return below(t.upper) - below(t.lower);
        };
        auto const with = [&](double n) {  // GUM 4.2.3, 5.1.2, G.4.1 once more
            double const scatter = series.deviation * series.deviation / n;
            double const variance = scatter + series.systematic * series.systematic;
            double const nu = experience ? infinity : variance * variance / (scatter * scatter / (n - 1.0));
            return probability(std::sqrt(variance), nu);
        };
        auto const now = result_of(series);
        auto const decision = decide(t, now, confidence);
        // The series for Student's t has as many terms as degrees of freedom, whose rounding adds up.
        ASSERT_NEAR(conformance_probability(t, now), with(series.count), 1e-10);
        ASSERT_NE(decision, conformity_decision::does_not_conform);  // the mean is inside
        bool const conforms = decision == conformity_decision::conforms;
        double const needed = largest_uncertainty(t, series.mean, confidence, now.degrees_of_freedom);
        ASSERT_NEAR(probability(needed, now.degrees_of_freedom), confidence, 1e-9);
        ASSERT_EQ(conforms, needed >= now.standard_uncertainty);
        std::optional<double> readings;
        try {
            readings = readings_needed(t, series, confidence);
        } catch (refusal const& e) {
            // The systematic uncertainty alone is too large, or leaves nearly nothing.
            ASSERT_TRUE(e.argument() == std::string("systematic uncertainty") ||
                        e.argument() == std::string("readings"));
            ASSERT_LT(with(1e6), confidence);
            ASSERT_FALSE(conforms);
            ++hopeless;
            continue;
        }
        ASSERT_EQ(conforms, *readings <= series.count);
        ASSERT_GE(with(*readings), confidence - 1e-10);
        if (*readings > (experience ? 1.0 : 2.0)) {
            ASSERT_LT(with(*readings - 1.0), confidence + 1e-10);
        }
        ++(conforms ? conforming : undecided);
    }
    EXPECT_GT(undecided, 200);
    EXPECT_GT(conforming, 200);
    EXPECT_GT(hopeless, 200);
}

// A value in the middle of the tolerance is no evidence against it, however poor the measurement.
TEST(Decide, NeverRejectsWhatWasMeasuredInside) {
    EXPECT_EQ(decide({39.7, 40.3}, {40.0, 10.0}, 0.95), conformity_decision::undecided);
    EXPECT_EQ(decide({39.7, 40.3}, {40.3, 10.0}, 0.95), conformity_decision::undecided);
    EXPECT_EQ(decide({39.7, 40.3}, {41.0, 0.1}, 0.95), conformity_decision::does_not_conform);
}

TEST(ReadingSeries, RefusesBadInput) {
    auto const these = deviation_known_from::these_readings;
    for (double const bad : {0.0, 1.0, 2.5, 2e6, nan}) {
        expect_refusal([&] { static_cast<void>(result_of({0.0, bad, 0.1, these, 0.1})); }, "readings");
    }
    expect_refusal(
        [&] {
            static_cast<void>(result_of({0.0, 3.0, -0.1, these, 0.1}));
        },
        "standard deviation of a reading");
    expect_refusal(
        [&] {
            static_cast<void>(result_of({0.0, 3.0, 0.1, these, nan}));
        },
        "systematic uncertainty");
    expect_refusal(
        [&] {
            static_cast<void>(result_of({0.0, 3.0, 0.0, these, 0.0}));
        },
        "standard uncertainty");
    expect_refusal(
        [&] {
            static_cast<void>(readings_needed({-1.0, 1.0}, {1.5, 3.0, 0.1, these, 0.1}, 0.95));
        },
        "measured value");
    expect_refusal(
        [&] {
            static_cast<void>(readings_needed({-1.0, 1.0}, {0.0, 3.0, 0.1, these, 0.1}, 0.4));
        },
        "confidence");
    // The systematic uncertainty leaves 1e-15, which would need too many readings; or nothing.
    double const most = largest_uncertainty({-1.0, 1.0}, 0.0, 0.95);
    reading_series series{0.0, 3.0, 0.1, these, most * (1.0 - 1e-15)};
    expect_refusal([&] { static_cast<void>(readings_needed({-1.0, 1.0}, series, 0.95)); }, "readings");
    series.systematic = most * (1.0 + 1e-12);
    expect_refusal(
        [&] {
            static_cast<void>(readings_needed({-1.0, 1.0}, series, 0.95));
        },
        "systematic uncertainty");
}

// Counted over drawn items and drawn measurements, 4e6 of them: the uncertainty of a risk of 1 % is about
// 0.005 %.
TEST(Risks, AgreeWithCounting) {
    std::mt19937_64 bits(5);
    std::normal_distribution<double> unit;
    double conforming = 0.0, consumer = 0.0, producer = 0.0;
    int const n = 4000000;
    for (int k = 0; k < n; ++k) {
        double const y = 40.05 + 0.15 * unit(bits);
        double const measured = y + 0.08 * unit(bits);
        bool const good = 39.7 <= y && y <= 40.3, accepted = 39.8 <= measured && measured <= 40.2;
        conforming += good;
        consumer += accepted && !good;
        producer += good && !accepted;
    }
    auto const r = risks({39.7, 40.3}, {39.8, 40.2}, 40.05, 0.15, 0.08);
    EXPECT_NEAR(r.conforming, conforming / n, 5e-4);
    EXPECT_NEAR(r.consumer, consumer / n, 1e-4);
    EXPECT_NEAR(r.producer, producer / n, 5e-4);
}

TEST(Risks, GoToTheirLimits) {
    auto const sharp = risks({39.7, 40.3}, {39.7, 40.3}, 40.0, 0.1, 1e-5);
    EXPECT_NEAR(sharp.consumer, 0.0, 1e-5);
    EXPECT_NEAR(sharp.producer, 0.0, 1e-5);
    auto const one_sided = risks({39.7, infinity}, {39.8, infinity}, 40.0, 0.2, 0.1);
    EXPECT_NEAR(one_sided.conforming, numeric::normal_probability(1.5), 1e-12);
    EXPECT_GT(one_sided.consumer, 0.0);
    for (double const bad : {0.0, -0.1, nan, 1e-6}) {
        expect_refusal(
            [&] {
                static_cast<void>(risks({39.7, 40.3}, {39.7, 40.3}, 40.0, 0.1, bad));
            },
            "uncertainty over the standard deviation of the process");
    }
    expect_refusal(
        [&] {
            static_cast<void>(risks({39.7, 40.3}, {39.7, 40.3}, 40.0, 0.0, 0.1));
        },
        "standard uncertainty");
}

TEST(Conformity, RefusesBadInput) {
    tolerance_interval const t{39.7, 40.3};
    expect_refusal(
        [] {
            static_cast<void>(conformance_probability({}, {40.0, 0.1}));
        },
        "upper limit of the tolerance");
    expect_refusal(
        [] {
            static_cast<void>(conformance_probability({40.3, 39.7}, {40.0, 0.1}));
        },
        "upper limit of the tolerance");
    expect_refusal(
        [] {
            static_cast<void>(conformance_probability({nan, 39.7}, {40.0, 0.1}));
        },
        "upper limit of the tolerance");
    for (double const bad : {0.0, -0.1, nan, infinity}) {
        expect_refusal(
            [&] {
                static_cast<void>(conformance_probability(t, {40.0, bad}));
            },
            "standard uncertainty");
        expect_refusal([&] { static_cast<void>(acceptance_interval(t, bad, 0.95)); }, "standard uncertainty");
    }
    for (double const bad : {nan, infinity}) {
        expect_refusal([&] { static_cast<void>(conformance_probability(t, {bad, 0.1})); }, "measured value");
    }
    for (double const bad : {0.5, 0.3, 0.0, 1.0, 95.0, nan}) {
        expect_refusal([&] { decide(t, {40.0, 0.1}, bad); }, "confidence");
        expect_refusal([&] { static_cast<void>(acceptance_interval(t, 0.1, bad)); }, "confidence");
        expect_refusal([&] { static_cast<void>(largest_uncertainty(t, 40.0, bad)); }, "confidence");
    }
    expect_refusal([&] { decide(t, {40.0, 0.1, 0.5}, 0.95); }, "degrees of freedom");
}

// Found by fuzzing: the middle and half the width of such an interval are rounded.
TEST(Acceptance, IsNeverWiderThanTheTolerance) {
    double const lower = std::nextafter(-1.0, -2.0), upper = -std::numeric_limits<double>::denorm_min();
    auto const inside = acceptance_interval({lower, upper}, 0x1p-53, 0.51);
    EXPECT_GE(inside.lower, lower);
    EXPECT_LE(inside.upper, upper);
}

// One limit alone: the remaining uncertainty is the distance divided by the quantile of the normal
// distribution. The quantile is less than one below 84 % (0.2533 for 60 %, 0.6745 for 75 %, 1.6449 for 95 %:
// any table).
TEST(LargestUncertainty, OfOneLimitIsTheDistanceOverTheQuantile) {
    struct {
        double confidence, quantile;
    } const rows[] = {{0.60, 0.253347}, {0.75, 0.674490}, {0.95, 1.644854}};
    for (auto const& row : rows) {
        EXPECT_NEAR(
            largest_uncertainty({40.0, std::numeric_limits<double>::infinity()}, 40.3, row.confidence),
            0.3 / row.quantile, 2e-6);
        EXPECT_NEAR(
            largest_uncertainty({-std::numeric_limits<double>::infinity(), 40.0}, 39.7, row.confidence),
            0.3 / row.quantile, 2e-6);
    }
}

}  // namespace
}  // namespace aqueth
