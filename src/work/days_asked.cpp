#include "days_asked.hpp"

#include <algorithm>
#include <string>
#include <utility>

#include "wetout/time/print.hpp"

namespace wetout::work {
namespace {

using time::Instant;
using Asked = std::optional<Instant>;

Instant on_grid(Instant at) {
  return std::chrono::ceil<std::chrono::duration<int, std::ratio<300>>>(at);
}

base::Problem outside(const climate::Weather& weather, Instant asked, std::string key,
                      const time::Zone& zone) {
  const bool now = key.empty();
  return {.code = "weather.outside",
          .message = now ? "the weather does not reach the present time"
                         : "the weather does not reach that time",
          .file = weather.source,
          .key = std::move(key),
          .found = time::print_wall(asked, zone),
          .expected = time::print_wall(weather.first(), zone) + " to " +
                      time::print_wall(weather.last(), zone),
          .hint = now ? "get a newer forecast, or name a time inside this one with --from" : ""};
}

}  // namespace

base::Result<Days> days_asked(const WeatherInUse& use, Instant now, Asked from, Asked until,
                              std::optional<std::chrono::days> usual, const time::Zone& zone) {
  const climate::Weather& weather = use.weather;
  const auto note = [](std::string code, std::string text) {
    return base::Notice{.code = std::move(code), .text = std::move(text)};
  };
  Days days;
  const Instant begin = from.value_or(now);
  if (begin >= weather.last()) {
    return base::fail(outside(weather, begin, from ? "--from" : "", zone));
  }
  if (until && *until <= begin) {
    return base::fail({.code = "time.order",
                       .message = "there is no time between the two ends",
                       .key = "--until",
                       .found = time::print_wall(*until, zone),
                       .expected = "a time after " + time::print_wall(begin, zone)});
  }
  if (until && *until <= weather.first()) {
    return base::fail(outside(weather, *until, "--until", zone));
  }
  days.from = on_grid(std::max(begin, weather.first()));
  if (begin < weather.first()) {
    days.notices.push_back(
        note("weather.begins_later", "the weather begins later than what is asked for"));
  }
  const Instant end = usual ? days.from + *usual : weather.last();
  days.to = std::min(until.value_or(end), weather.last());
  if (until && *until > weather.last()) {
    days.notices.push_back(
        note("weather.ends_before", "the weather ends before what is asked for"));
  }
  if (days.to <= days.from) {
    return base::fail(outside(weather, begin, from ? "--from" : "", zone));
  }
  return days;
}

}  // namespace wetout::work
