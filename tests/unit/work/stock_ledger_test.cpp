// What boards cost, told in several ways that must agree.
#include <map>
#include <sstream>

#include "ledger_work.hpp"
#include "stock_demo.hpp"
#include "wetout/work/ledger.hpp"

namespace wetout::work {
namespace {

using namespace testing;
using joblog::EventKind;
using joblog::MaterialUnit;

constexpr const char* pico = "pico-5-4";
constexpr const char* faial = "faial-6-10";

class Ledger : public DemoShop {
 protected:
  // Two boards, goods of several lots at odd prices, work booked and not.
  void work_some() {
    plan_board("pico.toml");
    plan_board("faial.toml");
    for (int i = 0; i < 3; ++i) receive("kelp-a", "333.333 g", 777 + i);
    receive("kelp-slow-b", "1 kg", 2501);
    receive("e4", "10 m", 5800);
    use(pico, "bottom-lam/wet", "kelp-a", MaterialUnit::milligram, 250'001);
    use(pico, "bottom-lam/wet", "kelp-slow-b", MaterialUnit::milligram, 110'003);
    use(pico, "bottom-lam/wet", "e4", MaterialUnit::micrometre, 1'804'321);
    use(pico, "", "gloves", MaterialUnit::piece, 4);
    use(faial, "deck-lam/wet", "kelp-a", MaterialUnit::milligram, 300'007);
    joblog::NewLabour labour;
    labour.head = head();
    labour.job_slug = pico;
    labour.step = "bottom-lam/wet";
    labour.minutes = 55;
    labour.cost_minor = 2200;
    labour.currency = "EUR";
    ASSERT_TRUE(writing().book(labour));
    // 35 min that nobody booked.
    record_event(pico, "bottom-lam/trim", EventKind::started, {}, now_ - std::chrono::minutes(50));
    record_event(pico, "bottom-lam/trim", EventKind::done, {}, now_ - std::chrono::minutes(15));
  }

  report::LedgerDocument told(const LedgerRequest& request) {
    const auto answer = ledger(workshop_, request);
    EXPECT_TRUE(answer) << answer.error().front().message;
    return answer ? answer->document : report::LedgerDocument{};
  }
};

TEST_F(Ledger, TellsOfABoardWhatItsEntriesSay) {
  work_some();
  const report::LedgerDocument document = told({.job = "pico"});
  ASSERT_TRUE(document.cost);
  std::int64_t goods = 0;
  std::map<std::string, std::int64_t> used;
  for (const report::PlanVsActual& row : document.plan_vs_actual) {
    goods += row.cost.minor;
    used[row.material] += row.used.count;
  }
  EXPECT_EQ(goods, document.cost->goods.minor);
  EXPECT_EQ(used["kelp-a"], 250'001);
  EXPECT_EQ(used["e4"], 1'804'321);
  EXPECT_EQ(used["gloves"], 4);
  EXPECT_EQ(document.plan_vs_actual.back().coat, std::nullopt) << "gloves are of no coat";
  EXPECT_EQ(document.cost->minutes, 90);
  EXPECT_EQ(document.cost->labour.minor, 2200 + 35 * 2400 / 60);
  EXPECT_EQ(document.cost->all.minor, document.cost->goods.minor + document.cost->labour.minor);
  ASSERT_EQ(document.work.size(), 2U);
  EXPECT_TRUE(document.work[0].booked);
  EXPECT_FALSE(document.work[1].booked);
  EXPECT_EQ(document.entries.size(), 5U);
  EXPECT_FALSE(document.cost->waste_share) << "nothing was recorded as mixed";
}

TEST_F(Ledger, SharesThePlannedCostAmongCoatsToTheCent) {
  const auto plan = plan_board("pico.toml").plan;
  const report::LedgerDocument document = told({.job = "pico"});
  ASSERT_TRUE(document.cost->planned_goods);
  EXPECT_EQ(document.cost->planned_goods, plan.totals.cost);
  std::int64_t sum = 0;
  for (const report::PlanVsActual& row : document.plan_vs_actual) {
    ASSERT_TRUE(row.planned_cost) << row.material;
    sum += row.planned_cost->minor;
  }
  EXPECT_EQ(sum, plan.totals.cost->minor);
}

TEST_F(Ledger, TellsTheSameInEveryWay) {
  work_some();
  const auto boards = told({.by = LedgerBy::job}).boards;
  ASSERT_EQ(boards.size(), 2U);
  std::int64_t goods = 0, labour = 0;
  for (const report::BoardSums& board : boards) {
    EXPECT_EQ(told({.job = board.job}).cost->all, board.all) << board.job;
    goods += board.goods.minor;
    labour += board.labour.minor;
  }
  std::int64_t used = 0, worked = 0;
  for (const report::MonthSums& month : told({.by = LedgerBy::month}).months) {
    used += month.used.minor;
    worked += month.labour.minor;
  }
  EXPECT_EQ(used, goods);
  EXPECT_EQ(worked, labour);
  used = 0;
  for (const report::MaterialSums& material : told({.by = LedgerBy::material}).materials) {
    used += material.used.cost.minor;
    EXPECT_EQ(material.on_hand.cost.minor, material.received.cost.minor - material.used.cost.minor -
                                               material.wasted.cost.minor +
                                               material.adjusted.cost.minor);
  }
  EXPECT_EQ(used, goods);
}

TEST_F(Ledger, ExportsEveryCent) {
  work_some();
  std::string csv;
  ASSERT_TRUE(export_ledger(workshop_, std::nullopt, LedgerExport::csv,
                            [&](std::string_view text) { csv += text; }));
  std::map<std::string, std::int64_t> boards;
  std::istringstream lines(csv);
  std::string line;
  std::getline(lines, line);
  while (std::getline(lines, line)) {
    std::vector<std::string> cells;
    std::istringstream row(line);
    for (std::string cell; std::getline(row, cell, ',');) cells.push_back(cell);
    ASSERT_GE(cells.size(), 15U) << line;
    std::string cost = cells[13];
    cost.erase(cost.find('.'), 1);
    if (cells[6] == "board") boards[cells[9]] += std::stoll(cost);
  }
  for (const report::BoardSums& board : told({.by = LedgerBy::job}).boards) {
    EXPECT_EQ(boards[board.job], board.all.minor) << csv;
  }
  std::string of_one;
  ASSERT_TRUE(export_ledger(workshop_, "faial", LedgerExport::csv,
                            [&](std::string_view text) { of_one += text; }));
  EXPECT_EQ(std::count(of_one.begin(), of_one.end(), '\n'), 3) << "two lots\n" << of_one;
}

TEST_F(Ledger, KnowsTheShareThatWasLost) {
  plan_board("pico.toml");
  const auto with_mass = [](std::int64_t milligrams) {
    joblog::Facts facts;
    facts.mass = units::Milligrams(milligrams);
    return facts;
  };
  record_event(pico, "bottom-lam/wet", EventKind::mixed, with_mass(200'000));
  record_event(pico, "bottom-lam/wet", EventKind::left, with_mass(12'000));
  record_event(pico, "bottom-lam/wet", EventKind::spilled, with_mass(8'000));
  const report::LedgerDocument document = told({.job = "pico"});
  ASSERT_TRUE(document.cost->waste_share);
  EXPECT_DOUBLE_EQ(*document.cost->waste_share, 0.1);
  ASSERT_EQ(document.notices.size(), 1U);
  EXPECT_EQ(document.notices[0].code, "ledger.not_taken");
}

TEST_F(Ledger, ShowsTheLatestEntriesAndCountsTheOthers) {
  for (int i = 0; i < 5; ++i) receive("kelp-a", "1 kg", 100);
  LedgerRequest request;
  request.latest = 2;
  const report::LedgerDocument document = told(request);
  ASSERT_EQ(document.entries.size(), 2U);
  EXPECT_EQ(document.entries[0].number, 4);
  EXPECT_EQ(document.earlier, 3);
  EXPECT_EQ(told({}).entries.size(), 5U);
}

TEST_F(Ledger, GivesNoWageOfAnotherCurrency) {
  work_some();
  std::ofstream(workshop_.shop.value(), std::ios::app) << "";
  std::ifstream in(workshop_.shop.value());
  std::string text((std::istreambuf_iterator<char>(in)), {});
  for (std::size_t at = text.find("EUR"); at != std::string::npos; at = text.find("EUR")) {
    text.replace(at, 3, "USD");
  }
  std::ofstream(workshop_.shop.value()) << text;
  const report::LedgerDocument document = told({.job = "pico"});
  EXPECT_EQ(document.cost->labour, (units::Money{2200, "EUR"}));
  EXPECT_EQ(document.cost->minutes, 90);
  ASSERT_FALSE(document.notices.empty());
  EXPECT_EQ(document.notices[0].code, "ledger.no_wage");
}

TEST(LedgerWork, IsFromStartToDoneOfAttendedSteps) {
  const auto at = [](int minutes) { return joblog::Instant(std::chrono::minutes(minutes)); };
  const auto event = [&](EventKind kind, std::string step, int minutes) {
    joblog::EventRow row;
    row.kind = kind;
    row.step = std::move(step);
    row.at = at(minutes);
    return row;
  };
  joblog::EventRow undone = event(EventKind::done, "deck-lam/wet", 900);
  undone.undone_by = 7;
  const std::vector<joblog::EventRow> events = {
      event(EventKind::started, "acclimatise", 0),
      event(EventKind::done, "acclimatise", 100),
      event(EventKind::started, "deck-lam/wet", 100),
      event(EventKind::done, "deck-lam/wet", 130),
      event(EventKind::done, "deck-lam/wet", 160),  // the last one counts
      undone,
      event(EventKind::started, "deck-lam/trim", 200),  // not done
      event(EventKind::done, "deck-lam/peel", 210),     // not started
      event(EventKind::started, "deck-lam/sand", 300),
      event(EventKind::done, "deck-lam/sand", 300 + 12 * 60 + 1),  // nobody sands so long
      event(EventKind::started, "bottom-lam/wet", 400),
      event(EventKind::done, "bottom-lam/wet", 455)};
  const auto all = worked_steps(events, {});
  ASSERT_EQ(all.size(), 2U);
  EXPECT_EQ(all[0].step, "deck-lam/wet");
  EXPECT_EQ(all[0].minutes, 60);
  EXPECT_EQ(all[1].minutes, 55);
  const auto rest = worked_steps(events, {{.step = "deck-lam/wet", .minutes = 1, .minor = 0}});
  ASSERT_EQ(rest.size(), 1U);
  EXPECT_EQ(rest[0].step, "bottom-lam/wet");
  // Work that was booked and taken back sums to none.
  EXPECT_EQ(worked_steps(events, {{.step = "deck-lam/wet", .minutes = 0, .minor = 0}}).size(), 2U);
}

}  // namespace
}  // namespace wetout::work
