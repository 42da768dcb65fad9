// SPDX-License-Identifier: BSL-1.0
// The typed calls of plain_bench.cpp against the headers of another version: AQUETH_EARLIER_HEADERS.
#include "typed_ways.hpp"

aqueth::bench::typed_ways aqueth::bench::earlier() { return typed_calls(); }
