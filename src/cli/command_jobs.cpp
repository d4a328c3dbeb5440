#include "registry.hpp"
#include "wetout/report/jobs_document.hpp"
#include "wetout/report/plan_document.hpp"
#include "wetout/report/plan_text.hpp"
#include "wetout/work/jobs.hpp"
#include "work_context.hpp"

namespace wetout::cli {
namespace {

int list(const base::Result<report::JobsDocument>& jobs, Context& context) {
  if (!jobs) return fail(context, jobs.error());
  context.out << (context.json ? report::to_json(*jobs) : report::to_text(*jobs));
  return exit_done;
}

int show(const Parsed& parsed, const work::Workshop& shop, Context& context) {
  const auto plan = work::show_job(shop, parsed.needed("JOB"), parsed.count("--revision"));
  if (!plan) return fail(context, plan.error());
  context.out << (context.json ? report::to_json(plan->document)
                               : report::plan_text(plan->document, units_of(context, plan->units)));
  return exit_done;
}

int diff(const Parsed& parsed, const work::Workshop& shop, Context& context) {
  const auto both =
      work::compare_job(shop, parsed.needed("JOB"), parsed.count("A"), parsed.count("B"));
  if (!both) return fail(context, both.error());
  if (context.json) {
    // Both documents, a line each: what differs is for the reader's own tools to say.
    context.out << report::to_json(both->first.document) << report::to_json(both->second.document);
  } else {
    context.out << report::plan_diff_text(both->first.document, both->second.document,
                                          units_of(context, both->second.units));
  }
  return exit_done;
}

}  // namespace

int run_jobs(const Parsed& parsed, Context& context) {
  const work::Workshop shop = workshop(parsed, context);
  if (parsed.subcommand() == "show") return show(parsed, shop, context);
  if (parsed.subcommand() == "diff") return diff(parsed, shop, context);
  if (parsed.subcommand() == "rename") {
    return list(work::rename_job(shop, parsed.needed("JOB"), parsed.needed("NAME")), context);
  }
  if (parsed.subcommand() == "archive") {
    return list(work::archive_job(shop, parsed.needed("JOB")), context);
  }
  return list(work::jobs(shop), context);
}

}  // namespace wetout::cli
