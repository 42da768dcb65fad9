// SPDX-License-Identifier: BSL-1.0
// What the library says when a question has no answer.
#include <aqueth/aqueth.hpp>

#include <cstdio>
#include <limits>

namespace {

template <class F>
void ask(F const& question) {
    try {
        static_cast<void>(question());
        std::printf("answered\n");
    } catch (aqueth::refusal const& error) {
        std::printf("%s\n", error.what());
    }
}

}  // namespace

int main() {
    // [body]
    using namespace aqueth;
    auto const spirit = parcel::of(1.0 * litre, by_volume(63.0), celsius(20.0));
    ask([&] { return by_volume(104.0); });
    ask([&] { return density(by_mass(40.0), celsius(95.0)); });
    ask([&] { return density(by_mass(10.0), celsius(-8.0)); });
    ask([&] { return alcoholometer{}.strength(by_volume(99.0), celsius(-5.0)); });
    ask([&] { return dilute(spirit, by_volume(70.0), water_at(celsius(15.0)), celsius(20.0)); });
    ask([&] { return parcel::of(-1.0 * litre, by_volume(40.0), celsius(20.0)); });
    ask([&] { return proof(std::numeric_limits<double>::quiet_NaN()); });
    // [body]
}
