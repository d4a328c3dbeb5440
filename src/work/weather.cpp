#include "wetout/work/weather.hpp"

#include <algorithm>
#include <chrono>
#include <iterator>
#include <utility>

#include "one_resin.hpp"
#include "weather_answer.hpp"
#include "weather_in_use.hpp"
#include "wetout/files/answer_store.hpp"
#include "wetout/time/print.hpp"

namespace wetout::work {
namespace {

using time::Instant;
using Asked = std::optional<Instant>;

constexpr std::chrono::minutes grid{5};
// A placed year has no end of its own.
constexpr std::chrono::days shown_of_a_year{7};

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

struct Days {
  Instant from, to;
  base::Notices notices;
};

// Where nobody says otherwise: from now, or the beginning of a weather that begins later.
base::Result<Days> days_asked(const WeatherInUse& use, Instant now, Asked from, Asked until,
                              const time::Zone& zone) {
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
  const Instant end = use.placed ? days.from + shown_of_a_year : weather.last();
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

}  // namespace

base::Result<WeatherAnswer> weather(const Workshop& workshop, const WeatherRequest& request) {
  const auto guard = climate::read_guard(request.guard);
  if (!guard) return tl::unexpected(guard.error());
  const auto resin = find_resin(workshop, request.resin, "--resin");
  if (!resin) return tl::unexpected(resin.error());
  const auto asked = [&](const WeatherRequest::Time& time) -> base::Result<Asked> {
    return time ? time(resin->zone) : Asked();
  };
  const auto from = asked(request.from);
  if (!from) return tl::unexpected(from.error());
  const auto until = asked(request.until);
  if (!until) return tl::unexpected(until.error());

  auto read = usual_weather(request.file, resin->shop, resin->zone, "FILE");
  if (!read) return tl::unexpected(read.error());
  const auto use = in_use(std::move(*read), resin->now, from->value_or(resin->now));
  if (!use) return tl::unexpected(use.error());
  auto days = days_asked(*use, resin->now, *from, *until, resin->zone);
  if (!days) return tl::unexpected(days.error());

  files::AnswerStore cache(workshop.cache);
  auto document = weather_answer({.use = *use,
                                  .product = resin->product(),
                                  .room = resin->shop.room,
                                  .guard = *guard,
                                  .from = days->from,
                                  .to = days->to,
                                  .zone = resin->zone},
                                 {}, &cache);
  if (!document) return base::fail(in_sheet(document.error(), *resin));
  document->first_resin = !request.resin;
  base::Notices& notices = document->notices;
  notices.insert(notices.begin(), days->notices.begin(), days->notices.end());
  std::copy_if(resin->shop.notices.begin(), resin->shop.notices.end(), std::back_inserter(notices),
               [](const base::Notice& notice) { return notice.code == "room.unused"; });
  document->program = program();
  document->made = time::rfc3339(resin->now, resin->zone);
  return WeatherAnswer{std::move(*document), resin->shop.units, resin->zone};
}

}  // namespace wetout::work
