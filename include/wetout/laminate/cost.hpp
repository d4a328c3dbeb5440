// What an amount of something bought costs.
#pragma once

#include <optional>
#include <string_view>
#include <vector>

#include "wetout/laminate/shop.hpp"
#include "wetout/units/money.hpp"

namespace wetout::laminate {

/// `amount` in `unit` ("g", "m" or "piece") at the pack with a price that is cheapest per unit,
/// rounded to the currency's minor unit; nothing where no such pack has a price. `density`: for
/// packs by volume; else they do not count.
std::optional<units::Money> cost_of(const std::vector<Pack>& packs,
                                    const std::optional<units::Density>& density, double amount,
                                    std::string_view unit);

}  // namespace wetout::laminate
