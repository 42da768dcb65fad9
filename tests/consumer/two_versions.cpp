// SPDX-License-Identifier: BSL-1.0
// One program from two versions of the library: compiled once with each, and the second time with OTHER defined. Each part
// keeps its own functions and says its own version.
#include <aqueth/density.hpp>

#include <cstdio>

double density_of_the_other();
char const* version_of_the_other();

#if defined(OTHER)
double density_of_the_other() {
    return aqueth::density(aqueth::by_mass(40.0), aqueth::celsius(20.0)).value();
}
char const* version_of_the_other() { return aqueth::version; }
#else
int main() {
    double const here = aqueth::density(aqueth::by_mass(40.0), aqueth::celsius(20.0)).value();
    std::printf("%s and %s: %s density\n", aqueth::version, version_of_the_other(),
                here == density_of_the_other() ? "same" : "another");
}
#endif
