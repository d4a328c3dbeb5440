// What a shop buys, as the ledger keeps it: its unit, its packs, and amounts of it as people say
// them.
#pragma once

#include <cstdint>
#include <optional>
#include <string>
#include <string_view>
#include <vector>

#include "wetout/base/problem.hpp"
#include "wetout/joblog/ledger.hpp"
#include "wetout/laminate/shop.hpp"
#include "wetout/units/quantity.hpp"

namespace wetout::work {

struct Good {
  joblog::Material material = {};
  std::optional<units::Density> density = {};  ///< makes a volume a mass
  std::optional<units::Length> width = {};     ///< of a roll of cloth
  std::vector<laminate::Pack> packs = {};
  /// Nothing tells whether it is weighed, measured or counted: an amount will.
  bool any_unit = false;
};

/// Materials and cloths, in the order of the file. A liquid is kept by mass, cloth by length,
/// everything else as its first pack has it, or by the piece where a weight of one is given.
std::vector<Good> goods_of(const laminate::Shop& shop);

/// The same material as the log has kept it so far, with what the shop file knows of it.
Good as_kept(Good good, const joblog::Material& kept);

/// The good that `typed` means. Problems "material.unknown", "material.ambiguous".
base::Result<Good> good_meant(std::string_view typed, const std::vector<Good>& goods);

/// What the pack holds in units of the good; nothing where it is sold in others.
std::optional<std::int64_t> holds(const laminate::Pack& pack, const Good& good);

/// "5 kg", "1 gal", "10 yd", "2 pieces": in the unit in which its size is a round number, as it
/// stands on the pack, whatever units are printed otherwise.
std::string pack_text(const laminate::Pack& pack);

enum class Least {
  something,  ///< above zero
  nothing,    ///< zero too
};

/// "5 kg", "1/2 gal" (with a density), "10 yd", "12", "12 pieces", "2 packs" (of the only pack of
/// the shop file), "2 x 5 kg". In units of the good; gives an `any_unit` good its unit. Problems
/// with the key AMOUNT: "unit.*" and "number.*", "value.range", "amount.pack" (none or several to
/// choose from), "amount.density" (a volume of what has none).
base::Result<std::int64_t> read_amount(std::string_view text, Good& good, Least least);

}  // namespace wetout::work
