#include "schedule_shop.hpp"

#include <gtest/gtest.h>
#include <stdlib.h>

#include <algorithm>
#include <chrono>
#include <cmath>
#include <fstream>
#include <numbers>
#include <stdexcept>

#include "wetout/time/print.hpp"
#include "wetout/time/read.hpp"

namespace wetout::work::testing {
namespace {

namespace fs = std::filesystem;

constexpr std::string_view shop_head = R"([shop]
time_zone = "UTC"
currency = "EUR"
units = "metric"
air = "21 C"
scale_step = "1 g"
cup = "quart"
weather = "weather.csv"
)";
constexpr std::string_view shop_goods = R"(
[[cup]]
id = "quart"
holds = "900 ml"
diameter = "105 mm"
[[cup]]
id = "tray"
holds = "3 l"
diameter = "300 mm"
[[material]]
id = "a"
density = "1.12 g/ml"
[[material]]
id = "slow-b"
density = "0.98 g/ml"
[[material]]
id = "quick-b"
density = "1.00 g/ml"
[[cloth]]
id = "e4"
weight = "4 oz/yd2"
width = "30 in"
[[resin]]
id = "slow"
chemistry = "epoxy"
family = "kelp"
part_a = "a"
part_b = "slow-b"
parts = { by = "mass", a = 100, b = 44 }
lowest_air = "15 C"
highest_air = "34 C"
humidity_limit = "80 %"
tg = "64 C"
pot_life = [ { mass = "150 g", air = "25 C", time = "44-50 min" } ]
gel = [ { air = "25 C", time = "5 h" } ]
tack_free = [ { air = "25 C", time = "7-8 h" } ]
recoat = [ { air = "25 C", from = "5 h", until = "16 h" } ]
sand = [ { air = "25 C", time = "30 h" } ]
full_cure = [ { air = "25 C", time = "7 days" } ]
[[resin]]
id = "quick"
chemistry = "epoxy"
family = "kelp"
part_a = "a"
part_b = "quick-b"
parts = { by = "mass", a = 100, b = 44 }
lowest_air = "12 C"
highest_air = "32 C"
humidity_limit = "80 %"
tg = "56 C"
pot_life = [ { mass = "150 g", air = "25 C", time = "24-28 min" } ]
gel = [ { air = "25 C", time = "110 min" } ]
tack_free = [ { air = "25 C", time = "3-3.5 h" } ]
recoat = [ { air = "25 C", from = "2 h", until = "9 h" } ]
sand = [ { air = "25 C", time = "14 h" } ]
full_cure = [ { air = "25 C", time = "6 days" } ]
)";
constexpr std::string_view job_tail = R"(length = "5 ft"
foam = "eps"
nose = "round"
tail = "square"
rail = { name = "50/50", fullness = "full" }
[board.width]
nose12 = "14 in"
wide = "19 in"
wide_point = "0 in"
tail12 = "15 in"
tail = "9 in"
[board.thickness]
nose12 = "1 1/2 in"
centre = "2 1/2 in"
tail12 = "1 5/8 in"
tail = "7/8 in"
nose = "5/8 in"
[board.rocker]
nose = "3 1/2 in"
tail = "1 1/2 in"
[[coat]]
name = "bottom lam"
face = "bottom"
kind = "laminate"
resin = "quick"
laps = "free"
[[coat.ply]]
cloth = "e4"
[[coat]]
name = "bottom hot"
face = "bottom"
kind = "hotcoat"
resin = "quick"
)";

time::Instant read(std::string_view text) {
  const auto at = time::read_instant(text, time::Zone());
  if (!at) throw std::logic_error("no time: " + std::string(text));
  return *at;
}

template <class T>
void expect_none(const base::Result<T>& result) {
  if (result) return;
  for (const base::Problem& problem : result.error()) {
    ADD_FAILURE() << problem.code << " [" << problem.key << "] " << problem.message << " | "
                  << problem.found;
  }
}

}  // namespace

time::Instant utc(std::string_view wall) { return read(wall); }

ScheduleShop::ScheduleShop() {
  std::string name = (fs::temp_directory_path() / "wetout-schedule-XXXXXX").string();
  if (::mkdtemp(name.data()) == nullptr) throw std::runtime_error("no temporary folder");
  folder_ = name;
  air = [](double h) { return 21.0 + 3.0 * std::cos((h - 15.0) * std::numbers::pi / 12.0); };
  dew = [](double) { return 8.0; };
  write();
}
ScheduleShop::~ScheduleShop() { fs::remove_all(folder_); }

void ScheduleShop::write() const {
  std::ofstream(folder_ / "shop.toml") << shop_head << "[room]\n"
                                       << room << "[hours]\n"
                                       << hours << shop_goods << more_shop;
  std::ofstream(folder_ / "board.toml") << "[board]\nname = \"Pip\"\n" << job_tail << more_job;
  std::ofstream(folder_ / "another.toml") << "[board]\nname = \"Pop\"\n" << job_tail << more_job;
  std::ofstream weather(folder_ / "weather.csv");
  weather << "time,air [C],dew point [C]\n";
  const time::Instant first = utc("2026-06-13 00:00");
  for (int h = 0; h <= weather_hours; ++h) {
    const auto hundredths = [](double v) { return std::to_string(std::round(100.0 * v) / 100.0); };
    weather << time::rfc3339(first + std::chrono::hours(h), time::Zone()) << ','
            << hundredths(air(h)) << ',' << hundredths(std::min(air(h), dew(h))) << '\n';
  }
}

Workshop ScheduleShop::workshop(std::string_view now) const {
  Workshop workshop;
  // Beside the files, so that they are known by their whole names wherever the tests run.
  workshop.here = folder_ / "elsewhere";
  workshop.log = folder_ / "log.db";
  workshop.cache = folder_ / "cups";
  workshop.now = [at = utc(now)](const time::Zone&) { return at; };
  return workshop;
}

base::Result<ScheduleAnswer> ScheduleShop::schedule(std::string_view now,
                                                    ScheduleRequest request) const {
  if (request.jobs.empty()) request.jobs = {(folder_ / "board.toml").string()};
  return work::schedule(workshop(now), request);
}

report::ScheduleDocument ScheduleShop::document(std::string_view now,
                                                ScheduleRequest request) const {
  auto answer = schedule(now, std::move(request));
  expect_none(answer);
  return answer ? std::move(answer->document) : report::ScheduleDocument{};
}

report::RecordDocument ScheduleShop::record(std::string_view now, RecordRequest request) const {
  static int calls = 0;
  if (request.job.empty()) request.job = "pip";
  if (request.token.empty()) request.token = "call-" + std::to_string(++calls);
  auto recorded = work::record(workshop(now), request);
  expect_none(recorded);
  return recorded ? std::move(recorded->document) : report::RecordDocument{};
}

void ScheduleShop::undo(std::string_view now, std::int64_t event) const {
  UndoRequest request;
  request.event = event;
  request.token = "undo-" + std::to_string(event);
  expect_none(undo_record(workshop(now), request));
}

const report::TimelineStep* find(const report::ScheduleDocument& document, std::string_view id) {
  const auto found = std::find_if(document.timeline.begin(), document.timeline.end(),
                                  [&](const report::TimelineStep& step) { return step.id == id; });
  return found == document.timeline.end() ? nullptr : &*found;
}

time::Instant start_of(const report::ScheduleDocument& document, std::string_view id) {
  const report::TimelineStep* step = find(document, id);
  if (step == nullptr) throw std::logic_error(std::string(id) + " is not in the timeline");
  return read(step->start);
}

time::Instant milestone_of(const report::ScheduleDocument& document, std::string_view id,
                           std::string_view milestone) {
  const report::TimelineStep* step = find(document, id);
  if (step == nullptr) throw std::logic_error(std::string(id) + " is not in the timeline");
  for (const report::FilmMilestone& one : step->milestones) {
    if (one.name == milestone) return read(one.time);
  }
  throw std::logic_error(std::string(id) + " has no " + std::string(milestone));
}

std::string why_moved(const report::ScheduleDocument& document, std::string_view id) {
  for (const report::ChangedStep& step : document.changed) {
    if (step.id == id) return step.why;
  }
  return "";
}

}  // namespace wetout::work::testing
