// Small phrases that several texts share: quantities, names, notices, pours.
#pragma once

#include <span>
#include <string>
#include <string_view>
#include <vector>

#include "wetout/base/notice.hpp"
#include "wetout/laminate/plan.hpp"
#include "wetout/units/print.hpp"

namespace wetout::report {

/// A value with one of the unit words of notices and assumptions, in the reader's units. A word
/// that is not known is printed behind the number as it stands.
std::string quantity(double value, std::string_view unit, units::System system);

/// Decimals of a gram needed to print all of these exactly, at most 3.
int gram_decimals(std::span<const units::Milligrams> masses);
/// "292 g", "292.50 g": as a scale shows it.
std::string scale_grams(units::Milligrams mass, int decimals);
/// To the scale's last digit; for `us` readers "292.5 g (10.3 oz)": the scale shows grams in both.
std::string weighed(units::Milligrams mass, units::System system);

/// The parts of a sum as printed with `decimals`, adding up to the printed total: the largest
/// remainders are rounded up.
std::vector<units::Milligrams> printed_parts(const std::vector<units::Milligrams>& parts,
                                             units::Milligrams total, int decimals);

/// "cloth does not reach - 29 1/2 in, limit 30 in".
std::string notice_text(const base::Notice& notice, units::System system);
/// "29 1/2 in, limit 30 in", or nothing.
std::string notice_values(const base::Notice& notice, units::System system);
/// "e4: ", or nothing where the text names its subject itself.
std::string subject_text(const base::Notice& notice);

/// "2 : 1 by volume, part B within 3 %".
std::string ratio_text(const laminate::Ratio& ratio);

/// False for what is poured into holes: its area would print as nothing.
bool wets_a_face(units::Area area);

/// "laminate on the bottom".
std::string kind_on_face(laminate::CoatKind kind, board::Face face);

/// Whole minutes rounded down, so that nobody is told too long; under one minute in seconds.
std::string use_within_text(units::Duration time, units::System system);

/// A peak as far as it is known: to 20 F or 10 C.
std::string about_temperature(units::Temperature peak, units::System system);

/// "from the tail to 22 in, 2 in laps": where a ply lies on its face.
std::string ply_placement(const laminate::PlyNeed& ply, units::System system);

/// "EPS": foam as the trade writes it.
std::string foam_text(board::Foam foam);

/// "2026-05-02T18:20:00-07:00" as "2026-05-02 18:20 -07:00".
std::string when_text(std::string_view rfc3339);

std::string joined(const std::vector<std::string>& words, std::string_view between);

/// Consecutive batches that are mixed alike: [first, last] as printed numbers.
struct BatchGroup {
  int first = 0;
  int last = 0;
  const laminate::Batch* batch = nullptr;
};
std::vector<BatchGroup> group_batches(const std::vector<laminate::Batch>& batches);
/// "Batch 2 of 4", "Batches 1-3 of 4, each", "One batch".
std::string group_title(const BatchGroup& group, std::size_t all);

}  // namespace wetout::report
