#include "drawn_board.hpp"

namespace wetout::work {

base::Result<report::DrawnBoard> drawn_board(const board::Spec& spec, units::System system) {
  const auto hull = board::Hull::make(spec);
  if (!hull) return tl::unexpected(hull.error());
  report::DrawnBoard drawn;
  drawn.outline = hull->outline(units::millimetres(0.1));
  const units::Length foot =
      system == units::System::us ? units::inches(12.0) : units::millimetres(300.0);
  const std::string shown = units::print(foot, system);
  const auto across = [&](std::string place, units::Length from_tail) {
    drawn.across.push_back({std::move(place), from_tail, hull->width(from_tail)});
  };
  const bool is_long = hull->length() > 3.0 * foot;
  if (is_long) across(shown + " from the nose", hull->length() - foot);
  across("wide point", hull->wide_point());
  if (is_long) across(shown + " from the tail", foot);
  return drawn;
}

}  // namespace wetout::work
