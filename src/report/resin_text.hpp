// Parts of the texts about one resin.
#pragma once

#include <string>
#include <vector>

#include "layout.hpp"
#include "wetout/base/notice.hpp"
#include "wetout/laminate/plan.hpp"
#include "wetout/report/resin_parts.hpp"
#include "wetout/units/print.hpp"

namespace wetout::report {

/// What the data sheet does not print and what it would be good for; nothing when there is none.
void add_missing(layout::Page& page, const std::vector<MissingLine>& missing);
/// Running on: these are many, and few look at them.
void add_assumptions(layout::Page& page, const std::vector<laminate::Assumption>& assumptions,
                     units::System system);
void add_notices(layout::Page& page, const base::Notices& notices, units::System system);
void add_cautions(layout::Page& page, const std::vector<std::string>& cautions);

/// "EPOXY", for a first line.
std::string upper(std::string text);

/// How far the model is from what is printed: "fitted to it", "as printed", "12 % later".
std::string met_text(units::Duration printed, units::Duration model, bool closure);

}  // namespace wetout::report
