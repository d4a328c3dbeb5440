// The coats a builder wants on a board: plain data, in file order.
#pragma once

#include <cstdint>
#include <optional>
#include <string>
#include <string_view>
#include <vector>

#include "wetout/board/hull.hpp"
#include "wetout/units/quantity.hpp"

namespace wetout::laminate {

enum class CoatKind { seal, laminate, install, hotcoat, gloss };
enum class Laps { cut, free };

std::string_view to_string(CoatKind kind);
std::string_view to_string(Laps laps);
std::string_view to_string(board::Face face);
std::string_view to_string(board::Foam foam);

/// One layer of cloth, laid in the order given.
struct PlySpec {
  std::string id;
  std::string name;
  std::string cloth;                       ///< id
  units::Length lap;                       ///< finished width past the apex; 0 without
  std::optional<units::Length> from_tail;  ///< a patch: from there ...
  std::optional<units::Length> to;         ///< ... to there
  std::optional<units::Length> width;      ///< centred; without it to the apex
};

/// Stirred in on top of A + B: `share` of their mass.
struct Additive {
  std::string material;
  double share = 0.0;
  friend bool operator==(const Additive&, const Additive&) = default;
};

/// Boxes and plugs set in resin.
struct Install {
  std::string part;  ///< material id
  std::int64_t count = 0;
  units::Volume fill;  ///< net, each
  units::Length gap;   ///< between part and foam
};

struct CoatSpec {
  std::string id;
  std::string name;
  board::Face face = board::Face::bottom;
  CoatKind kind = CoatKind::laminate;
  std::string resin;  ///< id
  Laps laps = Laps::free;
  std::vector<PlySpec> plies;  ///< laminate only, at least one
  std::vector<Additive> additives;
  std::optional<Install> install;     ///< install only
  std::optional<units::Length> film;  ///< seal, hotcoat, gloss: instead of the shop's
  std::vector<std::string> after;     ///< ids of coats
};

}  // namespace wetout::laminate
