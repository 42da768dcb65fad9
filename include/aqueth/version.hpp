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

/// The number of the version, to compare: 10000 times the major number, 100 times the minor, and the patch.
#define AQUETH_VERSION (10000 * AQUETH_VERSION_MAJOR + 100 * AQUETH_VERSION_MINOR + AQUETH_VERSION_PATCH)

/// Marks what the next version will no longer have, with what to use instead; a program that defines it empty
/// is not warned.
#if !defined(AQUETH_DEPRECATED)
#define AQUETH_DEPRECATED(instead) [[deprecated(instead)]]
#endif

// Everything stands in an inline namespace, so that sources compiled with two versions, or with and without
// exceptions, can be linked into one program. Nobody writes its name.
/// @cond
#define AQUETH_JOINED_(a, b, c, d) a##b##_##c##d
#define AQUETH_JOINED(a, b, c, d) AQUETH_JOINED_(a, b, c, d)
#if defined(__cpp_exceptions)
#define AQUETH_ABI AQUETH_JOINED(v, AQUETH_VERSION_MAJOR, AQUETH_VERSION_MINOR, )
#else
#define AQUETH_ABI AQUETH_JOINED(v, AQUETH_VERSION_MAJOR, AQUETH_VERSION_MINOR, _no_exceptions)
#endif
// Two steps, because a macro is replaced by its value only on the way into the second.
#define AQUETH_TEXT_OF_(x) #x
#define AQUETH_TEXT_OF(x) AQUETH_TEXT_OF_(x)
/// @endcond

namespace aqueth::inline AQUETH_ABI {

/// The version of the headers a program was compiled with, as "major.minor.patch".
inline constexpr char version[] =
    AQUETH_TEXT_OF(AQUETH_VERSION_MAJOR.AQUETH_VERSION_MINOR.AQUETH_VERSION_PATCH);

}  // namespace aqueth::inline AQUETH_ABI

#undef AQUETH_TEXT_OF
#undef AQUETH_TEXT_OF_
