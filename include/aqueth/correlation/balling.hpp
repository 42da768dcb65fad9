// SPDX-License-Identifier: BSL-1.0
#pragma once

#include <aqueth/correlation/source.hpp>
#include <aqueth/numeric/real.hpp>

#include <array>
#include <cstddef>

/// Balling's relations between the extract before fermentation and the alcohol after it.
///
/// Plain numbers in percent by mass: `oe` original extract, `re` real and `ae` apparent extract (degrees
/// Plato), `a` alcohol. Nothing is checked; NaN in gives NaN out.
namespace aqueth::inline AQUETH_ABI::correlation::balling {

/// Citation, range and accuracy of the balance.
inline constexpr source cited{
    "C. J. N. Balling (1865), as restated by H. Nielsen, A. G. Kristiansen, K. M. Krieger Lassen and C. "
    "Erikstrom, "
    "Balling's Formula - scrutiny of a brewing dogma, Scandinavian School of Brewing",
    "original extract 0 to 30 degrees Plato",
    "an average of beers: on one full-scale lager 0.1 degrees Plato in original extract; sugar washes, whose "
    "yeast "
    "takes another share, differ by up to 5 % of the alcohol"};

/// Citation, range and accuracy of the factors.
inline constexpr source factors_cited{
    "Balling's alcohol factors, compiled from his tables by F. Eckhardt",
    "original extract 6 to 30 degrees Plato",
    "0.0001 in the factor as printed; 0.4 to 2.4 % less alcohol than the balance "
    "with the usual weights of the real extract"};

inline constexpr double extract_per_alcohol = 2.0665;  ///< grams of extract that give one gram of alcohol
inline constexpr double yeast_per_alcohol = 0.11;      ///< grams of yeast solids formed with it
inline constexpr double carbon_dioxide_per_alcohol = 0.9565;  ///< grams of carbon dioxide given off with it

/// @param a  alcohol, % mass of the fermented wash
/// @param re real extract, % mass of the fermented wash
/// @return original extract, % mass of the wash before fermentation
template <numeric::real T>
constexpr T original_extract(T const& a, T const& re) {
    return T(100) * (T(extract_per_alcohol) * a + re) / (T(100) + T(extract_per_alcohol - 1.0) * a);
}

/// The same equation solved for the alcohol.
/// @param oe original extract, % mass
/// @param re real extract, % mass
/// @return alcohol, % mass of the fermented wash
template <numeric::real T>
constexpr T alcohol(T const& oe, T const& re) {
    return (oe - re) / (T(extract_per_alcohol) - T((extract_per_alcohol - 1.0) / 100.0) * oe);
}

/// The same equation solved for the real extract.
/// @param oe original extract, % mass
/// @param a  alcohol, % mass of the fermented wash
/// @return real extract, % mass
template <numeric::real T>
constexpr T real_extract_from_alcohol(T const& oe, T const& a) {
    return oe - a * (T(extract_per_alcohol) - T((extract_per_alcohol - 1.0) / 100.0) * oe);
}

/// @name Weights of the trade
/// From memory of brewing texts: they do not follow from the balance, which has no
/// densities. Balling's own quotient of apparent and real attenuation, `1/(2.0665 - 0.010665 oe)/factor(oe)`,
/// is 1.226 to 1.250 from 6 to 30 degrees Plato, so that his weights are 0.184 to 0.200 and 0.816 to 0.800.
/// @{
inline constexpr double weight_of_original = 0.1808;  ///< of the original extract in the real one
inline constexpr double weight_of_apparent = 0.8192;  ///< of the apparent extract in the real one
/// @}

/// Real extract without distilling, by the weights of the trade (from memory).
/// @param oe original extract, % mass
/// @param ae apparent extract, % mass
/// @return real extract, % mass
template <numeric::real T>
constexpr T real_extract(T const& oe, T const& ae) {
    return T(weight_of_original) * oe + T(weight_of_apparent) * ae;
}

/// One row of the table of factors.
struct factor_row {
    double original_extract;  ///< degrees Plato
    double factor;            ///< alcohol over (original - apparent extract)
};

// clang-format off
/// Table of factors, as printed.
inline constexpr std::array<factor_row, 31> factors{{
    { 6.0, 0.4073}, { 7.0, 0.4091}, { 8.0, 0.4110}, { 9.0, 0.4129}, {10.0, 0.4148}, {10.5, 0.4158},
    {11.0, 0.4168}, {11.5, 0.4177}, {12.0, 0.4187}, {12.5, 0.4197}, {13.0, 0.4206}, {13.5, 0.4216},
    {14.0, 0.4226}, {14.5, 0.4236}, {15.0, 0.4246}, {15.5, 0.4257}, {16.0, 0.4267}, {17.0, 0.4288},
    {18.0, 0.4309}, {19.0, 0.4330}, {20.0, 0.4351}, {21.0, 0.4373}, {22.0, 0.4395}, {23.0, 0.4417},
    {24.0, 0.4439}, {25.0, 0.4462}, {26.0, 0.4485}, {27.0, 0.4508}, {28.0, 0.4532}, {29.0, 0.4556},
    {30.0, 0.4580},
}};
// clang-format on

/// @param oe original extract, 6 to 30 % mass
/// @return factor, by straight lines between the rows
template <numeric::real T>
constexpr T factor(T const& oe) {
    std::size_t above = 1;
    while (above + 1 < factors.size() && oe > T(factors[above].original_extract)) ++above;
    factor_row const& low = factors[above - 1];
    factor_row const& high = factors[above];
    return T(low.factor) + (oe - T(low.original_extract)) * T(high.factor - low.factor) /
                               T(high.original_extract - low.original_extract);
}

}  // namespace aqueth::inline AQUETH_ABI::correlation::balling
