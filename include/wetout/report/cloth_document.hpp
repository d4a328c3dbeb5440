// How the cloth of boards is cut: what to take off each roll and where to mark it.
#pragma once

#include <optional>
#include <string>
#include <string_view>
#include <vector>

#include "wetout/base/notice.hpp"
#include "wetout/units/milligrams.hpp"
#include "wetout/units/money.hpp"
#include "wetout/units/print.hpp"
#include "wetout/units/quantity.hpp"

namespace wetout::report {

inline constexpr std::string_view cloth_format = "wetout.cloth/1";

struct CutPiece {
  int n = 0;  ///< in order of cutting, over all rolls
  std::string job, coat, ply;
  std::optional<std::string> strip;  ///< "1 of 2", of a ply that is joined
  units::Length length;              ///< along the roll, with the warp
  units::Length width;
  units::Length along;  ///< from the roll's cut end
  units::Length edge;   ///< from its left edge
};

/// A roll or a remnant and what is cut of it.
struct CutFrom {
  std::string cloth, name;
  bool is_remnant = false;
  std::optional<std::string> lot;  ///< of stock, where a remnant is one
  units::Length width;
  units::Length take;        ///< off the roll; of a remnant all of it
  units::Length one_by_one;  ///< what the pieces take one after the other
  units::Length bound;       ///< none can be shorter
  bool proved = false;       ///< this is the shortest
  units::Area waste;         ///< of what is taken
  units::Milligrams waste_weight;
  std::optional<units::Money> waste_cost;
  std::vector<CutPiece> pieces;
};

struct ClothJob {
  std::string id, name;
  int revision = 0;  ///< 0 of a file
};

struct ClothDocument {
  std::string program;
  std::string made;
  std::vector<ClothJob> jobs;
  std::vector<CutFrom> rolls;  ///< remnants of a cloth before its roll
  base::Notices notices;
  std::vector<std::string> cautions;
};

/// One line; docs/formats/cloth.schema.json.
std::string to_json(const ClothDocument& document);
std::string to_text(const ClothDocument& document, units::System system);

inline constexpr std::string_view cloth_drawing_begins = "<!-- wetout: cutting of cloth -->";
/// One SVG without anything from outside: each roll lying to the right, pieces to scale with their
/// numbers, marks along it and across it, at a round scale that fits A4 across. Lines and numbers tell things apart, colour does not.
std::string cloth_drawing(const ClothDocument& document, units::System system);

}  // namespace wetout::report
