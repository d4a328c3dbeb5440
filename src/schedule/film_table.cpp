#include "wetout/schedule/film_table.hpp"

#include <algorithm>
#include <chrono>
#include <cmath>
#include <utility>

#include "wetout/base/check.hpp"
#include "wetout/resin/polyester.hpp"

namespace wetout::schedule {
namespace {

using resin::Milestone;
using time::Instant;

constexpr double hour_s = 3600.0;

double seconds(std::chrono::seconds span) { return static_cast<double>(span.count()); }

// A count of gel times, on points so close that it is smooth between them.
class GelCount {
 public:
  GelCount(const FilmSource& source, const time::History& air, Instant from, Instant until)
      : from_(from) {
    double before = 0.0;
    for (Instant at = from;; at += grid_step) {
      const double speed = 1.0 / source.gel_s(units::Temperature::kelvin(air.at(at)));
      count_.push_back(
          count_.empty() ? 0.0 : count_.back() + 0.5 * (before + speed) * seconds(grid_step));
      before = speed;
      if (at >= until) break;
    }
    last_speed_ = before;
  }
  [[nodiscard]] double at(Instant instant) const {
    const double place = seconds(instant - from_) / seconds(grid_step);
    const auto i = std::min(static_cast<std::size_t>(std::max(0.0, place)), count_.size() - 1);
    if (i + 1 == count_.size()) {
      return count_.back() + last_speed_ * (place - static_cast<double>(i)) * seconds(grid_step);
    }
    return count_[i] + (place - static_cast<double>(i)) * (count_[i + 1] - count_[i]);
  }
  /// Seconds after `from` at which the count is come to.
  [[nodiscard]] double when(double count) const {
    if (count >= count_.back()) {
      return seconds(grid_step) * static_cast<double>(count_.size() - 1) +
             (count - count_.back()) / last_speed_;
    }
    const auto after = std::upper_bound(count_.begin(), count_.end(), count);
    const auto i = static_cast<std::size_t>(after - count_.begin());
    const double share = (count - count_[i - 1]) / (count_[i] - count_[i - 1]);
    return seconds(grid_step) * (static_cast<double>(i - 1) + share);
  }

 private:
  Instant from_;
  std::vector<double> count_;
  double last_speed_ = 0.0;
};

}  // namespace

base::Result<FilmSource> FilmSource::of(const resin::Product& product,
                                        const resin::Defaults& defaults, const StepDefaults& steps,
                                        resin::AnswerCache* cache) {
  FilmSource source;
  source.product_ = product;
  source.defaults_ = defaults;
  const auto note = [&](std::string code, std::string text) {
    source.notices_.push_back(
        {.code = std::move(code), .text = std::move(text), .subject = product.id});
  };
  using enum Milestone;
  if (product.chemistry == resin::Chemistry::epoxy) {
    auto fit = resin::calibrate(product, defaults, cache);
    if (!fit) return tl::unexpected(fit.error());
    auto& ages = fit->cure.ages;
    const auto fill = [&](Milestone m, double times, std::string_view what) {
      if (ages[m]) return;
      ages[m] = *ages[gel] * times;
      note("film." + std::string(to_string(m)) + "_guessed",
           "the sheet prints no " + std::string(what) + ": it is estimated from gel");
    };
    fill(tack_free, defaults.tack_free_of_gel.value, "tack-free time");
    fill(sandable, steps.sandable_of_gel.value, "time until sanding");
    fill(full_cure, steps.full_cure_of_gel.value, "full cure");
    source.has_window_ = ages[recoat_from] && ages[recoat_until];
    source.notices_.insert(source.notices_.begin(), fit->notices.begin(), fit->notices.end());
    source.calibration_ = std::move(*fit);
  } else {
    source.dose_ = resin::middle_dose(product);
    const auto air = units::Temperature::celsius(25);
    const auto times = resin::polyester_times(
        product, source.dose_, time::History::constant(air.in_kelvin()), Instant{}, defaults);
    if (!times) return tl::unexpected(times.error());
    const double own_gel = (*times)[gel]->after_s;
    auto& multiples = source.multiples_;
    for (const Milestone m : resin::milestones) {
      multiples[m] = (*times)[m] ? (*times)[m]->after_s / own_gel : 0.0;
    }
    const auto fill = [&](Milestone m, double value, std::string_view what) {
      if (multiples[m] > 0.0) return;
      multiples[m] = value;
      note("film." + std::string(to_string(m)) + "_guessed",
           "the sheet prints no " + std::string(what) + ": it is estimated from gel");
    };
    fill(tack_free, defaults.tack_free_of_gel.value, "tack-free time");
    fill(handle, multiples[tack_free], "time until handling");
    fill(trim_until, multiples[tack_free], "end of trimming");
    fill(sandable, steps.sandable_of_gel.value, "time until sanding");
    fill(full_cure, steps.full_cure_of_gel.value, "full cure");
    source.has_window_ = multiples[recoat_from] > 0.0 && multiples[recoat_until] > 0.0;
    note("polyester.middle_dose", "for the middle of the sheet's range of catalyst");
  }
  if (!source.has_window_) {
    note("film.no_window",
         "the sheet prints no recoat window: the next coat waits until it can be scuffed");
  }
  return source;
}

double FilmSource::gel_s(units::Temperature air) const {
  const auto gel = resin::polyester_gel(product_, dose_, air, defaults_);
  base::promise(gel.has_value(), "a resin that gels at 25 C gels at every temperature");
  return units::in_seconds(*gel);
}

void FilmSource::put_in_order(FilmSpans& spans) const {
  using enum Milestone;
  if (!has_window_) {
    spans[recoat_from] = spans[handle];
    spans[recoat_until] = 0.0;
    return;
  }
  spans[recoat_until] = std::max(spans[recoat_until], spans[recoat_from]);
}

std::vector<FilmSpans> FilmSource::by_gel(const time::History& air,
                                          std::span<const Instant> starts) const {
  using enum Milestone;
  std::vector<FilmSpans> all;
  if (starts.empty()) return all;
  const GelCount count(*this, air, starts.front(), std::max(starts.back(), air.last()));
  const double longest_s = defaults_.cure.recoat_longest.value * hour_s;
  for (const Instant start : starts) {
    const double begun = count.at(start);
    const double after = seconds(start - starts.front());
    FilmSpans& spans = all.emplace_back();
    for (const Milestone m : resin::milestones) {
      spans[m] = count.when(begun + multiples_[m]) - after;
    }
    spans[recoat_until] = std::min(spans[recoat_until], longest_s);
    put_in_order(spans);
  }
  return all;
}

std::vector<FilmSpans> FilmSource::spans(const time::History& air,
                                         std::span<const Instant> starts) const {
  if (!calibration_) return by_gel(air, starts);
  return told(resin::Film(calibration_->cure, air).times(starts));
}

std::vector<FilmSpans> FilmSource::spans(const time::History& air, std::span<const Instant> starts,
                                         const std::vector<bool>& followed) const {
  if (!calibration_) return by_gel(air, starts);
  return told(resin::Film(calibration_->cure, air).times(starts, followed));
}

std::vector<FilmSpans> FilmSource::told(const std::vector<resin::FilmTimes>& films) const {
  std::vector<FilmSpans> all;
  all.reserve(films.size());
  for (const resin::FilmTimes& times : films) {
    FilmSpans& spans = all.emplace_back();
    for (const Milestone m : resin::milestones) {
      spans[m] = times[m] && times[m]->reached ? times[m]->after_s : never;
    }
    put_in_order(spans);
  }
  return all;
}

namespace {

std::vector<Instant> starts_of(const Grid& grid, Slot slots) {
  std::vector<Instant> starts;
  starts.reserve(static_cast<std::size_t>(slots));
  for (Slot slot = 0; slot < slots; ++slot) starts.push_back(grid.at(slot));
  return starts;
}

// From seconds after the start to seconds after the grid's origin.
FilmTable on(const Grid& grid, std::vector<FilmSpans> spans) {
  for (std::size_t i = 0; i < spans.size(); ++i) {
    const double start = grid.seconds(grid.at(static_cast<Slot>(i)));
    for (const Milestone m : resin::milestones) {
      double& at = spans[i][m];
      if (at < never) at += start;
    }
  }
  return {std::move(spans)};
}

}  // namespace

FilmTable film_table(const FilmSource& source, const time::History& air, const Grid& grid,
                     Slot slots) {
  return on(grid, source.spans(air, starts_of(grid, slots)));
}

FilmTable film_table(const FilmSource& source, const time::History& air, const Grid& grid,
                     const std::vector<bool>& followed) {
  const auto slots = static_cast<Slot>(followed.size());
  return on(grid, source.spans(air, starts_of(grid, slots), followed));
}

}  // namespace wetout::schedule
