// `cure`: how a film of a resin cures.
#pragma once

#include <filesystem>
#include <functional>
#include <optional>
#include <string>

#include "wetout/base/problem.hpp"
#include "wetout/report/cure_document.hpp"
#include "wetout/time/zone.hpp"
#include "wetout/units/print.hpp"
#include "wetout/units/quantity.hpp"
#include "wetout/units/temperature.hpp"
#include "wetout/work/workshop.hpp"

namespace wetout::work {

struct WarmBoxChoice {
  units::Temperature set;
  units::Duration after;  ///< the film's start
};

struct CureRequest {
  std::string resin;                             ///< of the shop file, as typed
  std::optional<units::Temperature> air;         ///< all the while; else that of the shop
  std::optional<std::filesystem::path> weather;  ///< in its place: the shop's room follows it
  /// Of the film; nothing where it is not named. Wall times are read in the shop's zone.
  std::function<base::Result<std::optional<time::Instant>>(const time::Zone&)> start;
  std::optional<WarmBoxChoice> warm_box;
};

struct CureAnswer {
  report::CureDocument document;
  units::System units = units::System::us;  ///< of the shop
  time::Zone zone;                          ///< of the shop
};

/// Keys of problems are arguments of the command, or lines of the shop file. Problems:
/// "shop.missing", "reference.resin", "reference.ambiguous", "cure.beyond_sense", "box.too_hot",
/// "box.too_early", "weather.outside" (the start), those of files, resin::calibrate() and
/// resin::polyester_times().
base::Result<CureAnswer> cure(const Workshop& workshop, const CureRequest& request);

}  // namespace wetout::work
