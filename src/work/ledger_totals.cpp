#include "ledger_totals.hpp"

#include <fmt/format.h>

#include <algorithm>
#include <utility>

#include "ledger_work.hpp"
#include "stock_shop.hpp"
#include "wetout/time/print.hpp"

namespace wetout::work {
namespace {

using report::BoardSums;
using report::LedgerEntry;
using report::MonthSums;

report::GoodsFlow flow_of(const joblog::Flow& flow, joblog::MaterialUnit unit,
                          const std::string& currency) {
  return {amount_of(flow.quantity, unit), {flow.minor, currency}};
}

MonthSums empty_month(std::string month, const std::string& currency) {
  MonthSums sums;
  sums.month = std::move(month);
  for (units::Money* money :
       {&sums.received, &sums.used, &sums.wasted, &sums.adjusted, &sums.labour}) {
    money->currency = currency;
  }
  return sums;
}

BoardSums empty_board(std::string job, std::string name, const std::string& currency) {
  BoardSums sums;
  sums.job = std::move(job);
  sums.name = std::move(name);
  sums.goods.currency = sums.labour.currency = sums.all.currency = currency;
  return sums;
}

}  // namespace

std::vector<LedgerEntry> unbooked_work(const LedgerShop& shop,
                                       const std::optional<std::string>& slug) {
  std::vector<LedgerEntry> entries;
  for (const joblog::JobRow& job : shop.log.jobs(true)) {
    if (slug && job.slug != *slug) continue;
    const auto events = shop.log.events(job.slug);
    if (events.empty()) continue;
    const auto cost = shop.log.job_cost(job.slug);
    for (const WorkedStep& work :
         worked_steps(events, cost ? cost->work : std::vector<joblog::JobWork>{})) {
      LedgerEntry entry;
      entry.kind = "labour";
      entry.date = time::print(day_of(work.done, shop.context.zone));
      entry.at = time::rfc3339(work.done, shop.context.zone);
      report::LedgerLine line;
      line.from = "labour";
      line.to = "board";
      line.job = job.slug;
      line.step = work.step;
      line.amount = {work.minutes, report::GoodsUnit::minute};
      line.cost = wages(shop, work.minutes).value_or(units::Money{0, shop.context.currency});
      entry.lines.push_back(std::move(line));
      entries.push_back(std::move(entry));
    }
  }
  return entries;
}

std::vector<MonthSums> month_sums(const LedgerShop& shop, const std::optional<std::string>& slug) {
  const std::string& currency = shop.context.currency;
  std::vector<MonthSums> months;
  const auto month_named = [&](const std::string& month) -> MonthSums& {
    const auto found = std::find_if(months.begin(), months.end(),
                                    [&](const MonthSums& one) { return one.month == month; });
    if (found != months.end()) return *found;
    return months.emplace_back(empty_month(month, currency));
  };
  for (const joblog::MonthTotals& totals : shop.log.month_totals(slug)) {
    MonthSums& sums = month_named(fmt::format("{:04}-{:02}", static_cast<int>(totals.month.year()),
                                              static_cast<unsigned>(totals.month.month())));
    sums.received.minor = totals.received_minor;
    sums.used.minor = totals.used_minor;
    sums.wasted.minor = totals.wasted_minor;
    sums.adjusted.minor = totals.adjusted_minor;
    sums.labour.minor = totals.work_minor;
    sums.minutes = totals.minutes;
  }
  for (const LedgerEntry& work : unbooked_work(shop, slug)) {
    constexpr std::size_t year_and_month = 7;
    MonthSums& sums = month_named(work.date.substr(0, year_and_month));
    sums.labour.minor += work.lines[0].cost.minor;
    sums.minutes += work.lines[0].amount.count;
  }
  std::sort(months.begin(), months.end(),
            [](const MonthSums& a, const MonthSums& b) { return a.month < b.month; });
  return months;
}

std::vector<report::MaterialSums> material_sums(const LedgerShop& shop,
                                                const std::optional<std::string>& slug) {
  std::vector<report::MaterialSums> all;
  for (const joblog::MaterialTotals& totals : shop.log.material_totals(slug)) {
    const auto flow = [&](const joblog::Flow& one) {
      return flow_of(one, totals.material.unit, shop.context.currency);
    };
    all.push_back({totals.material.slug, totals.material.name, flow(totals.received),
                   flow(totals.used), flow(totals.wasted), flow(totals.adjusted),
                   flow(totals.on_hand)});
  }
  return all;
}

std::vector<BoardSums> board_sums(const LedgerShop& shop, const std::optional<std::string>& slug) {
  const std::string& currency = shop.context.currency;
  std::vector<BoardSums> boards;
  for (const joblog::JobTotals& totals : shop.log.job_totals()) {
    if (slug && totals.slug != *slug) continue;
    BoardSums& sums = boards.emplace_back(empty_board(totals.slug, totals.name, currency));
    sums.goods.minor = totals.goods_minor;
    sums.labour.minor = totals.work_minor;
    sums.minutes = totals.minutes;
  }
  for (const LedgerEntry& work : unbooked_work(shop, slug)) {
    const report::LedgerLine& line = work.lines[0];
    auto board = std::find_if(boards.begin(), boards.end(),
                              [&](const BoardSums& one) { return one.job == *line.job; });
    if (board == boards.end()) {
      board = boards.insert(boards.end(),
                            empty_board(*line.job, shop.log.job(*line.job).value().name, currency));
    }
    board->labour.minor += line.cost.minor;
    board->minutes += line.amount.count;
  }
  for (BoardSums& board : boards) board.all.minor = board.goods.minor + board.labour.minor;
  std::sort(boards.begin(), boards.end(),
            [](const BoardSums& a, const BoardSums& b) { return a.job < b.job; });
  return boards;
}

}  // namespace wetout::work
