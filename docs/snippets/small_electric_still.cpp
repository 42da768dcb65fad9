// SPDX-License-Identifier: BSL-1.0
// What common practice tells of a small electric still, and how little that says about the still.
#include <aqueth/aqueth.hpp>

#include <algorithm>
#include <cstddef>
#include <cstdio>
#include <utility>
#include <vector>

using namespace aqueth;

namespace {

wash charge(double percent) { return wash::of(4.0 * litre, by_volume(percent), plato(0.5), celsius(20)); }
vessel pot(double watts, double loss) {
    return {watts * watt, 1000.0 * joule_per_kelvin, loss * watt_per_kelvin};
}

/// 4 L of sugar wash, 500 mL collected
distillation run(double percent, vessel const& heated, double stages, double ratio,
                 boiling_curve const& curve) {
    still s{heated};
    s.tower = column::of_stages(stages);
    s.returned = reflux::constant(ratio);
    run_plan plan;
    plan.ends = {condition::collected(500.0 * millilitre)};
    return distil(charge(percent), s, plan, curve);
}

double strength_of(distillation const& r) { return r.fractions[0].product.strength().percent(); }
bool within(double value, double lower, double upper) { return lower <= value && value <= upper; }

/// the values of one figure that are tried, rising, and which of them fit
class figure {
public:
    figure(char const* name, char const* unit, std::vector<double> values)
        : name_(name), unit_(unit), values_(std::move(values)), least_(values_.back()), most_(values_[0]) {}

    std::vector<double> const& values() const { return values_; }
    std::size_t size() const { return values_.size(); }
    void fits(double value) {
        least_ = (std::min)(least_, value);
        most_ = (std::max)(most_, value);
    }
    void print() const {
        std::printf("  %-7s %4g to %3g%-6s  tried: %g to %g\n", name_, least_, most_, unit_, values_.front(),
                    values_.back());
    }

private:
    char const* name_;
    char const* unit_;
    std::vector<double> values_;
    double least_, most_;
};

}  // namespace

int main() {
    boiling_curve const curve(standard_atmosphere);
    //! [one]
    auto const r = run(13.0, pot(350.0, 1.0), 3.0, 8.0, curve);
    std::printf("13 %% vol, 350 W, loss 1 W/K, 3 stages, reflux 8:\n");
    std::printf("  warming %.0f min, boiling %.1f h, 500 mL at %.1f %% vol\n\n",
                in(r.warming.duration, minute), in(r.boiling_time, hour), strength_of(r));
    //! [one]

    figure wash_strength("wash", " % vol", {11.1, 11.3, 11.7, 12, 13, 14, 16, 18, 20});
    figure power("power", " W", {200, 250, 300, 350, 400, 450, 500, 550, 600, 650, 700});
    figure loss("loss", " W/K", {0, 0.5, 1, 2, 3, 5, 7, 9});
    figure stages("stages", "", {1, 2, 3, 4, 6, 10, 20});
    figure ratio("reflux", "", {1, 2, 4, 6, 8, 10, 12, 14, 16});

    int fit = 0;
    for (double const q : wash_strength.values()) {
        auto const boils = boiling_temperature(charge(q), standard_atmosphere);
        std::vector<std::pair<double, double>> warm_in_time;  // power and loss
        for (double const w : power.values()) {
            for (double const k : loss.values()) {
                if (k * 80.0 > 0.9 * w) continue;  // it warms too slowly, if at all
                double const minutes = in(heat(charge(q), pot(w, k), boils).duration, minute);
                if (within(minutes, 60.0, 90.0)) warm_in_time.emplace_back(w, k);
            }
        }
        for (double const n : stages.values()) {
            for (double const rho : ratio.values()) {
                // Power and loss of the pot change times and not strengths, so one run tells the strength.
                auto const any = run(q, pot(1000.0, 0.0), n, rho, curve);
                if (strength_of(any) > 91.0) break;  // more reflux makes more
                if (strength_of(any) < 89.0) continue;
                double const watt_hours = 1000.0 * in(any.boiling_time, hour);
                for (auto const& [w, k] : warm_in_time) {
                    // The pot is 60 to 80 K warmer than the room, which bounds the time.
                    if (watt_hours / (w - 80.0 * k) < 3.5 || watt_hours / (w - 60.0 * k) > 4.5) continue;
                    double const hours = in(run(q, pot(w, k), n, rho, curve).boiling_time, hour);
                    if (!within(hours, 3.5, 4.5)) continue;
                    ++fit;
                    wash_strength.fits(q), power.fits(w), loss.fits(k), stages.fits(n), ratio.fits(rho);
                }
            }
        }
    }
    std::printf(
        "%d of %zu stills and washes warm in 60 to 90 min, boil for 3.5 to 4.5 h and give 89 to 91 %% vol:\n",
        fit, wash_strength.size() * power.size() * loss.size() * stages.size() * ratio.size());
    for (figure const& f : {wash_strength, power, loss, stages, ratio}) f.print();
}
