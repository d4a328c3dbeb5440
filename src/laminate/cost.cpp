#include "wetout/laminate/cost.hpp"

#include <cmath>
#include <string>

namespace wetout::laminate {

std::optional<units::Money> cost_of(const std::vector<Pack>& packs,
                                    const std::optional<units::Density>& density, double amount,
                                    std::string_view unit) {
  std::optional<double> cheapest;
  std::string currency;
  for (const Pack& pack : packs) {
    if (!pack.price) continue;
    double holds = 0.0;
    if (unit == "piece" && pack.pieces) holds = static_cast<double>(*pack.pieces);
    if (unit == "m" && pack.length) holds = units::in_metres(*pack.length);
    if (unit == "g" && pack.mass) holds = units::in_grams(*pack.mass);
    if (unit == "g" && pack.volume && density) holds = units::in_grams(*density * *pack.volume);
    if (holds <= 0.0) continue;
    const double each = static_cast<double>(pack.price->minor) / holds;
    if (!cheapest || each < *cheapest) {
      cheapest = each;
      currency = pack.price->currency;
    }
  }
  if (!cheapest) return std::nullopt;
  return units::Money{std::llround(*cheapest * amount), currency};
}

}  // namespace wetout::laminate
