// A polyester with its catalyst dosed is weighed like any resin: part B is the catalyst.
#pragma once

#include "wetout/base/problem.hpp"
#include "wetout/resin/defaults.hpp"
#include "wetout/resin/product.hpp"
#include "wetout/units/quantity.hpp"
#include "wetout/units/temperature.hpp"

namespace wetout::laminate {

/// Parts, and how far the scale may round them so that the dose stays inside the sheet's range.
resin::Product with_dose(const resin::Product& polyester, double dose,
                         const resin::Defaults& settings);

/// The dose inside the sheet's range, with room for the scale's rounding, with which a film gels
/// nearest to `gel` but not before, where the range allows. Problems: those of resin::dose_for().
base::Result<double> dose_for_gel(const resin::Product& polyester, units::Temperature air,
                                  units::Duration gel, const resin::Defaults& settings);

/// Where nobody says how long it must last: the middle of the sheet's range.
double usual_dose(const resin::Product& polyester);

}  // namespace wetout::laminate
