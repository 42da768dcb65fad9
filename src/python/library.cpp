// SPDX-License-Identifier: BSL-1.0
// The C interface, compiled into the module: so it needs no other library at run time.
#include "../c/aqueth.cpp"
#include "../c/functions.cpp"
