// SPDX-License-Identifier: BSL-1.0
/// @file
/// The version of the library. It is written nowhere else: CMake reads the three lines below.
#pragma once

/// Raised when a program written for the version before must be changed.
#define AQUETH_VERSION_MAJOR 0
/// Raised for additions; while the major number is 0, also for changes of the interface.
#define AQUETH_VERSION_MINOR 1
/// Raised for corrections.
#define AQUETH_VERSION_PATCH 0

/// @cond
// Two steps, because a macro is replaced by its value only on the way into the second.
#define AQUETH_TEXT_OF_(x) #x
#define AQUETH_TEXT_OF(x) AQUETH_TEXT_OF_(x)
/// @endcond

namespace aqueth {

/// The version of the headers a program was compiled with, as "major.minor.patch".
inline constexpr char version[] =
    AQUETH_TEXT_OF(AQUETH_VERSION_MAJOR.AQUETH_VERSION_MINOR.AQUETH_VERSION_PATCH);

}  // namespace aqueth

#undef AQUETH_TEXT_OF
#undef AQUETH_TEXT_OF_
