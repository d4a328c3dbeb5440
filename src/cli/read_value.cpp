#include "read_value.hpp"

#include <algorithm>
#include <charconv>
#include <chrono>
#include <iterator>

#include "text.hpp"
#include "wetout/base/shown.hpp"
#include "wetout/time/read.hpp"
#include "wetout/time/read_near.hpp"
#include "wetout/units/read.hpp"

namespace wetout::cli {
namespace {

base::Problem out_of_range(const Argument& argument, std::string message, std::string_view text) {
  base::Problem problem;
  problem.code = "value.range";
  problem.message = std::move(message);
  problem.found = base::shown(text);
  problem.expected = expected(argument);
  return problem;
}

base::Problem not_a_choice(const Argument& argument, std::string_view text) {
  const std::vector<std::string> choices(argument.choices.begin(), argument.choices.end());
  base::Problem problem;
  problem.code = "choice.unknown";
  problem.message = quote(text) + " is not one of the choices";
  problem.found = base::shown(text);
  problem.expected = expected(argument);
  problem.hint = did_you_mean(text, choices);
  return problem;
}

template <class T>
base::Problems faults_of(base::Result<T> read) {
  return read ? base::Problems{} : std::move(read.error());
}

// A reader's faults, or that the quantity is not above `limit`.
template <class T>
base::Problems above(const Argument& argument, std::string_view text, const base::Result<T>& read,
                     T limit, std::string_view what) {
  if (!read) return read.error();
  if (*read > limit) return {};
  return {out_of_range(argument, std::string(what), text)};
}

// More than a shop mixes at once is a slip of the hand.
const units::Mass most_mixed = units::kilograms(100);

base::Problems within(const Argument& argument, std::string_view text,
                      const base::Result<units::Mass>& read) {
  if (read && *read > most_mixed) {
    return {out_of_range(argument, "a mass to mix is at most 100 kg", text)};
  }
  return above(argument, text, read, units::Mass{}, "a mass must be above zero");
}

base::Problems amount(const Argument& argument, std::string_view text) {
  const base::Result<units::Mass> read = units::read_mass(text);
  if (!read) return read.error();
  if (*read < units::Mass{}) return {out_of_range(argument, "a mass is not below zero", text)};
  if (*read > most_mixed) return {out_of_range(argument, "a mass is at most 100 kg here", text)};
  return {};
}

base::Problems percent(const Argument& argument, std::string_view text) {
  const base::Result<double> read = units::read_percent(text);
  if (!read) return read.error();
  if (*read >= 0.0 && *read <= 1.0) return {};
  return {out_of_range(argument, "this lies between 0 and 100 %", text)};
}

base::Problems money(const Argument& argument, std::string_view text) {
  const base::Result<units::Money> read = units::read_money(text);
  if (!read) return read.error();
  if (read->minor < 0) return {out_of_range(argument, "money is not below zero here", text)};
  return {};
}

// Any will do to see how a time is written.
constexpr time::Instant some_time{std::chrono::sys_days(std::chrono::year(2026) / 6 / 13)};

base::Problems faults(const Argument& argument, std::string_view text) {
  switch (argument.reads) {
    case Reads::text:
      return {};
    case Reads::temperature:
      return above(argument, text, units::read_temperature(text), units::Temperature::kelvin(0.0),
                   "a temperature must be above absolute zero");
    case Reads::mass:
      return within(argument, text, units::read_mass(text));
    case Reads::amount:
      return amount(argument, text);
    case Reads::percent:
      return percent(argument, text);
    case Reads::duration:
      return above(argument, text, units::read_duration(text), units::Duration{},
                   "a time must be above zero");
    case Reads::time:
      // Without an offset only the shop knows the zone; here the way it is written is checked.
      return faults_of(time::read_instant(text, time::Zone()));
    case Reads::past_time:
      return faults_of(time::read_near(text, time::Zone(), some_time, time::Side::past));
    case Reads::date:
      return faults_of(time::read_date(text));
    case Reads::money:
      return money(argument, text);
    case Reads::count:
      return faults_of(read_count(text));
    case Reads::choice:
      if (std::find(argument.choices.begin(), argument.choices.end(), text) !=
          argument.choices.end()) {
        return {};
      }
      return {not_a_choice(argument, text)};
  }
  return {};
}

}  // namespace

base::Result<int> read_count(std::string_view text) {
  constexpr int most = 1'000'000;
  int count = 0;
  const char* end = text.data() + text.size();
  const auto [stopped, error] = std::from_chars(text.data(), end, count);
  if (error == std::errc{} && stopped == end && count >= 1 && count <= most) return count;
  base::Problem problem;
  problem.code = "count.bad";
  problem.message = quote(text) + " is not a whole number from 1 to 1000000";
  problem.found = base::shown(text);
  problem.expected = "a whole number, e.g. 2";
  return base::fail(std::move(problem));
}

std::string expected(const Argument& argument) {
  switch (argument.reads) {
    case Reads::text:
      return std::string(argument.help);
    case Reads::temperature:
      return "a temperature with its unit, e.g. 22C or 72F";
    case Reads::mass:
      return "a mass with its unit, e.g. 245g";
    case Reads::amount:
      return "a mass with its unit, e.g. 12g, or 0g";
    case Reads::percent:
      return "a percentage, e.g. 62%";
    case Reads::duration:
      return "a time with its unit, e.g. 25min";
    case Reads::time:
      return "a time, e.g. \"2026-06-14 18:30\" or 2026-06-14T18:30:00-07:00";
    case Reads::past_time:
      return "a time that is past, e.g. 18:30 or \"2026-06-14 18:30\"";
    case Reads::date:
      return "a day, e.g. 2026-06-14";
    case Reads::money:
      return "an amount and its currency, e.g. 48.00USD";
    case Reads::count:
      return "a whole number, e.g. 2";
    case Reads::choice: {
      const std::vector<std::string> choices(argument.choices.begin(), argument.choices.end());
      return join(choices, ", ");
    }
  }
  return "";
}

void place(base::Problem& problem, std::string_view name) {
  problem.key = name;
  problem.message = std::string(name) + ": " + problem.message;
  // A shell takes `--air 22 C` apart before we see it.
  if (problem.code == "unit.missing" && !problem.hint.empty()) {
    problem.hint += ", with the quotes or without the space";
  }
}

base::Problems check_value(const Argument& argument, std::string_view text) {
  base::Problems found;
  if (text.empty()) {
    base::Problem problem;
    problem.code = "argument.empty";
    problem.message = "this is empty";
    problem.expected = expected(argument);
    found.push_back(std::move(problem));
  } else {
    found = faults(argument, text);
  }
  for (base::Problem& problem : found) place(problem, argument.name);
  return found;
}

}  // namespace wetout::cli
