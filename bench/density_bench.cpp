// SPDX-License-Identifier: BSL-1.0
// A density: as the standard prints it, by general-purpose libraries, by ours, and the limit of the machine.
#include <aqueth/array.hpp>
#include <aqueth/correlation/oiml_r22.hpp>
#include <aqueth/density.hpp>

#include "boost_isotherm.hpp"
#include "comparison.hpp"
#include "multiply_add.hpp"
#include "oiml_r22_states.hpp"
#include "published/table.hpp"

#include <unsupported/Eigen/Polynomials>

#include <array>
#include <cmath>
#include <string>
#include <tuple>
#include <utility>
#include <vector>

namespace {

using namespace aqueth;
namespace r22 = aqueth::correlation::oiml_r22;

// As OIML R 22 prints it: powers of w and of t - 20 °C, each by std::pow.
class as_printed {
public:
    as_printed() {
        published::table const table("oiml_r22_coefficients.csv");
        for (auto const& row : table.rows()) {
            std::string const kind = row.text("kind");
            int const k = std::stoi(row.text("k"));
            int const of_w = kind == "A" ? k - 1 : (kind == "B" ? 0 : k);
            int const of_t = kind == "A" ? 0 : (kind == "B" ? k : std::stoi(row.text("i")));
            terms_.push_back({of_w, of_t, std::stod(row.text("value"))});
        }
    }
    double density(double w, double t) const {
        double sum = 0.0;
        for (term const& each : terms_)
            sum += each.coefficient * std::pow(w, each.power_of_w) * std::pow(t - 20.0, each.power_of_t);
        return sum;
    }

private:
    struct term {
        int power_of_w;
        int power_of_t;
        double coefficient;
    };
    std::vector<term> terms_;
};

// Our centred coefficients by other polynomials.
double by_boost(double w, double t) { return bench::boost_isotherm(t).density(w); }
double by_eigen(double w, double t) {
    auto const evaluate = [](auto const& c, double x) {
        return Eigen::poly_eval(
            Eigen::Map<Eigen::VectorXd const>(c.data(), static_cast<Eigen::Index>(c.size())), x);
    };
    double const tau = (t - 10.0) / 30.0;
    return std::apply(
        [&](auto const&... each) {
            return evaluate(std::array<double, sizeof...(each)>{evaluate(each, tau)...}, 2.0 * w - 1.0);
        },
        r22::coefficients);
}

as_printed const printed;
bench::states const all(-20.0);
bench::states const warm(0.0);
bench::numbers<double> const heated = [] {
    bench::numbers<double> t = warm.t;  // 0 to 40 °C
    for (double& each : t) each = 41.0 + each * (37.0 / 40.0);
    return t;
}();
bench::numbers<float> const wf(all.w.begin(), all.w.end());
bench::numbers<float> const tf(all.t.begin(), all.t.end());
bench::numbers<double> out(bench::elements);
bench::numbers<float> outf(bench::elements);

void register_all() {
    using bench::all_at_once;
    using bench::one_by_one;

    std::string const both = "density, both arguments varying, -20 to 40 °C";
    one_by_one(both, "as printed, std::pow",
               [](std::size_t i) { return printed.density(all.w[i], all.t[i]); });
    one_by_one(both, "Eigen, polynomial", [](std::size_t i) { return by_eigen(all.w[i], all.t[i]); });
    one_by_one(both, "Boost.Math, polynomial", [](std::size_t i) { return by_boost(all.w[i], all.t[i]); });
    one_by_one(both, "aqueth, one by one", [](std::size_t i) { return r22::density(all.w[i], all.t[i]); });
    one_by_one(both, "typed and checked, one by one",
               [](std::size_t i) { return density(mass_fraction(all.w[i]), celsius(all.t[i])).value(); });
    all_at_once(both, "aqueth, arrays, checked", [] { arrays::density(all.w, all.t, out); });
    all_at_once(both, "limit: 55 multiply-adds",
                [] { benchmark::DoNotOptimize(bench::multiply_adds(55, bench::elements)); });

    std::string const warm_only = "density, both arguments varying, 0 to 40 °C";
    one_by_one(warm_only, "aqueth, one by one",
               [](std::size_t i) { return r22::density(warm.w[i], warm.t[i]); });
    all_at_once(warm_only, "aqueth, arrays, checked", [] { arrays::density(warm.w, warm.t, out); });
    all_at_once(warm_only, "limit: 55 multiply-adds",
                [] { benchmark::DoNotOptimize(bench::multiply_adds(55, bench::elements)); });

    std::string const fixed = "density at a fixed temperature";
    static r22::isotherm<double> const at_20(20.0);
    one_by_one(fixed, "Boost.Math, polynomial, all of it",
               [](std::size_t i) { return by_boost(all.w[i], 20.0); });
    one_by_one(fixed, "aqueth, one by one, isotherm", [](std::size_t i) { return at_20.density(all.w[i]); });
    all_at_once(fixed, "aqueth, arrays, checked", [] { arrays::density(all.w, celsius(20.0), out); });
    all_at_once(fixed, "limit: 12 multiply-adds",
                [] { benchmark::DoNotOptimize(bench::multiply_adds(12, bench::elements)); });

    // Above 40 °C every mixture is liquid up to 78 °C. No loop computes these densities.
    std::string const hot = "density above 40 °C, 41 to 78 °C";
    one_by_one(hot, "aqueth, one by one",
               [](std::size_t i) { return plain::density_kg_m3(warm.w[i], heated[i]).value; });
    all_at_once(hot, "aqueth, arrays, checked", [] { arrays::density(warm.w, heated, out); });
    std::string const at_60 = "density at 60 °C";
    static double sixty = 60.0;
    benchmark::DoNotOptimize(sixty);  // not known to the compiler
    one_by_one(at_60, "aqueth, one by one",
               [](std::size_t i) { return plain::density_kg_m3(warm.w[i], sixty).value; });
    all_at_once(at_60, "aqueth, arrays, checked", [] { arrays::density(warm.w, celsius(60.0), out); });

    std::string const single = "density in single precision";
    one_by_one(single, "aqueth, one by one", [](std::size_t i) { return r22::density(wf[i], tf[i]); });
    all_at_once(single, "aqueth, arrays, checked", [] { arrays::density(wf, tf, outf); });

    std::string const slopes = "density with both derivatives";
    one_by_one(slopes, "aqueth, one by one",
               [](std::size_t i) { return r22::density_with_derivatives(all.w[i], all.t[i]); });
    std::string const expansion = "thermal expansion";
    one_by_one(expansion, "typed and checked, one by one", [](std::size_t i) {
        return thermal_expansion(mass_fraction(warm.w[i]), celsius(warm.t[i])).value();
    });
    all_at_once(expansion, "aqueth, arrays, checked", [] { arrays::thermal_expansion(warm.w, warm.t, out); });
    all_at_once(expansion, "limit: 98 multiply-adds",
                [] { benchmark::DoNotOptimize(bench::multiply_adds(98, bench::elements)); });
}

}  // namespace

int main(int argc, char** argv) {
    register_all();
    return bench::run(argc, argv);
}
