// Files made for people, by the name the user typed.
#pragma once

#include <filesystem>
#include <string_view>

#include "wetout/base/problem.hpp"
#include "wetout/files/write_file.hpp"
#include "wetout/report/job_sheet.hpp"
#include "wetout/report/outline_file.hpp"
#include "wetout/report/plan_drawing.hpp"
#include "wetout/report/template_pdf.hpp"
#include "wetout/work/workshop.hpp"

namespace wetout::work {

inline constexpr files::Made made_calendar{"a calendar", "BEGIN:VCALENDAR"};
inline constexpr files::Made made_drawing{"a drawing of a plan", report::plan_drawing_begins};
inline constexpr files::Made made_job_sheet{"a job sheet", report::job_sheet_begins};
inline constexpr files::Made made_template{"a drawing at full size", "%PDF-",
                                           report::template_pdf_mark};

inline constexpr files::Made made_outline_svg{"an outline at full size", "<svg",
                                              report::outline_svg_mark};
inline constexpr files::Made made_outline_dxf{"an outline at full size", report::outline_dxf_begins,
                                              report::outline_dxf_mark};

/// files::may_make() and files::write_made(), relative to where the user stands; problems name the
/// file as it was typed. Nothing is written on a dry run.
base::Result<void> may_make(const Workshop& workshop, const std::filesystem::path& typed,
                            const files::Made& made);
base::Result<void> make_file(const Workshop& workshop, const std::filesystem::path& typed,
                             std::string_view bytes, const files::Made& made);

}  // namespace wetout::work
