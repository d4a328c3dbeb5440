// Lines, cells and numbers of weather files that are text.
#pragma once

#include "wetout/base/table_text.hpp"

namespace wetout::climate {

using base::column_of;
using base::equal_but_for_case;
using base::most_cells;
using base::plain_name;
using base::Split;
using base::split;
using base::to_int;
using base::to_number;
using base::trimmed;
using Lines = base::TextLines;

}  // namespace wetout::climate
