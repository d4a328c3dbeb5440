#include <fmt/format.h>

#include <algorithm>
#include <cmath>

#include "phrases.hpp"
#include "resin_text.hpp"
#include "schedule_fields.hpp"
#include "weather_chart.hpp"
#include "wetout/time/print.hpp"

namespace wetout::report {
namespace {

using layout::plain;
using layout::whole;
using schedule::Limit;
using schedule::State;
using units::System;

constexpr std::size_t label_columns = 8;
constexpr std::size_t hour_columns = (layout::page_columns - label_columns) / 24;
constexpr std::size_t hours_between_numbers = 2;
constexpr double metres_per_second_in_mph = 0.44704;

// "14:05"
std::string clock(int minute) { return fmt::format("{:02}:{:02}", minute / 60, minute % 60); }

std::string spans_text(const std::vector<ChartSpan>& spans) {
  std::vector<std::string> each;
  for (const ChartSpan& span : spans) each.push_back(clock(span.from) + "-" + clock(span.to));
  return joined(each, ", ");
}

class Writer {
 public:
  Writer(const WeatherDocument& document, System system, const time::Zone& zone)
      : document_(document), system_(system), zone_(zone) {}

  std::string text() {
    top();
    for (const ChartDay& day : chart_days(document_, zone_)) block(day);
    limits();
    page_.blank();
    base::Notices notices = document_.notices;
    // The top says it.
    std::erase_if(notices, [](const base::Notice& n) { return n.code == "weather.placed"; });
    add_notices(page_, notices, system_);
    add_assumptions(page_, document_.assumptions, system_);
    return page_.text();
  }

 private:
  // "Sun 14 Jun 14:32"
  [[nodiscard]] std::string wall(const std::string& rfc3339) const {
    std::string text = time::print_wall(instant_of(rfc3339), zone_);
    constexpr std::size_t year_and_clock = 11, year = 5;
    return text.erase(text.size() - year_and_clock, year);
  }
  [[nodiscard]] bool us() const { return system_ == System::us; }
  [[nodiscard]] std::string degree() const { return us() ? "°F" : "°C"; }
  [[nodiscard]] double shown(units::Temperature t) const {
    return us() ? t.in_fahrenheit() : t.in_celsius();
  }
  [[nodiscard]] double shown(units::TempDelta d) const {
    return us() ? d.in_kelvin() * 1.8 : d.in_kelvin();
  }

  // --- before the days

  void top() {
    page_.line(layout::ends("WEATHER FOR A FILM OF " + upper(plain(document_.resin)),
                            plain(document_.name)));
    beside(wall(document_.from) + " to " + wall(document_.to), core());
    beside(file(), room());
    page_.line(std::string(layout::page_columns, '-'));
    if (document_.placed) {
      page_.item("", "A typical or past year on these dates: a climate, not a forecast.");
    }
    if (document_.first_resin) {
      page_.item("", plain(document_.resin) + " is the shop's first resin; --resin names another.");
    }
    page_.item("", next_good());
    page_.blank();
    page_.item("", "Started at such an hour, a film is");
    page_.line("  =       good");
    page_.item("  ~       ", "good, but to be washed before it is scuffed or sanded");
    page_.item("  letter  ", "refused, for the reason below the day");
    page_.item("", rows_text());
  }

  [[nodiscard]] std::string rows_text() const {
    const std::string units = fmt::format("in {} every {} hours.", degree(), hours_between_numbers);
    const std::string air = is_outdoors() ? "air" : "room: its air";
    const bool humidity =
        std::any_of(document_.series.begin(), document_.series.end(),
                    [](const WeatherHour& h) { return h.dew_margin.has_value(); });
    if (!humidity) return air + ", " + units;
    return air + "; margin: how far the board is above the dew point; both " + units;
  }

  // On one line where both fit.
  void beside(const std::string& left, const std::string& right) {
    if (layout::columns(left) + layout::columns(right) + 2 <= layout::page_columns) {
      page_.line(layout::ends(left, right));
    } else {
      page_.item("", left);
      page_.item("", right);
    }
  }

  [[nodiscard]] bool is_outdoors() const {
    return document_.room.kind == climate::RoomKind::outdoors;
  }
  [[nodiscard]] std::string air_row() const { return is_outdoors() ? "air" : "room"; }
  [[nodiscard]] std::string room() const {
    const WeatherRoom& room = document_.room;
    if (is_outdoors()) return "outdoors in the shade";
    std::string text = fmt::format("{} room, lag {}", Words<climate::RoomKind>::word(room.kind),
                                   units::print(room.lag, system_));
    if (room.minimum) text += ", at least " + units::print(*room.minimum, system_);
    if (room.humidity_max) text += ", dehumidified to " + units::print_percent(*room.humidity_max);
    return text;
  }
  [[nodiscard]] std::string core() const {
    const WeatherCore& core = document_.core;
    std::string foam = upper(std::string(Words<climate::FoamKind>::word(core.foam)));
    const std::string thick =
        us() ? units::print_inches(core.thickness, system_) : units::print(core.thickness, system_);
    return fmt::format("{} core {} thick", foam, thick);
  }
  [[nodiscard]] std::string file() const {
    std::string text = plain(document_.source);
    if (!document_.place.empty()) text += " (" + plain(document_.place) + ")";
    return text;
  }

  [[nodiscard]] std::string next_good() const {
    const auto found = std::find_if(document_.windows.begin(), document_.windows.end(),
                                    [](const StartWindow& w) { return w.ok == State::good; });
    if (found == document_.windows.end()) {
      const bool notice = std::any_of(document_.windows.begin(), document_.windows.end(),
                                      [](const StartWindow& w) { return w.ok == State::notice; });
      return notice ? "No good start in this time, but some with a notice."
                    : "No start in this time.";
    }
    return fmt::format("Next good start: {}, until {}.", whole(wall(found->from)),
                       whole(wall(found->to)));
  }

  // --- a day

  void block(const ChartDay& day) {
    page_.blank();
    const std::string aside = outdoors(day);
    page_.line(layout::left(title(day), layout::page_columns - layout::columns(aside)) + aside);
    numbers("", day, [](std::size_t hour, const WeatherHour*) {
      return std::optional<std::string>(std::to_string(hour));
    });
    numbers(air_row() + " " + degree(), day, [&](std::size_t, const WeatherHour* hour) {
      return hour == nullptr ? std::nullopt : number(hour->room);
    });
    if (knows_humidity(day)) {
      numbers("margin", day, [&](std::size_t, const WeatherHour* hour) {
        return hour == nullptr ? std::nullopt : number(hour->dew_margin);
      });
    }
    page_.line(layout::left("start", label_columns) + day.starts);
    for (const ChartReason& reason : day.reasons) {
      page_.item(fmt::format("   {}    ", reason.sign),
                 spans_text(reason.spans) + " " + sentence(reason));
    }
  }

  static bool knows_humidity(const ChartDay& day) {
    return std::any_of(day.hours.begin(), day.hours.end(),
                       [](const WeatherHour* hour) { return hour != nullptr && hour->dew_margin; });
  }

  [[nodiscard]] std::string title(const ChartDay& day) const {
    const std::chrono::year_month_day date(std::chrono::floor<std::chrono::days>(day.midnight));
    // As print_wall() names it, at a clock time that needs no zone.
    const auto noon = std::chrono::sys_days(date) + std::chrono::hours(12);
    const std::string text = time::print_wall(noon, time::Zone());
    constexpr std::size_t year_and_clock = 11;
    return text.substr(0, text.size() - year_and_clock);
  }

  template <class Value>
  [[nodiscard]] std::optional<std::string> number(const std::optional<Value>& value) const {
    if (!value) return std::nullopt;
    return units::print_number(shown(*value), 0);
  }

  // Each under the column of its hour.
  template <class Each>
  void numbers(std::string_view label, const ChartDay& day, Each each) {
    std::string line(24 * hour_columns, ' ');
    for (std::size_t hour = 0; hour < 24; hour += hours_between_numbers) {
      const auto text = each(hour, day.hours.at(hour));
      if (text) line.replace(hour * hour_columns, text->size(), *text);
    }
    page_.line(layout::left(label, label_columns) + line);
  }

  [[nodiscard]] std::string outdoors(const ChartDay& day) const {
    std::optional<units::Temperature> low, high;
    std::optional<double> wind, sun;
    for (const WeatherHour* hour : day.hours) {
      if (hour == nullptr) continue;
      if (hour->air) {
        low = std::min(low.value_or(*hour->air), *hour->air);
        high = std::max(high.value_or(*hour->air), *hour->air);
      }
      if (hour->wind_m_s) wind = std::max(wind.value_or(0.0), *hour->wind_m_s);
      if (hour->sun_w_m2) sun = std::max(sun.value_or(0.0), *hour->sun_w_m2);
    }
    std::vector<std::string> each;
    if (low) {
      each.push_back(fmt::format("outdoors {} to {} {}", units::print_number(shown(*low), 0),
                                 units::print_number(shown(*high), 0), degree()));
    }
    if (wind) {
      each.push_back(us() ? fmt::format("wind to {:.0f} mph", *wind / metres_per_second_in_mph)
                          : fmt::format("wind to {:.0f} m/s", *wind));
    }
    if (sun) each.push_back(fmt::format("sun to {:.0f} W/m²", *sun));
    return joined(each, ", ");
  }

  // --- why

  [[nodiscard]] std::string sentence(const ChartReason& reason) const {
    const StartWindow& window = *reason.window;
    if (window.ok == State::good) return "good";
    std::string text = plain(window.reason);
    if (window.limit == Limit::weather) {
      return text + (window.reason == weather_gap
                         ? ": the air is not known all the time that the film is open"
                         : ": the film would still be open then");
    }
    if (window.limit == Limit::foul_air) {
      return text + ": its water and carbon monoxide stay in the room";
    }
    if (reason.worst == nullptr) return text;
    const auto [value, guarded, limit] = amounts(*reason.worst);
    switch (*window.limit) {
      case Limit::cold:
        text += ": down to " + whole(value);
        break;
      case Limit::dew_margin:
        text += ": margin down to " + whole(value);
        break;
      case Limit::core_rise:
        text += ": by up to " + whole(value) + " before gel";
        break;
      default:
        text += ": up to " + whole(value);
    }
    if (guarded != value) text += ", " + whole(guarded + " with the guard");
    return text + ", " + whole((window.ok == State::notice ? "notice from " : "limit ") + limit);
  }

  struct Amounts {
    std::string value, guarded, limit;
  };
  // With as many decimals as it takes to see that the limit is not kept.
  [[nodiscard]] Amounts amounts(const WorstStart& worst) const {
    const auto with = [&](int decimals) {
      const auto one = [&](double value) {
        if (worst.unit == "share") return units::print_number(value * 100.0, decimals) + " %";
        const double number = worst.unit == "C" ? shown(units::Temperature::celsius(value))
                                                : shown(units::TempDelta::kelvin(value));
        return units::print_number(number, decimals) + " " + degree();
      };
      return Amounts{one(worst.value), one(worst.guarded), one(worst.limit)};
    };
    constexpr int most_decimals = 2;
    int decimals = worst.unit == "share" || (worst.unit == "C" && us()) ? 0 : 1;
    Amounts found = with(decimals);
    while (found.guarded == found.limit && decimals < most_decimals) found = with(++decimals);
    return found;
  }

  void limits() {
    const WeatherGuard& guard = document_.guard;
    std::string moved = fmt::format("guard {}", climate::to_string(guard.guard));
    if (guard.guard != climate::Guard::none) {
      const std::string first = units::print(guard.at_from, system_);
      const std::string last = units::print(guard.at_to, system_);
      moved += ": forecast moved by " + (first == last ? first : first + " to " + last);
    }
    page_.heading("Limits while a film is open", moved);
    std::vector<std::string> each;
    for (const LimitInForce& limit : document_.limits) each.push_back(limit_text(limit));
    page_.item("", fmt::format("Open from start to tack-free, spread in {}.",
                               whole(units::print(document_.wet_out, system_))));
    page_.item("", joined(each, "; ") + ".");
  }

  [[nodiscard]] std::string limit_text(const LimitInForce& limit) const {
    const auto amount = [&](double value) { return whole(quantity(value, limit.unit, system_)); };
    std::string text;
    switch (limit.limit) {
      case Limit::cold:
        text = "air at least " + amount(*limit.least);
        break;
      case Limit::warm:
        text = "air at most " + amount(*limit.most);
        break;
      case Limit::dew_margin:
        text = "board at least " + amount(*limit.least) + " above the dew point";
        break;
      case Limit::humidity:
        text = "humidity at most " + amount(*limit.most);
        break;
      case Limit::core_rise:
        text = "core until gel at most " + amount(*limit.most) + " warmer than when wet out";
        break;
      case Limit::weather:
      case Limit::foul_air:
        break;
    }
    if (limit.before) text += ", from " + whole(units::print(*limit.before, system_)) + " before";
    if (limit.gives == State::notice) text += ", else a notice";
    return text + " (" + std::string(base::to_string(limit.standing)) + ")";
  }

  const WeatherDocument& document_;
  System system_;
  const time::Zone& zone_;
  layout::Page page_;
};

}  // namespace

std::string to_text(const WeatherDocument& document, System system, const time::Zone& zone) {
  return Writer(document, system, zone).text();
}

}  // namespace wetout::report
