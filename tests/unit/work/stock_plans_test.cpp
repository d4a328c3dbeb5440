// What boards still need, by their plans, schedules and records.
#include <map>

#include "stock_coat_facts.hpp"
#include "stock_demo.hpp"
#include "stock_needs.hpp"
#include "stock_open_needs.hpp"

namespace wetout::work {
namespace {

using namespace testing;
using joblog::EventKind;
using joblog::MaterialUnit;

constexpr const char* pico = "pico-5-4";

// "kelp-slow-b": quantity of all open needs.
std::map<std::string, std::int64_t> summed(const std::vector<OpenNeed>& needs) {
  std::map<std::string, std::int64_t> sums;
  for (const OpenNeed& need : needs) sums[need.material] += need.quantity;
  return sums;
}

class Plans : public DemoShop {
 protected:
  std::vector<OpenNeed> needs() {
    base::Notices notices;
    auto all = open_needs(reading(), notices);
    EXPECT_TRUE(notices.empty());
    return all;
  }

  // A schedule that says when two coats are to be done.
  void schedule_board(const std::string& slug) {
    joblog::NewSchedule schedule;
    schedule.program = "wetout test";
    schedule.made = now_;
    schedule.result_format = "test";
    schedule.result_body = [](std::int64_t) { return std::string("{}"); };
    schedule.jobs = {{slug, 1}};
    schedule.steps = {{slug, "bottom-lam/wet", tomorrow_, tomorrow_ + std::chrono::hours(1), {}},
                      {slug, "bottom-lam/trim", tomorrow_, tomorrow_ + std::chrono::hours(1), {}},
                      {slug,
                       "deck-lam/wet",
                       tomorrow_ + std::chrono::hours(24),
                       tomorrow_ + std::chrono::hours(25),
                       {}}};
    ASSERT_TRUE(writing().save_schedule(schedule));
  }

  time::Instant tomorrow_ = now_ + std::chrono::hours(24);
};

TEST_F(Plans, NeedCoatByCoatWhatTheirTotalsSay) {
  for (const char* file : {"pico.toml", "faial.toml", "terceira.toml"}) {
    const report::PlanDocument document = plan_board(file);
    const auto stored = stored_plan(reading(), document.job.id, std::nullopt);
    ASSERT_TRUE(stored);
    const auto goods = goods_of_plan(*stored);
    ASSERT_TRUE(goods);
    std::map<std::string, double> sums;
    for (const CoatGoods& one : *goods) {
      const double in_one = one.unit == MaterialUnit::milligram ? 1e3
                            : one.unit == MaterialUnit::piece   ? 1.0
                                                                : 1e6;
      sums[one.material] += static_cast<double>(one.quantity) / in_one;
    }
    ASSERT_EQ(sums.size(), document.plan.totals.materials.size()) << file;
    for (const laminate::MaterialTotal& total : document.plan.totals.materials) {
      EXPECT_NEAR(sums[total.material], total.amount, 1e-5) << file << " " << total.material;
    }
  }
}

TEST_F(Plans, AreNoNeedsBeforeABoardIsScheduledOrBegun) {
  plan_board("pico.toml");
  EXPECT_TRUE(needs().empty());
  // A note is no beginning.
  joblog::Facts note;
  note.note = "core came";
  record_event(pico, "weigh", EventKind::note, note);
  EXPECT_TRUE(needs().empty());
  record_event(pico, "bottom-lam/prepare", EventKind::started);
  const auto begun = needs();
  EXPECT_FALSE(begun.empty());
  for (const OpenNeed& need : begun) EXPECT_FALSE(need.when);
  ASSERT_TRUE(writing().archive_job(pico, now_));
  EXPECT_TRUE(needs().empty());
}

TEST_F(Plans, HaveTheTimesOfTheLastSchedule) {
  plan_board("pico.toml");
  schedule_board(pico);
  for (const OpenNeed& need : needs()) {
    if (need.coat == "bottom-lam") {
      EXPECT_EQ(need.when, tomorrow_);
    } else if (need.coat == "deck-lam") {
      EXPECT_EQ(need.when, tomorrow_ + std::chrono::hours(24));
    } else {
      EXPECT_FALSE(need.when) << "no step of the schedule";
    }
  }
}

TEST_F(Plans, NeedNothingMoreOfACoatThatIsDone) {
  plan_board("pico.toml");
  schedule_board(pico);
  const auto before = needs();
  record_event(pico, "bottom-lam/wet", EventKind::done);
  for (const OpenNeed& need : needs()) EXPECT_NE(need.coat, "bottom-lam");
  // Who trims a coat or sees it gel has made it.
  record_event(pico, "deck-lam/trim", EventKind::started);
  for (const OpenNeed& need : needs()) EXPECT_NE(need.coat, "deck-lam");
  joblog::Facts gel;
  gel.milestone = "gel";
  record_event(pico, "bottom-hotcoat/wet", EventKind::milestone, gel);
  for (const OpenNeed& need : needs()) EXPECT_NE(need.coat, "bottom-hotcoat");
  // Taping is before it.
  record_event(pico, "deck-hotcoat/prepare", EventKind::done);
  EXPECT_GT(summed(needs())["kelp-a"], 0);
  EXPECT_LT(summed(needs())["kelp-a"], summed(before)["kelp-a"]);
}

TEST_F(Plans, NeedLessByWhatWasTakenOrMixedWhicheverIsMore) {
  plan_board("pico.toml");
  schedule_board(pico);
  auto before = summed(needs());
  joblog::Facts mixed;
  mixed.mass = units::Milligrams(144'000);
  mixed.part_a = units::Milligrams(100'000);
  mixed.part_b = units::Milligrams(44'000);
  record_event(pico, "bottom-lam/wet", EventKind::mixed, mixed);
  auto after = summed(needs());
  EXPECT_EQ(after["kelp-a"], before["kelp-a"] - 100'000);
  EXPECT_EQ(after["kelp-slow-b"], before["kelp-slow-b"] - 44'000);
  EXPECT_EQ(after["e4"], before["e4"]);
  // The same resin on its way from stock is not counted twice; what is more counts.
  use(pico, "bottom-lam/wet", "kelp-a", MaterialUnit::milligram, 100'000);
  EXPECT_EQ(summed(needs())["kelp-a"], before["kelp-a"] - 100'000);
  use(pico, "bottom-lam/wet", "kelp-a", MaterialUnit::milligram, 20'000);
  EXPECT_EQ(summed(needs())["kelp-a"], before["kelp-a"] - 120'000);
  // More than planned is no need below zero, nor anybody else's.
  use(pico, "bottom-lam/wet", "kelp-slow-b", MaterialUnit::milligram, 5'000'000);
  const auto stored = stored_plan(reading(), pico, std::nullopt);
  std::int64_t of_bottom = 0;
  const auto goods = goods_of_plan(*stored);
  ASSERT_TRUE(goods);
  for (const CoatGoods& one : *goods) {
    if (one.coat == "bottom-lam" && one.material == "kelp-slow-b") of_bottom = one.quantity;
  }
  EXPECT_EQ(summed(needs())["kelp-slow-b"], before["kelp-slow-b"] - of_bottom);
}

TEST_F(Plans, ShareWhatWasMixedWithoutPartsAsPlanned) {
  const report::PlanDocument document = plan_board("faial.toml");
  joblog::EventRow event;
  event.kind = EventKind::mixed;
  event.step = "bottom-lam/wet";
  event.facts.mass = units::Milligrams(300'000);
  const auto facts = coat_facts({event}, document.plan).at("bottom-lam");
  EXPECT_EQ(facts.mixed_in_all, units::Milligrams(300'000));
  std::int64_t sum = 0;
  for (const auto& [material, quantity] : facts.mixed) sum += quantity;
  EXPECT_EQ(sum, 300'000);
  EXPECT_EQ(facts.mixed.size(), 3U) << "two parts and white";
  // 100 : 44, and 1.5 % of both of white; a scale of grams was between.
  EXPECT_NEAR(static_cast<double>(facts.mixed.at("foam-white")), 300'000 * 0.015 / 1.015, 300);
  event.undone_by = 9;
  EXPECT_EQ(coat_facts({event}, document.plan).count("bottom-lam"), 0U);
}

TEST_F(Plans, RunShortOfWhatIsNotThere) {
  plan_board("pico.toml");
  schedule_board(pico);
  receive("kelp-a", "5 kg", 7900);
  receive("side-box", "1", 750);
  const auto list = list_stock(workshop_);
  ASSERT_TRUE(list);
  for (const report::StockItem& item : list->document.items) {
    if (item.material == "kelp-a") {
      EXPECT_EQ(item.missing.count, 0);
    } else if (item.material == "side-box") {
      EXPECT_EQ(item.planned.count, 2);
      EXPECT_EQ(item.missing.count, 1);
    } else {
      EXPECT_EQ(item.missing.count, item.planned.count) << item.material;
    }
  }
  const auto reorder = reorder_stock(workshop_);
  ASSERT_TRUE(reorder);
  EXPECT_EQ(reorder->document.reorder.size(), 5U) << "all but kelp-a";
  std::int64_t sum = 0;
  for (const report::ReorderLine& line : reorder->document.reorder) sum += line.cost->minor;
  EXPECT_EQ(reorder->document.reorder_cost->minor, sum);
}

}  // namespace
}  // namespace wetout::work
