// One weighed batch as a list of pours.
#pragma once

#include <vector>

#include "wetout/laminate/plan.hpp"
#include "wetout/laminate/shop.hpp"
#include "wetout/resin/weigh.hpp"

namespace wetout::laminate {

/// What weigh() is asked for this resin in this shop.
resin::WeighRequest weigh_request(const Shop& shop, const resin::Product& product,
                                  const std::vector<Additive>& additives,
                                  const resin::Defaults& settings);

/// Parts, volumes and running totals: part A, what is stirred into it, part B last, for part B
/// starts the clock. Number, cup, temperatures and times are left to the caller.
Batch batch_of(const Shop& shop, const resin::Product& product,
               const std::vector<Additive>& additives, const resin::Weighed& weighed);

Ratio ratio_of(const resin::Product& product, const resin::Defaults& settings);

}  // namespace wetout::laminate
