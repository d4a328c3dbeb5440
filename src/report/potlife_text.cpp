#include <fmt/format.h>

#include <algorithm>
#include <cmath>

#include "phrases.hpp"
#include "resin_text.hpp"
#include "wetout/report/potlife_document.hpp"

namespace wetout::report {
namespace {

using layout::plain;
using layout::whole;
using units::System;

constexpr std::size_t label_columns = 15;
constexpr std::size_t mass_columns = 19, dose_columns = 12, cell_columns = 12;
/// A peak is no better known than this.
constexpr double peak_spread_kelvin = 40.0;
/// A cup that warms by less than this only gets warm.
constexpr double warm_kelvin = 20.0;
constexpr double hot_to_hold_c = 60.0;

class Writer {
 public:
  Writer(const PotLifeDocument& document, System system, std::optional<int> now_clock)
      : document_(document), answer_(document.answer), system_(system), now_clock_(now_clock) {}

  std::string text() {
    top();
    if (answer_.use_within) {
      cup();
      film();
    }
    doses();
    grid();
    page_.blank();
    base::Notices notices = document_.notices;
    // Said above, and what to do about it below.
    std::erase_if(notices, [](const base::Notice& n) {
      return n.code == "cup.runs_away" || n.code == "cure.residual";
    });
    add_notices(page_, notices, system_);
    add_cautions(page_, document_.cautions);
    sheet();
    add_missing(page_, document_.missing);
    add_assumptions(page_, document_.assumptions, system_);
    return page_.text();
  }

 private:
  void row(std::string_view label, std::string_view text) {
    page_.item(layout::left(label, label_columns), text);
  }
  [[nodiscard]] std::string duration(units::Duration d) const {
    return whole(units::print(d, system_));
  }
  [[nodiscard]] std::string temperature(units::Temperature t) const {
    return whole(units::print(t, system_));
  }

  void top() {
    page_.line(layout::ends("POT LIFE OF " + upper(plain(answer_.resin)), plain(document_.name)));
    std::string what = "a film";
    if (answer_.mass) {
      what = weighed(*answer_.mass, system_);
      what += answer_.cup ? " in the cup " + plain(*answer_.cup) : " in a cup as high as wide";
    }
    page_.line(
        layout::ends(what, answer_.air == answer_.resin_temp
                               ? "air and resin " + units::print(answer_.air, system_)
                               : fmt::format("air {}, resin {}", units::print(answer_.air, system_),
                                             units::print(answer_.resin_temp, system_))));
    page_.line(std::string(layout::page_columns, '-'));
  }

  void cup() {
    std::string use = use_within_text(*answer_.use_within, system_);
    if (now_clock_) {
      constexpr int day = 24 * 60;
      const double minutes = std::floor(units::in_minutes(*answer_.use_within) + 0.005);
      if (minutes < day) {
        const int before = (*now_clock_ + static_cast<int>(minutes)) % day;
        use += fmt::format(", before {:02}:{:02} if mixed now", before / 60, before % 60);
      }
    }
    row("use within", use);
    if (answer_.gel) row("gel in the cup", duration(*answer_.gel));
    row("left standing", left_standing());
  }

  [[nodiscard]] std::string left_standing() const {
    if (answer_.runs_away.value_or(false)) {
      return "it runs away: smoke, perhaps fire";
    }
    if (!answer_.peak) return "how hot it gets is not known";
    const auto start = std::max(answer_.air, answer_.resin_temp);
    if ((*answer_.peak - start).in_kelvin() < warm_kelvin) {
      return "it gets no warmer than " + temperature(*answer_.peak);
    }
    return fmt::format("it gets {}: {}, give or take {}",
                       answer_.peak->in_celsius() > hot_to_hold_c ? "far too hot to hold" : "hot",
                       whole(about_temperature(*answer_.peak, system_)),
                       whole(units::print(units::TempDelta::kelvin(peak_spread_kelvin), system_)));
  }

  void film() {
    if (document_.poured) {
      const PouredOut& poured = *document_.poured;
      row("poured out",
          fmt::format("after {}, at {}: spread it within {} of mixing; the film gels after {}",
                      duration(poured.after), temperature(poured.temperature),
                      whole(use_within_text(poured.spread_within, system_)), duration(poured.gel)));
    }
    if (document_.film_open && document_.film_gel) {
      row("spread at once", fmt::format("it can be worked for {} and gels after {}",
                                        whole(use_within_text(*document_.film_open, system_)),
                                        duration(*document_.film_gel)));
    }
    if (!document_.workable) return;
    const WorkableBatch& workable = *document_.workable;
    std::string most = "none: even a small one goes off before " + duration(workable.time);
    if (workable.mass) {
      most = fmt::format("{} can be worked for {}", whole(weighed(*workable.mass, system_)),
                         duration(workable.time));
      if (workable.cup_full) most += "; the cup holds no more";
    }
    row("largest batch", most);
  }

  void doses() {
    const std::vector<DosedFilm>& films = document_.doses;
    if (films.empty()) return;
    std::string range;
    if (document_.dose_low && document_.dose_high) {
      range = fmt::format("the sheet allows {} to {} of the resin",
                          units::print_percent(*document_.dose_low),
                          units::print_percent(*document_.dose_high));
    }
    page_.heading("Gel of a film by its catalyst", range);
    const auto same_dose = [&](const DosedFilm& film) { return film.dose == films.front().dose; };
    std::string head(dose_columns, ' ');
    for (const DosedFilm& film : films) {
      if (same_dose(film)) head += layout::right(units::print(film.air, system_), cell_columns);
    }
    page_.line(head);
    for (std::size_t i = 0; i < films.size();) {
      const double dose = films[i].dose;
      std::string line = layout::left("  " + units::print_percent(dose), dose_columns);
      for (; i < films.size() && films[i].dose == dose; ++i) {
        line += layout::right(units::print(films[i].gel, system_), cell_columns);
      }
      page_.line(line);
    }
    page_.line(fmt::format("  Use it within {} of that.",
                           units::print_percent(films.front().use_within / films.front().gel)));
  }

  void grid() {
    if (document_.grid.empty()) return;
    const CupAnswer& first = document_.grid.front();
    const bool as_air = std::all_of(document_.grid.begin(), document_.grid.end(),
                                    [](const CupAnswer& a) { return a.air == a.resin_temp; });
    page_.heading(as_air ? "Use within, by mass and air; the resin as warm as the air"
                         : "Use within, by mass and air; the resin at " +
                               units::print(first.resin_temp, system_),
                  first.cup ? "cup " + plain(*first.cup) : "cup as high as wide");
    std::string head(mass_columns, ' ');
    for (const CupAnswer& cell : document_.grid) {
      if (cell.mass == first.mass)
        head += layout::right(units::print(cell.air, system_) + ' ', cell_columns);
    }
    page_.line(head);
    bool marked = false;
    for (std::size_t i = 0; i < document_.grid.size();) {
      const auto mass = document_.grid[i].mass;
      std::string line = layout::left(mass ? "  " + weighed(*mass, system_) : "", mass_columns);
      for (; i < document_.grid.size() && document_.grid[i].mass == mass; ++i) {
        const bool away = document_.grid[i].runs_away.value_or(false);
        marked = marked || away;
        line += layout::right(cell_text(document_.grid[i]) + (away ? "!" : " "), cell_columns);
      }
      page_.line(line);
    }
    if (marked) page_.line("  ! left standing it runs away");
  }

  [[nodiscard]] std::string cell_text(const CupAnswer& cell) const {
    if (!cell.use_within) return "-";
    const double hours = std::floor(units::in_hours(*cell.use_within) + 1e-4);
    if (hours >= 10.0) return units::print(units::hours(hours), system_);
    return use_within_text(*cell.use_within, system_);
  }

  void sheet() {
    if (document_.sheet.empty()) return;
    page_.heading("Against the data sheet, in a cup as high as wide", "");
    for (const SheetPotLife& line : document_.sheet) {
      page_.item("  ", fmt::format("{} at {}: the sheet prints {}, the model says {} ({})",
                                   whole(weighed(line.mass, system_)), temperature(line.air),
                                   duration(line.printed), duration(line.model),
                                   met_text(line.printed, line.model, line.closure)));
    }
  }

  const PotLifeDocument& document_;
  const CupAnswer& answer_;
  System system_;
  std::optional<int> now_clock_;
  layout::Page page_;
};

}  // namespace

std::string to_text(const PotLifeDocument& document, System system, std::optional<int> now_clock) {
  return Writer(document, system, now_clock).text();
}

}  // namespace wetout::report
