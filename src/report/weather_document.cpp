#include "wetout/report/weather_document.hpp"

#include "json_writer.hpp"
#include "plan_fields.hpp"
#include "schedule_fields.hpp"

namespace wetout::report {

template <>
struct Fields<WeatherHour> {
  static void visit(auto& v, auto& hour) {
    v("time", hour.time);
    v("air_c", hour.air, as::Celsius{});
    v("rh_pct", hour.humidity, as::Percent{});
    v("dew_c", hour.dew_point, as::Celsius{});
    v("room_c", hour.room, as::Celsius{});
    v("core_c", hour.core, as::Celsius{});
    v("dew_margin_c", hour.dew_margin, as::Kelvins{});
    v("room_dew_c", hour.room_dew_point, as::Celsius{});
    v("room_rh_pct", hour.room_humidity, as::Percent{});
    v("wind_m_s", hour.wind_m_s, as::Share{});
    v("sun_w_m2", hour.sun_w_m2, as::Share{});
  }
};
template <>
struct Fields<WorstStart> {
  static void visit(auto& v, auto& worst) {
    v("start", worst.start);
    v("at", worst.at);
    v("value", worst.value, as::Plain{});
    v("guarded", worst.guarded, as::Plain{});
    v("limit", worst.limit, as::Plain{});
    v("unit", worst.unit);
    v("breaks_at_k", worst.breaks_at_kelvin, as::Plain{});
  }
};
template <>
struct Fields<StartWindow> {
  static void visit(auto& v, auto& window) {
    v("from", window.from);
    v("to", window.to);
    v("ok", window.ok);
    v("limit", window.limit);
    v("reason", window.reason);
    v("worst", window.worst);
  }
};
template <>
struct Fields<LimitInForce> {
  static void visit(auto& v, auto& limit) {
    v("name", limit.limit);
    v("gives", limit.gives);
    v("min", limit.least, as::Plain{});
    v("max", limit.most, as::Plain{});
    v("unit", limit.unit);
    v("standing", limit.standing);
    v("before_min", limit.before, as::Minutes{});
  }
};
template <>
struct Fields<WeatherCore> {
  static void visit(auto& v, auto& core) {
    v("foam", core.foam);
    v("thickness_mm", core.thickness, as::Millimetres{});
    v("lag_min", core.lag, as::Minutes{});
  }
};
template <>
struct Fields<WeatherDocument> {
  static void visit(auto& v, auto& document) {
    v("program", document.program);
    v("made", document.made);
    v("source", document.source);
    v("kind", document.kind);
    v("place", document.place);
    v("placed", document.placed);
    v("from", document.from);
    v("to", document.to);
    v("hours", document.hours, as::Share{});
    v("gaps", document.gaps);
    v("series", document.series);
    v("windows", document.windows);
    v("resin", document.resin);
    v("name", document.name);
    v("first_resin", document.first_resin);
    v("wet_out_min", document.wet_out, as::Minutes{});
    v("guard", document.guard);
    v("room", document.room);
    v("core", document.core);
    v("limits", document.limits);
    v("assumptions", document.assumptions);
    v("notices", document.notices);
  }
};

std::string to_json(const WeatherDocument& document) {
  return document_json(weather_format, document);
}

}  // namespace wetout::report
