#include "weather_chart.hpp"

#include <algorithm>

#include "wetout/base/check.hpp"
#include "wetout/time/read.hpp"

namespace wetout::report {
namespace {

using schedule::Limit;
using schedule::State;
using std::chrono::minutes;

constexpr minutes step{5};

char letter(const StartWindow& window) {
  switch (window.limit.value_or(Limit::weather)) {
    case Limit::weather:
      return window.reason == weather_gap ? '?' : 'e';
    case Limit::foul_air:
      return 'f';
    case Limit::cold:
      return 'c';
    case Limit::warm:
      return 'w';
    case Limit::dew_margin:
      return 'd';
    case Limit::humidity:
      return 'h';
    case Limit::core_rise:
      return 'r';
  }
  return ' ';
}

int rank(char sign) {
  if (sign == ' ') return 0;
  if (sign == '=') return 1;
  return sign == '~' ? 2 : 3;
}

// How far beyond its limit, in the limit's unit.
double beyond(const WorstStart& worst, Limit limit) {
  const bool floor = limit == Limit::cold || limit == Limit::dew_margin;
  return floor ? worst.limit - worst.guarded : worst.guarded - worst.limit;
}

class Days {
 public:
  Days(const WeatherDocument& document, const time::Zone& zone) : zone_(zone) {
    for (const WeatherHour& hour : document.series) {
      const time::WallTime wall = zone.wall(instant_of(hour.time));
      const auto clock = wall - std::chrono::floor<std::chrono::days>(wall);
      day(wall).hours.at(static_cast<std::size_t>(clock / std::chrono::hours(1))) = &hour;
    }
    for (const StartWindow& window : document.windows) add(window);
  }
  // The hour at which the weather ends may be all that is known of a day.
  std::vector<ChartDay> take() {
    std::erase_if(days_, [](const ChartDay& day) { return day.reasons.empty(); });
    return std::move(days_);
  }

 private:
  ChartDay& day(time::WallTime wall) {
    const time::WallTime midnight = std::chrono::floor<std::chrono::days>(wall);
    const auto found = std::lower_bound(
        days_.begin(), days_.end(), midnight,
        [](const ChartDay& known, time::WallTime at) { return known.midnight < at; });
    if (found != days_.end() && found->midnight == midnight) return *found;
    ChartDay fresh;
    fresh.midnight = midnight;
    return *days_.insert(found, std::move(fresh));
  }

  void add(const StartWindow& window) {
    const char sign = start_sign(window);
    const time::Instant end = instant_of(window.to);
    ChartDay* today = nullptr;
    ChartSpan* span = nullptr;
    for (time::Instant at = instant_of(window.from); at < end; at += step) {
      const time::WallTime wall = zone_.wall(at);
      ChartDay& its_day = day(wall);
      const auto clock = std::chrono::floor<minutes>(wall - its_day.midnight).count();
      const int minute = static_cast<int>(clock);
      if (&its_day != today) {
        today = &its_day;
        span = &reason(*today, window, sign).spans.emplace_back(ChartSpan{minute, minute});
      }
      span->to =
          static_cast<int>(clock + std::min<std::chrono::seconds>(step, end - at) / minutes(1));
      char& cell = today->starts.at(static_cast<std::size_t>(minute / chart_cell_min));
      if (rank(sign) > rank(cell)) cell = sign;
    }
  }

  ChartReason& reason(ChartDay& day, const StartWindow& window, char sign) const {
    const auto known =
        std::find_if(day.reasons.begin(), day.reasons.end(), [&](const ChartReason& one) {
          return one.sign == sign && one.window->reason == window.reason;
        });
    ChartReason& reason = known != day.reasons.end()
                              ? *known
                              : day.reasons.emplace_back(ChartReason{sign, {}, &window, nullptr});
    for (const WorstStart& worst : window.worst) {
      const time::WallTime wall = zone_.wall(instant_of(worst.start));
      if (std::chrono::floor<std::chrono::days>(wall) != day.midnight) continue;
      const Limit limit = window.limit.value_or(Limit::weather);
      if (reason.worst == nullptr || beyond(worst, limit) > beyond(*reason.worst, limit)) {
        reason.worst = &worst;
      }
    }
    return reason;
  }

  const time::Zone& zone_;
  std::vector<ChartDay> days_;
};

}  // namespace

char start_sign(const StartWindow& window) {
  if (window.ok == State::good) return '=';
  return window.ok == State::notice ? '~' : letter(window);
}

std::vector<ChartDay> chart_days(const WeatherDocument& document, const time::Zone& zone) {
  return Days(document, zone).take();
}

time::Instant instant_of(const std::string& rfc3339) {
  const auto read = time::read_instant(rfc3339, time::Zone());
  base::promise(read.has_value(), "times of a document can be read");
  return *read;
}

}  // namespace wetout::report
