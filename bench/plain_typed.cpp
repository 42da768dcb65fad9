// SPDX-License-Identifier: BSL-1.0
// The typed calls of plain_bench.cpp. Compiled twice, in files of their own, so that the compiler has the
// same choices for both: against these headers, and with AQUETH_EARLIER against the headers of another
// version.
#include "typed_ways.hpp"

#if defined(AQUETH_EARLIER)
aqueth::bench::typed_ways aqueth::bench::earlier() { return typed_calls(); }
#else
aqueth::bench::typed_ways aqueth::bench::today() { return typed_calls(); }
#endif
