// The shape of a rail: by the trade's names or by numbers.
#include <algorithm>
#include <limits>
#include <optional>
#include <string>

#include "job_parts.hpp"

namespace wetout::files {
namespace {

// The first number is the share of the thickness above the apex.
constexpr Word<double> rail_names[] = {
    {"50/50", 0.50}, {"60/40", 0.40}, {"70/30", 0.30}, {"80/20", 0.20}};

enum class Fullness { soft, medium, full, square };
constexpr Word<Fullness> fullness_words[] = {{"soft", Fullness::soft},
                                             {"medium", Fullness::medium},
                                             {"full", Fullness::full},
                                             {"square", Fullness::square}};

double assumed(JobFile& job, const base::Default<double>& value, std::string_view unit) {
  const bool listed =
      std::any_of(job.assumed.begin(), job.assumed.end(),
                  [&](const laminate::Assumption& one) { return one.name == value.name; });
  if (!listed) {
    job.assumed.push_back({.name = std::string(value.name),
                           .value = value.value,
                           .unit = std::string(unit),
                           .standing = std::string(base::to_string(value.source.standing)),
                           .source = std::string(value.source.locator),
                           .used_by = {"board"}});
  }
  return value.value;
}

double exponent_of(Fullness fullness, JobFile& job, const board::Defaults& defaults) {
  switch (fullness) {
    case Fullness::soft:
      return 2.0;  // an ellipse: what the word means here
    case Fullness::medium:
      return assumed(job, defaults.rail_medium, "");
    case Fullness::full:
      return assumed(job, defaults.rail_full, "");
    case Fullness::square:
      break;
  }
  return std::numeric_limits<double>::infinity();
}

}  // namespace

board::Rail default_rail(JobFile& job, const board::Defaults& defaults) {
  board::Rail rail;
  rail.apex_share = assumed(job, defaults.rail_apex, "share");
  rail.exponent = exponent_of(Fullness::medium, job, defaults);
  return rail;
}

board::Rail read_rail(Fields fields, JobFile& job, const board::Defaults& defaults) {
  board::Rail rail;
  const std::optional<double> named = fields.choice("name", rail_names);
  const std::optional<double> apex = fields.quantity("apex", measures::apex);
  if (fields.has("name") && fields.has("apex")) {
    fields.wrong_key("apex", {.code = "key.conflict",
                              .message = "the apex is given twice, by name and by number",
                              .expected = "either name or apex"});
  }
  rail.apex_share = named  ? *named
                    : apex ? *apex
                    : fields.has("name") || fields.has("apex")
                        ? rail.apex_share
                        : assumed(job, defaults.rail_apex, "share");

  const std::optional<Fullness> fullness = fields.choice("fullness", fullness_words);
  const std::optional<double> exponent =
      fields.number("exponent", 2.0, true, 1000.0, "from 2 to 1000", "2.5");
  if (fields.has("fullness") && fields.has("exponent")) {
    fields.wrong_key("exponent", {.code = "key.conflict",
                                  .message = "the fullness is given twice, by word and by number",
                                  .expected = "either fullness or exponent"});
  }
  if (exponent) {
    rail.exponent = *exponent;
  } else if (!fields.has("exponent")) {
    rail.exponent = exponent_of(fullness.value_or(Fullness::medium), job, defaults);
  }
  fields.done();
  return rail;
}

}  // namespace wetout::files
