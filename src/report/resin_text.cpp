#include "resin_text.hpp"

#include <fmt/format.h>

#include <cmath>

#include "phrases.hpp"

namespace wetout::report {

void add_missing(layout::Page& page, const std::vector<MissingLine>& missing) {
  if (missing.empty()) return;
  page.heading("Lines that the data sheet could add", "");
  for (const MissingLine& each : missing) {
    page.item(layout::left(layout::plain(each.line), 11), layout::plain(each.gives));
  }
}

void add_assumptions(layout::Page& page, const std::vector<laminate::Assumption>& assumptions,
                     units::System system) {
  if (assumptions.empty()) return;
  page.heading("Numbers that nobody gave", "");
  std::vector<std::string> each;
  for (const laminate::Assumption& assumption : assumptions) {
    each.push_back(layout::whole(fmt::format("{} {}", layout::plain(assumption.name),
                                             quantity(assumption.value, assumption.unit, system))));
  }
  page.item("", joined(each, "; "));
}

void add_notices(layout::Page& page, const base::Notices& notices, units::System system) {
  for (const base::Notice& notice : notices) page.item("* ", notice_text(notice, system));
}

void add_cautions(layout::Page& page, const std::vector<std::string>& cautions) {
  for (const std::string& caution : cautions) page.item("! ", layout::plain(caution));
}

std::string upper(std::string text) {
  for (char& c : text) {
    if (c >= 'a' && c <= 'z') c = static_cast<char>(c - 'a' + 'A');
  }
  return text;
}

std::string met_text(units::Duration printed, units::Duration model, bool closure) {
  const double off = std::round(100.0 * (model / printed - 1.0));
  if (off == 0.0) return closure ? "fitted to it" : "as printed";
  if (closure) return "not met";
  return fmt::format("{:.0f} % {}", std::abs(off), off > 0.0 ? "later" : "sooner");
}

}  // namespace wetout::report
