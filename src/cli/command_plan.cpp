#include <utility>

#include "registry.hpp"
#include "wetout/report/plan_document.hpp"
#include "wetout/report/plan_text.hpp"
#include "wetout/work/plan.hpp"
#include "work_context.hpp"

namespace wetout::cli {
namespace {

std::string what_was_saved(const work::Printable& plan, const Context& context) {
  const report::JobRef& job = plan.document.job;
  const std::string revision = "revision " + std::to_string(job.revision) + " of " + job.id;
  if (plan.unchanged) return "unchanged, " + revision;
  return context.dry_run ? "not saved (dry run): would be " + revision : "saved as " + revision;
}

}  // namespace

int run_plan(const Parsed& parsed, Context& context) {
  const std::vector<std::string>& files = parsed.all("FILE");
  for (const auto& [option, what] : {std::pair{"--as", "job"}, std::pair{"--svg", "drawing"}}) {
    if (!parsed.has(option) || files.size() == 1) continue;
    const std::string name = option;
    return fail(context,
                {{.code = "argument.clash",
                  .message = name + " names one " + what + ", and there are several files",
                  .key = name,
                  .expected = name + " with one FILE only"}},
                exit_usage);
  }
  std::optional<std::filesystem::path> drawing;
  if (const auto svg = parsed.text("--svg")) drawing = *svg;
  const work::Workshop shop = workshop(parsed, context);
  int code = exit_done;
  bool first = true;
  for (const std::string& file : files) {
    const auto plan = work::plan(shop, {.file = file,
                                        .as = parsed.text("--as"),
                                        .choices = mixing_choices(parsed),
                                        .no_learned = parsed.flag("--no-learned"),
                                        .drawing = drawing,
                                        .units = context.units});
    if (!plan) {
      code = fail(context, plan.error());
      continue;
    }
    if (context.json) {
      context.out << report::to_json(plan->document);
    } else {
      if (!first) context.out << '\n';
      context.out << report::plan_text(plan->document, units_of(context, plan->units));
    }
    first = false;
    say(context, what_was_saved(*plan, context));
    if (plan->drawing_written) say(context, "drawing: " + parsed.needed("--svg"));
  }
  return code;
}

}  // namespace wetout::cli
