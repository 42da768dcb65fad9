// SPDX-License-Identifier: BSL-1.0
#pragma once

/// @file
/// The whole plain floor: checked functions over numbers, without Boost, exceptions, strings or heap.

#include <aqueth/plain/atmosphere.hpp>
#include <aqueth/plain/attenuation.hpp>
#include <aqueth/plain/blending.hpp>
#include <aqueth/plain/bottling.hpp>
#include <aqueth/plain/caloric.hpp>
#include <aqueth/plain/cask.hpp>
#include <aqueth/plain/density.hpp>
#include <aqueth/plain/equilibrium.hpp>
#include <aqueth/plain/flammability.hpp>
#include <aqueth/plain/freezing.hpp>
#include <aqueth/plain/gauging.hpp>
#include <aqueth/plain/hydrometer.hpp>
#include <aqueth/plain/mash.hpp>
#include <aqueth/plain/parcel.hpp>
#include <aqueth/plain/pycnometer.hpp>
#include <aqueth/plain/refraction.hpp>
#include <aqueth/plain/specific_gravity.hpp>
#include <aqueth/plain/strength.hpp>
#include <aqueth/plain/sweetening.hpp>
#include <aqueth/plain/traces.hpp>
#include <aqueth/plain/trade_scales.hpp>
#include <aqueth/plain/transport.hpp>
#include <aqueth/plain/wash.hpp>
#include <aqueth/plain/weighing.hpp>
