#include "ledger_samples.hpp"

#include <stdexcept>

#include "support.hpp"

namespace wetout::joblog::testing {
namespace {

Material material(const std::string& slug, MaterialUnit unit) {
  return {slug, "The " + slug, unit};
}

}  // namespace

Date day(int n) {
  using namespace std::chrono;
  return Date(sys_days(2026y / June / 1) + days(n));
}

Instant noon(int n) { return std::chrono::sys_days(day(n)) + std::chrono::hours(12); }

EntryHead head(const std::string& token, int n) {
  return {
      .token = token, .at = noon(n), .on = day(n), .recorded = noon(n) + std::chrono::minutes(5)};
}

Material mass(const std::string& slug) { return material(slug, MaterialUnit::milligram); }
Material length(const std::string& slug) { return material(slug, MaterialUnit::micrometre); }
Material pieces(const std::string& slug) { return material(slug, MaterialUnit::piece); }

NewReceipt receipt(const std::string& token, std::vector<Received> parts, int n) {
  return {head(token, n), "USD", std::move(parts)};
}

NewUse use(const std::string& token, const std::string& job, const std::string& step,
           std::vector<Taking> takings, int n) {
  return {head(token, n), job, step, std::move(takings)};
}

NewWaste waste(const std::string& token, std::vector<Taking> takings, int n) {
  return {head(token, n), std::move(takings)};
}

NewCount count(const std::string& token, std::vector<Counted> counts, int n) {
  return {head(token, n), std::move(counts)};
}

NewLabour labour(const std::string& token, const std::string& job, std::int64_t minutes,
                 std::int64_t minor, int n) {
  return {head(token, n), job, "bottom-lam/wet", minutes, minor, "USD"};
}

NewReversal reversal(const std::string& token, std::int64_t number) {
  return {.token = token, .number = number, .recorded = noon(60)};
}

Booked book(Log& log, const NewEntry& entry) {
  auto booked = log.book(entry);
  if (!booked) throw std::runtime_error(booked.error().at(0).message);
  return std::move(*booked);
}

std::string refusal(Log& log, const NewEntry& entry) {
  const auto booked = log.book(entry);
  return booked ? "" : booked.error().at(0).code;
}

std::string lines(const Booked& booked) {
  std::string text;
  for (const MovementRow& line : booked.lines) {
    text += text.empty() ? "" : "; ";
    text += std::string(to_string(line.source)) + ">" + std::string(to_string(line.target)) + " ";
    if (!line.material.empty()) text += line.material + "/" + line.lot + " ";
    text += std::to_string(line.quantity) + "@" + std::to_string(line.minor);
    if (line.expired) text += "!";
    if (line.overdrawn > 0) text += " -" + std::to_string(line.overdrawn);
  }
  for (const Shortage& shortage : booked.shortages) {
    text += "; short " + shortage.material + " " + std::to_string(shortage.quantity);
  }
  return text;
}

std::string stock(const Log& log, Lots which) {
  std::string text;
  for (const MaterialStock& material : log.stock(which)) {
    text += (text.empty() ? "" : "; ") + material.material.slug;
    const char* between = " ";
    for (const LotStock& lot : material.lots) {
      text += between + lot.label + " " + std::to_string(lot.quantity) + "@" +
              std::to_string(lot.minor);
      between = ", ";
    }
  }
  return text;
}

Log ledger() {
  Log log = Log::in_memory();
  log.save_plan(sample_plan(1));
  log.save_plan(sample_plan(1, "egret"));
  return log;
}

}  // namespace wetout::joblog::testing
