// SPDX-License-Identifier: BSL-1.0
#pragma once

#include <aqueth/correlation/oiml_r22.hpp>
#include <aqueth/correlation/oiml_r22_inverse.hpp>
#include <aqueth/numeric/real.hpp>

/// Strength of a liquid with extract from a sample that was distilled and made up to a volume with water.
namespace aqueth::inline AQUETH_ABI::model::sample_distillation {

/// The alcohol of the sample is that of the distillate, less what was lost. The sample expands as the
/// ethanol-water mixture of its strength. Plain numbers; nothing is checked.
/// @param sample             volume of the sample at `sample_celsius`, m3 or L
/// @param sample_celsius     its temperature, °C
/// @param distillate         volume that the distillate was made up to, same unit
/// @param w                  mass fraction of the distillate, made up
/// @param distillate_celsius temperature at which it was made up, °C
/// @param lost               share of the alcohol lost in distilling, 0 where all of it arrives
/// @return volume fraction of the sample at 20 °C
template <numeric::real T>
constexpr T volume_fraction(T const& sample, T const& sample_celsius, T const& distillate, T const& w,
                            T const& distillate_celsius, T const& lost) {
    namespace r22 = correlation::oiml_r22;
    r22::isotherm<T> const at_20(T(20)), at_sample(sample_celsius);
    T const pure = at_20.density(T(1));
    T const ethanol =
        distillate * w * r22::density(w, distillate_celsius) / (T(1) - lost);  // kg, or g where litres
    T const unexpanded = ethanol / (pure * sample);
    T q = unexpanded;
    for (int i = 0; i < 4; ++i) {  // each pass brings another three digits: expansion changes little with q
        T const strength = r22::mass_fraction_from_concentration(at_20, T(q * pure));
        q = unexpanded * at_20.density(strength) / at_sample.density(strength);
    }
    return q;
}

}  // namespace aqueth::inline AQUETH_ABI::model::sample_distillation
