#include "registry.hpp"
#include "wetout/report/weather_document.hpp"
#include "wetout/work/weather.hpp"
#include "work_context.hpp"

namespace wetout::cli {

int run_weather(const Parsed& parsed, Context& context) {
  work::WeatherRequest request;
  if (const auto file = parsed.text("FILE")) request.file = *file;
  request.from = [&](const time::Zone& zone) { return parsed.time("--from", zone); };
  request.until = [&](const time::Zone& zone) { return parsed.time("--until", zone); };
  request.resin = parsed.text("--resin");
  if (const auto guard = parsed.text("--guard")) request.guard = *guard;
  const auto answer = work::weather(workshop(parsed, context), request);
  if (!answer) return fail(context, answer.error());
  if (context.json) {
    context.out << report::to_json(answer->document);
  } else {
    context.out << report::to_text(answer->document, units_of(context, answer->units),
                                   answer->zone);
  }
  return exit_done;
}

}  // namespace wetout::cli
