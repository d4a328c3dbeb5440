#include "registry.hpp"
#include "token.hpp"
#include "wetout/report/ledger_document.hpp"
#include "wetout/work/ledger.hpp"
#include "work_context.hpp"

namespace wetout::cli {
namespace {

// As many as a screen shows; JSON and exports have them all.
constexpr std::size_t latest = 20;

int print(const base::Result<work::LedgerAnswer>& answer, Context& context) {
  if (!answer) return fail(context, answer.error());
  if (context.json) {
    context.out << report::to_json(answer->document);
  } else {
    context.out << report::to_text(answer->document, units_of(context, answer->units));
  }
  if (answer->document.action == "undo") {
    if (!answer->document.saved) say(context, "not taken back (dry run)");
    if (answer->document.entries.front().already) {
      say(context, "nothing is new: this was taken back before");
    }
  }
  return exit_done;
}

int write_export(const work::Workshop& shop, const Parsed& parsed, const std::string& format,
                 Context& context) {
  if (context.json) {
    base::Problem problem;
    problem.code = "argument.clash";
    problem.message = "these do not go together: --json, --export";
    problem.expected = "one of them";
    return fail(context, {problem}, exit_usage);
  }
  const auto written =
      work::export_ledger(shop, parsed.text("JOB"),
                          format == "csv" ? work::LedgerExport::csv : work::LedgerExport::journal,
                          [&](std::string_view text) { context.out << text; });
  return written ? exit_done : fail(context, written.error());
}

std::optional<work::LedgerBy> by(const Parsed& parsed) {
  const auto word = parsed.text("--by");
  if (!word) return std::nullopt;
  if (*word == "month") return work::LedgerBy::month;
  return *word == "material" ? work::LedgerBy::material : work::LedgerBy::job;
}

}  // namespace

int run_ledger(const Parsed& parsed, Context& context) {
  const work::Workshop shop = workshop(parsed, context);
  if (parsed.subcommand() == "undo") {
    return print(work::undo_entry(shop, {.entry = parsed.count("ENTRY").value(),
                                         .note = parsed.text("--note"),
                                         .token = parsed.text("--token").value_or(random_token())}),
                 context);
  }
  if (const auto format = parsed.text("--export")) {
    return write_export(shop, parsed, *format, context);
  }
  work::LedgerRequest request{.job = parsed.text("JOB"), .by = by(parsed), .latest = {}};
  if (!context.json) request.latest = latest;
  return print(work::ledger(shop, request), context);
}

}  // namespace wetout::cli
