// `plan`: from a job file to a revision in the log.
#pragma once

#include <filesystem>
#include <optional>
#include <string>

#include "wetout/base/problem.hpp"
#include "wetout/report/plan_document.hpp"
#include "wetout/units/print.hpp"
#include "wetout/units/temperature.hpp"
#include "wetout/work/workshop.hpp"

namespace wetout::work {

/// What may be said of one day's mixing instead of what the shop file says.
struct MixingChoices {
  std::optional<units::Temperature> air;
  std::optional<units::Temperature> resin_temp;
  std::optional<std::string> cup;
};

struct PlanRequest {
  std::filesystem::path file;     ///< as the user named it
  std::optional<std::string> as;  ///< the job's id, else the board's
  MixingChoices choices;
  bool no_learned = false;                            ///< leave aside what was learned from records
  std::optional<std::filesystem::path> drawing = {};  ///< written there too, as SVG
  std::optional<units::System> units = {};            ///< of the drawing; else the shop's
};

/// A document with what printing it needs beside it.
struct Printable {
  report::PlanDocument document;
  units::System units = units::System::us;  ///< of the shop
  std::string time_zone;                    ///< of the shop
  bool unchanged = false;                   ///< the last revision already said so: not saved again
  bool drawing_written = false;
};

/// Reads the files, plans, and saves a revision unless nothing changed or the workshop is on a dry
/// run. Problems: those of files, board and laminate, with file and line; "shop.missing";
/// "job.id". Throws joblog::StoreError.
base::Result<Printable> plan(const Workshop& workshop, const PlanRequest& request);

}  // namespace wetout::work
