// SPDX-License-Identifier: BSL-1.0
#pragma once

/// @file
/// The front door: all of the typed, scalar interface, but for measured_equilibrium.hpp, whose interpolation
/// from Boost.Math would slow every build. Include single headers for shorter builds.

/// @namespace aqueth
/// Properties of ethanol-water mixtures and the distiller's operations on them: the typed interface.

// beside the floors: how sure a figure is
#include <aqueth/metrology/conformity.hpp>         // whether a measurement shows that a tolerance is met
#include <aqueth/metrology/instruments.hpp>        // how wrong instruments of a class may be
#include <aqueth/metrology/labelling.hpp>          // tolerances of labels and fillings in law
#include <aqueth/metrology/measurement_model.hpp>  // measurements of a bottling day, any scalar
#include <aqueth/metrology/monte_carlo.hpp>        // distributions, propagated by trials
#include <aqueth/metrology/uncertainty.hpp>        // input quantities, budgets, propagation of uncertainty
// the still
#include <aqueth/still/column.hpp>    // stages, reflux, what a column gives
#include <aqueth/still/heating.hpp>   // heat and time to boiling
#include <aqueth/still/run.hpp>       // a run of a still: fractions, strengths, times, heat
#include <aqueth/still/run_plan.hpp>  // still, reflux, cuts and ends of a run
#include <aqueth/still/stages.hpp>    // effective stages from earlier runs
// operations of the trade, on parcels
#include <aqueth/attenuation.hpp>   // strength of a wash from its gravities; sugar for a wash
#include <aqueth/blending.hpp>      // mix, dilute, fortify, make up; contraction
#include <aqueth/bottling.hpp>      // fill volume and number of bottles
#include <aqueth/gauging.hpp>       // proof, gallons and weights of the US rules
#include <aqueth/hydrometer.hpp>    // what an instrument shows, what the liquid is
#include <aqueth/liquid.hpp>        // composition and temperature, amount still open
#include <aqueth/lot_blending.hpp>  // a strength from several lots, each within limits
#include <aqueth/parcel.hpp>        // mass, composition, temperature
#include <aqueth/wash.hpp>          // a parcel with dissolved extract; gravities
// properties of a mixture, typed with units
#include <aqueth/atmosphere.hpp>          // air pressure at an altitude
#include <aqueth/boiling_curve.hpp>       // boiling at one pressure, tabulated, with the enthalpies
#include <aqueth/caloric.hpp>             // heat capacity, heat of mixing, enthalpies
#include <aqueth/density.hpp>             // density and its inverse, expansion, molar and excess volume
#include <aqueth/equilibrium.hpp>         // bubble and dew points, azeotrope, flash, activity
#include <aqueth/equilibrium_curve.hpp>   // the equilibrium at one pressure, tabulated
#include <aqueth/freezing.hpp>            // freezing point
#include <aqueth/specific_gravity.hpp>    // relative densities, in vacuo and in air
#include <aqueth/strength.hpp>            // every basis into every other
#include <aqueth/vapour_uncertainty.hpp>  // how sure the strength of a vapour is
#include <aqueth/weighing.hpp>            // what a balance shows in air
// words
#include <aqueth/composition.hpp>  // the strong types of strength
#include <aqueth/error.hpp>        // the one error type
#include <aqueth/units.hpp>        // quantities, temperature, units

#include <aqueth/version.hpp>
