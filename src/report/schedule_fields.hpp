// The words of weather, room and limits in documents, and the keys that weather and schedule share.
#pragma once

#include <array>

#include "fields.hpp"
#include "numbers.hpp"
#include "wetout/base/cited.hpp"
#include "wetout/climate/core.hpp"
#include "wetout/climate/guard.hpp"
#include "wetout/climate/room.hpp"
#include "wetout/climate/weather.hpp"
#include "wetout/report/weather_document.hpp"
#include "wetout/schedule/limits.hpp"

namespace wetout::report {

template <>
struct Words<base::Standing> {
  using S = base::Standing;
  static constexpr std::array all = {S::standard, S::practice, S::memory, S::assumed,
                                     S::sheet,    S::fitted,   S::demo};
  static std::string_view word(base::Standing standing) { return base::to_string(standing); }
};
template <>
struct Words<climate::WeatherKind> {
  using K = climate::WeatherKind;
  static constexpr std::array all = {K::table, K::epw, K::nws, K::hourly_arrays};
  static std::string_view word(climate::WeatherKind kind) { return climate::to_string(kind); }
};
template <>
struct Words<climate::RoomKind> {
  using K = climate::RoomKind;
  static constexpr std::array all = {K::outdoors, K::unheated, K::heated};
  static std::string_view word(climate::RoomKind kind) {
    constexpr std::array<std::string_view, 3> words = {"outdoors", "unheated", "heated"};
    return words[static_cast<std::size_t>(kind)];
  }
};
template <>
struct Words<climate::HeaterKind> {
  using K = climate::HeaterKind;
  static constexpr std::array all = {K::electric, K::vented, K::unvented_gas};
  static std::string_view word(climate::HeaterKind kind) {
    constexpr std::array<std::string_view, 3> words = {"electric", "vented", "unvented gas"};
    return words[static_cast<std::size_t>(kind)];
  }
};
template <>
struct Words<climate::FoamKind> {
  using K = climate::FoamKind;
  static constexpr std::array all = {K::eps, K::xps, K::pu};
  static std::string_view word(climate::FoamKind foam) {
    constexpr std::array<std::string_view, 3> words = {"eps", "xps", "pu"};
    return words[static_cast<std::size_t>(foam)];
  }
};
template <>
struct Words<climate::Guard> {
  using G = climate::Guard;
  static constexpr std::array all = {G::none, G::normal, G::wide};
  static std::string_view word(climate::Guard guard) { return climate::to_string(guard); }
};
template <>
struct Words<schedule::Limit> {
  using L = schedule::Limit;
  static constexpr std::array all = {L::weather,    L::foul_air, L::cold,     L::warm,
                                     L::dew_margin, L::humidity, L::core_rise};
  static std::string_view word(schedule::Limit limit) { return schedule::to_string(limit); }
};
template <>
struct Words<schedule::State> {
  using S = schedule::State;
  static constexpr std::array all = {S::good, S::notice, S::refuse};
  static std::string_view word(schedule::State state) { return schedule::to_string(state); }
};

template <>
struct Fields<UnknownSpan> {
  static void visit(auto& v, auto& span) {
    v("from", span.from);
    v("to", span.to);
    v("of", span.of);
  }
};
template <>
struct Fields<WeatherRoom> {
  static void visit(auto& v, auto& room) {
    v("kind", room.kind);
    v("lag_h", room.lag, as::Hours{});
    v("minimum_c", room.minimum, as::Celsius{});
    v("heater", room.heater);
    v("humidity_max_pct", room.humidity_max, as::Percent{});
  }
};
template <>
struct Fields<WeatherGuard> {
  static void visit(auto& v, auto& guard) {
    v("kind", guard.guard);
    v("issued", guard.issued);
    v("from_k", guard.at_from, as::Kelvins{});
    v("to_k", guard.at_to, as::Kelvins{});
  }
};

}  // namespace wetout::report
