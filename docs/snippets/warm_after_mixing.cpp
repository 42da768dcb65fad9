// SPDX-License-Identifier: BSL-1.0
// A dilution comes out warm: what the alcoholometer shows at once, and when it has cooled.
#include <aqueth/blending.hpp>
#include <aqueth/hydrometer.hpp>

#include <cstdio>

int main() {
    // [body]
    using namespace aqueth;
    auto const meter = alcoholometer{};
    auto const spirit = parcel::of(1.85 * litre, by_volume(79.1), celsius(20.0));
    auto const plan =
        dilute(spirit, by_volume(43.0), water_at(celsius(20.0)));  // no temperature of the mixture given
    parcel const fresh = plan.product;
    parcel const cooled = fresh.at(celsius(20.0));

    std::printf("spirit at 20 °C, water at 20 °C: the mixture is at %.1f °C\n",
                fresh.temperature().celsius());
    std::printf("volume        fresh %.3f L, cooled %.3f L\n", in(fresh.volume(), litre),
                in(cooled.volume(), litre));
    std::printf("alcoholometer  fresh %.1f, cooled %.1f\n", meter.reading(fresh).percent(),
                meter.reading(cooled).percent());

    // Who trusts the fresh reading adds water until the meter shows 43 in the warm liquid:
    double const too_weak = meter.strength(by_volume(43.0), fresh.temperature()).percent();
    std::printf("43 in the warm liquid means %.1f %% vol\n", too_weak);

    // The same with the water from the cellar
    auto const cool = dilute(spirit, by_volume(43.0), water_at(celsius(8.0))).product;
    std::printf("with water of 8 °C the mixture is at %.1f °C\n", cool.temperature().celsius());

    // Lots of nearly one strength hardly warm each other
    auto const weak = mix({parcel::of(1.0 * litre, by_volume(43.0), celsius(20.0)),
                           parcel::of(1.0 * litre, by_volume(38.0), celsius(20.0))});
    std::printf("43 and 38 %% vol at 20 °C together: %.2f °C\n", weak.product.temperature().celsius());
    // [body]
}
