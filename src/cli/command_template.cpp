#include "registry.hpp"
#include "wetout/work/full_size.hpp"
#include "work_context.hpp"

namespace wetout::cli {

int run_template(const Parsed& parsed, Context& context) {
  using report::Paper;
  work::FullSizeRequest request{.job = parsed.needed("JOB"),
                                .drawing = parsed.needed("DRAWING"),
                                .paper = {},
                                .whole = parsed.flag("--whole"),
                                .file = {},
                                .units = context.units};
  if (const auto paper = parsed.text("--paper")) {
    for (const Paper one : {Paper::a4, Paper::letter, Paper::roll}) {
      if (to_string(one) == *paper) request.paper = one;
    }
  }
  if (const auto file = parsed.text("--output")) request.file = *file;
  const auto made = work::make_full_size(workshop(parsed, context), request);
  if (!made) return fail(context, made.error());
  const std::string wrote = (context.dry_run ? "not written (dry run): " : "") + made->file + ": ";
  if (made->sheets == 0) {
    say(context, wrote + "the outline in millimetres");
    return exit_done;
  }
  std::string sheets = std::to_string(made->sheets) + (made->sheets == 1 ? " sheet" : " sheets");
  if (made->first_page) sheets += " and a first page that says how they lie";
  say(context, wrote + sheets);
  return exit_done;
}

}  // namespace wetout::cli
