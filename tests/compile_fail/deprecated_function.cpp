// SPDX-License-Identifier: BSL-1.0
// AQUETH_DEPRECATED warns, and says what to use instead.
#include <aqueth/version.hpp>

#if AQUETH_VERSION < 100 || AQUETH_VERSION >= 1000000
#error "versions compare as numbers: 0.1.0 is 100, 100.0.0 is 1000000"
#endif

AQUETH_DEPRECATED("use density()") int old_density();

int call();
int call() {
#if defined(AQUETH_MISTAKE)
    return old_density();
#else
    return 1;
#endif
}
