#include "pour_table.hpp"

#include <algorithm>

#include "layout.hpp"
#include "phrases.hpp"

namespace wetout::report {

std::vector<std::string> pour_table(const laminate::Batch& batch, units::System system,
                                    PourTable kind) {
  const bool bench = kind == PourTable::bench;
  const std::size_t name_columns = bench ? 26 : 24;
  const std::size_t add_columns = bench ? 14 : 12;
  const std::size_t reads_columns = bench ? 28 : 16;
  constexpr std::size_t volume_columns = 16;

  std::vector<units::Milligrams> masses;
  bool volumes = false;
  for (const laminate::Pour& pour : batch.pours) {
    masses.push_back(pour.add);
    masses.push_back(pour.reads);
    volumes = volumes || (!bench && pour.reads_volume);
  }
  const int decimals = gram_decimals(masses);

  std::vector<std::string> lines;
  const auto row = [&](std::string_view what, std::string_view add, std::string_view reads,
                       std::string_view volume) {
    std::string line = "  " + layout::left(what, name_columns) + layout::right(add, add_columns) +
                       layout::right(reads, reads_columns);
    if (volumes) line += layout::right(volume, volume_columns);
    lines.push_back(std::move(line));
  };
  row("pour", "add", bench ? "until the scale reads" : "scale reads", "in the cup");
  for (const laminate::Pour& pour : batch.pours) {
    row(layout::plain(pour.what), scale_grams(pour.add, decimals),
        scale_grams(pour.reads, decimals),
        pour.reads_volume ? units::print(*pour.reads_volume, system) : "");
  }
  return lines;
}

}  // namespace wetout::report
