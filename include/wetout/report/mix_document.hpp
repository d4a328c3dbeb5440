// What to put on the scale: a coat of a plan, or any mass of a resin at its ratio.
#pragma once

#include <optional>
#include <string>
#include <string_view>
#include <vector>

#include "wetout/report/plan_document.hpp"
#include "wetout/units/print.hpp"

namespace wetout::report {

inline constexpr std::string_view mix_format = "wetout.mix/1";

struct MixDocument {
  std::string program;  ///< "wetout 0.1.0"
  std::string made;     ///< RFC 3339 with offset
  // Of a coat of a job; all empty for a free mass.
  std::optional<std::string> job;
  std::optional<int> revision;       ///< nothing when the plan is not saved
  std::optional<std::string> board;  ///< its name
  std::optional<std::string> coat;   ///< id
  std::optional<std::string> coat_name;
  std::optional<laminate::CoatKind> kind;
  std::optional<board::Face> face;
  std::optional<units::Area> area;       ///< hull surface wet
  std::optional<std::string> next_coat;  ///< name of the next in file order

  std::string resin;
  std::optional<units::Milligrams> asked;  ///< a free mass, or what was asked of this coat
  laminate::Ratio ratio;
  int batch_count = 0;                   ///< of the whole coat, shown or not
  std::vector<laminate::Batch> batches;  ///< one or all of them
  std::vector<std::string> cautions;
  base::Notices notices;
};

/// The coat named `coat` as matched by base::matches. Problems: "coat.unknown" with the nearest or
/// all names, "coat.ambiguous", "batch.unknown".
base::Result<MixDocument> mix_document(const PlanDocument& document, std::string_view coat,
                                       std::optional<int> batch = std::nullopt);

/// One line, format "wetout.mix/1"; docs/formats/mix.schema.json.
std::string to_json(const MixDocument& document);

/// The mixing card: at most 24 lines of 80 columns whatever the names' length. `now_clock` is
/// minutes after midnight of the shop's wall clock.
std::string to_text(const MixDocument& document, units::System system,
                    std::optional<int> now_clock = std::nullopt);

}  // namespace wetout::report
