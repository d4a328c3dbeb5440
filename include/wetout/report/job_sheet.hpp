// The job sheet: one page for phone and paper, from the drawing to the last sanding, in the order
// of the work (docs/commands/sheet.md).
#pragma once

#include <map>
#include <optional>
#include <string>
#include <string_view>

#include "wetout/report/cloth_document.hpp"
#include "wetout/report/plan_document.hpp"
#include "wetout/report/plan_drawing.hpp"
#include "wetout/report/schedule_document.hpp"
#include "wetout/time/zone.hpp"
#include "wetout/units/print.hpp"

namespace wetout::report {

/// A coat as it is mixed on its day.
struct MixedCoat {
  laminate::CoatNeed need;
  base::Notices notices;  ///< of this coat
};

struct JobSheet {
  std::string program;  ///< "wetout 0.1.0"
  std::string made;     ///< RFC 3339 with offset
  PlanDocument plan;
  DrawnBoard board;
  ClothDocument cloth;  ///< how its cloth is cut, of this board alone
  /// Of this plan; steps of other boards are left out.
  std::optional<ScheduleDocument> schedule;
  std::string no_schedule;  ///< why there is none and what to do; a sentence
  /// Coats as they are mixed in the air that the schedule expects; of those that are not here the
  /// plan's batches are told.
  std::map<std::string, MixedCoat, std::less<>> mixed;
};

/// The bytes that every job sheet begins with.
inline constexpr std::string_view job_sheet_begins = "<!DOCTYPE html>\n<!-- wetout: job sheet -->";

/// One HTML page that holds all it needs and loads nothing; every text of the documents is escaped.
/// Clock times as on a wall of `zone`. What is typed into it is downloaded as a file of
/// docs/formats/past_boards.md.
std::string job_sheet(const JobSheet& sheet, units::System system, const time::Zone& zone);

}  // namespace wetout::report
