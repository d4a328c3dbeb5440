#include <chrono>

#include "registry.hpp"
#include "wetout/report/schedule_document.hpp"
#include "wetout/work/schedule.hpp"
#include "work_context.hpp"

namespace wetout::cli {
namespace {

using Clock = std::chrono::steady_clock;

// A word now and then, so that nobody thinks it has died.
constexpr double first_word_s = 2.0;
constexpr double word_every_s = 2.0;

std::string what_was_saved(const work::ScheduleAnswer& answer, const Context& context) {
  const std::string number = "schedule " + std::to_string(answer.document.number);
  if (answer.unchanged) return "unchanged, " + number;
  if (context.dry_run) return "not saved (dry run)";
  return "saved as " + number;
}

}  // namespace

int run_schedule(const Parsed& parsed, Context& context) {
  work::ScheduleRequest request;
  request.jobs = parsed.all("JOB");
  if (const auto weather = parsed.text("--weather")) request.weather = *weather;
  request.from = parsed.text("--from");
  request.until = parsed.text("--until");
  request.fixed = parsed.all("--fix");
  request.hours = parsed.all("--hours");
  if (const auto guard = parsed.text("--guard")) request.guard = *guard;
  if (const auto prefer = parsed.text("--prefer")) request.prefer = *prefer;
  request.alternatives = parsed.count("--alternatives").value_or(0);
  if (const auto limit = parsed.duration("--time-limit")) {
    request.time_limit_s = units::in_seconds(*limit);
  }
  if (const auto calendar = parsed.text("--ics")) request.calendar = *calendar;
  const Clock::time_point begun = Clock::now();
  request.elapsed_s = [begun] {
    return std::chrono::duration<double>(Clock::now() - begun).count();
  };
  if (context.catch_interrupt) request.interrupted = context.catch_interrupt();
  // For somebody who waits; a file of messages needs none of it.
  if (context.err_is_terminal) {
    request.progress = [&, next = first_word_s](const work::ScheduleProgress& progress) mutable {
      if (progress.elapsed_s < next) return;
      next = progress.elapsed_s + word_every_s;
      say(context, "looking for " + std::to_string(static_cast<int>(progress.elapsed_s)) + " s: " +
                       (progress.found ? "something fits, better may" : "nothing fits yet"));
    };
  }
  const auto answer = work::schedule(workshop(parsed, context), request);
  if (!answer) return fail(context, answer.error());
  if (answer->interrupted && answer->document.stopped == "interrupted") return exit_interrupted;
  if (context.json) {
    context.out << report::to_json(answer->document);
  } else {
    context.out << report::to_text(answer->document, units_of(context, answer->units),
                                   answer->zone);
  }
  if (answer->document.timeline.empty()) return exit_input;
  say(context, what_was_saved(*answer, context));
  if (answer->calendar_written) say(context, "calendar: " + parsed.needed("--ics"));
  return exit_done;
}

}  // namespace wetout::cli
