#include "past_requests.hpp"

#include <algorithm>
#include <chrono>
#include <map>
#include <optional>
#include <utility>

#include "wetout/base/sha256.hpp"
#include "wetout/base/shown.hpp"
#include "wetout/base/table_text.hpp"
#include "wetout/base/words.hpp"
#include "wetout/time/print.hpp"
#include "wetout/time/read.hpp"
#include "wetout/units/read.hpp"

namespace wetout::work {
namespace {

constexpr std::size_t most_problems = 1000;
// Nobody remembers it, and the order of a board's steps is that of their days.
constexpr std::string_view usual_time = "12:00";

enum class Zero { is_fine, is_nothing };

class Requests {
 public:
  explicit Requests(const files::PastBoards& past) : past_(past) {}

  PastRequests run() {
    for (const files::PastStep& step : past_.steps) {
      if (problems_.size() >= most_problems) break;
      out_.push_back(request_of(step));
    }
    return {std::move(out_), std::move(problems_)};
  }

 private:
  void refuse(const files::Written& at, base::Problem problem) {
    problem.found.clear();
    problems_.push_back(files::at_written(std::move(problem), past_, at));
  }
  void refuse(const files::Written& at, const base::Problems& problems, std::string_view example) {
    for (base::Problem problem : problems) {
      if (problem.expected.empty())
        problem.expected = "for example \"" + std::string(example) + "\"";
      refuse(at, std::move(problem));
    }
  }

  std::optional<units::Mass> mass(const files::Written& at, Zero zero) {
    const auto read = units::read_mass(at.text);
    if (!read) {
      refuse(at, read.error(), "262 g");
      return std::nullopt;
    }
    const bool is_good = *read > units::Mass{} || (zero == Zero::is_fine && *read == units::Mass{});
    if (is_good && *read <= units::kilograms(100)) return *read;
    refuse(at, {.code = "value.range",
                .message = "nobody mixes so much, or so little, at once",
                .expected = "a mass above zero, at most 100 kg, e.g. \"262 g\""});
    return std::nullopt;
  }

  std::optional<double> humidity(const files::Written& at) {
    const auto read = units::read_percent(at.text);
    if (!read) {
      refuse(at, read.error(), "60 %");
      return std::nullopt;
    }
    if (*read >= 0.0 && *read <= 1.0) return *read;
    refuse(at, {.code = "value.range",
                .message = "there is no such humidity",
                .expected = "0 % to 100 %"});
    return std::nullopt;
  }

  std::optional<std::chrono::minutes> minutes(const files::Written& at) {
    constexpr int day = 24 * 60;
    const auto read = base::to_int(at.text);
    if (read && *read > 0 && *read <= day) return std::chrono::minutes(*read);
    refuse(at, {.code = "value.range",
                .message = "these are no minutes of work",
                .expected = "a whole number from 1 to 1440, e.g. 35"});
    return std::nullopt;
  }

  // "9:30" as "09:30".
  std::optional<std::string> time_of_day(const files::Written& at) {
    const std::size_t colon = at.text.find(':');
    const auto hour = base::to_int(std::string_view(at.text).substr(0, colon));
    const auto minute = colon == std::string::npos
                            ? std::nullopt
                            : base::to_int(std::string_view(at.text).substr(colon + 1));
    const bool is_time = hour && minute && colon <= 2 && at.text.size() == colon + 3 &&
                         *hour >= 0 && *hour < 24 && *minute >= 0 && *minute < 60;
    if (is_time) return (colon == 1 ? "0" : "") + at.text;
    refuse(at, {.code = "time.bad",
                .message = "this is no time of day",
                .expected = "hours and minutes, e.g. \"18:30\""});
    return std::nullopt;
  }

  // The end of the work: some minutes after its start, on the wall clock.
  static std::string after(const std::string& start, std::chrono::minutes took) {
    const auto utc = time::Zone();
    const auto wall = time::read_instant(start, utc);
    if (!wall) return start;  // whoever records it will say what is wrong
    std::string text = time::rfc3339(*wall + took, utc);
    constexpr std::size_t to_the_minute = 16;
    text.resize(to_the_minute);
    return text;
  }

  PastRequest request_of(const files::PastStep& step) {
    PastRequest out{&step, {}, step.date.text};
    RecordRequest& request = out.request;
    request.job = step.board.text;
    request.step = step.step.text;
    request.begin = true;
    request.done = true;
    if (const auto day = time::read_date(step.date.text); !day) {
      refuse(step.date, day.error(), "2025-07-12");
    }
    std::string clock(usual_time);
    std::optional<std::chrono::minutes> took;
    for (const files::PastFact& fact : step.facts) {
      const files::Written& at = fact.value;
      if (fact.what == "time") clock = time_of_day(at).value_or(clock);
      if (fact.what == "minutes") took = minutes(at);
      if (fact.what == "resin") request.resin = at.text;
      if (fact.what == "mixed") request.mixed = mass(at, Zero::is_nothing);
      if (fact.what == "part-a") request.part_a = mass(at, Zero::is_nothing);
      if (fact.what == "part-b") request.part_b = mass(at, Zero::is_nothing);
      if (fact.what == "left") request.left = mass(at, Zero::is_fine);
      if (fact.what == "spilled") request.spilled = mass(at, Zero::is_fine);
      if (fact.what == "cloth") request.cloth.push_back(at.text);
      if (fact.what == "used") request.used.push_back(at.text);
      if (fact.what == "lot") request.lots.push_back(at.text);
      if (fact.what == "humidity") request.humidity = humidity(at);
      if (fact.what == "note") {
        request.note = request.note ? *request.note + "; " + at.text : at.text;
      }
      if (fact.what == "air") {
        const auto read = units::read_temperature(at.text);
        if (read) request.air = *read;
        if (!read) refuse(at, read.error(), "21 C");
      }
    }
    check_parts(step);
    if (!request.part_a || !request.part_b || request.mixed) {
      request.part_a.reset();
      request.part_b.reset();
    }
    const std::string start = step.date.text + " " + clock;
    request.at = start;
    if (took) {
      request.start = start;
      request.at = after(start, *took);
    }
    request.token = token_of(step);
    return out;
  }

  void check_parts(const files::PastStep& step) {
    const auto find = [&](std::string_view what) -> const files::Written* {
      const auto found =
          std::find_if(step.facts.begin(), step.facts.end(),
                       [&](const files::PastFact& fact) { return fact.what == what; });
      return found == step.facts.end() ? nullptr : &found->value;
    };
    const files::Written* a = find("part-a");
    const files::Written* b = find("part-b");
    if ((a == nullptr) != (b == nullptr)) {
      refuse(a != nullptr ? *a : *b,
             {.code = "past.parts",
              .message = "part A and part B belong together",
              .expected = a != nullptr ? "part-b beside it" : "part-a beside it"});
    }
    if (a != nullptr && find("mixed") != nullptr) {
      refuse(*a, {.code = "past.parts",
                  .message = "both parts and their sum are given",
                  .expected = "either mixed, or part-a and part-b"});
    }
  }

  // Of what the step says, whatever the file is called and in which form it is written.
  std::string token_of(const files::PastStep& step) {
    const std::string& name_of_step = step.step.text;
    const std::size_t slash = name_of_step.find('/');
    std::string text = base::slug(step.board.text) + '\n' + step.date.text + '\n' +
                       base::slug(name_of_step.substr(0, slash));
    if (slash != std::string::npos) text += '/' + base::slug(name_of_step.substr(slash + 1));
    for (const files::PastFact& fact : step.facts) {
      text += '\n' + fact.what + '\n' + fact.value.text;
    }
    const std::string name = base::hex(base::sha256(text));
    const int n = ++times_[name];
    return "past/" + name + (n > 1 ? "/" + std::to_string(n) : "");
  }

  const files::PastBoards& past_;
  std::map<std::string, int> times_;
  base::Problems problems_;
  std::vector<PastRequest> out_;
};

}  // namespace

PastRequests past_requests(const files::PastBoards& past) { return Requests(past).run(); }

base::Problem at_fact(base::Problem problem, const files::PastBoards& past,
                      const files::PastStep& step) {
  const std::string option = problem.key;
  // "--mixed: ..." is how the command line says it.
  if (option.starts_with("--") && problem.message.starts_with(option + ": ")) {
    problem.message.erase(0, option.size() + 2);
  }
  const files::Written* at = &step.step;
  if (option == "JOB") at = &step.board;
  if (option == "--at" || option == "--start" || option == "--done") at = &step.date;
  const std::string what = option.starts_with("--") ? option.substr(2) : "";
  for (const files::PastFact& fact : step.facts) {
    // The log names a material alone.
    const bool is_its_material = fact.value.text.starts_with(option + "=");
    const bool is_its_time = at == &step.date && fact.what == "time";
    if (fact.what != what && !is_its_time && !is_its_material) continue;
    // One of several: the one that is found fault with.
    const bool is_it =
        problem.found.empty() || fact.value.text.find(problem.found) != std::string::npos;
    if (at == &step.step || at == &step.date || is_it) at = &fact.value;
  }
  return files::at_written(std::move(problem), past, *at);
}

}  // namespace wetout::work
