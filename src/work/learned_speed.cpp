#include "learned_speed.hpp"

#include <algorithm>
#include <chrono>
#include <cmath>
#include <optional>
#include <utility>

#include "wetout/climate/room.hpp"
#include "wetout/resin/arrhenius.hpp"
#include "wetout/resin/defaults.hpp"
#include "wetout/resin/speed.hpp"
#include "wetout/schedule/step_word.hpp"
#include "wetout/schedule/window_odds.hpp"
#include "wetout/time/zone.hpp"

namespace wetout::work {
namespace {

using joblog::EventKind;
using time::Instant;

// Assumed (docs/models/learning.md): who looks now and then is off by a tenth
// of the time; a room that follows a forecast by 1.5 K, one that was read by half of that.
constexpr double spread_of_looking = 0.10;
constexpr double kelvin_of_weather = 1.5;
constexpr double kelvin_of_both = 0.75;
constexpr double kelvin_of_readings = 1.5;

// A reading from shortly before the film was there still tells of its room.
constexpr std::chrono::hours before_film{2};

struct Film {
  std::optional<Instant> done = {};
  std::vector<std::pair<resin::Milestone, Instant>> seen = {};
  std::int64_t seen_by = 0;  // the last of its events
  bool counts = true;
};

std::map<std::string, Film> films_of(const std::vector<joblog::EventRow>& events) {
  std::map<std::string, Film> films;
  for (const joblog::EventRow& event : events) {
    const auto step = schedule::read_step_name(event.step);
    if (event.undone_by || !step || step->word != schedule::StepWord::wet) continue;
    if (event.kind == EventKind::done) {
      films[step->coat].done = event.at;
      films[step->coat].counts &= event.counts;
    }
    if (event.kind != EventKind::milestone || !event.counts) continue;
    films[step->coat].seen_by = event.number;
    for (const resin::Milestone m : resin::milestones) {
      if (to_string(m) == event.facts.milestone) films[step->coat].seen.emplace_back(m, event.at);
    }
  }
  return films;
}

std::vector<time::HistoryPoint> readings(const std::vector<joblog::EventRow>& events, Instant from,
                                         Instant to) {
  std::vector<time::HistoryPoint> all;
  for (const joblog::EventRow& event : events) {
    if (event.undone_by || !event.facts.air_millikelvin || event.at < from || event.at > to) {
      continue;
    }
    all.push_back({event.at, static_cast<double>(*event.facts.air_millikelvin) * 1e-3});
  }
  std::stable_sort(all.begin(), all.end(),
                   [](const auto& a, const auto& b) { return a.at < b.at; });
  // Of two at one instant the later record.
  for (std::size_t i = 1; i < all.size();) {
    if (all[i].at == all[i - 1].at) {
      all.erase(all.begin() + static_cast<std::ptrdiff_t>(i) - 1);
    } else {
      ++i;
    }
  }
  return all;
}

time::History moved(const time::History& course, double kelvin) {
  std::vector<time::HistoryPoint> points(course.points().begin(), course.points().end());
  for (time::HistoryPoint& point : points) point.value += kelvin;
  return *time::History::of(std::move(points));
}

// Film times alone: the cup has no say in them, and takes long to follow.
std::optional<resin::Cure> cure_of(resin::Product product) {
  if (product.chemistry != resin::Chemistry::epoxy) return std::nullopt;
  if (product.gel.empty() && product.tack_free.empty()) return std::nullopt;
  product.pot_life.clear();
  auto fit = resin::calibrate(product, resin::Defaults{});
  return fit ? std::optional(std::move(fit->cure)) : std::nullopt;
}

}  // namespace

learn::Belief belief_of_speed() { return {0.0, schedule::OddsDefaults{}.speed_spread.value}; }

struct FilmWatch::Air {
  time::History kelvin;
  double spread_kelvin;
};

const climate::Weather* FilmWatch::covering(const std::string& job, const JobAndShop& files,
                                            Instant from, Instant to) {
  auto heads = log_.schedules(job);
  for (auto head = heads.rbegin(); head != heads.rend(); ++head) {
    auto known = read_.find(head->number);
    if (known == read_.end()) {
      std::optional<climate::Weather> weather;
      if (const auto text = log_.schedule_weather(head->number)) {
        climate::WeatherOptions options;
        if (auto zone = time::Zone::named(files.shop.time_zone)) options.zone = std::move(*zone);
        auto read = climate::read_weather(text->body, text->name, options);
        // A typical year is not the air of any day.
        if (read && !read->typical_year) weather = std::move(*read);
      }
      known = read_.emplace(head->number, std::move(weather)).first;
    }
    const auto& weather = known->second;
    if (weather && weather->first() <= from && weather->last() >= to) return &*weather;
  }
  return nullptr;
}

std::vector<FilmSeen> FilmWatch::seen(const std::string& job, const JobAndShop& files,
                                      const std::vector<joblog::EventRow>& events,
                                      base::Notices& notices) {
  std::vector<FilmSeen> all;
  const auto air_of = [&](Instant from, Instant to) -> std::optional<Air> {
    auto read = readings(events, from - before_film, to);
    if (const climate::Weather* weather = covering(job, files, from, to)) {
      const auto room = climate::RoomAir::of(files.shop.room, climate::air_history(*weather), {});
      if (room) {
        const time::History course = room->air_history();
        if (read.empty()) return Air{course, kelvin_of_weather};
        double off = 0.0;
        for (const time::HistoryPoint& point : read) off += point.value - course.at(point.at);
        return Air{moved(course, off / static_cast<double>(read.size())), kelvin_of_both};
      }
    }
    if (read.empty()) return std::nullopt;
    return Air{*time::History::of(std::move(read)), kelvin_of_readings};
  };
  for (const auto& [coat, film] : films_of(events)) {
    if (!film.done || !film.counts || film.seen.empty()) continue;
    const auto spec = std::find_if(files.job.coats.begin(), files.job.coats.end(),
                                   [&](const auto& one) { return one.id == coat; });
    if (spec == files.job.coats.end()) continue;
    const auto& resins = files.shop.shop.resins;
    const auto product = std::find_if(resins.begin(), resins.end(),
                                      [&](const auto& one) { return one.id == spec->resin; });
    if (product == resins.end()) continue;
    const auto cure = cure_of(*product);
    if (!cure) continue;
    const Instant last = std::max_element(film.seen.begin(), film.seen.end(), [](auto& a, auto& b) {
                           return a.second < b.second;
                         })->second;
    const auto air = air_of(*film.done, last);
    if (!air) {
      notices.push_back({.code = "learn.air",
                         .text = "what was seen of its film is not counted: its air is not known; "
                                 "record --air, or schedule the board with a forecast",
                         .subject = job + "/" + coat});
      continue;
    }
    double sum = 0.0;
    int count = 0;
    for (const auto& [milestone, at] : film.seen) {
      const auto speed =
          resin::observed_speed(*product, *cure, air->kelvin, *film.done, milestone, at);
      if (!speed) continue;
      sum += std::log(*speed * product->speed.value_or(1.0));
      ++count;
    }
    if (count == 0) continue;
    const double middle = air->kelvin.at(*film.done);
    const double slope = cure->kinetics.energy_j_per_mol /
                         (resin::gas_constant_j_per_mol_k.value * middle * middle);  // 1/K
    all.push_back(
        {.job = job,
         .coat = coat,
         .resin = product->id,
         .log_speed = sum / count,
         .spread = std::hypot(spread_of_looking / std::sqrt(count), slope * air->spread_kelvin),
         .event = film.seen_by});
  }
  return all;
}

}  // namespace wetout::work
