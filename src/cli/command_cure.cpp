#include "registry.hpp"
#include "wetout/report/cure_document.hpp"
#include "wetout/work/cure.hpp"
#include "work_context.hpp"

namespace wetout::cli {
namespace {

std::optional<work::WarmBoxChoice> warm_box(const Parsed& parsed) {
  const auto set = parsed.temperature("--warm-box");
  const auto after = parsed.duration("--after");
  if (!set || !after) return std::nullopt;  // one form has both, the others neither
  return work::WarmBoxChoice{*set, *after};
}

}  // namespace

int run_cure(const Parsed& parsed, Context& context) {
  std::optional<std::filesystem::path> weather;
  if (const auto file = parsed.text("--weather")) weather = *file;
  const auto answer =
      work::cure(workshop(parsed, context),
                 {.resin = parsed.needed("RESIN"),
                  .air = parsed.temperature("--air"),
                  .weather = weather,
                  .start = [&](const time::Zone& zone) { return parsed.time("--start", zone); },
                  .warm_box = warm_box(parsed)});
  if (!answer) return fail(context, answer.error());
  if (context.json) {
    context.out << report::to_json(answer->document);
  } else {
    context.out << report::to_text(answer->document, units_of(context, answer->units),
                                   answer->zone);
  }
  return exit_done;
}

}  // namespace wetout::cli
