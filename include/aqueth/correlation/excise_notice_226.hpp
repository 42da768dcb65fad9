// SPDX-License-Identifier: BSL-1.0
#pragma once

#include <aqueth/correlation/source.hpp>
#include <aqueth/numeric/real.hpp>

#include <array>
#include <cstddef>

/// Strength of a fermented wash from its fall in gravity: the rule of the United Kingdom's excise.
namespace aqueth::inline AQUETH_ABI::correlation::excise_notice_226 {

/// Citation, range and accuracy.
inline constexpr source cited{
    "HM Revenue and Customs, Excise Notice 226: Beer Duty, section 30, factors by the Laboratory of the "
    "Government Chemist (read second hand, in quotations that agree)",
    "fall in gravity up to 100.7 degrees (thousandths of specific gravity at 20 °C)",
    "a rule for guidance, made for beer; steps of 0.8 % of the strength between neighbouring factors"};

/// One row: up to this fall, this factor.
struct row {
    double most;    ///< greatest fall, degrees of gravity
    double factor;  ///< % vol per degree
};

// clang-format off
/// The table as printed.
inline constexpr std::array<row, 11> rows{{
    { 6.9, 0.125}, {10.4, 0.126}, {17.2, 0.127}, {26.1, 0.128}, {36.0, 0.129}, {46.5, 0.130}, {57.1, 0.131},
    {67.9, 0.132}, {78.8, 0.133}, {89.7, 0.134}, {100.7, 0.135},
}};
// clang-format on

/// upper end of the range, degrees of gravity: 100.7, and values that round to it
inline constexpr double greatest_fall = 100.75;

/// @param fall original less present gravity in degrees, 0 to 100.7; not checked, NaN in gives NaN out
/// @return alcoholic strength, % vol
template <numeric::real T>
constexpr T percent_vol(T const& fall) {
    std::size_t k = 0;
    // The rows are printed to 0.1 degrees: a value between two rows belongs to the nearer one.
    while (k + 1 < rows.size() && fall >= T(rows[k].most + 0.05)) ++k;
    return fall * T(rows[k].factor);
}

}  // namespace aqueth::inline AQUETH_ABI::correlation::excise_notice_226
