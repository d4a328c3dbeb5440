#include "wetout/time/zone.hpp"

#include <date/tz.h>

#include <algorithm>
#include <vector>

#include "wetout/base/shown.hpp"
#include "wetout/base/words.hpp"

namespace wetout::time {
namespace {

const date::time_zone* find(std::string_view name) {
  // Searched here and not by the library, which throws the same exception for an unknown name and
  // for a missing database.
  const std::vector<date::time_zone>& zones = date::get_tzdb().zones;
  const auto found = std::lower_bound(
      zones.begin(), zones.end(), name,
      [](const date::time_zone& zone, std::string_view wanted) { return zone.name() < wanted; });
  return found != zones.end() && found->name() == name ? &*found : nullptr;
}

// "los angeles" for "America/Los_Angeles": the city is what people know.
std::string city(std::string_view name) {
  return base::slug(
      name.substr(name.rfind('/') == std::string_view::npos ? 0 : name.rfind('/') + 1));
}

std::string hint_for(std::string_view name) {
  constexpr std::size_t longest_name = 64;
  const std::string wanted = name.size() > longest_name ? "" : city(name);
  std::vector<std::string> names;
  for (const date::time_zone& zone : date::get_tzdb().zones) {
    const bool has_city = zone.name().find('/') != std::string::npos;
    if (has_city && !wanted.empty() && city(zone.name()) == wanted) {
      return "did you mean \"" + zone.name() + "\"?";
    }
    names.push_back(zone.name());
  }
  if (const auto meant = base::nearest(name, names)) return "did you mean \"" + *meant + "\"?";
  return "names are a continent and a city, such as \"America/Los_Angeles\"";
}

date::local_seconds to_library(WallTime wall) {
  return date::local_seconds(wall.time_since_epoch());
}

}  // namespace

base::Result<Zone> Zone::named(std::string_view name) {
  Zone zone;
  if (name == "UTC") return zone;
  zone.rules_ = find(name);
  if (zone.rules_ == nullptr) {
    base::Problem problem;
    problem.code = "zone.unknown";
    problem.message = "this is not a time zone of the IANA database";
    problem.found = base::shown(name);
    problem.expected = "a time zone, e.g. \"America/Los_Angeles\"";
    problem.hint = hint_for(name);
    return base::fail(problem);
  }
  zone.name_ = zone.rules_->name();
  return zone;
}

std::chrono::seconds Zone::offset_at(Instant instant) const {
  return rules_ == nullptr ? std::chrono::seconds{0} : rules_->get_info(instant).offset;
}

WallTime Zone::wall(Instant instant) const {
  return WallTime(instant.time_since_epoch() + offset_at(instant));
}

WallReading Zone::read(WallTime wall) const {
  const auto with = [&](std::chrono::seconds offset) {
    return Instant(wall.time_since_epoch() - offset);
  };
  if (rules_ == nullptr) return {WallReading::Kind::once, with({}), with({})};
  const date::local_info info = rules_->get_info(to_library(wall));
  if (info.result == date::local_info::unique) {
    return {WallReading::Kind::once, with(info.first.offset), with(info.first.offset)};
  }
  const auto kind = info.result == date::local_info::ambiguous ? WallReading::Kind::twice
                                                               : WallReading::Kind::skipped;
  return {kind, with(info.first.offset), with(info.second.offset)};
}

}  // namespace wetout::time
