#include "phrases.hpp"

#include <fmt/format.h>

#include <algorithm>
#include <cmath>
#include <cstdint>
#include <numeric>

#include "layout.hpp"

namespace wetout::report {
namespace {

using units::System;

std::string length_text(units::Length length, System system) {
  // Films and plies are thinner than this, laps and patches are not.
  const bool film = std::abs(units::in_millimetres(length)) < 6.0 && length != units::Length{};
  if (film) return units::print_thickness(length, system);
  const bool short_enough = std::abs(units::in_inches(length)) < 48.0;
  return short_enough ? units::print_inches(length, system) : units::print(length, system);
}

}  // namespace

std::string quantity(double value, std::string_view unit, System system) {
  const auto plain = [&](int decimals, std::string_view word) {
    std::string out = units::print_number(value, decimals);
    if (!word.empty()) out.append(" ").append(layout::plain(word));
    return out;
  };
  if (unit == "m") return length_text(units::metres(value), system);
  if (unit == "mm") return length_text(units::millimetres(value), system);
  if (unit == "m2") return units::print(units::square_metres(value), system);
  if (unit == "ml") return units::print(units::millilitres(value), system);
  if (unit == "l") return units::print_litres(units::litres(value), system);
  if (unit == "g") {
    const std::string in_grams = plain(1, unit);
    if (system == System::metric) return in_grams;
    return in_grams + " (" + units::print(units::grams(value), system) + ")";
  }
  if (unit == "kg") return units::print_weight(units::kilograms(value), system);
  if (unit == "g/m") return units::print(units::grams_per_metre(value), system);
  if (unit == "g/m2") return units::print(units::grams_per_square_metre(value), system);
  if (unit == "kg/m3") return units::print(units::kilograms_per_cubic_metre(value), system);
  if (unit == "min") return units::print(units::minutes(value), system);
  if (unit == "h") return units::print(units::hours(value), system);
  if (unit == "min/m2") return units::print(units::minutes_per_square_metre(value), system);
  if (unit == "C") return units::print(units::Temperature::celsius(value), system);
  if (unit == "K") return units::print(units::TempDelta::kelvin(value), system);
  if (unit == "share") return units::print_percent(value);
  return plain(3, unit);
}

int gram_decimals(std::span<const units::Milligrams> masses) {
  int decimals = 0;
  for (const units::Milligrams mass : masses) {
    std::int64_t rest = mass.count() % 1000;
    int needed = rest == 0 ? 0 : 3;
    for (; needed > 0 && rest % 10 == 0; rest /= 10) --needed;
    decimals = std::max(decimals, needed);
  }
  return decimals;
}

std::string scale_grams(units::Milligrams mass, int decimals) {
  return fmt::format("{:.{}f} g", mass.in_grams(), decimals);
}

std::string weighed(units::Milligrams mass, System system) {
  const std::string on_scale = scale_grams(mass, gram_decimals(std::span(&mass, 1)));
  if (system == System::metric) return on_scale;
  return on_scale + " (" + units::print(mass.mass(), system) + ")";
}

std::vector<units::Milligrams> printed_parts(const std::vector<units::Milligrams>& parts,
                                             units::Milligrams total, int decimals) {
  std::int64_t step = 1000;  // one step of the last printed digit, in milligrams
  for (int i = 0; i < decimals; ++i) step /= 10;
  const auto steps_below = [step](std::int64_t mg) {
    return mg >= 0 ? mg / step : -((step - 1 - mg) / step);
  };
  std::vector<std::int64_t> out;
  std::vector<std::size_t> order(parts.size());
  std::iota(order.begin(), order.end(), std::size_t{0});
  std::int64_t missing = steps_below(total.count() + step / 2);
  for (const units::Milligrams part : parts) {
    out.push_back(steps_below(part.count()));
    missing -= out.back();
  }
  const auto remainder = [&](std::size_t i) { return parts[i].count() - out[i] * step; };
  std::stable_sort(order.begin(), order.end(),
                   [&](std::size_t a, std::size_t b) { return remainder(a) > remainder(b); });
  for (const std::size_t i : order) {
    if (missing <= 0) break;
    ++out[i];
    --missing;
  }
  std::vector<units::Milligrams> printed;
  for (const std::int64_t steps : out) printed.emplace_back(steps * step);
  return printed;
}

std::string notice_values(const base::Notice& notice, System system) {
  std::string value = notice.value ? quantity(*notice.value, notice.unit, system) : "";
  std::string limit = notice.limit ? quantity(*notice.limit, notice.unit, system) : "";
  // "12 min, limit 12 min" would say nothing.
  if (!value.empty() && value == limit && *notice.value != *notice.limit && notice.unit == "min") {
    value = units::print_number(*notice.value, 1) + " min";
    limit = units::print_number(*notice.limit, 1) + " min";
  }
  std::string out = value.empty() ? "" : layout::whole(value);
  if (!value.empty() && !limit.empty()) out += ", ";
  if (!limit.empty()) out += layout::whole("limit " + limit);
  return out;
}

std::string notice_text(const base::Notice& notice, System system) {
  const std::string values = notice_values(notice, system);
  const std::string text = layout::plain(notice.text);
  return values.empty() ? text : fmt::format("{} - {}", text, values);
}

std::string subject_text(const base::Notice& notice) {
  const bool named = notice.text.find(notice.subject) != std::string::npos;  // also when empty
  return named ? std::string() : fmt::format("{}: ", layout::plain(notice.subject));
}

std::string ratio_text(const laminate::Ratio& ratio) {
  std::string out = units::print_number(ratio.a, 2) + " : " + units::print_number(ratio.b, 2);
  out += ratio.by == resin::By::mass ? " by mass" : " by volume";
  if (ratio.tolerance > 0.0) out += ", part B within " + units::print_percent(ratio.tolerance);
  return out;
}

bool wets_a_face(units::Area area) { return area > units::square_metres(0.005); }

std::string kind_on_face(laminate::CoatKind kind, board::Face face) {
  return fmt::format("{} on the {}", laminate::to_string(kind), laminate::to_string(face));
}

std::string use_within_text(units::Duration time, System system) {
  // A stored time of 17 min may come back as 16.999...: half a hundredth is the document's step.
  const double minutes = std::floor(units::in_minutes(time) + 0.005);
  if (minutes >= 1.0) return units::print(units::minutes(minutes), system);
  return fmt::format("{:.0f} s", std::floor(units::in_seconds(time)));
}

std::string about_temperature(units::Temperature peak, System system) {
  const bool us = system == System::us;
  const double step = us ? 100.0 / 9.0 : 10.0;  // 20 F
  const double zero = us ? -160.0 / 9.0 : 0.0;  // 0 F
  const double about = zero + step * std::round((peak.in_celsius() - zero) / step);
  return "about " + units::print(units::Temperature::celsius(about), system);
}

std::string ply_placement(const laminate::PlyNeed& ply, units::System system) {
  std::vector<std::string> words;
  const bool from_the_end = !ply.from_tail || *ply.from_tail == units::Length{};
  if (ply.to && from_the_end) {
    words.push_back("from the tail to " + layout::whole(units::print(*ply.to, system)));
  } else if (ply.from_tail || ply.to) {
    const units::Length from = ply.from_tail.value_or(units::Length{});
    words.push_back(
        ply.to
            ? fmt::format("{} to {} from the tail", layout::whole(units::print(from, system)),
                          layout::whole(units::print(*ply.to, system)))
            : fmt::format("from {} from the tail on", layout::whole(units::print(from, system))));
  }
  if (ply.width) words.push_back(layout::whole(units::print_inches(*ply.width, system) + " wide"));
  if (ply.lap > units::Length{}) {
    words.push_back(layout::whole(units::print_inches(ply.lap, system) + " laps"));
  }
  return words.empty() ? "to the apex" : joined(words, ", ");
}

std::string foam_text(board::Foam foam) {
  std::string out(laminate::to_string(foam));
  for (char& c : out) {
    if (c >= 'a' && c <= 'z') c = static_cast<char>(c - 'a' + 'A');
  }
  return out;
}

std::string when_text(std::string_view rfc3339) {
  constexpr std::size_t offset_at = 19;  // YYYY-MM-DDTHH:MM:SS
  if (rfc3339.size() < offset_at || rfc3339[10] != 'T') return layout::plain(rfc3339);
  std::string_view offset = rfc3339.substr(offset_at);
  if (offset.starts_with('.')) {
    offset.remove_prefix(std::min(offset.find_first_of("+-Z"), offset.size()));
  }
  return layout::plain(fmt::format("{} {} {}", rfc3339.substr(0, 10), rfc3339.substr(11, 5),
                                   offset == "Z" ? "UTC" : offset));
}

std::string joined(const std::vector<std::string>& words, std::string_view between) {
  return fmt::format("{}", fmt::join(words, between));
}

std::vector<BatchGroup> group_batches(const std::vector<laminate::Batch>& batches) {
  std::vector<BatchGroup> groups;
  for (const laminate::Batch& batch : batches) {
    if (!groups.empty()) {
      laminate::Batch as_before = batch;
      as_before.n = groups.back().batch->n;
      if (as_before == *groups.back().batch) {
        groups.back().last = batch.n;
        continue;
      }
    }
    groups.push_back({batch.n, batch.n, &batch});
  }
  return groups;
}

std::string group_title(const BatchGroup& group, std::size_t all) {
  if (all == 1) return "One batch";
  if (group.first == group.last) return fmt::format("Batch {} of {}", group.first, all);
  return fmt::format("Batches {}-{} of {}, each", group.first, group.last, all);
}

}  // namespace wetout::report
