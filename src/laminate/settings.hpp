// The numbers a plan is made with: the shop's own where it has them, else the defaults.
#pragma once

#include "wetout/laminate/defaults.hpp"
#include "wetout/laminate/shop.hpp"

namespace wetout::laminate {

/// `values` with what the shop says in place of the defaults.
Defaults settle(const Shop& shop, Defaults values);

}  // namespace wetout::laminate
