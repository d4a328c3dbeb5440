#include "wetout/resin/answer_cache.hpp"

#include <array>
#include <bit>
#include <charconv>
#include <cstdint>
#include <string_view>

#include "wetout/base/sha256.hpp"

namespace wetout::resin {
namespace {

// Raised whenever a change of the model changes an answer.
constexpr std::string_view model_version = "wetout 1";

class Writer {
 public:
  Writer& operator<<(double value) {
    std::array<char, 16> digits{};
    const auto end = std::to_chars(digits.data(), digits.data() + digits.size(),
                                   std::bit_cast<std::uint64_t>(value), 16)
                         .ptr;
    text_.append(digits.data(), end);
    text_ += ' ';
    return *this;
  }
  Writer& operator<<(const std::optional<double>& value) {
    if (value) return *this << *value;
    text_ += "- ";
    return *this;
  }
  Writer& operator<<(const std::optional<units::Duration>& value) {
    return *this << (value ? std::optional(units::in_seconds(*value)) : std::nullopt);
  }
  Writer& operator<<(units::Temperature value) { return *this << value.in_kelvin(); }
  Writer& operator<<(const Kinetics& k) {
    return *this << k.k_per_s << k.r << k.m << k.n << k.energy_j_per_mol << k.reference;
  }
  Writer& operator<<(const Bulk& b) {
    return *this << b.heat_j_per_kg << b.heat_capacity_j_per_kg_k << b.conductivity_w_per_m_k
                 << b.density.si();
  }
  [[nodiscard]] const std::string& text() const { return text_; }

 private:
  std::string text_;
};

class Reader {
 public:
  explicit Reader(std::string_view text) : text_(text) {}

  Reader& operator>>(std::optional<double>& value) {
    value.reset();
    const std::string_view word = text_.substr(0, text_.find(' '));
    text_.remove_prefix(std::min(text_.size(), word.size() + 1));
    if (word == "-") return *this;
    std::uint64_t bits = 0;
    const auto [end, error] = std::from_chars(word.data(), word.data() + word.size(), bits, 16);
    if (error != std::errc() || end != word.data() + word.size()) {
      good_ = false;
    } else {
      value = std::bit_cast<double>(bits);
    }
    return *this;
  }
  Reader& operator>>(double& value) {
    std::optional<double> read;
    *this >> read;
    good_ = good_ && read.has_value();
    value = read.value_or(0.0);
    return *this;
  }
  Reader& operator>>(std::optional<units::Duration>& value) {
    std::optional<double> read;
    *this >> read;
    value = read ? std::optional(units::seconds(*read)) : std::nullopt;
    return *this;
  }
  Reader& operator>>(units::Temperature& value) {
    double kelvin = 0.0;
    *this >> kelvin;
    value = units::Temperature::kelvin(kelvin);
    return *this;
  }
  [[nodiscard]] bool good_to_the_end() const { return good_ && text_.empty(); }

 private:
  std::string_view text_;
  bool good_ = true;
};

std::string key_of(std::string_view what, const Writer& w) {
  std::string text(model_version);
  text.append(" ").append(what).append("\n").append(w.text());
  return base::hex(base::sha256(text));
}

}  // namespace

std::optional<std::string> MemoryCache::find(const std::string& key) {
  const auto found = answers_.find(key);
  if (found == answers_.end()) return std::nullopt;
  return found->second;
}

void MemoryCache::keep(const std::string& key, const std::string& answer) {
  answers_[key] = answer;
}

std::string cup_key(const CupRun& run) {
  Writer w;
  w << run.kinetics << run.bulk;
  w << run.cooling.side << run.cooling.top << run.cooling.base;
  w << run.fill.diameter.si() << run.fill.height.si() << run.air << run.resin;
  w << run.gel_conversion << run.usable_rise_kelvin << run.usable_share;
  w << static_cast<double>(run.until) << run.pour_after;
  w << static_cast<double>(run.grid.radial) << static_cast<double>(run.grid.axial)
    << run.most_kelvin_a_step << run.most_kelvin_after_gel;
  return key_of("cup", w);
}

std::string fill_key(const Cure& cure, units::Length gap, const FillSurroundings& around,
                     units::Temperature air, units::Temperature resin) {
  Writer w;
  w << cure.kinetics << cure.bulk << cure.gel_conversion << gap.si();
  w << around.conductivity_w_per_m_k << around.capacity_j_per_m3_k << around.thickness.si()
    << around.box_heat_j_per_m2_k << around.box_loss_w_per_m2_k << air << resin;
  return key_of("fill", w);
}

std::string to_text(const CupCourse& course) {
  Writer w;
  w << course.risen << course.part_gelled << course.gel << course.peak << course.mean_peak
    << course.peak_at.si() << course.poured_conversion << course.poured_reduced_time;
  w << (course.poured_temperature ? std::optional(course.poured_temperature->in_kelvin())
                                  : std::nullopt);
  w << course.made_kelvin << course.stored_kelvin << course.lost_kelvin
    << static_cast<double>(course.steps);
  return w.text();
}

std::optional<CupCourse> course_from_text(std::string_view text) {
  Reader r(text);
  CupCourse course;
  double peak_at = 0.0, steps = 0.0;
  std::optional<double> poured;
  r >> course.risen >> course.part_gelled >> course.gel >> course.peak >> course.mean_peak >>
      peak_at >> course.poured_conversion >> course.poured_reduced_time >> poured >>
      course.made_kelvin >> course.stored_kelvin >> course.lost_kelvin >> steps;
  if (!r.good_to_the_end()) return std::nullopt;
  course.peak_at = units::seconds(peak_at);
  if (poured) course.poured_temperature = units::Temperature::kelvin(*poured);
  course.steps = static_cast<int>(steps);
  return course;
}

CupCourse follow(const CupRun& run, AnswerCache* cache) {
  if (cache == nullptr) return follow(run);
  const std::string key = cup_key(run);
  if (const auto kept = cache->find(key)) {
    if (const auto course = course_from_text(*kept)) return *course;
  }
  const CupCourse course = follow(run);
  cache->keep(key, to_text(course));
  return course;
}

FillHeat fill_heat(const Cure& cure, units::Length gap, const FillSurroundings& around,
                   units::Temperature air, units::Temperature resin, AnswerCache& cache) {
  const std::string key = fill_key(cure, gap, around, air, resin);
  if (const auto kept = cache.find(key)) {
    Reader r(*kept);
    FillHeat heat;
    double peak_at = 0.0;
    r >> heat.peak >> heat.foam_peak >> peak_at;
    heat.peak_at = units::seconds(peak_at);
    if (r.good_to_the_end()) return heat;
  }
  const FillHeat heat = fill_heat(cure, gap, around, air, resin);
  Writer w;
  w << heat.peak << heat.foam_peak << heat.peak_at.si();
  cache.keep(key, w.text());
  return heat;
}

}  // namespace wetout::resin
