// How a film of a resin cures: milestones, the curve between them, what the model was fitted to.
#pragma once

#include <optional>
#include <string>
#include <string_view>
#include <vector>

#include "wetout/base/notice.hpp"
#include "wetout/laminate/plan.hpp"
#include "wetout/report/resin_parts.hpp"
#include "wetout/resin/cure.hpp"
#include "wetout/time/zone.hpp"
#include "wetout/units/milligrams.hpp"
#include "wetout/units/print.hpp"

namespace wetout::report {

inline constexpr std::string_view cure_format = "wetout.cure/1";

/// From `after` on nothing is known unless the milestone is reached.
struct CureMilestone {
  resin::Milestone name = resin::Milestone::gel;
  bool reached = false;
  std::optional<units::Duration> after;  ///< the start
  std::optional<std::string> time;       ///< RFC 3339; nothing where no start was named
  std::optional<double> conversion;      ///< nothing for a polyester
  std::optional<units::Temperature> tg;  ///< likewise
  std::optional<units::Temperature> air;
  bool extrapolated = false;  ///< colder than the data sheet allows
  bool beyond_air = false;    ///< after the end of the weather
  /// Not reached: the nearest constant temperature that would do it.
  std::optional<units::Temperature> would_do;
};

struct CurvePoint {
  units::Duration after;
  units::Temperature air;
  double conversion = 0.0;
  units::Temperature tg;
};

/// A time of the data sheet beside the model's.
struct SheetTimeMet {
  std::string what;  ///< a milestone's word, or "pot_life"
  std::optional<units::Milligrams> mass;
  units::Temperature air;
  units::Duration printed;  ///< the middle of a range; of a pot life the lower end
  units::Duration model;
  bool closure = false;  ///< what the model is fitted to
};

struct CureCalibration {
  std::optional<double> energy_kj_mol;        ///< nothing for a polyester
  std::optional<double> sheet_energy_kj_mol;  ///< of the sheet's second temperatures alone
  std::vector<SheetTimeMet> residuals;
  std::vector<MissingLine> missing;
  base::Notices notices;
};

struct CureWeather {
  std::string source;
  std::string from, until;  ///< RFC 3339
  std::string room;         ///< "outdoors", "unheated", "heated"
};

struct CureWarmBox {
  units::Temperature set;
  units::Duration after;  ///< the film's start
  units::Temperature hottest;
};

struct CureDocument {
  std::string program;  ///< "wetout 0.1.0"
  std::string made;     ///< RFC 3339 with offset
  std::string resin;
  std::string name;  ///< of the resin
  resin::Chemistry chemistry = resin::Chemistry::epoxy;
  std::optional<std::string> start;       ///< RFC 3339; nothing where none was named
  std::optional<units::Temperature> air;  ///< constant; nothing with a weather
  std::optional<CureWeather> weather;
  std::optional<CureWarmBox> warm_box;
  std::optional<double> dose;  ///< polyester: share of catalyst
  std::vector<CureMilestone> milestones;
  std::vector<CurvePoint> curve;  ///< close together until all but full cure are reached
  CureCalibration calibration;
  std::vector<laminate::Assumption> assumptions;
  std::vector<std::string> cautions;
  base::Notices notices;
};

/// One line, format "wetout.cure/1"; docs/formats/cure.schema.json.
std::string to_json(const CureDocument& document);

/// With a plot of conversion in plain characters. Clock times as on a wall of `zone`.
std::string to_text(const CureDocument& document, units::System system, const time::Zone& zone);

}  // namespace wetout::report
