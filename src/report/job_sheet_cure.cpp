// How far each film has cured, from the document's own constants and air.
#include <fmt/format.h>

#include <algorithm>
#include <array>
#include <chrono>

#include "job_sheet_parts.hpp"
#include "layout.hpp"
#include "phrases.hpp"
#include "svg.hpp"
#include "weather_chart.hpp"
#include "wetout/resin/film.hpp"

namespace wetout::report {
namespace {

using time::Instant;

constexpr double width = 340.0, left = 32.0, right = 8.0;
constexpr double top = 16.0, plot = 84.0, bottom = 16.0;
constexpr std::size_t curve_points = 80;

struct Mark {
  std::string_view milestone, letter, word;
};
constexpr std::array marks{Mark{"gel", "G", "gel"}, Mark{"tack_free", "T", "tack-free"},
                           Mark{"handle", "H", "handle"}, Mark{"recoat_until", "R", "recoat until"},
                           Mark{"sandable", "S", "sandable"}};

const ScheduleResin* resin_of(const ScheduleView& view, const Entry& wet) {
  if (wet.told == nullptr || !wet.told->resin) return nullptr;
  for (const ScheduleResin& resin : view.document.resins) {
    if (resin.id == *wet.told->resin) return &resin;
  }
  return nullptr;
}

// What a film's path of conversion needs; its clock is told by the milestones.
resin::Cure cure_of(const ScheduleResin& resin, const FilmConstants& film) {
  resin::Cure cure;
  cure.resin = resin.id;
  cure.kinetics.k_per_s = film.k_per_s;
  cure.kinetics.r = film.r;
  cure.kinetics.m = film.m;
  cure.kinetics.n = film.n;
  cure.kinetics.energy_j_per_mol = 1000.0 * resin.energy_kj_mol;
  cure.kinetics.reference = film.reference;
  cure.glass.uncured = film.tg_uncured;
  cure.glass.cured = film.tg_cured;
  cure.glass.lambda = film.lambda;
  cure.glass.delay_kelvin = film.delay_kelvin;
  cure.glass.width_kelvin = film.width_kelvin;
  cure.gel_conversion = film.gel_conversion;
  cure.trim_below_kelvin = film.trim_below_kelvin;
  cure.sheet_air = film.reference;
  return cure;
}

class Chart {
 public:
  Chart(const ScheduleView& view, const Entry& wet) : view_(view), wet_(wet) {
    from_ = wet.until;
    to_ = film_until(wet);
    for (const Mark& mark : marks) {
      if (const auto at = ScheduleView::at(wet, mark.milestone)) to_ = std::max(to_, *at);
    }
    to_ += (to_ - from_) / 20 + std::chrono::minutes(10);
  }

  Markup draw(const ScheduleResin& resin, const FilmConstants& film, const time::History& air) {
    hours();
    for (const double share : {0.0, 0.5, 1.0}) {
      svg_.line(left, y(share), width - right, y(share), "class=\"grid\"");
      svg_.text(left - 3.0, y(share) + 3.0, fmt::format("{:.0f} %", 100.0 * share), "end");
    }
    milestones();
    std::vector<double> after;
    const auto all = static_cast<double>((to_ - from_).count());
    for (std::size_t i = 0; i < curve_points; ++i) {
      after.push_back(all * static_cast<double>(i) / (curve_points - 1));
    }
    std::string points;
    for (const resin::FilmState& state :
         resin::Film(cure_of(resin, film), air).states(from_, after)) {
      points += fmt::format("{:.1f},{:.1f} ",
                            x(from_ + std::chrono::seconds(std::llround(state.after_s))),
                            y(state.conversion));
    }
    svg_.raw(fmt::format("<polyline points=\"{}\" class=\"thick\"/>\n", points));
    return Markup::ours(fmt::format(
        "<svg class=\"chart\" role=\"img\" viewBox=\"0 0 {:.0f} {:.0f}\">"
        "<title>Cure of {}</title>\n<desc>How much has reacted, over time; the milestones stand "
        "below in words.</desc>\n{}</svg>\n",
        width, top + plot + bottom, escaped(view_.coat_label(wet_)), svg_.body()));
  }

 private:
  [[nodiscard]] double x(Instant when) const {
    const auto part = static_cast<double>((when - from_).count());
    return left + part / static_cast<double>((to_ - from_).count()) * (width - left - right);
  }
  [[nodiscard]] static double y(double share) { return top + plot * (1.0 - share); }

  void hours() {
    const auto all = std::chrono::duration_cast<std::chrono::hours>(to_ - from_).count();
    int apart = 3;
    while (all / apart > 7) apart *= 2;
    apart = std::min(apart, 24);
    const auto day = view_.wall.day(from_);
    double last = -100.0;
    for (int hour = 0; hour < all + 48; hour += apart) {
      const auto at = view_.wall.instant(day + std::chrono::hours(hour));
      if (!at || *at < from_ || *at > to_) continue;
      const double here = x(*at);
      svg_.line(here, top, here, top + plot + 3.0, "class=\"grid\"");
      if (here - last < 34.0 || here > width - 14.0) continue;
      last = here;
      const bool midnight = hour % 24 == 0;
      svg_.text(
          here, top + plot + 13.0,
          midnight ? WallClock::date(view_.wall.day(*at)).substr(0, 6) : view_.wall.clock(*at),
          "middle");
    }
  }

  void milestones() {
    std::vector<double> taken;
    for (const Mark& mark : marks) {
      const auto at = ScheduleView::at(wet_, mark.milestone);
      if (!at || *at < from_) continue;
      const double here = x(*at);
      svg_.line(here, top, here, top + plot, "class=\"mark\"");
      // Letters that would lie over each other stand side by side.
      double place = here;
      for (const double other : taken) {
        if (std::abs(other - place) < 9.0) place = other + 9.0;
      }
      taken.push_back(place);
      svg_.text(place, top - 4.0, mark.letter, "middle", "class=\"letter\"");
    }
  }

  const ScheduleView& view_;
  const Entry& wet_;
  Instant from_, to_;
  Svg svg_;
};

}  // namespace

std::optional<Markup> cure_chart(const ScheduleView& view, const RoomCourse& course,
                                 const Entry& wet) {
  const ScheduleResin* resin = resin_of(view, wet);
  const time::History* air = course.room_history();
  if (resin == nullptr || !resin->film || air == nullptr) return std::nullopt;
  return Chart(view, wet).draw(*resin, *resin->film, *air);
}

std::vector<std::string> cure_legend(const ScheduleView& view, const Entry& wet) {
  std::vector<std::string> each;
  Spoken spoken(wet.day);
  for (const Mark& mark : marks) {
    const FilmMilestone* found = ScheduleView::milestone(wet, mark.milestone);
    if (found == nullptr) continue;
    std::string text = std::string(mark.letter) + " " + std::string(mark.word) + " " +
                       view.wall.when(instant_of(found->time), spoken);
    if (found->beyond_forecast) text += " (past the forecast)";
    each.push_back(layout::whole(text));
  }
  return each;
}

void SheetWriter::films() {
  if (!has_schedule()) return;
  section("films", "4. How the films cure");
  page_.put("p",
            "Share of the resin that has reacted, in the room air that is expected. Warmer air "
            "moves every mark to the left.",
            {{"class", "small"}});
  page_.open("div", {{"class", "charts"}});
  for (const Entry& entry : view_->entries) {
    if (!entry.is_wet()) continue;
    const auto legend = cure_legend(*view_, entry);
    if (legend.empty()) continue;
    page_.open("figure", {{"class", "cure"}});
    page_.open("h3");
    name(coat_name(entry.coat), "span");
    page_.close("h3");
    if (const auto chart = cure_chart(*view_, *course_, entry)) page_.raw(*chart);
    page_.put("figcaption", joined(legend, ", ") + ".");
    page_.close("figure");
  }
  page_.close("div").close("section");
}

}  // namespace wetout::report
