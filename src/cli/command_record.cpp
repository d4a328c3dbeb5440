#include <algorithm>

#include "registry.hpp"
#include "token.hpp"
#include "wetout/report/past_document.hpp"
#include "wetout/report/record_document.hpp"
#include "wetout/work/record.hpp"
#include "wetout/work/record_import.hpp"
#include "work_context.hpp"

namespace wetout::cli {
namespace {

std::string what_was_saved(const report::RecordDocument& document) {
  if (document.action == "list") return "";
  if (!document.saved) return "not recorded (dry run)";
  const auto before = [](const report::RecordedFact& fact) { return fact.already; };
  const bool all = std::all_of(document.events.begin(), document.events.end(), before);
  return all ? "nothing is new: this call was recorded before" : "";
}

int print(const base::Result<work::Recorded>& recorded, Context& context) {
  if (!recorded) {
    const bool says_nothing = recorded.error().front().code == "record.nothing";
    return fail(context, recorded.error(), says_nothing ? exit_usage : exit_input);
  }
  if (context.json) {
    context.out << report::to_json(recorded->document);
  } else {
    context.out << report::to_text(recorded->document, units_of(context, recorded->units));
  }
  if (const std::string said = what_was_saved(recorded->document); !said.empty()) {
    say(context, said);
  }
  return exit_done;
}

int print(const base::Result<work::Imported>& imported, Context& context) {
  if (!imported) return fail(context, imported.error(), exit_input);
  const report::PastDocument& document = imported->document;
  if (context.json) {
    context.out << report::to_json(document);
  } else {
    context.out << report::to_text(document, units_of(context, imported->units));
  }
  if (document.facts == 0) {
    say(context, "nothing is new: all of it was entered before");
  } else if (!document.saved) {
    say(context, "not recorded (dry run)");
  }
  return exit_done;
}

std::string token_of(const Parsed& parsed) {
  return parsed.text("--token").value_or(random_token());
}

work::RecordRequest request_of(const Parsed& parsed) {
  work::RecordRequest request;
  request.job = parsed.needed("JOB");
  request.step = parsed.needed("STEP");
  request.mixed = parsed.mass("--mixed");
  request.part_a = parsed.mass("--part-a");
  request.part_b = parsed.mass("--part-b");
  request.resin = parsed.text("--resin");
  request.left = parsed.mass("--left");
  request.spilled = parsed.mass("--spilled");
  request.start = parsed.text("--start");
  request.at = parsed.text("--at");
  request.air = parsed.temperature("--air");
  request.humidity = parsed.percent("--humidity");
  request.observed = parsed.all("--observed");
  request.cloth = parsed.all("--cloth");
  request.used = parsed.all("--used");
  request.remnants = parsed.all("--remnant");
  request.lots = parsed.all("--lot");
  request.done = parsed.flag("--done");
  request.note = parsed.text("--note");
  request.token = token_of(parsed);
  request.begin = parsed.flag("--new");
  return request;
}

}  // namespace

int run_record(const Parsed& parsed, Context& context) {
  const work::Workshop shop = workshop(parsed, context);
  if (parsed.subcommand() == "undo") {
    return print(work::undo_record(shop, {.event = parsed.count("EVENT").value(),
                                          .note = parsed.text("--note"),
                                          .token = token_of(parsed)}),
                 context);
  }
  if (parsed.subcommand() == "import") {
    return print(work::import_past(shop, parsed.needed("FILE")), context);
  }
  if (!parsed.has("STEP")) return print(work::recorded(shop, parsed.needed("JOB")), context);
  return print(work::record(shop, request_of(parsed)), context);
}

}  // namespace wetout::cli
