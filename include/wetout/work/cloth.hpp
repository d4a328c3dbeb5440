// `cloth`: how the cloth of boards is cut off the rolls.
#pragma once

#include <filesystem>
#include <optional>
#include <string>
#include <vector>

#include "wetout/base/problem.hpp"
#include "wetout/report/cloth_document.hpp"
#include "wetout/work/workshop.hpp"

namespace wetout::work {

struct ClothRequest {
  std::vector<std::string> jobs;      ///< of the log, or job files; at least one
  std::vector<std::string> remnants;  ///< "e4=60cmx40cm": cloth, length along the warp, width
  std::optional<std::filesystem::path> drawing;
  std::optional<units::System> units;  ///< of the drawing; else the shop's
};
struct ClothCut {
  report::ClothDocument document;
  units::System units = units::System::us;
  bool drawing_written = false;
};

/// One cutting of each cloth for all boards together, of coats that are not done; remnants first:
/// those that are named, and lots of stock that are narrower than the roll. A ply that is wider
/// than its roll is cut of the narrowest cloth of the same weight that is wide enough; else joined
/// of strips that overlap by 25 mm (common practice, no source), with a notice of the lap that one
/// piece would do for. Problems: those of planned_job() and may_make(); "remnant.form",
/// "remnant.cloth" (none of the boards takes it), "cloth.differs" (one cloth of two widths or
/// weights in the jobs' shop files).
base::Result<ClothCut> cut_cloth(const Workshop& workshop, const ClothRequest& request);

}  // namespace wetout::work
