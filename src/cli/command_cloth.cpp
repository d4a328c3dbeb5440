#include "registry.hpp"
#include "wetout/report/cloth_document.hpp"
#include "wetout/work/cloth.hpp"
#include "work_context.hpp"

namespace wetout::cli {

int run_cloth(const Parsed& parsed, Context& context) {
  work::ClothRequest request{.jobs = parsed.all("JOB"),
                             .remnants = parsed.all("--remnant"),
                             .drawing = {},
                             .units = context.units};
  if (const auto svg = parsed.text("--svg")) request.drawing = *svg;
  const auto cut = work::cut_cloth(workshop(parsed, context), request);
  if (!cut) return fail(context, cut.error());
  if (context.json) {
    context.out << report::to_json(cut->document);
  } else {
    context.out << report::to_text(cut->document, units_of(context, cut->units));
  }
  if (cut->drawing_written) say(context, "drawing: " + parsed.needed("--svg"));
  return exit_done;
}

}  // namespace wetout::cli
