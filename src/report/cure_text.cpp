#include <fmt/format.h>

#include <algorithm>
#include <cmath>

#include "cure_plot.hpp"
#include "phrases.hpp"
#include "resin_text.hpp"
#include "wetout/report/cure_document.hpp"
#include "wetout/time/print.hpp"
#include "wetout/time/read.hpp"

namespace wetout::report {
namespace {

using layout::plain;
using layout::whole;
using resin::Milestone;
using units::System;

struct Named {
  char letter;
  std::string_view name;
};
Named named(Milestone milestone) {
  switch (milestone) {
    case Milestone::gel:
      return {'G', "gel, trim from"};
    case Milestone::trim_until:
      return {'t', "trim until"};
    case Milestone::recoat_from:
      return {'R', "recoat from"};
    case Milestone::tack_free:
      return {'T', "tack-free"};
    case Milestone::handle:
      return {'H', "can be handled"};
    case Milestone::sandable:
      return {'S', "sandable"};
    case Milestone::recoat_until:
      return {'r', "recoat until"};
    case Milestone::full_cure:
      return {'F', "full cure"};
  }
  return {' ', ""};
}

std::string residual_name(const SheetTimeMet& residual, System system) {
  if (residual.what == "pot_life") {
    return residual.mass ? "pot life, " + weighed(*residual.mass, system) : "pot life";
  }
  for (const Milestone m : resin::milestones) {
    // Here a line of the sheet is meant, not what can be done then.
    if (residual.what == resin::to_string(m)) {
      return m == Milestone::gel ? "gel" : std::string(named(m).name);
    }
  }
  return plain(residual.what);
}

class Writer {
 public:
  Writer(const CureDocument& document, System system, const time::Zone& zone)
      : document_(document), system_(system), zone_(zone) {
    if (document.start) start_ = instant(*document.start);
  }

  std::string text() {
    top();
    plot();
    milestones();
    page_.blank();
    base::Notices notices = document_.notices;
    // The table says it.
    std::erase_if(notices, [](const base::Notice& n) { return n.code == "cure.not_reached"; });
    add_notices(page_, notices, system_);
    add_cautions(page_, document_.cautions);
    calibration();
    add_missing(page_, document_.calibration.missing);
    add_assumptions(page_, document_.assumptions, system_);
    return page_.text();
  }

 private:
  static std::optional<time::Instant> instant(const std::string& rfc3339) {
    const auto read = time::read_instant(rfc3339, time::Zone());
    return read ? std::optional(*read) : std::nullopt;
  }
  // "Sun 14 Jun 14:32"
  [[nodiscard]] std::string wall(time::Instant at) const {
    std::string text = time::print_wall(at, zone_);
    constexpr std::size_t year_and_clock = 11, year = 5;
    return text.erase(text.size() - year_and_clock, year);
  }
  [[nodiscard]] std::string temperature(units::Temperature t) const {
    return units::print(t, system_);
  }

  void top() {
    page_.line(layout::ends("CURE OF " + upper(plain(document_.resin)), plain(document_.name)));
    std::string what = "a film";
    if (document_.dose) what += " with " + units::print_percent(*document_.dose) + " catalyst";
    if (start_) what += " spread " + wall(*start_);
    std::string air;
    if (document_.air) air = "air " + temperature(*document_.air);
    if (document_.weather) {
      air = fmt::format("{} room, {}", document_.weather->room, plain(document_.weather->source));
    }
    page_.line(layout::ends(what, air));
    if (document_.warm_box) {
      page_.line(fmt::format("into a warm box of {} after {}; the core takes {}",
                             temperature(document_.warm_box->set),
                             units::print(document_.warm_box->after, system_),
                             temperature(document_.warm_box->hottest)));
    }
    page_.line(std::string(layout::page_columns, '-'));
  }

  // Full cure takes days: what is waited for with a brush in the hand would be squeezed together.
  [[nodiscard]] units::Duration worth_plotting() const {
    units::Duration last;
    for (const CureMilestone& m : document_.milestones) {
      if (m.after && m.name != Milestone::full_cure) last = std::max(last, *m.after);
    }
    if (last.si() > 0.0) return last;
    return document_.curve.back().after;
  }

  void plot() {
    if (document_.curve.size() < 2) return;
    CurvePlot plot{document_.curve, {}, plot_end(worth_plotting()), start_, zone_};
    for (const CureMilestone& m : document_.milestones) {
      if (m.after) plot.marks.push_back({named(m.name).letter, *m.after});
    }
    page_.line("conversion");
    for (const std::string& line : plot_text(plot)) page_.line(line);
    page_.blank();
  }

  void milestones() {
    const bool conversion = document_.chemistry == resin::Chemistry::epoxy;
    const auto row = [&](std::string_view letter, std::string_view name, std::string_view after,
                         std::string_view at, std::string_view air, std::string_view share,
                         std::string_view tg) {
      page_.line(layout::left(letter, 2) + layout::left(name, 17) + layout::right(after, 14) +
                 (start_ ? layout::right(at, 19) : "") + layout::right(air, 10) +
                 (conversion ? layout::right(share, 8) + layout::right(tg, 10) : ""));
    };
    row("", "", "after", "at", "air", "cured", "Tg");
    bool extrapolated = false, beyond = false;
    for (const CureMilestone& m : document_.milestones) {
      const auto [letter, name] = named(m.name);
      const std::string sign(1, letter);
      if (!m.reached) {
        page_.item(layout::left(sign, 2) + layout::left(name, 20), not_reached(m));
        continue;
      }
      extrapolated = extrapolated || m.extrapolated;
      beyond = beyond || m.beyond_air;
      std::string after = m.after ? units::print(*m.after, system_) : "";
      after += m.beyond_air ? "~" : m.extrapolated ? "*" : " ";
      const auto at = m.time ? instant(*m.time) : std::nullopt;
      row(sign, name, after, at ? wall(*at) : "", m.air ? temperature(*m.air) : "",
          m.conversion ? fmt::format("{:.0f} %", 100.0 * *m.conversion) : "",
          m.tg ? temperature(*m.tg) : "");
    }
    if (extrapolated) page_.line("* colder than the data sheet allows: reckoned beyond it");
    if (beyond) page_.line("~ after the end of the weather");
  }

  [[nodiscard]] std::string not_reached(const CureMilestone& m) const {
    std::string text = m.extrapolated ? "not claimed: colder than the data sheet allows"
                                      : "not reached in this air";
    if (!m.would_do) return text + ", and no constant temperature would do it";
    return fmt::format("{}; {} would do it", text, whole(temperature(*m.would_do)));
  }

  void calibration() {
    const CureCalibration& fit = document_.calibration;
    if (fit.energy_kj_mol) {
      page_.heading("Fitted to the data sheet",
                    fmt::format("activation energy {:.1f} kJ/mol", *fit.energy_kj_mol));
      page_.item("", fit.sheet_energy_kj_mol
                         ? fmt::format("The sheet's temperatures alone say {:.1f} kJ/mol.",
                                       *fit.sheet_energy_kj_mol)
                         : "The energy is the usual one: the sheet prints one temperature.");
    }
    if (!fit.residuals.empty()) residuals();
    base::Notices notices = fit.notices;
    std::erase_if(notices, [](const base::Notice& n) { return n.code == "cure.residual"; });
    add_notices(page_, notices, system_);
  }

  void residuals() {
    const auto row = [&](std::string_view what, std::string_view air, std::string_view printed,
                         std::string_view model, std::string_view met) {
      page_.line(layout::left(what, 26) + layout::right(air, 9) + layout::right(printed, 12) +
                 layout::right(model, 12) + "  " + std::string(met));
    };
    row("", "air", "sheet", "model", "");
    for (const SheetTimeMet& r : document_.calibration.residuals) {
      row(residual_name(r, system_), temperature(r.air), units::print(r.printed, system_),
          units::print(r.model, system_), met_text(r.printed, r.model, r.closure));
    }
  }

  const CureDocument& document_;
  System system_;
  const time::Zone& zone_;
  std::optional<time::Instant> start_;
  layout::Page page_;
};

}  // namespace

std::string to_text(const CureDocument& document, System system, const time::Zone& zone) {
  return Writer(document, system, zone).text();
}

}  // namespace wetout::report
