#include <algorithm>

#include "registry.hpp"
#include "token.hpp"
#include "wetout/report/stock_document.hpp"
#include "wetout/work/stock.hpp"
#include "work_context.hpp"

namespace wetout::cli {
namespace {

std::string token_of(const Parsed& parsed) {
  return parsed.text("--token").value_or(random_token());
}

bool books(const std::string& action) {
  return action == "receive" || action == "count" || action == "waste" || action == "import";
}

std::string what_was_booked(const report::StockDocument& document) {
  if (!books(document.action)) return "";
  const bool nothing_new =
      std::all_of(document.entries.begin(), document.entries.end(),
                  [](const report::LedgerEntry& entry) { return entry.already; });
  if (nothing_new) return "nothing is new: this was booked before";
  return document.saved ? "" : "not booked (dry run)";
}

// An amount that cannot be is a bad word of the command line, not of a file.
bool is_bad_amount(const base::Problem& problem) {
  return problem.key == "AMOUNT" && problem.file.empty();
}

int print(const base::Result<work::StockAnswer>& answer, Context& context) {
  if (!answer) {
    const bool usage = std::all_of(answer.error().begin(), answer.error().end(), is_bad_amount);
    return fail(context, answer.error(), usage ? exit_usage : exit_input);
  }
  if (context.json) {
    context.out << report::to_json(answer->document);
  } else {
    context.out << report::to_text(answer->document, units_of(context, answer->units));
  }
  if (const std::string said = what_was_booked(answer->document); !said.empty()) {
    say(context, said);
  }
  return exit_done;
}

base::Result<work::StockAnswer> receive(const work::Workshop& shop, const Parsed& parsed) {
  if (const auto kit = parsed.text("--kit")) {
    return work::receive_kit(shop, {.file = *kit,
                                    .on = parsed.date("--on"),
                                    .note = parsed.text("--note"),
                                    .token = token_of(parsed)});
  }
  return work::receive_stock(shop, {.material = parsed.needed("MATERIAL"),
                                    .amount = parsed.needed("AMOUNT"),
                                    .cost = parsed.money("--cost").value(),
                                    .lot = parsed.text("--lot"),
                                    .batch = parsed.text("--maker-batch"),
                                    .note = parsed.text("--note"),
                                    .expires = parsed.date("--expires"),
                                    .on = parsed.date("--on"),
                                    .token = token_of(parsed)});
}

}  // namespace

int run_stock(const Parsed& parsed, Context& context) {
  const work::Workshop shop = workshop(parsed, context);
  const std::string_view what = parsed.subcommand();
  if (what == "receive") return print(receive(shop, parsed), context);
  if (what == "count") {
    return print(work::count_stock(shop, {.material = parsed.needed("MATERIAL"),
                                          .amount = parsed.needed("AMOUNT"),
                                          .lot = parsed.text("--lot"),
                                          .note = parsed.text("--note"),
                                          .token = token_of(parsed)}),
                 context);
  }
  if (what == "waste") {
    return print(work::waste_stock(shop, {.material = parsed.needed("MATERIAL"),
                                          .amount = parsed.needed("AMOUNT"),
                                          .lot = parsed.text("--lot"),
                                          .note = parsed.text("--note"),
                                          .on = parsed.date("--on"),
                                          .token = token_of(parsed)}),
                 context);
  }
  if (what == "lots") return print(work::list_lots(shop, parsed.text("MATERIAL")), context);
  if (what == "reorder") return print(work::reorder_stock(shop), context);
  if (what == "import") return print(work::import_stock(shop, parsed.needed("FILE")), context);
  return print(work::list_stock(shop), context);
}

}  // namespace wetout::cli
