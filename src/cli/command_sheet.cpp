#include "registry.hpp"
#include "text.hpp"
#include "wetout/work/job_sheet.hpp"
#include "work_context.hpp"

namespace wetout::cli {

int run_sheet(const Parsed& parsed, Context& context) {
  work::JobSheetRequest request{.job = parsed.needed("JOB"), .file = {}, .units = context.units};
  if (const auto file = parsed.text("--output")) request.file = *file;
  const auto made = work::make_job_sheet(workshop(parsed, context), request);
  if (!made) return fail(context, made.error());
  for (const std::string& line : wrap(made->no_schedule, page_columns)) say(context, line);
  const std::string what =
      made->schedule ? "job sheet with schedule " + std::to_string(*made->schedule) : "job sheet";
  say(context, (context.dry_run ? "not written (dry run): " : "") + made->file + ": " + what);
  return exit_done;
}

}  // namespace wetout::cli
