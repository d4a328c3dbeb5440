#include "wetout/work/full_size.hpp"

#include <algorithm>
#include <cctype>
#include <chrono>
#include <utility>

#include "made_file.hpp"
#include "planned_job.hpp"
#include "wetout/base/check.hpp"
#include "wetout/board/hull.hpp"
#include "wetout/report/outline_file.hpp"
#include "wetout/time/print.hpp"

namespace wetout::work {
namespace {

using report::TemplateDrawing;
using units::Length;

constexpr std::string_view outline = "outline", lap_line = "lap-line", patches = "patches";

bool is_patch(const laminate::PlyNeed& ply) { return ply.from_tail || ply.to || ply.width; }

std::string coat_name(const laminate::Plan& plan, const std::string& id) {
  for (const laminate::CoatNeed& coat : plan.coats) {
    if (coat.id == id) return coat.name;
  }
  return id;
}

std::string_view word(board::Face face) { return face == board::Face::deck ? "deck" : "bottom"; }

class Drawer {
 public:
  Drawer(const PlannedJob& job, const board::Hull& hull, units::System system)
      : plan_(job.document.plan), job_(job.document.job), hull_(hull), system_(system) {}

  TemplateDrawing draw(std::string_view what, bool whole) {
    drawing_.title = plan_.board.name + ", " + std::string(what);
    drawing_.about = shown(hull_.length()) + " long, " + shown(hull_.max_width()) + " wide";
    if (job_.revision > 0) {
      drawing_.about += "; revision " + std::to_string(job_.revision) + " of " + job_.id;
    }
    drawing_.outline = hull_.outline(units::millimetres(0.02));
    drawing_.length = hull_.length();
    drawing_.whole = whole;
    stations();
    if (what == lap_line) bands();
    if (what == patches) all_patches();
    return std::move(drawing_);
  }

 private:
  [[nodiscard]] std::string shown(Length length) const { return units::print(length, system_); }

  void stations() {
    const Length apart = system_ == units::System::us ? units::inches(6) : units::millimetres(150);
    for (int n = 1; static_cast<double>(n) * apart < hull_.length(); ++n) {
      const Length x = static_cast<double>(n) * apart;
      const Length half = 0.5 * hull_.width(x);
      drawing_.stations.push_back(
          {x, half, shown(x) + " from the tail, " + shown(half) + " to the rail"});
    }
  }

  // The bottom's cloth laps onto the deck and the other way round; laps of one width are one line.
  void bands() {
    for (const laminate::PlyNeed& ply : plan_.plies) {
      if (ply.lap <= Length()) continue;
      const board::Face onto =
          ply.face == board::Face::deck ? board::Face::bottom : board::Face::deck;
      const std::string one =
          coat_name(plan_, ply.coat) + " (" + ply.id + ") on the " + std::string(word(onto));
      const auto same = std::find_if(drawing_.bands.begin(), drawing_.bands.end(),
                                     [&](const auto& band) { return band.width == ply.lap; });
      if (same != drawing_.bands.end()) {
        same->label += ", " + one;
      } else {
        drawing_.bands.push_back({ply.lap, shown(ply.lap) + ": lap of " + one});
      }
    }
  }

  void all_patches() {
    for (const laminate::PlyNeed& ply : plan_.plies) {
      if (!is_patch(ply)) continue;
      drawing_.patches.push_back({.from = ply.from_tail.value_or(Length()),
                                  .to = ply.to.value_or(hull_.length()),
                                  .width = ply.width,
                                  .label = ply.id + ", " + coat_name(plan_, ply.coat) +
                                           ", on the " + std::string(word(ply.face))});
    }
  }

  const laminate::Plan& plan_;
  const report::JobRef& job_;
  const board::Hull& hull_;
  units::System system_;
  TemplateDrawing drawing_;
};

// What the name of the file asks for.
struct OutlineKind {
  std::string_view suffix;
  const files::Made& made;
  std::string (*write)(const board::Hull&);
};
constexpr OutlineKind outline_kinds[] = {{".svg", made_outline_svg, report::outline_svg},
                                         {".dxf", made_outline_dxf, report::outline_dxf}};

const OutlineKind* outline_kind(const FullSizeRequest& request) {
  if (!request.file) return nullptr;
  std::string suffix = request.file->extension().string();
  for (char& c : suffix) c = static_cast<char>(std::tolower(static_cast<unsigned char>(c)));
  for (const OutlineKind& kind : outline_kinds) {
    if (suffix == kind.suffix) return &kind;
  }
  return nullptr;
}

base::Result<FullSize> make_outline(const Workshop& workshop, const FullSizeRequest& request,
                                    const OutlineKind& kind, const board::Hull& hull) {
  if (request.drawing != outline) {
    return base::fail({.code = "template.outline_only",
                       .message = "an SVG or DXF file holds the outline alone",
                       .key = "DRAWING",
                       .found = request.drawing,
                       .expected = "outline, or a PDF, e.g. --output " + request.drawing + ".pdf"});
  }
  if (request.paper || request.whole) {
    return base::fail({.code = "template.no_sheets",
                       .message = "an SVG or DXF file has no sheets: it is all of the outline",
                       .key = request.paper ? "--paper" : "--whole",
                       .expected = "neither --paper nor --whole, or a PDF"});
  }
  if (auto made = make_file(workshop, *request.file, kind.write(hull), kind.made); !made) {
    return tl::unexpected(made.error());
  }
  return FullSize{request.file->string(), 0, false};
}

}  // namespace

std::vector<std::string_view> full_size_drawings() { return {outline, lap_line, patches}; }

base::Result<FullSize> make_full_size(const Workshop& workshop, const FullSizeRequest& request) {
  const auto job = planned_job(workshop, request.job, {});
  if (!job) return tl::unexpected(job.error());
  const auto hull = board::Hull::make(job->files.job.board);
  base::promise(hull.has_value(), "the board has been planned");
  if (const OutlineKind* const kind = outline_kind(request)) {
    return make_outline(workshop, request, *kind, *hull);
  }
  const report::Paper paper = request.paper.value_or(report::Paper::a4);
  const std::filesystem::path file =
      request.file.value_or(job->document.job.id + "-" + request.drawing + ".pdf");
  if (auto may = may_make(workshop, file, made_template); !may) return tl::unexpected(may.error());
  const units::System system = request.units.value_or(job->files.shop.units);
  const TemplateDrawing drawing = Drawer(*job, *hull, system).draw(request.drawing, request.whole);
  if ((request.drawing == lap_line && drawing.bands.empty()) ||
      (request.drawing == patches && drawing.patches.empty())) {
    return base::fail(
        {.code = "template.nothing",
         .message = "this board has " +
                    std::string(request.drawing == patches ? "no patches" : "no laps") + " to draw",
         .key = "DRAWING",
         .found = request.drawing,
         .expected = "outline, or a plan with them"});
  }
  const auto now = workshop.now(time::Zone());
  if (!now) return tl::unexpected(now.error());
  const report::TemplatePdf pdf =
      report::template_pdf(drawing, paper, time::rfc3339(*now, time::Zone()));
  if (auto made = make_file(workshop, file, pdf.bytes, made_template); !made) {
    return tl::unexpected(made.error());
  }
  return FullSize{file.string(), pdf.sheets, paper != report::Paper::roll};
}

}  // namespace wetout::work
