// What records teach: nothing from nothing, the shop's own numbers from coats that took them, the
// former values again when a record is taken back.
#include "wetout/work/learn.hpp"

#include <gtest/gtest.h>

#include "learned.hpp"
#include "learned_rates.hpp"
#include "learned_use.hpp"
#include "record_shelf.hpp"
#include "schedule_boards.hpp"
#include "stored_plan.hpp"
#include "support.hpp"
#include "wetout/laminate/takes.hpp"
#include "wetout/work/mix.hpp"

namespace wetout::work {
namespace {

using namespace testing;

class Learning : public RecordShelf {
 protected:
  void coat(const std::string& step, double mixed, double left, const std::string& job = pico) {
    RecordRequest request = asked(step, job + step + std::to_string(++calls_));
    request.job = job;
    request.mixed = units::grams(mixed);
    request.left = units::grams(left);
    request.done = true;
    ASSERT_TRUE(record(workshop_, request));
  }

  static RecordRequest asked(const std::string& step, const std::string& token) {
    RecordRequest request;
    request.job = pico;
    request.step = step;
    request.token = token;
    return request;
  }

  LearnedRate rate(std::string_view key) const {
    for (const LearnedRate& one : learned_from(log()).rates) {
      if (one.key == key) return one;
    }
    throw std::runtime_error("no such rate");
  }

 private:
  int calls_ = 0;
};

TEST_F(Learning, OfNothingIsTheDefaults) {
  const Learned learned = learned_from(log());
  EXPECT_EQ(learned.boards, 0);
  EXPECT_EQ(learned.rates.size(), loss_rates().size() + pace_rates().size());
  for (const LearnedRate& one : learned.rates) {
    EXPECT_EQ(one.value, one.standard) << one.key;
    EXPECT_DOUBLE_EQ(one.spread, one.standard_spread) << one.key;
    EXPECT_EQ(one.records, 0) << one.key;
  }
}

TEST_F(Learning, CountsCoatsOfWhichTheRestIsKnownAndThatAreDone) {
  RecordRequest mixed = asked("bottom-lam", "a");
  mixed.mixed = units::grams(256);
  ASSERT_TRUE(record(workshop_, mixed));
  EXPECT_TRUE(learned_from(log()).records.empty());
  RecordRequest done = asked("bottom-lam", "b");
  done.done = true;
  ASSERT_TRUE(record(workshop_, done));
  EXPECT_TRUE(learned_from(log()).records.empty());
  RecordRequest left = asked("bottom-lam", "c");
  left.left = units::grams(0);
  ASSERT_TRUE(record(workshop_, left));
  const Learned learned = learned_from(log());
  ASSERT_EQ(learned.records.size(), 1U);
  EXPECT_EQ(learned.records[0].coat, "bottom-lam");
  EXPECT_DOUBLE_EQ(learned.records[0].value, 256.0);
  EXPECT_EQ(rate("uptake.eps").records, 1);
  EXPECT_EQ(rate("film.hotcoat").records, 0);
}

TEST_F(Learning, GoesBackWhenARecordIsTakenBack) {
  coat("bottom-lam", 256, 20);
  const Learned before = learned_from(log());
  coat("deck-lam", 700, 10);
  const double moved = rate("fibre_mass_fraction").value;
  EXPECT_NE(moved, before.rates[0].value);
  const auto events = log().events(pico);
  for (const joblog::EventRow& event : events) {
    if (event.step != "deck-lam/wet") continue;
    ASSERT_TRUE(undo_record(workshop_,
                            {.event = event.number, .note = {}, .token = "undo " + event.token}));
  }
  const Learned after = learned_from(log());
  for (std::size_t k = 0; k < before.rates.size(); ++k) {
    EXPECT_EQ(after.rates[k].value, before.rates[k].value);
    EXPECT_EQ(after.rates[k].spread, before.rates[k].spread);
  }
}

TEST_F(Learning, ForgetsAndRemembersWithoutLosingARecord) {
  coat("bottom-lam", 256, 20);
  const double usual = rate("fibre_mass_fraction").value;
  coat("deck-lam", 700, 10);
  const Learned with = learned_from(log());
  const std::int64_t slip = with.records.back().event;
  ASSERT_EQ(log().event(slip)->kind, joblog::EventKind::mixed);
  EXPECT_NE(with.rates[0].value, usual);
  const std::size_t events = log().events(pico).size();

  workshop_.dry_run = true;
  const auto foreseen = learn(workshop_, {.forget = {slip}, .remember = {}});
  ASSERT_TRUE(foreseen);
  EXPECT_EQ(foreseen->values[0].value, usual);
  EXPECT_EQ(rate("fibre_mass_fraction").value, with.rates[0].value) << "a dry run keeps nothing";

  workshop_.dry_run = false;
  const auto without = learn(workshop_, {.forget = {slip}, .remember = {}});
  ASSERT_TRUE(without);
  ASSERT_EQ(without->aside.size(), 1U);
  EXPECT_EQ(without->aside[0].event, slip);
  EXPECT_EQ(without->aside[0].kind, "mixed");
  EXPECT_EQ(rate("fibre_mass_fraction").value, usual);
  EXPECT_EQ(log().events(pico).size(), events);

  ASSERT_TRUE(learn(workshop_, {.forget = {}, .remember = {slip}}));
  EXPECT_EQ(rate("fibre_mass_fraction").value, with.rates[0].value);
  EXPECT_EQ(problem_of(learn(workshop_, {.forget = {slip}, .remember = {slip}})),
            "event.both --remember");
  EXPECT_EQ(problem_of(learn(workshop_, {.forget = {999}, .remember = {}})), "event.unknown ");
}

// Coats take what a shop of other losses would plan for them: a second route to the same numbers.
TEST_F(Learning, FindsWhatTheCoatsTook) {
  laminate::Losses own;
  own.fibre_mass_fraction = 0.55;
  own.uptake_eps = units::grams_per_square_metre(75);
  own.film_hotcoat = units::millimetres(0.22);
  own.brush = units::grams(12);
  own.run_off_laminate = units::grams_per_metre(4);
  own.run_off_hotcoat = units::grams_per_metre(7);
  const auto stored = stored_plan(log(), pico, {});
  ASSERT_TRUE(stored);
  const auto both = files_of(*stored);
  ASSERT_TRUE(both);
  laminate::PlanInput input;
  input.board = both->job.board;
  input.coats = both->job.coats;
  input.shop = both->shop.shop;
  input.air = both->shop.shop.air;
  const laminate::Losses cases[] = {own};
  const auto takes = laminate::takings(input, cases, {});
  ASSERT_TRUE(takes);
  for (const int n : {1, 2, 3, 4, 5, 6}) {
    const std::string job = "board-" + std::to_string(n);
    ASSERT_TRUE(plan(workshop_, {.file = folder_ / "pico.toml", .as = job, .choices = {}}));
    for (std::size_t i = 0; i < input.coats.size(); ++i) {
      if (input.coats[i].kind == laminate::CoatKind::install) continue;
      coat(input.coats[i].id, (*takes)[0][i].resin.in_grams() + 30.0, 30.0, job);
    }
  }
  const Learned learned = learned_from(log());
  EXPECT_EQ(learned.boards, 6);
  ASSERT_EQ(learned.records.size(), 24U);
  for (const WeighedRecord& record : learned.records) {
    EXPECT_NEAR(record.expected, record.value, 0.01 * record.value) << record.coat;
    EXPECT_GT(record.weight, 0.9);
  }
  const LearnedRate film = rate("film.hotcoat");
  EXPECT_NEAR(film.value, 0.22, film.spread);
  EXPECT_LT(film.spread, film.standard_spread / 2);
}

double mix_of(const report::PlanDocument& document, std::string_view coat) {
  for (const laminate::CoatNeed& one : document.plan.coats) {
    if (one.id == coat) return one.mix.in_grams();
  }
  throw std::runtime_error("no such coat");
}

TEST_F(Learning, IsPlannedWith) {
  PlanRequest request{.file = folder_ / "pico.toml", .as = "next", .choices = {}};
  const auto first = plan(workshop_, request);
  ASSERT_TRUE(first);
  EXPECT_FALSE(has(first->document.plan.notices, "plan.learned"));
  for (const std::string job : {"a", "b"}) {
    ASSERT_TRUE(plan(workshop_, {.file = folder_ / "pico.toml", .as = job, .choices = {}}));
    coat("bottom-lam", 256, 60, job);
  }
  const auto learned = plan(workshop_, request);
  ASSERT_TRUE(learned);
  EXPECT_FALSE(learned->unchanged);
  EXPECT_TRUE(has(learned->document.plan.notices, "plan.learned"));
  EXPECT_LT(mix_of(learned->document, "bottom-lam"), mix_of(first->document, "bottom-lam") - 10.0);
  // No hotcoat was recorded: only what it shares with laminates, the brush, may have moved.
  EXPECT_NEAR(mix_of(learned->document, "deck-hotcoat"), mix_of(first->document, "deck-hotcoat"),
              10.0);
  EXPECT_TRUE(plan(workshop_, request)->unchanged);
  // What the scale is told for the file is what its plan says.
  const auto card = mix_coat(
      workshop_,
      {.job = request.file.string(), .coat = "bottom-lam", .batch = {}, .mass = {}, .choices = {}});
  ASSERT_TRUE(card);
  double on_the_scale = 0.0;
  for (const auto& batch : card->document.batches) on_the_scale += batch.mix.in_grams();
  EXPECT_NEAR(on_the_scale, mix_of(learned->document, "bottom-lam"), 1.0);
  request.no_learned = true;
  const auto plain = plan(workshop_, request);
  ASSERT_TRUE(plain);
  EXPECT_EQ(plain->document.plan, first->document.plan);
}

// Minutes a square metre are the shop's, whatever its plans already know of them.
TEST_F(Learning, PaceStaysWhenPlansUseIt) {
  const auto timed = [&](const std::string& job, int hour) {
    ASSERT_TRUE(plan(workshop_, {.file = folder_ / "pico.toml", .as = job, .choices = {}}));
    RecordRequest request = asked("bottom-lam", "timed " + job);
    request.job = job;
    request.start = "2026-06-13 " + std::to_string(hour) + ":00";
    request.at = "2026-06-13 " + std::to_string(hour) + ":50";
    request.done = true;
    ASSERT_TRUE(record(workshop_, request));
  };
  timed("a", 10);
  const LearnedRate first = rate("spread.laminate");
  EXPECT_GT(first.value, first.standard);
  timed("b", 12);
  const auto stored = stored_plan(log(), "b", {});
  ASSERT_NE(stored->learned.find("spread.laminate"), std::string::npos);
  const Learned both = learned_from(log());
  ASSERT_EQ(both.records.size(), 2U);
  EXPECT_DOUBLE_EQ(both.records[0].expected, both.records[1].expected);
  EXPECT_GT(rate("spread.laminate").value, first.value);
}

// A wet step as long as its plan has it takes the default's minutes a square metre: what is mixed
// and worked over meanwhile is not spread.
TEST_F(Learning, SpreadingIsWithoutMixingAndWorkingOver) {
  const auto stored = stored_plan(log(), pico, {});
  const auto files = files_of(*stored);
  const auto steps = schedule::steps_of(board_work(pico, *files, stored->document.plan),
                                        files->shop.shop, schedule::StepDefaults{});
  ASSERT_TRUE(steps);
  const laminate::CoatNeed& coat = stored->document.plan.coats.front();
  ASSERT_EQ(coat.id, "bottom-lam");
  const double spread = units::in_minutes(*coat.spread);
  const double beside = steps->steps[static_cast<std::size_t>(steps->wets[0])].beside_spreading;
  // 2 min for the batch, 5 min and 5 min a square metre of ply for working over.
  const laminate::PlyNeed& ply = stored->document.plan.plies.front();
  const schedule::StepDefaults usual;
  EXPECT_NEAR(beside,
              usual.mixing.value + usual.work_over.value +
                  usual.work_over_ply.value * units::in_square_metres(ply.area + ply.lap_area),
              1e-9);
  const int minutes = static_cast<int>(std::lround(spread + beside));
  RecordRequest request = asked("bottom-lam", "as planned");
  request.start = "2026-06-13 10:00";
  request.at = "2026-06-13 10:" + std::to_string(minutes);
  request.done = true;
  ASSERT_LT(minutes, 60);
  ASSERT_TRUE(record(workshop_, request));
  const LearnedRate learned = rate("spread.laminate");
  EXPECT_EQ(learned.records, 1);
  EXPECT_NEAR(learned.value, learned.standard, 0.6 / spread * learned.standard);
  const Learned all = learned_from(log());
  ASSERT_EQ(all.records.size(), 1U);
  EXPECT_DOUBLE_EQ(all.records[0].value, minutes);
  EXPECT_NEAR(all.records[0].expected, minutes, 1.0);
}

// By hand: the usual minutes are 5 and 2 a metre of rail; whoever takes twice that is believed more
// with each board, and schedules give the step that time.
TEST_F(Learning, TakesThePaceOfOtherWorkToo) {
  const auto minutes_of = [&](const std::string& job, const std::string& step) {
    const auto stored = stored_plan(log(), job, {});
    const auto both = files_of(*stored);
    const auto steps = schedule::steps_of(board_work(job, *both, stored->document.plan),
                                          both->shop.shop, schedule::StepDefaults{});
    for (const schedule::Step& one : steps->steps) {
      if (to_string(one.name) == step) return units::in_minutes(one.attended);
    }
    throw std::runtime_error("no such step");
  };
  const double rail = units::in_metres(stored_plan(log(), pico, {})->document.plan.board.perimeter);
  const int twice = static_cast<int>(std::lround(2.0 * (5.0 + 2.0 * rail)));
  const double usual = minutes_of(pico, "bottom-lam/trim");
  double last = 1.0;
  for (const std::string job : {"a", "b", "c"}) {
    ASSERT_TRUE(plan(workshop_, {.file = folder_ / "pico.toml", .as = job, .choices = {}}));
    RecordRequest request = asked("bottom-lam/trim", "trimmed " + job);
    request.job = job;
    request.start = "2026-06-13 10:00";
    request.at = "2026-06-13 10:" + std::to_string(twice);
    request.done = true;
    ASSERT_TRUE(record(workshop_, request));
    const double now = rate("step.trim").value;
    EXPECT_GT(now, last);
    EXPECT_LT(now, 2.05);
    last = now;
  }
  EXPECT_GT(last, 1.7);
  ASSERT_TRUE(plan(workshop_, {.file = folder_ / "pico.toml", .as = "next", .choices = {}}));
  EXPECT_GT(minutes_of("next", "bottom-lam/trim"), usual);
  EXPECT_EQ(minutes_of("next", "bottom-hotcoat/sand"), minutes_of(pico, "bottom-hotcoat/sand"));
}

TEST_F(Learning, TellsTheChanceToRunShort) {
  for (const std::string job : {"a", "b", "c", "d"}) {
    ASSERT_TRUE(plan(workshop_, {.file = folder_ / "pico.toml", .as = job, .choices = {}}));
    coat("bottom-lam", 256, 30, job);
  }
  const auto planned = plan(workshop_, {.file = folder_ / "pico.toml", .as = "e", .choices = {}});
  ASSERT_TRUE(planned);
  const Learned learned = learned_from(log());
  const auto stored = stored_plan(log(), "e", {});
  ASSERT_TRUE(stored);
  const auto next = predictions(learned, *files_of(*stored));
  ASSERT_FALSE(next.empty());
  // 7 g stay in the cup, as the shop file has it.
  const double there = mix_of(planned->document, "bottom-lam") - 7.0;
  bool is_told = false;
  for (const base::Notice& notice : planned->document.plan.notices) {
    if (notice.code != "plan.short_chance" || notice.subject != "bottom-lam") continue;
    is_told = true;
    EXPECT_NEAR(*notice.value, next[0].chance_above(there), 1e-4);
    EXPECT_LT(*notice.value, 0.5);
    EXPECT_GT(*notice.value, 0.0);
  }
  EXPECT_TRUE(is_told);
}

// Running short costs 45.00 EUR in the demo's shop file; its resin some two cents a gram.
TEST_F(Learning, ChoosesTheMarginByWhatRunningShortCosts) {
  for (const std::string job : {"a", "b", "c", "d"}) {
    ASSERT_TRUE(plan(workshop_, {.file = folder_ / "pico.toml", .as = job, .choices = {}}));
    coat("bottom-lam", 256, 30, job);
  }
  const auto stored = stored_plan(log(), "d", {});
  ASSERT_TRUE(stored);
  auto both = files_of(*stored);
  ASSERT_TRUE(both);
  const Learned learned = learned_from(log());
  const auto margin_at = [&](std::int64_t minor) {
    both->shop.short_coat->minor = minor;
    const std::string text = margins_for(learned, *both, stored->document.plan);
    EXPECT_EQ(text.find("hotcoat"), std::string::npos) << "none was weighed";
    const std::string key = "margin.bottom-lam ";
    EXPECT_EQ(text.substr(0, key.size()), key);
    return std::stod(text.substr(key.size()));
  };
  const double cheap = margin_at(100);
  const double dear = margin_at(4500);
  EXPECT_LT(cheap, dear);
  EXPECT_LT(dear, margin_at(45'000));
  EXPECT_LE(margin_at(45'000), 1.0);
  const auto planned = plan(workshop_, {.file = folder_ / "pico.toml", .as = "e", .choices = {}});
  ASSERT_TRUE(planned);
  const laminate::CoatNeed& coat = planned->document.plan.coats.front();
  EXPECT_NEAR(coat.margin.in_grams(), dear * (coat.kept + coat.losses).in_grams(),
              0.03 * coat.mix.in_grams());
  // Kept with the revision: planned again from the log it is the same.
  const auto again = stored_plan(log(), "e", {});
  ASSERT_TRUE(again);
  const auto files = files_of(*again);
  ASSERT_TRUE(files);
  EXPECT_EQ(files->margins.count("bottom-lam"), 1U);
  both->shop.shop.losses.margin = 0.05;
  both->margins.clear();
  use_learned(*both, "margin.bottom-lam 0.3\n");
  EXPECT_TRUE(both->margins.empty()) << "the shop file says it";
}

TEST_F(Learning, LeavesToTheShopFileWhatItSays) {
  coat("bottom-lam", 256, 20);
  const auto stored = stored_plan(log(), pico, {});
  ASSERT_TRUE(stored);
  auto both = files_of(*stored);
  ASSERT_TRUE(both);
  both->shop.shop.losses.fibre_mass_fraction = 0.61;
  use_learned(*both, usable(learned_from(log())));
  EXPECT_EQ(both->shop.shop.losses.fibre_mass_fraction, 0.61);
  EXPECT_TRUE(both->shop.shop.losses.uptake_eps);
  EXPECT_EQ(both->learned.find("fibre"), std::string::npos);
}

TEST_F(Learning, WritesLinesThatTheShopFileTakes) {
  coat("bottom-lam", 256, 20);
  const auto document = learn(workshop_);
  ASSERT_TRUE(document);
  const auto stored = stored_plan(log(), pico, {});
  ASSERT_TRUE(stored);
  // The demo's shop has a table of losses already.
  std::string text = stored->shop_text;
  const std::size_t losses = text.find("[losses]");
  ASSERT_NE(losses, std::string::npos);
  std::string lines = "[losses]\n";
  for (const std::string& line : document->shop_lines) {
    if (line != "[losses]") lines += line + '\n';
  }
  text.replace(losses, 8, lines);
  const auto shop = files::parse_shop(text, "shop.toml");
  ASSERT_TRUE(shop) << shop.error().front().message;
  EXPECT_NEAR(*shop->shop.losses.fibre_mass_fraction, rate("fibre_mass_fraction").value, 5e-4);
  EXPECT_NEAR(units::in_grams_per_square_metre(*shop->shop.losses.uptake_eps),
              rate("uptake.eps").value, 0.5);
}

}  // namespace
}  // namespace wetout::work
