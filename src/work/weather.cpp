#include "wetout/work/weather.hpp"

#include <algorithm>
#include <chrono>
#include <iterator>
#include <utility>

#include "days_asked.hpp"
#include "one_resin.hpp"
#include "weather_answer.hpp"
#include "weather_in_use.hpp"
#include "wetout/files/answer_store.hpp"
#include "wetout/time/print.hpp"

namespace wetout::work {
namespace {

using Asked = std::optional<time::Instant>;

// A placed year has no end of its own.
constexpr std::chrono::days shown_of_a_year{7};

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
  const auto use = in_use(std::move(read->weather), resin->now, from->value_or(resin->now));
  if (!use) return tl::unexpected(use.error());
  const std::optional<std::chrono::days> usual =
      use->placed ? std::optional(shown_of_a_year) : std::nullopt;
  auto days = days_asked(*use, resin->now, *from, *until, usual, resin->zone);
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
