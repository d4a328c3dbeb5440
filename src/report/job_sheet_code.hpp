// Style and script of the job sheet: the files of page/, made string literals at build.
#pragma once

#include <string_view>

namespace wetout::report {

extern const std::string_view job_sheet_style;
extern const std::string_view job_sheet_script;

}  // namespace wetout::report
