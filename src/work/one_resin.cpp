#include "one_resin.hpp"

#include <algorithm>
#include <chrono>
#include <utility>

#include "job_and_shop.hpp"
#include "wetout/base/words.hpp"

namespace wetout::work {
namespace {

constexpr double coldest_c = 0.0, hottest_c = 40.0;

// Lines of a data sheet as the shop file names them.
bool is_sheet_key(std::string_view key) {
  for (const std::string_view word :
       {"gel", "pot_life", "tack_free", "handle", "sand", "full_cure", "trim", "recoat", "tg",
        "catalyst", "chemistry", "light_cured", "parts"}) {
    if (key == word) return true;
  }
  return false;
}

base::Result<std::size_t> named(const std::vector<resin::Product>& resins, std::string_view typed,
                                std::string key) {
  std::vector<std::string> ids;
  for (const resin::Product& product : resins) ids.push_back(product.id);
  const auto found = base::matches(typed, ids);
  if (found.size() == 1) return found.front();
  std::string list;
  for (std::size_t i = 0; i < ids.size(); ++i) {
    const bool meant = found.empty() || std::find(found.begin(), found.end(), i) != found.end();
    if (meant) list += (list.empty() ? "" : ", ") + ids[i];
  }
  const auto near = base::nearest(base::slug(typed), ids);
  return base::fail(
      {.code = found.empty() ? "reference.resin" : "reference.ambiguous",
       .message = found.empty() ? "the shop has no such resin" : "several resins begin so",
       .key = std::move(key),
       .found = std::string(typed),
       .expected = list.empty() ? "a [[resin]] in the shop file" : list,
       .hint = found.empty() && near ? "did you mean \"" + *near + "\"?" : ""});
}

}  // namespace

base::Result<OneResin> find_resin(const Workshop& workshop, std::string_view typed) {
  return find_resin(workshop, std::string(typed), "RESIN");
}

base::Result<OneResin> find_resin(const Workshop& workshop, const std::optional<std::string>& typed,
                                  std::string key) {
  const auto path = find_shop(workshop, workshop.here / "job.toml");
  if (!path) {
    base::Problems problems = path.error();
    for (base::Problem& problem : problems) {
      problem.file.clear();
      problem.message = "there is no shop file here";
    }
    return base::fail(std::move(problems));
  }
  auto shop = files::read_shop(*path);
  if (!shop) return tl::unexpected(shop.error());
  const bool first = !typed && !shop->shop.resins.empty();
  const auto index = first ? base::Result<std::size_t>(0)
                           : named(shop->shop.resins, typed.value_or(""), std::move(key));
  if (!index) return tl::unexpected(index.error());
  const auto zone = time::Zone::named(shop->time_zone);
  if (!zone) return tl::unexpected(zone.error());
  const auto now = workshop.now(*zone);
  if (!now) return tl::unexpected(now.error());
  return OneResin{std::move(*shop), *index, *zone, *now};
}

base::Problems in_sheet(base::Problems problems, const OneResin& resin) {
  for (base::Problem& problem : problems) {
    if (is_sheet_key(problem.key)) {
      problem.key = "resin[" + std::to_string(resin.index) + "]." + problem.key;
    }
  }
  return files::locate(std::move(problems), resin.shop.source);
}

std::vector<laminate::Assumption> assumptions(const std::vector<std::string>& names,
                                              const std::string& resin,
                                              const resin::Defaults& defaults) {
  std::vector<laminate::Assumption> out;
  const auto list = [&](const auto& value, const char* unit) {
    if (std::find(names.begin(), names.end(), value.name) == names.end()) return;
    if constexpr (std::is_same_v<decltype(value.value), double>) {
      out.push_back({std::string(value.name),
                     value.value,
                     unit,
                     std::string(base::to_string(value.source.standing)),
                     std::string(value.source.locator),
                     {resin}});
    }
  };
  visit(defaults, list);
  visit(defaults.cure, list);
  return out;
}

base::Problems senseless_air(units::Temperature air, std::string_view code) {
  if (air.in_celsius() >= coldest_c - 1e-9 && air.in_celsius() <= hottest_c + 1e-9) return {};
  return {{.code = std::string(code),
           .message = "the air is outside what the models hold for",
           .key = "--air",
           .found = units::print(air, units::System::metric),
           .expected = "0 C to 40 C, e.g. --air 22C"}};
}

report::MissingLine missing_line(std::string line) {
  const auto gives = [&]() -> std::string_view {
    if (line == "pot_life") return "how long cups last; without it their times are rough";
    if (line == "gel") return "when laps can be trimmed; the measure of all other times";
    if (line == "tack_free") return "when dust no longer sticks and the board can be turned";
    if (line == "recoat") return "when the next coat holds without sanding between";
    if (line == "sand") return "when it can be sanded";
    if (line == "full_cure") return "when the board can be ridden";
    if (line == "tg") return "how far it cures in the cold, and what a warm box does";
    if (line == "catalyst") return "gel by dose and temperature";
    return "more of what the sheet knows";
  }();
  return {std::move(line), std::string(gives)};
}

int minutes_of_day(time::Instant now, const time::Zone& zone) {
  using namespace std::chrono;
  const auto wall = zone.wall(now);
  return static_cast<int>(duration_cast<minutes>(wall - floor<days>(wall)).count());
}

}  // namespace wetout::work
