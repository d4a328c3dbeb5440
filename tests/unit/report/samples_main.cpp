// Prints a sample document: for validation against its schema, and to look at.
//   report_samples json|us|metric NAME
#include <cstdio>
#include <string>

#include "ledger_sample.hpp"
#include "record_sample.hpp"
#include "resin_sample.hpp"
#include "sample.hpp"
#include "schedule_sample.hpp"
#include "weather_sample.hpp"
#include "wetout/report/plan_text.hpp"

namespace {

using namespace wetout::report;

std::string json_of(const std::string& name) {
  if (name == "plan") return to_json(sample::plan());
  if (name == "plan.bare") return to_json(sample::bare_plan());
  if (name == "cloth") return to_json(sample::cloth());
  if (name == "mix") return to_json(*mix_document(sample::plan(), "deck-lam"));
  if (name == "mix.free") return to_json(sample::free_mix());
  if (name == "potlife") return to_json(sample::potlife());
  if (name == "potlife.polyester") return to_json(sample::potlife_of_polyester());
  if (name == "cure") return to_json(sample::cure());
  if (name == "cure.polyester") return to_json(sample::cure_of_polyester());
  if (name == "weather") return to_json(sample::weather());
  if (name == "weather.bare") return to_json(sample::bare_weather());
  if (name == "schedule") return to_json(sample::schedule());
  if (name == "schedule.two") return to_json(sample::schedule_of_two());
  if (name == "schedule.impossible") return to_json(sample::schedule_impossible());
  if (name == "schedule.bare") return to_json(sample::schedule_bare());
  if (name == "problems") return problems_json(sample::problems());
  if (name == "check") return to_json(sample::check());
  if (name == "jobs") return to_json(sample::jobs());
  if (name == "log") return to_json(sample::log());
  if (name == "record") return to_json(sample::record());
  if (name == "record.list") return to_json(sample::record_list());
  if (name == "record.undo") return to_json(sample::record_undo());
  if (name == "past") return to_json(sample::past());
  if (name == "new") return to_json(sample::fresh());
  if (name == "ledger") return to_json(sample::ledger_by_job());
  if (name == "ledger.bare") return to_json(sample::ledger_bare());
  if (name == "ledger.job") return to_json(sample::ledger_of_job());
  if (name == "ledger.list") return to_json(sample::ledger_list());
  if (name == "ledger.material") return to_json(sample::ledger_by_material());
  if (name == "ledger.undo") return to_json(sample::ledger_undo());
  if (name == "stock") return to_json(sample::stock_list());
  if (name == "stock.lots") return to_json(sample::stock_lots());
  if (name == "stock.received") return to_json(sample::stock_received());
  if (name == "stock.reorder") return to_json(sample::stock_reorder());
  return {};
}

std::string text_of(const std::string& name, wetout::units::System system) {
  if (name == "plan") return plan_text(sample::plan(), system);
  if (name == "plan.bare") return plan_text(sample::bare_plan(), system);
  if (name == "diff") return plan_diff_text(sample::plan(), sample::changed_plan(), system);
  if (name == "mix.free") return to_text(sample::free_mix(), system, 14 * 60 + 15);
  if (name == "potlife") return to_text(sample::potlife(), system, 14 * 60 + 15);
  if (name == "potlife.polyester") return to_text(sample::potlife_of_polyester(), system);
  if (name == "cure") return to_text(sample::cure(), system, wetout::time::Zone());
  if (name == "cure.polyester") {
    return to_text(sample::cure_of_polyester(), system, wetout::time::Zone());
  }
  if (name == "weather") return to_text(sample::weather(), system, wetout::time::Zone());
  if (name == "weather.bare") return to_text(sample::bare_weather(), system, wetout::time::Zone());
  if (name == "schedule") return to_text(sample::schedule(), system, wetout::time::Zone());
  if (name == "schedule.two") {
    return to_text(sample::schedule_of_two(), system, wetout::time::Zone());
  }
  if (name == "schedule.impossible") {
    return to_text(sample::schedule_impossible(), system, wetout::time::Zone());
  }
  if (name == "schedule.bare") {
    return to_text(sample::schedule_bare(), system, wetout::time::Zone());
  }
  if (name == "problems") return problems_text(sample::problems());
  if (name == "check") return to_text(sample::check(), system);
  if (name == "jobs") return to_text(sample::jobs());
  if (name == "log") return to_text(sample::log());
  if (name == "record") return to_text(sample::record(), system);
  if (name == "record.list") return to_text(sample::record_list(), system);
  if (name == "record.undo") return to_text(sample::record_undo(), system);
  if (name == "new") return to_text(sample::fresh());
  if (name == "ledger") return to_text(sample::ledger_by_job(), system);
  if (name == "ledger.bare") return to_text(sample::ledger_bare(), system);
  if (name == "ledger.job") return to_text(sample::ledger_of_job(), system);
  if (name == "ledger.list") return to_text(sample::ledger_list(), system);
  if (name == "ledger.material") return to_text(sample::ledger_by_material(), system);
  if (name == "ledger.undo") return to_text(sample::ledger_undo(), system);
  if (name == "stock") return to_text(sample::stock_list(), system);
  if (name == "stock.lots") return to_text(sample::stock_lots(), system);
  if (name == "stock.received") return to_text(sample::stock_received(), system);
  if (name == "stock.reorder") return to_text(sample::stock_reorder(), system);
  const auto card =
      card_text(sample::plan(), name, {.batch = {}, .now_clock = 14 * 60 + 15}, system);
  return card ? *card : problems_text(card.error());
}

}  // namespace

int main(int argc, char** argv) {
  if (argc != 3) return 2;
  const std::string kind = argv[1];
  const std::string text = kind == "json"
                               ? json_of(argv[2])
                               : text_of(argv[2], kind == "us" ? wetout::units::System::us
                                                               : wetout::units::System::metric);
  std::fputs(text.c_str(), stdout);
  return text.empty() ? 1 : 0;
}
