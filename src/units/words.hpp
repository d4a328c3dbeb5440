// The words that name units, and what they stand for.
#pragma once

#include <optional>
#include <string>
#include <string_view>
#include <vector>

#include "ratio.hpp"

namespace wetout::units {

/// What a unit measures. `other` is a unit made of known words that no reader asks for.
enum class Kind {
  length,
  area,
  volume,
  mass,
  areal_weight,
  density,
  linear_weight,
  duration,
  pace,
  temperature,
  percent,
  other
};

struct Unit {
  Kind kind = Kind::other;
  Ratio si;                ///< temperatures: kelvin in one degree; percent: 1/100
  std::string name;        ///< how we write it: "oz/yd2"
  bool bare_oz = false;    ///< an ounce that may be meant as mass, volume or cloth weight
  bool foot_mark = false;  ///< a foot written as a prime: a number after it is inches

  friend bool operator==(const Unit& a, const Unit& b) { return a.name == b.name; }
};

/// The unit that `words` name together, "/" and "per" among them: {"oz", "/", "sq", "yd"}.
std::optional<Unit> find_unit(const std::vector<std::string>& words);

/// Words a slip of the hand may have been meant for, as they are written.
std::vector<std::string> spellings(Kind kind);
std::vector<std::string> spellings();

}  // namespace wetout::units
