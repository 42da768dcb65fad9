// SPDX-License-Identifier: BSL-1.0
// The cost of the floors: unchecked formulas, checked functions over plain numbers, typed functions; and of
// a refusal.
#include <aqueth/correlation/oiml_r22.hpp>
#include <aqueth/correlation/oiml_r22_inverse.hpp>
#include <aqueth/error.hpp>
#include <aqueth/model/vapour_liquid.hpp>
#include <aqueth/plain/plain.hpp>

#include "oiml_r22_states.hpp"
#include "typed_ways.hpp"

#include <random>
#include <string>

namespace aqueth::bench {

plain_questions const& asked() {
    static plain_questions const all = [] {
        states const liquid(-20.0);
        plain_questions made{liquid.w, liquid.t, liquid.rho, liquid.q, {}, {}, {}, {}};
        std::mt19937_64 random(15);
        std::uniform_real_distribution<double> unit(0.0, 1.0);
        for (std::size_t i = 0; i < elements; ++i) {
            made.reading.push_back(0.3 + 0.4 * unit(random));
            made.warm.push_back(30.0 * unit(random));
            made.x.push_back(unit(random));
            made.kpa.push_back(60.0 + 50.0 * unit(random));
        }
        return made;
    }();
    return all;
}

}  // namespace aqueth::bench

namespace {

using namespace aqueth;
using bench::asked;
namespace r22 = aqueth::correlation::oiml_r22;

void register_all() {
    using bench::one_by_one;
    std::string const raw = "formula, unchecked";
    std::string const plain_way = "aqueth, one by one: plain, checked";
    std::string const typed = "typed, checked";
    std::string const before = AQUETH_EARLIER_LABEL;

    std::string operation = "density";
    one_by_one(operation, raw, [](std::size_t i) { return r22::density(asked().w[i], asked().t[i]); });
    one_by_one(operation, plain_way,
               [](std::size_t i) { return plain::density_kg_m3(asked().w[i], asked().t[i]).value; });
    bench::today().density(operation, typed);
    bench::earlier().density(operation, before);

    operation = "density, refused";
    one_by_one(operation, plain_way, [](std::size_t i) {
        auto const answer = plain::density_kg_m3(asked().w[i], 41.0 + asked().t[i] * asked().t[i]);
        return answer.status.ok ? 0.0 : answer.status.upper;
    });
    one_by_one(operation, "typed, caught", [](std::size_t i) {
        try {
            return density(mass_fraction(asked().w[i]), celsius(41.0 + asked().t[i] * asked().t[i])).value();
        } catch (refusal const& error) {
            return error.upper();
        }
    });

    operation = "mass fraction from a density";
    one_by_one(operation, raw,
               [](std::size_t i) { return r22::mass_fraction_from_density(asked().rho[i], asked().t[i]); });
    one_by_one(operation, plain_way, [](std::size_t i) {
        return plain::mass_fraction_from_density(asked().rho[i], asked().t[i]).value;
    });
    bench::today().composition(operation, typed);
    bench::earlier().composition(operation, before);

    operation = "mass fraction from a density, refused";
    one_by_one(operation, plain_way, [](std::size_t i) {
        auto const answer = plain::mass_fraction_from_density(asked().rho[i] - 300.0, asked().t[i]);
        return answer.status.ok ? 0.0 : answer.status.upper;
    });

    operation = "mass fraction from a density near that of water, refused";
    one_by_one(operation, plain_way, [](std::size_t i) {
        auto const answer = plain::mass_fraction_from_density(1000.0 + 1e-3 * asked().kpa[i], asked().t[i]);
        return answer.status.ok ? 0.0 : answer.status.upper;
    });

    operation = "mass fraction from % vol";
    using by_volume_at_20 = plain::volume_basis<plain::at_20_celsius>;
    one_by_one(operation, plain_way, [](std::size_t i) {
        return plain::convert<by_volume_at_20, plain::mass_basis>(asked().q[i]).value;
    });
    bench::today().strength(operation, typed);
    bench::earlier().strength(operation, before);

    operation = "corrected reading of an alcoholometer";
    bench::today().reading(operation, "aqueth, one by one: typed, checked");
    bench::earlier().reading(operation, before);

    operation = "bubble point at a pressure";
    one_by_one(operation, raw, [](std::size_t i) {
        return model::vapour_liquid::bubble_at_pressure(asked().x[i], 1000.0 * asked().kpa[i]).y;
    });
    one_by_one(operation, plain_way, [](std::size_t i) {
        return plain::bubble_point_at_kpa(asked().x[i], asked().kpa[i]).value.vapour_mole_fraction;
    });
    bench::today().bubble_point(operation, typed);
    bench::earlier().bubble_point(operation, before);

    operation = "bubble point at a temperature";
    one_by_one(operation, plain_way, [](std::size_t i) {
        return plain::bubble_point_at_celsius(asked().x[i], asked().kpa[i]).value.vapour_mole_fraction;
    });
    bench::today().bubble_point_at_temperature(operation, typed);
    bench::earlier().bubble_point_at_temperature(operation, before);

    operation = "dew point at a pressure";
    one_by_one(operation, plain_way, [](std::size_t i) {
        return plain::dew_point_at_kpa(asked().x[i], asked().kpa[i]).value.liquid_mole_fraction;
    });
    bench::today().dew_point(operation, typed);
    bench::earlier().dew_point(operation, before);

    operation = "specific heat capacity";
    bench::today().heat_capacity(operation, "aqueth, one by one: typed, checked");
    bench::earlier().heat_capacity(operation, before);

    operation = "bubble point at a pressure, refused";
    one_by_one(operation, plain_way, [](std::size_t i) {
        auto const answer = plain::bubble_point_at_kpa(asked().x[i], 1000.0 * asked().kpa[i]);
        return answer.status.ok ? 0.0 : answer.status.upper;
    });

    operation = "dilution of a parcel";
    bench::today().dilution(operation, "aqueth, one by one: typed, checked");
    bench::earlier().dilution(operation, before);
}

}  // namespace

int main(int argc, char** argv) {
    register_all();
    return bench::run(argc, argv);
}
