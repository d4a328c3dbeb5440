// Cups already followed. Output is identical without it: an answer is a pure function of its key.
#pragma once

#include <map>
#include <optional>
#include <string>

#include "wetout/resin/cup.hpp"
#include "wetout/resin/cure.hpp"
#include "wetout/resin/fill_heat.hpp"

namespace wetout::resin {

/// Somewhere to keep answers, in memory or on disk. Keys are 64 hexadecimal digits.
class AnswerCache {
 public:
  virtual ~AnswerCache() = default;
  /// Null where there is none, or it cannot be read.
  [[nodiscard]] virtual std::optional<std::string> find(const std::string& key) = 0;
  virtual void keep(const std::string& key, const std::string& answer) = 0;
};

class MemoryCache : public AnswerCache {
 public:
  [[nodiscard]] std::optional<std::string> find(const std::string& key) override;
  void keep(const std::string& key, const std::string& answer) override;
  [[nodiscard]] std::size_t size() const { return answers_.size(); }

 private:
  std::map<std::string, std::string> answers_;
};

/// Of everything the answer depends on: the model's version, the fitted resin, mass and shape,
/// temperatures, grid, to the last bit.
std::string cup_key(const CupRun& run);

/// Likewise of a fill.
std::string fill_key(const Cure& cure, units::Length gap, const FillSurroundings& around,
                     units::Temperature air, units::Temperature resin);

// Looked up first. A kept answer that does not read is followed anew.

CupCourse follow(const CupRun& run, AnswerCache* cache);
FillHeat fill_heat(const Cure& cure, units::Length gap, const FillSurroundings& around,
                   units::Temperature air, units::Temperature resin, AnswerCache& cache);

/// To the last bit, and back; null for a text that is not one.
std::string to_text(const CupCourse& course);
std::optional<CupCourse> course_from_text(std::string_view text);

}  // namespace wetout::resin
