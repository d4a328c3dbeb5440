// How long a batch of a resin lasts in its cup, and on the board once it is poured out.
#pragma once

#include <optional>
#include <string>
#include <string_view>
#include <vector>

#include "wetout/base/notice.hpp"
#include "wetout/laminate/plan.hpp"
#include "wetout/report/resin_parts.hpp"
#include "wetout/units/milligrams.hpp"
#include "wetout/units/print.hpp"

namespace wetout::report {

inline constexpr std::string_view potlife_format = "wetout.potlife/1";

/// Where a mass comes from that nobody named.
enum class MassFrom { given, sheet, usual };
/// What ends use of a cup.
enum class UseEnds { by_heat, by_conversion };

/// One cup. Times from mixing; all null for a polyester.
struct CupAnswer {
  std::string resin;
  std::optional<units::Milligrams> mass;
  units::Temperature air;
  units::Temperature resin_temp;   ///< as mixed
  std::optional<std::string> cup;  ///< nothing: as high as wide
  std::optional<units::Duration> gel;
  std::optional<units::Duration> use_within;
  std::optional<units::Temperature> peak;  ///< nothing where it runs away
  std::optional<units::Duration> peak_at;
  std::optional<bool> runs_away;
};

/// Poured out and spread after a while in the cup. Times from mixing.
struct PouredOut {
  units::Duration after;
  double conversion = 0.0;
  units::Temperature temperature;
  units::Duration spread_within;
  units::Duration gel;
};

/// The largest batch that can be worked for a time.
struct WorkableBatch {
  units::Duration time;
  std::optional<units::Milligrams> mass;  ///< nothing: even the smallest goes off before
  bool cup_full = false;                  ///< more would last as long, but the cup does not hold it
};

/// A film of polyester by its dose of catalyst, a share of the resin.
struct DosedFilm {
  double dose = 0.0;
  units::Temperature air;
  units::Duration gel;
  units::Duration use_within;
};

/// A pot life of the data sheet beside the model's.
struct SheetPotLife {
  units::Milligrams mass;
  units::Temperature air;
  units::Duration printed;  ///< the lower end of a range
  units::Duration model;
  bool closure = false;  ///< what the model is fitted to
};

struct PotLifeDocument {
  std::string program;  ///< "wetout 0.1.0"
  std::string made;     ///< RFC 3339 with offset
  std::string name;     ///< of the resin
  resin::Chemistry chemistry = resin::Chemistry::epoxy;
  CupAnswer answer;
  std::optional<MassFrom> mass_from;
  std::optional<UseEnds> use_ends;
  std::optional<bool> cooling_matters;
  std::optional<units::Duration> film_open;  ///< spread at once, without a cup before
  std::optional<units::Duration> film_gel;
  std::optional<PouredOut> poured;
  std::optional<WorkableBatch> workable;
  std::optional<double> dose_low, dose_high;  ///< the sheet's range
  std::vector<DosedFilm> doses;
  std::vector<SheetPotLife> sheet;
  std::vector<CupAnswer> grid;  ///< masses outermost
  std::vector<MissingLine> missing;
  std::vector<laminate::Assumption> assumptions;
  std::vector<std::string> cautions;
  base::Notices notices;
};

/// One line, format "wetout.potlife/1"; docs/formats/potlife.schema.json.
std::string to_json(const PotLifeDocument& document);

/// `now_clock` is minutes after midnight of the shop's wall clock.
std::string to_text(const PotLifeDocument& document, units::System system,
                    std::optional<int> now_clock = std::nullopt);

}  // namespace wetout::report
