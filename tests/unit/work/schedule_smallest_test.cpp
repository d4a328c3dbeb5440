// The smallest change of each kind when nothing fits: made, it fits; a step less, it does not.
#include <gtest/gtest.h>

#include <algorithm>
#include <chrono>
#include <cmath>
#include <optional>
#include <string>

#include "schedule/asked.hpp"
#include "schedule/board_work.hpp"
#include "schedule/sample.hpp"
#include "scheduling.hpp"
#include "wetout/time/read.hpp"
#include "wetout/units/read.hpp"

namespace wetout::work {
namespace {

namespace sample = schedule::sample;

using report::SmallestChange;
using sample::Random;
using schedule::Asked;
using std::chrono::minutes;
using time::Instant;

bool good(search::State state) { return state == search::State::proved; }

resin::AnswerCache& cups() {
  static resin::MemoryCache cups;
  return cups;
}

std::optional<schedule::SetUp> set_up(const Asked& asked) {
  auto made = schedule::set_up(asked, {}, &cups());
  if (!made) return std::nullopt;
  return std::move(*made);
}
bool fits(const Asked& asked) {
  const auto made = set_up(asked);
  return made && good(schedule::fits(made->setting, {}));
}

/// The board of an `asked` with another resin throughout.
schedule::BoardAsked with_resin(const schedule::BoardAsked& board, const std::string& resin,
                                const std::string& instead) {
  auto coats = board.work.coats;
  for (auto& coat : coats) {
    if (coat.resin == resin) coat.resin = instead;
  }
  schedule::BoardAsked changed = board;
  changed.work = sample::rough(coats);
  changed.work.job = board.work.job;
  return changed;
}

std::vector<SmallestChange> changes_of(const Asked& asked, const schedule::SetUp& made) {
  const Replan replan = [&](std::size_t b, const std::string& resin, const std::string& instead) {
    return std::optional(with_resin(asked.boards[b], resin, instead));
  };
  return smallest_changes(asked, {}, made, replan, {}, &cups());
}

/// A week in which it is too cold, too short, or nobody has the time: mostly.
Asked hard_week(Random& random) {
  auto coats = sample::one_face();
  for (auto& coat : coats) coat.resin = random.chance(60) ? "kelp-slow" : "kelp-quick";
  const int days = random.between(2, 4);
  sample::Week week = sample::random_week(random, 12);
  week.mean_c = random.chance(25) ? random.between(13, 16) : random.between(17, 23);
  week.dew_c = std::min(week.dew_c, 8.0);
  Asked asked = sample::asked(coats, week, days);
  asked.guard = static_cast<climate::Guard>(random.between(0, 2));
  if (random.chance(30)) {
    asked.room.kind = climate::RoomKind::heated;
    asked.room.heater = {climate::HeaterKind::electric,
                         units::Temperature::celsius(random.between(8, 16))};
  }
  auto& hours = asked.people.front().hours;
  for (auto& day : hours.days) {
    if (random.chance(20)) day.clear();
    if (random.chance(50) && !day.empty()) day.front().from += minutes(15 * random.between(1, 8));
  }
  if (random.chance(20)) hours.days.fill({sample::from_to(18, 19)});
  return asked;
}

// --- each kind, made

schedule::HoursInstead hours_of(const SmallestChange& change) {
  const auto hours = schedule::read_hours_instead(change.value);
  EXPECT_TRUE(hours.has_value()) << change.value;
  return hours.value_or(schedule::HoursInstead{});
}
Asked with_hours(Asked asked, const schedule::HoursInstead& hours) {
  for (schedule::Person& person : asked.people) put_instead(hours, person.hours);
  return asked;
}
Asked with_heater(Asked asked, double minimum_c) {
  const bool heated = asked.room.kind == climate::RoomKind::heated;
  const auto kind = heated ? asked.room.heater->kind : climate::HeaterKind::electric;
  asked.room.kind = climate::RoomKind::heated;
  asked.room.heater = {kind, units::Temperature::celsius(minimum_c)};
  return asked;
}
Asked with_until(Asked asked, Instant until) {
  asked.until = until;
  return asked;
}

/// So much more on one day, at its end or its beginning; a day off: from when work mostly begins.
std::optional<schedule::HoursInstead> longer(const Asked& asked, time::Date date, bool evening,
                                             minutes more) {
  const auto& hours = asked.people.front().hours;
  const unsigned weekday = std::chrono::weekday(std::chrono::local_days(date)).iso_encoding() - 1;
  schedule::HoursInstead out{date, {}, hours.days[weekday]};
  if (out.spans.empty()) {
    int most = 0;
    minutes begin{18 * 60};
    for (minutes at{0}; at < minutes(24 * 60); at += minutes(15)) {
      const auto days = std::count_if(hours.days.begin(), hours.days.end(), [&](const auto& day) {
        return !day.empty() && day.front().from == at;
      });
      if (days > most) {
        most = static_cast<int>(days);
        begin = at;
      }
    }
    out.spans = {{begin, std::min(minutes(24 * 60), begin + more)}};
    return out;
  }
  if (evening) {
    out.spans.back().until += more;
    if (out.spans.back().until > minutes(24 * 60)) return std::nullopt;
  } else {
    out.spans.front().from -= more;
    if (out.spans.front().from < minutes(0)) return std::nullopt;
  }
  return out;
}
/// Whether so much more helps on any day; films and limits stay as they are.
bool some_day_helps(const Asked& asked, const schedule::SetUp& made, minutes more) {
  using namespace std::chrono;
  schedule::Setting setting = made.setting;
  for (auto day = floor<days>(asked.from); day <= floor<days>(asked.until); day += days(1)) {
    for (const bool evening : {true, false}) {
      const auto hours = longer(asked, time::Date(day), evening, more);
      if (!hours) continue;
      setting.people = people_of(with_hours(asked, *hours));
      if (good(schedule::fits(setting, {}))) return true;
    }
  }
  return false;
}

// The search for the smallest of all days is made anew by trying each of them.
void expect_smallest_hours(const Asked& asked, const schedule::SetUp& made,
                           const SmallestChange& change) {
  const minutes more(std::stoi(change.text));
  EXPECT_EQ(more.count() % 15, 0);
  EXPECT_TRUE(some_day_helps(asked, made, more));
  if (more > minutes(15)) {
    EXPECT_FALSE(some_day_helps(asked, made, more - minutes(15)));
  }
}

void expect_smallest_heater(const Asked& asked, const SmallestChange& change) {
  const auto minimum = units::read_temperature(change.value);
  ASSERT_TRUE(minimum.has_value()) << change.value;
  EXPECT_FALSE(fits(with_heater(asked, minimum->in_celsius() - 0.5)));
  EXPECT_FALSE(fits(with_heater(asked, minimum->in_celsius() - 2.0)));
}

void expect_first_end(const Asked& asked, const SmallestChange& change) {
  const auto until = time::read_instant(change.value, time::Zone());
  ASSERT_TRUE(until.has_value()) << change.value;
  // The end of the span before.
  Instant before = asked.until;
  for (const schedule::WorkingSpan& span : people_of(with_until(asked, *until)).front().spans) {
    if (span.until < *until) before = std::max(before, span.until);
  }
  EXPECT_FALSE(fits(with_until(asked, before)));
}

Asked made(const Asked& asked, const SmallestChange& change) {
  if (change.change == "hours") return with_hours(asked, hours_of(change));
  if (change.change == "heater") {
    return with_heater(asked, units::read_temperature(change.value)->in_celsius());
  }
  if (change.change == "until") {
    return with_until(asked, *time::read_instant(change.value, time::Zone()));
  }
  Asked other = asked;
  const std::string from = change.text.substr(change.text.rfind(' ') + 1);
  for (auto& board : other.boards) board = with_resin(board, from, change.value);
  return other;
}

TEST(SmallestChange, HelpsAndIsTheSmallest) {
  int hours = 0, heater = 0, hardener = 0, until = 0, weeks = 0;
  for (std::uint64_t seed = 1; seed <= 18; ++seed) {
    SCOPED_TRACE("seed " + std::to_string(seed));
    Random random(seed);
    const Asked asked = hard_week(random);
    const auto before = set_up(asked);
    ASSERT_TRUE(before.has_value());
    if (good(schedule::fits(before->setting, {}))) continue;
    ++weeks;
    const auto changes = changes_of(asked, *before);
    for (const SmallestChange& change : changes) {
      SCOPED_TRACE(change.text);
      const sample::Answered after = sample::answer(made(asked, change));
      ASSERT_TRUE(after.fits());
      // What is told of the finish is what is found then.
      Instant last = asked.from;
      for (const auto& placed : after.arrangement.steps) {
        last = std::max(last, placed.attended_until);
      }
      EXPECT_EQ(*time::read_instant(change.finish, time::Zone()), last);
      if (change.change == "hours") {
        ++hours;
        expect_smallest_hours(asked, *before, change);
      } else if (change.change == "heater") {
        ++heater;
        expect_smallest_heater(asked, change);
      } else if (change.change == "until") {
        ++until;
        expect_first_end(asked, change);
      } else {
        EXPECT_EQ(change.change, "hardener");
        ++hardener;
      }
    }
    // What is not told would not have helped.
    const auto told = [&](const char* kind) {
      return std::any_of(changes.begin(), changes.end(),
                         [&](const SmallestChange& one) { return one.change == kind; });
    };
    if (!told("hours")) {
      EXPECT_FALSE(some_day_helps(asked, *before, minutes(240)));
    }
    if (!told("heater")) {
      EXPECT_FALSE(fits(with_heater(asked, random.between(16, 30))));
    }
    if (!told("until")) {
      EXPECT_FALSE(fits(with_until(asked, asked.until + std::chrono::days(4))));
    }
  }
  EXPECT_GE(weeks, 14);
  for (const int count : {hours, heater, hardener, until}) EXPECT_GE(count, 2);
}

// What is told is what is typed: --hours holds for everybody, whatever hours they have.
TEST(SmallestChange, OfHoursHelpsWhereTwoHaveHoursOfTheirOwn) {
  int tried = 0;
  for (std::uint64_t seed = 300; seed < 340 && tried < 6; ++seed) {
    SCOPED_TRACE("seed " + std::to_string(seed));
    Random random(seed);
    // As warm as can be: only hours are short.
    Asked asked = with_heater(hard_week(random), 29.5);
    schedule::Person& other = asked.people.emplace_back();
    other.id = "bea";
    const int from = random.between(6, 12);
    other.hours = sample::every_day(from, from + random.between(1, 2));
    const auto before = set_up(asked);
    ASSERT_TRUE(before.has_value());
    if (good(schedule::fits(before->setting, {}))) continue;
    const Replan no_other = [](auto&&...) { return std::nullopt; };
    for (const SmallestChange& change :
         smallest_changes(asked, {}, *before, no_other, {}, &cups())) {
      if (change.change != "hours") continue;
      ++tried;
      EXPECT_TRUE(fits(with_hours(asked, hours_of(change)))) << change.value;
    }
  }
  EXPECT_GE(tried, 4);
}

}  // namespace
}  // namespace wetout::work
