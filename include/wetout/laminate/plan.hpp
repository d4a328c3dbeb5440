// The plan: what each ply and coat of one board needs, and how it is mixed.
// Masses that must add up are whole milligrams.
#pragma once

#include <cstdint>
#include <optional>
#include <string>
#include <vector>

#include "wetout/base/notice.hpp"
#include "wetout/base/problem.hpp"
#include "wetout/board/spec.hpp"
#include "wetout/laminate/coat.hpp"
#include "wetout/laminate/shop.hpp"
#include "wetout/units/milligrams.hpp"
#include "wetout/units/money.hpp"
#include "wetout/units/quantity.hpp"
#include "wetout/units/temperature.hpp"

namespace wetout::laminate {

struct BoardSummary {
  std::string id;
  std::string name;
  board::Foam foam = board::Foam::eps;
  units::Length length;
  units::Area planform;
  units::Area bottom;
  units::Area deck;
  units::Area area_error;  ///< the largest of the three
  units::Length perimeter;
  units::Volume volume;
  std::optional<units::Milligrams> core_weight;
  friend bool operator==(const BoardSummary&, const BoardSummary&) = default;
};

struct PlyNeed {
  std::string id;
  std::string coat;
  std::string cloth;
  board::Face face = board::Face::bottom;
  units::Area area;  ///< hull surface covered on its own face
  units::Length lap;
  units::Area lap_area;    ///< hull surface covered on the other face
  units::Area cloth_area;  ///< cloth on the board, laps included, before trimming
  std::optional<units::Length> from_tail;
  std::optional<units::Length> to;
  std::optional<units::Length> width;
  units::Milligrams fibre;  ///< on the board; the trimmed strip is not in it
  units::Milligrams resin;  ///< in that fibre
  units::Length thickness;
  double fibre_fraction = 0.0;
  units::Length cut_length;  ///< off the roll, trim allowance included
  units::Length cut_width;
  friend bool operator==(const PlyNeed&, const PlyNeed&) = default;
};

/// One thing put on the scale. `reads` are running totals, as the scale shows them.
struct Pour {
  std::string what;  ///< material id
  units::Milligrams add;
  units::Milligrams reads;
  std::optional<units::Volume> add_volume;  ///< where the density is known
  std::optional<units::Volume> reads_volume;
  friend bool operator==(const Pour&, const Pour&) = default;
};
struct AdditiveAmount {
  std::string material;
  units::Milligrams mass;
  friend bool operator==(const AdditiveAmount&, const AdditiveAmount&) = default;
};

struct Batch {
  int n = 0;  ///< from 1, within its coat
  std::optional<std::string> cup;
  units::Milligrams mix;
  units::Milligrams part_a;
  units::Milligrams part_b;
  units::Volume part_a_volume;
  units::Volume part_b_volume;
  std::vector<AdditiveAmount> additives;
  std::vector<Pour> pours;
  units::Temperature air;
  units::Temperature resin;
  std::optional<units::Duration> gel;  ///< in the cup; of a polyester, of a film
  units::Duration use_within;
  /// From mixing, poured out as soon as it can be: until the film can no longer be spread.
  std::optional<units::Duration> spread_within;
  std::optional<units::Temperature> peak;
  std::optional<bool> runs_away;
  double off_ratio = 0.0;  ///< share: part B over what the ratio wants, minus 1
  friend bool operator==(const Batch&, const Batch&) = default;
};

struct Ratio {
  resin::By by = resin::By::mass;  ///< as the sheet prints it
  double a = 1.0;
  double b = 1.0;
  double tolerance = 0.0;  ///< share of part B
  friend bool operator==(const Ratio&, const Ratio&) = default;
};

/// mix = A + B + additives = kept + losses + margin + rounding, to the milligram.
struct CoatNeed {
  std::string id;
  std::string name;
  CoatKind kind = CoatKind::laminate;
  board::Face face = board::Face::bottom;
  std::string resin;
  std::optional<Laps> laps;  ///< laminate only
  units::Area area;          ///< hull surface wet, laps and overlap included
  units::Milligrams fibre;
  units::Milligrams kept;     ///< resin in the fibre + uptake + film + fill
  units::Milligrams uptake;   ///< part of kept
  units::Milligrams trimmed;  ///< resin in trimmed strips, part of the losses
  units::Milligrams sanded;
  units::Milligrams losses;
  units::Milligrams margin;
  units::Milligrams rounding;
  units::Milligrams mix;
  std::optional<units::Duration> spread;        ///< attended time of one person
  std::optional<units::Temperature> fill_peak;  ///< install: of the fill, against foam
  Ratio ratio;
  std::vector<Additive> additives;
  std::vector<Batch> batches;
  friend bool operator==(const CoatNeed&, const CoatNeed&) = default;
};

struct ResinTotal {
  std::string resin;
  units::Milligrams part_a;
  units::Milligrams part_b;
  units::Volume part_a_volume;
  units::Volume part_b_volume;
  units::Milligrams mix;
  friend bool operator==(const ResinTotal&, const ResinTotal&) = default;
};
/// `amount` in `unit`: "g", "m" of roll, "piece".
struct MaterialTotal {
  std::string material;
  double amount = 0.0;
  std::string unit;
  std::optional<units::Money> cost;
  friend bool operator==(const MaterialTotal&, const MaterialTotal&) = default;
};
struct Totals {
  units::Milligrams mix, fibre, kept, losses, margin, trimmed, sanded;
  std::optional<units::Milligrams> finished_weight;
  std::optional<units::Money> cost;  ///< of what has a price
  std::vector<ResinTotal> by_resin;
  std::vector<MaterialTotal> materials;
  friend bool operator==(const Totals&, const Totals&) = default;
};

/// A number that nobody gave. Listed if and only if moving it by 1 % of its range moves a mass, a
/// time or a notice of the plan.
struct Assumption {
  std::string name;
  double value = 0.0;
  std::string unit;
  std::string standing;
  std::string source;
  std::vector<std::string> used_by;  ///< ids of coats, or "board"
  friend bool operator==(const Assumption&, const Assumption&) = default;
};
struct Caution {
  std::string step;  ///< id of the coat, or "all"
  std::string text;
  friend bool operator==(const Caution&, const Caution&) = default;
};

struct Plan {
  units::Temperature air;
  BoardSummary board;
  std::vector<PlyNeed> plies;
  std::vector<CoatNeed> coats;  ///< in file order
  Totals totals;
  std::vector<Assumption> assumptions;
  std::vector<Caution> cautions;
  base::Notices notices;
  friend bool operator==(const Plan&, const Plan&) = default;
};

}  // namespace wetout::laminate
