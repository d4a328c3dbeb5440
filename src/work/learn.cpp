#include "wetout/work/learn.hpp"

#include <fmt/format.h>

#include <string>
#include <utility>
#include <vector>

#include "learned.hpp"
#include "wetout/time/print.hpp"

namespace wetout::work {
namespace {

// Three digits that count are more than any spread leaves.
std::string digits(double value) { return fmt::format("{:.3g}", value); }

bool is_pace(const LearnedRate& rate) { return rate.key.substr(0, 7) == "spread."; }

std::string quantity(const LearnedRate& rate) {
  if (rate.unit.empty()) return digits(rate.value);
  return '"' + digits(rate.value) + ' ' + std::string(rate.unit) + '"';
}

// `run_off.laminate` and `run_off.hotcoat` stand in one table of the shop file.
std::vector<std::string> shop_lines(const std::vector<LearnedRate>& rates) {
  std::vector<std::string> lines;
  for (const bool pace : {false, true}) {
    std::vector<std::pair<std::string, std::string>> entries;
    for (const LearnedRate& rate : rates) {
      if (rate.records == 0 || is_pace(rate) != pace) continue;
      const std::string key(rate.key);
      const std::size_t dot = key.find('.');
      if (dot == std::string::npos) {
        entries.emplace_back(key, quantity(rate));
        continue;
      }
      const std::string part = key.substr(dot + 1) + " = " + quantity(rate);
      if (!entries.empty() && entries.back().first == key.substr(0, dot)) {
        entries.back().second.insert(entries.back().second.size() - 2, ", " + part);
      } else {
        entries.emplace_back(key.substr(0, dot), "{ " + part + " }");
      }
    }
    if (entries.empty()) continue;
    lines.emplace_back(pace ? "[pace]" : "[losses]");
    for (const auto& [key, value] : entries) lines.push_back(key + " = " + value);
  }
  return lines;
}

}  // namespace

base::Result<report::LearnDocument> learn(const Workshop& workshop) {
  report::LearnDocument document;
  document.program = program();
  const auto now = workshop.now(time::Zone());
  if (!now) return tl::unexpected(now.error());
  document.made = time::rfc3339(*now, time::Zone());
  const bool is_there = joblog::Log::exists(workshop.log);
  const Learned learned =
      learned_from(is_there ? joblog::Log::open(workshop.log) : joblog::Log::in_memory());
  document.boards = learned.boards;
  for (const LearnedRate& rate : learned.rates) {
    document.values.push_back({.key = std::string(rate.key),
                               .table = is_pace(rate) ? "pace" : "losses",
                               .unit = std::string(rate.unit),
                               .value = rate.value,
                               .spread = rate.spread,
                               .standard = rate.standard,
                               .standard_spread = rate.standard_spread,
                               .records = rate.records});
  }
  for (const WeighedRecord& record : learned.records) {
    document.records.push_back({.job = record.job,
                                .coat = record.coat,
                                .of = record.is_time ? "time" : "resin",
                                .value = record.value,
                                .expected = record.expected,
                                .weight = record.weight});
  }
  document.shop_lines = shop_lines(learned.rates);
  document.notices = learned.notices;
  return document;
}

}  // namespace wetout::work
