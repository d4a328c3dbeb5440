#include "weather_assumptions.hpp"

#include <array>
#include <string_view>
#include <type_traits>
#include <utility>

#include "one_resin.hpp"

namespace wetout::work {
namespace {

using climate::FoamKind;
using climate::Guard;
using climate::RoomKind;

// In the unit of documents.
double number(double value, std::string_view /*unit*/) { return value; }
double number(units::Temperature value, std::string_view /*unit*/) { return value.in_celsius(); }
double number(units::TempDelta value, std::string_view /*unit*/) { return value.in_kelvin(); }
double number(units::Length value, std::string_view unit) {
  return unit == "mm" ? units::in_millimetres(value) : units::in_metres(value);
}
double number(units::Duration value, std::string_view unit) {
  return unit == "h" ? units::in_hours(value) : units::in_minutes(value);
}

class List {
 public:
  template <class T>
  void add(const base::Default<T>& value, std::string unit, std::string used_by) {
    const double shown = number(value.value, unit);
    out_.push_back({std::string(value.name),
                    shown,
                    std::move(unit),
                    std::string(base::to_string(value.source.standing)),
                    std::string(value.source.locator),
                    {std::move(used_by)}});
  }
  std::vector<laminate::Assumption> take() { return std::move(out_); }
  void add(std::vector<laminate::Assumption> more) {
    out_.insert(out_.end(), more.begin(), more.end());
  }

 private:
  std::vector<laminate::Assumption> out_;
};

void add_limits(const WeatherQuestion& question, const schedule::LimitDefaults& d, bool humidity,
                List& list) {
  const std::string by = "limits";
  const bool blushes = question.product.chemistry == resin::Chemistry::epoxy;
  if (!question.product.lowest_air) {
    list.add(d.cold_refuse, "C", by);
    if (blushes) list.add(d.cold_notice, "C", by);
  }
  if (humidity) {
    list.add(d.dew_margin, "K", by);
    list.add(d.humidity_before, "h", by);
    if (!question.product.humidity_limit) {
      list.add(d.humidity_refuse, "share", by);
      if (blushes) list.add(d.humidity_notice, "share", by);
    }
  }
  list.add(d.core_rise, "K", by);
}

void add_core(FoamKind foam, const climate::ClimateDefaults& d, List& list) {
  list.add(d.core_film, "W/(m2 K)", "core");
  const auto add = [&](const auto& density, const auto& conductivity, const auto& heat_capacity) {
    list.add(density, "kg/m3", "core");
    list.add(conductivity, "W/(m K)", "core");
    list.add(heat_capacity, "J/(kg K)", "core");
  };
  switch (foam) {
    case FoamKind::eps:
      return add(d.eps_density, d.eps_conductivity, d.eps_heat_capacity);
    case FoamKind::xps:
      return add(d.xps_density, d.xps_conductivity, d.xps_heat_capacity);
    case FoamKind::pu:
      return add(d.pu_density, d.pu_conductivity, d.pu_heat_capacity);
  }
}

// Near a forecast's making its first numbers count, far from it only the most.
void add_guard(const WeatherQuestion& question, const climate::ClimateDefaults& defaults,
               List& list) {
  const auto shift = [&](time::Instant at, const climate::ClimateDefaults& d) {
    const auto lead = std::chrono::duration<double>(at - question.use.issued).count();
    return climate::guard_shift(question.guard, units::seconds(lead), d);
  };
  using D = climate::ClimateDefaults;
  using Pick = base::Default<double>& (*)(D&);
  constexpr std::array<std::pair<Pick, std::string_view>, 4> picks = {{
      {[](D& d) -> base::Default<double>& { return d.guard_now; }, "K"},
      {[](D& d) -> base::Default<double>& { return d.guard_per_day; }, "K"},
      {[](D& d) -> base::Default<double>& { return d.guard_most; }, "K"},
      {[](D& d) -> base::Default<double>& { return d.guard_wide; }, "times"},
  }};
  for (const auto& [pick, unit] : picks) {
    D moved = defaults;
    base::Default<double>& value = pick(moved);
    bool moves = false;
    for (const double way : {-0.01, 0.01}) {
      const double usual = value.value;
      value.value += way * (value.high - value.low);
      moves = moves || shift(question.from, moved) != shift(question.from, defaults) ||
              shift(question.to, moved) != shift(question.to, defaults);
      value.value = usual;
    }
    if (moves) list.add(value, std::string(unit), "guard");
  }
}

}  // namespace

FoamKind core_foam(const resin::Product& product) {
  return product.styrene ? FoamKind::pu : FoamKind::eps;
}

std::vector<laminate::Assumption> weather_assumptions(const WeatherQuestion& question,
                                                      const WeatherAssumed& assumed, bool humidity,
                                                      const std::vector<std::string>& resin) {
  List list;
  list.add(assumed.work.wet_out, "min", "film");
  list.add(assumptions(resin, question.product.id, assumed.resin));
  add_limits(question, assumed.limits, humidity, list);
  list.add(assumed.work.core_thickness, "mm", "core");
  add_core(core_foam(question.product), assumed.climate, list);
  if (question.room.kind != RoomKind::outdoors && !question.room.lag) {
    list.add(assumed.climate.room_lag, "h", "room");
  }
  if (question.guard != Guard::none) add_guard(question, assumed.climate, list);
  const climate::Weather& weather = question.use.weather;
  if (weather.whole_degree_air || weather.whole_degree_dew_point) {
    list.add(assumed.reading.smooth_step, "min", "weather");
  }
  return list.take();
}

}  // namespace wetout::work
