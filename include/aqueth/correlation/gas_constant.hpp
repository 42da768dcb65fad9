// SPDX-License-Identifier: BSL-1.0
#pragma once

#include <aqueth/correlation/source.hpp>

/// Molar gas constant.
namespace aqueth::inline AQUETH_ABI::correlation::gas_constant {

/// Citation, range and accuracy.
inline constexpr source cited{
    "International System of Units, 9th edition (2019): product of the Avogadro and Boltzmann constants",
    "everywhere", "exact, here to ten digits"};

inline constexpr double molar = 8.314462618;  ///< J/(mol K)

}  // namespace aqueth::inline AQUETH_ABI::correlation::gas_constant
