// SPDX-License-Identifier: BSL-1.0
// Nothing of its own: the headers that CMakeLists.txt names here are compiled once, for all tests.
