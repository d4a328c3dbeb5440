// `template`: drawings at full size on paper, and the outline as a file for other programs.
#pragma once

#include <filesystem>
#include <optional>
#include <string>
#include <string_view>
#include <vector>

#include "wetout/base/problem.hpp"
#include "wetout/report/template_pdf.hpp"
#include "wetout/work/workshop.hpp"

namespace wetout::work {

struct FullSizeRequest {
  std::string job;                            ///< of the log, or a job file
  std::string drawing;                        ///< one of full_size_drawings()
  std::optional<report::Paper> paper;         ///< else a4
  bool whole = false;                         ///< both halves of the board
  std::optional<std::filesystem::path> file;  ///< else JOB-DRAWING.pdf; .svg, .dxf: the outline
  std::optional<units::System> units;         ///< else the shop's
};
struct FullSize {
  std::string file;         ///< as typed, or as named
  int sheets = 0;           ///< of the drawing; none of an outline as SVG or DXF
  bool first_page = false;  ///< with one that says how they lie
};

/// "outline", "lap-line", "patches".
std::vector<std::string_view> full_size_drawings();

/// Made by report::template_pdf(), outline_svg() or outline_dxf() of the job's plan; only ever
/// replaces a file that it made. Problems: those of planned_job(), files::write_made();
/// "template.nothing" where the board has no lap or patch to draw; "template.outline_only",
/// "template.no_sheets" where an SVG or DXF is asked for what only paper has.
base::Result<FullSize> make_full_size(const Workshop& workshop, const FullSizeRequest& request);

}  // namespace wetout::work
