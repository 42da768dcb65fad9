// SPDX-License-Identifier: BSL-1.0
#pragma once

/// @file
/// The front door: the whole typed, scalar interface except tables of measured points and of tanks
/// (number_table.hpp, equilibrium_points.hpp, measured_equilibrium.hpp, dip_table.hpp), quantities as texts
/// (text.hpp, io.hpp, format.hpp, parse.hpp) and learning a still from its logs (still/learning.hpp, which
/// needs Eigen; still/run_log.hpp). Include single headers for shorter builds.

/// @namespace aqueth
/// Properties of ethanol-water mixtures and the distiller's operations on them: the typed interface.

// beside the floors: uncertainty
#include <aqueth/metrology/conformity.hpp>         // whether a measurement shows that a tolerance is met
#include <aqueth/metrology/instruments.hpp>        // permissible errors of instruments by class
#include <aqueth/metrology/labelling.hpp>          // legal tolerances of labels and fillings
#include <aqueth/metrology/measurement_model.hpp>  // measurements of a bottling day, any scalar
#include <aqueth/metrology/monte_carlo.hpp>        // distributions, propagated by trials
#include <aqueth/metrology/uncertainty.hpp>        // input quantities, budgets, propagation of uncertainty
// the still
#include <aqueth/still/column.hpp>         // stages, plates or packing; the neck
#include <aqueth/still/column_limits.hpp>  // least stages, least reflux, strength of the distillate
#include <aqueth/still/cooling.hpp>        // water of the condensers, load of a column
#include <aqueth/still/cost.hpp>           // what heat and water cost
#include <aqueth/still/head.hpp>           // total or partial condenser; reflux
#include <aqueth/still/heating.hpp>        // heat and time to boiling
#include <aqueth/still/jars.hpp>           // a run in jars, and where to cut
#include <aqueth/still/run.hpp>            // a run of a still: fractions, strengths, times, heat
#include <aqueth/still/run_plan.hpp>       // cuts and ends of a run
#include <aqueth/still/season.hpp>         // strips and spirit runs until they repeat themselves
#include <aqueth/still/still.hpp>          // the apparatus: pot, column, neck, head
#include <aqueth/still/traces.hpp>         // traces beside a run: methanol, esters, higher alcohols
// operations of the trade, on parcels
#include <aqueth/attenuation.hpp>     // strength of a wash from its gravities; sugar for a wash
#include <aqueth/blending.hpp>        // mix, dilute, fortify, make up; contraction
#include <aqueth/bottling.hpp>        // fill volume and number of bottles
#include <aqueth/cask.hpp>            // a cask over the years, by two rates
#include <aqueth/dilution_steps.hpp>  // a dilution by strengths or portions, step by step
#include <aqueth/gauging.hpp>         // proof, gallons and weights of the US rules
#include <aqueth/hydrometer.hpp>      // a reading from a liquid, a liquid from a reading
#include <aqueth/liquid.hpp>          // composition and temperature, without an amount
#include <aqueth/lot_blending.hpp>    // a strength from several lots, each within limits
#include <aqueth/mash.hpp>            // worts, strike water, heat of fermentation
#include <aqueth/parcel.hpp>          // mass, composition, temperature
#include <aqueth/refraction.hpp>      // refractive index, degrees Brix; a wash from two readings; methanol
#include <aqueth/sweetening.hpp>      // spirit with sugar: volumes, readings, recipes; distilled samples
#include <aqueth/wash.hpp>            // a parcel with dissolved extract; gravities
// properties of a mixture, typed with units
#include <aqueth/atmosphere.hpp>          // air pressure at an altitude
#include <aqueth/boiling_curve.hpp>       // boiling at one pressure, tabulated, with the enthalpies
#include <aqueth/caloric.hpp>             // heat capacity, heat of mixing, enthalpies
#include <aqueth/density.hpp>             // density and its inverse, expansion, molar and excess volume
#include <aqueth/equilibrium.hpp>         // bubble and dew points, azeotrope, flash, activity
#include <aqueth/equilibrium_curve.hpp>   // the equilibrium at one pressure, tabulated
#include <aqueth/flammability.hpp>        // flash point; can the vapour over a liquid be lit
#include <aqueth/freezing.hpp>            // freezing point
#include <aqueth/pycnometer.hpp>          // density and strength from a flask on a balance
#include <aqueth/specific_gravity.hpp>    // relative densities, in vacuo and in air
#include <aqueth/strength.hpp>            // every basis into every other
#include <aqueth/traces.hpp>              // volatility of traces in the boiling mixture, with its error band
#include <aqueth/trade_scales.hpp>        // British proof, Baumé, Oechsle, KMW
#include <aqueth/transport.hpp>           // viscosity, speed of sound, thermal conductivity
#include <aqueth/vapour_uncertainty.hpp>  // uncertainty of the strength of a vapour
#include <aqueth/weighing.hpp>            // indications of a balance in air
// basic types
#include <aqueth/composition.hpp>  // the strong types of strength
#include <aqueth/error.hpp>        // the one error type
#include <aqueth/units.hpp>        // quantities, temperature, units

#include <aqueth/version.hpp>
