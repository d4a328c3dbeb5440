#include "board_problem.hpp"

#include <algorithm>
#include <cmath>
#include <map>
#include <optional>

namespace wetout::search::test {
namespace {

std::size_t u(int i) { return static_cast<std::size_t>(i); }

constexpr double lowest_celsius = 15.0;
constexpr double temperature_scale = 3.0;
constexpr double greatest_rise = 1.0;
constexpr double rise_scale = 0.5;

Slot minutes(double m) { return std::max(Slot{1}, static_cast<Slot>(std::ceil(m / 5.0 - 1e-9))); }

/// Milestones on the equivalent-age clock, from a prefix sum over the air.
class Clock {
 public:
  explicit Clock(const Air& air) : age_(1, 0.0) {
    constexpr double over_r = 53700.0 / 8.314462618;
    for (const double c : air.celsius) {
      const double rate = std::exp(over_r * (1.0 / 298.15 - 1.0 / (c + 273.15)));
      age_.push_back(age_.back() + rate / slots_per_hour);
    }
  }

  /// First slot at which `hours` at 25 degrees have passed since `from`.
  [[nodiscard]] Slot after(Slot from, double hours) const {
    const double target = age_[u(from)] + hours;
    const auto hit = std::lower_bound(age_.begin(), age_.end(), target - 1e-9);
    return static_cast<Slot>(hit - age_.begin());
  }
  /// Last slot by which at most `hours` at 25 degrees have passed.
  [[nodiscard]] Slot until(Slot from, double hours) const {
    const double target = age_[u(from)] + hours;
    const auto hit = std::upper_bound(age_.begin(), age_.end(), target + 1e-9);
    return static_cast<Slot>(hit - age_.begin()) - 1;
  }

 private:
  std::vector<double> age_;
};

class Glasser {
 public:
  Glasser(const Shop& shop, int count) : shop_(shop), clock_(shop.air) {
    p_.horizon = shop.days * slots_per_day;
    hours();
    p_.resources.push_back({"person", shop.people, -1});
    p_.resources.push_back({"stand", shop.stands, -1});
    for (int b = 0; b < count; ++b) p_.resources.push_back({"board", 1, -1});
  }

  void board(const Board& board, int index);

  Problem take() { return std::move(p_); }

 private:
  struct Film {
    int wet;
    EventRef gel, tack, handle, recoat_from, sand, trim_until, recoat_until;
  };

  void hours() {
    Calendar calendar;
    for (int day = 0; day < shop_.days; ++day) {
      const Slot midnight = day * slots_per_day;
      const auto span = [&](int from, int to) {
        calendar.spans.emplace_back(midnight + from * slots_per_hour,
                                    midnight + to * slots_per_hour);
      };
      const int weekday = day % 7;  // 0 is Monday
      if (shop_.hours == Shop::Hours::all_day) {
        span(8, 20);
      } else if (shop_.hours == Shop::Hours::evenings) {
        if (weekday < 5) span(18, 22);
        if (weekday == 5) {
          span(8, 12);
          span(14, 18);
        }
      } else if (weekday < 6) {
        span(8, 12);
        span(13, 17);
      }
    }
    p_.calendars.push_back(std::move(calendar));
  }

  int step(const std::string& name, double attended_minutes, Option when = {}) {
    const int op = static_cast<int>(p_.ops.size());
    Operation operation;
    operation.id = prefix_ + (op < 10 ? "00" : op < 100 ? "0" : "") + std::to_string(op) + name;
    operation.attended = minutes(attended_minutes * scale_);
    operation.calendar = 0;
    operation.when = when;
    p_.ops.push_back(std::move(operation));
    p_.holds.push_back({0, 1, {op, at_start}, {op, at_end}, {}});
    p_.holds.push_back({2 + board_, 1, {op, at_start}, {op, at_end}, {}});
    return op;
  }

  void dusty(int op) {
    if (shop_.sanding_room) return;
    p_.modes.push_back({0, 1, {op, at_start}, {op, at_end}, minutes(30), {}});
  }

  void lag(EventRef from, EventRef to, std::optional<Slot> min, std::optional<Slot> max,
           Option when = {}, Slot scale = 0) {
    Lag& lag = p_.lags.emplace_back();
    lag.from = from;
    lag.to = to;
    if (min) lag.min = *min;
    if (max) lag.max = *max;
    lag.when = when;
    lag.scale = scale;
  }

  void after(int first, int second) { lag({first, at_end}, {second, at_start}, 0, {}); }

  Option group(const std::string& name, int option) {
    p_.groups.push_back({prefix_ + name, 2, {}});
    return {static_cast<int>(p_.groups.size()) - 1, option};
  }

  Film wet(const std::string& name, double attended_minutes, double gel_h);
  int watches(const std::string& name, int wet);
  /// Cut the laps while the film is rubbery, or grind the edge later. Returns what follows.
  std::pair<int, int> trim(const std::string& name, const Film& film, int before);
  /// Inside the recoat window, or washed and scuffed.
  void recoat(const std::string& name, const Film& film, int before, int wet);

  const Shop& shop_;
  Clock clock_;
  Problem p_;
  std::string prefix_;
  double scale_ = 1.0;
  int board_ = 0;
};

Glasser::Film Glasser::wet(const std::string& name, double attended_minutes, double gel_h) {
  Film film{};
  film.wet = step(name, attended_minutes);
  Operation& op = p_.ops[u(film.wet)];
  const Slot attended = std::get<Slot>(op.attended);
  const auto& air = shop_.air.celsius;
  op.allowed = Bits(p_.horizon);
  std::vector<Table> times(7, Table{std::vector<Slot>(u(p_.horizon), p_.horizon)});
  Tightness cold;
  Tightness rise;
  cold.level.assign(u(p_.horizon), not_tight);
  rise.level.assign(u(p_.horizon), not_tight);
  for (Slot s = 0; s < p_.horizon; ++s) {
    const Slot end = s + attended;
    const Slot gel = clock_.after(end, gel_h);
    const Slot tack = clock_.after(end, 1.5 * gel_h);
    if (tack >= p_.horizon) continue;
    times[0].at[u(s)] = gel;
    times[1].at[u(s)] = tack;
    times[2].at[u(s)] = clock_.after(end, 2.0 * gel_h);
    times[3].at[u(s)] = clock_.after(end, 1.0 * gel_h);
    times[4].at[u(s)] = clock_.after(end, 6.0 * gel_h);
    times[5].at[u(s)] = std::max(s, clock_.until(s, 2.5 * gel_h));
    times[6].at[u(s)] = std::max(s, std::min(clock_.until(s, 3.0 * gel_h), s + 3 * slots_per_day));
    const double least = *std::min_element(air.begin() + s, air.begin() + tack);
    const double most = *std::max_element(air.begin() + s, air.begin() + gel);
    const double warming = most - air[u(s)];
    if (least < lowest_celsius || warming > greatest_rise) continue;
    op.allowed.set(s);
    const auto level = [](double slack, double scale) {
      return static_cast<std::uint8_t>(std::min(200.0, std::floor(10.0 * slack / scale + 1e-9)));
    };
    cold.level[u(s)] = level(least - lowest_celsius, temperature_scale);
    rise.level[u(s)] = level(greatest_rise - warming, rise_scale);
  }
  op.tightness = {std::move(cold), std::move(rise)};
  const char* names[] = {"gel", "tack", "handle", "recoat_from", "sand", "trim_until", "until"};
  for (int e = 0; e < 7; ++e) op.events.push_back({names[e], std::move(times[u(e)])});
  const auto event = [&](int e) { return EventRef{film.wet, e}; };
  film.gel = event(0);
  film.tack = event(1);
  film.handle = event(2);
  film.recoat_from = event(3);
  film.sand = event(4);
  film.trim_until = event(5);
  film.recoat_until = event(6);
  if (!shop_.sanding_room) p_.modes.push_back({0, 0, {film.wet, at_start}, film.tack, 0, {}});
  p_.holds.push_back({1, 1, {film.wet, at_start}, film.handle, {}});
  return film;
}

int Glasser::watches(const std::string& name, int wet) {
  int last = wet;
  for (const int after_minutes : {15, 30, 60}) {
    const int watch = step(name + "_watch", 3.0);
    lag({wet, at_end}, {watch, at_start}, minutes(after_minutes), minutes(after_minutes + 10));
    after(last, watch);
    last = watch;
  }
  return last;
}

std::pair<int, int> Glasser::trim(const std::string& name, const Film& film, int before) {
  const Option in_time = group(name, 0);
  const Option later{in_time.group, 1};
  const int cut = step(name + "_trim", 10.0, in_time);
  lag(film.gel, {cut, at_start}, 0, {});
  lag(film.trim_until, {cut, at_end}, {}, 0, {}, 2 * slots_per_hour);
  after(before, cut);
  dusty(cut);
  const int grind = step(name + "_grind", 25.0, later);
  lag(film.sand, {grind, at_start}, 0, {});
  after(before, grind);
  dusty(grind);
  return {cut, grind};
}

void Glasser::recoat(const std::string& name, const Film& film, int before, int wet) {
  const Option inside = group(name, 0);
  const Option scuffed{inside.group, 1};
  lag(film.recoat_from, {wet, at_start}, 0, {});
  lag(film.recoat_until, {wet, at_end}, {}, 0, inside, 2 * slots_per_hour);
  const int wash = step(name + "_wash", 10.0, scuffed);
  const int scuff = step(name + "_scuff", 15.0, scuffed);
  lag(film.handle, {wash, at_start}, 0, {});
  after(before, wash);
  lag(film.sand, {scuff, at_start}, 0, {});
  after(wash, scuff);
  after(scuff, wet);
  after(before, wet);
  dusty(scuff);
}

void Glasser::board(const Board& board, int index) {
  prefix_ = board.name + "-";
  scale_ = board.scale;
  board_ = index;
  const int acclimatise = step("acclimatise", 10.0);
  const int prepare = step("prepare", 30.0);
  after(acclimatise, prepare);
  lag({acclimatise, at_end}, {prepare, at_start}, 2 * slots_per_hour, {});
  const int tape_bottom = step("tape", 10.0);
  after(prepare, tape_bottom);
  const Film bottom = wet("lam_bottom", 45.0, 4.0);
  after(tape_bottom, bottom.wet);
  int last = watches("lam_bottom", bottom.wet);
  const auto [cut_bottom, grind_bottom] = trim("bottom", bottom, last);
  const int flip = step("flip", 5.0);
  lag(bottom.handle, {flip, at_start}, 0, {});
  after(cut_bottom, flip);
  after(grind_bottom, flip);
  after(last, flip);
  const int feather = step("feather", 15.0);
  after(flip, feather);
  dusty(feather);
  const int tape_deck = step("tape", 10.0);
  after(feather, tape_deck);
  const Film deck = wet("lam_deck", 55.0, 4.0);
  recoat("deck", bottom, tape_deck, deck.wet);
  last = watches("lam_deck", deck.wet);
  const auto [cut_deck, grind_deck] = trim("deck", deck, last);
  const int feather_deck = step("feather", 15.0);
  after(cut_deck, feather_deck);
  after(grind_deck, feather_deck);
  after(last, feather_deck);
  dusty(feather_deck);
  const Film hot_deck = wet("hot_deck", 20.0, 4.0);
  recoat("hot_deck", deck, feather_deck, hot_deck.wet);
  last = watches("hot_deck", hot_deck.wet);
  const int flip_hot = step("flip", 5.0);
  lag(hot_deck.handle, {flip_hot, at_start}, 0, {});
  after(last, flip_hot);
  const Film hot_bottom = wet("hot_bottom", 20.0, 4.0);
  lag(deck.recoat_from, {hot_bottom.wet, at_start}, 0, {});
  recoat("hot_bottom", hot_deck, flip_hot, hot_bottom.wet);
  last = watches("hot_bottom", hot_bottom.wet);
  const int open = step("open", 15.0);
  lag(hot_bottom.handle, {open, at_start}, 0, {});
  after(last, open);
  dusty(open);
  const int sand_deck = step("sand", 40.0);
  lag(hot_deck.sand, {sand_deck, at_start}, 0, {});
  after(open, sand_deck);
  dusty(sand_deck);
  const int sand_bottom = step("sand", 40.0);
  lag(hot_bottom.sand, {sand_bottom, at_start}, 0, {});
  after(sand_deck, sand_bottom);
  dusty(sand_bottom);
  last = sand_bottom;
  if (board.gloss) {
    for (const char* face : {"gloss_deck", "gloss_bottom"}) {
      const Film gloss = wet(face, 20.0, 4.0);
      after(last, gloss.wet);
      const int watch = step("gloss_watch", 3.0);
      lag({gloss.wet, at_end}, {watch, at_start}, minutes(30), minutes(40));
      last = step("gloss_flip", 5.0);
      lag(gloss.handle, {last, at_start}, 0, {});
      after(watch, last);
    }
  }
  const int weigh = step("weigh", 5.0);
  after(last, weigh);
}

}  // namespace

Air made_up_air(int days, double mean, double heated) {
  Air air;
  constexpr double turn = 2.0 * 3.14159265358979323846;
  // The last day repeats, for what may lie beyond the forecast.
  for (Slot s = 0; s < 3 * days * slots_per_day; ++s) {
    const Slot t = s < days * slots_per_day ? s : (days - 1) * slots_per_day + s % slots_per_day;
    const double day = static_cast<double>(t) / slots_per_day;
    const double outside =
        mean + 5.0 * std::sin(turn * (day - 0.45)) + 3.0 * std::sin(turn * day / 6.3);
    air.celsius.push_back(std::max(outside, heated));
  }
  return air;
}

Problem glass(const Shop& shop, const std::vector<Board>& boards) {
  Glasser glasser(shop, static_cast<int>(boards.size()));
  for (std::size_t b = 0; b < boards.size(); ++b) glasser.board(boards[b], static_cast<int>(b));
  return glasser.take();
}

Objective board_objective(const Problem& problem, const std::vector<Board>& boards) {
  const auto board_of = [&](const Operation& op) {
    for (std::size_t b = 0; b < boards.size(); ++b) {
      if (op.id.rfind(boards[b].name + "-", 0) == 0) return b;
    }
    return boards.size();
  };
  std::vector<std::vector<int>> sets(boards.size());
  for (std::size_t i = 0; i < problem.ops.size(); ++i) {
    sets[board_of(problem.ops[i])].push_back(static_cast<int>(i));
  }
  const bool one = boards.size() == 1;
  Objective objective;
  objective.terms = {
      LastEnd{sets, one ? 0 : -1}, TightCounts{}, Visits{6, sets}, Sum{}, Starts{}, Choices{}};
  return objective;
}

}  // namespace wetout::search::test
