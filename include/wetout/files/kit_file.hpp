// The kit file: several things that were bought together for one price (docs/formats/kit.md).
#pragma once

#include <filesystem>
#include <optional>
#include <string>
#include <vector>

#include "wetout/base/problem.hpp"
#include "wetout/files/job_file.hpp"
#include "wetout/time/read.hpp"
#include "wetout/units/money.hpp"

namespace wetout::files {

/// What it is and how much of it is for the shop to tell: both are as the file has them.
struct KitPart {
  std::string material;  ///< not empty
  std::string amount;    ///< not empty: "5 kg", "2"
  /// What it would cost alone: its weight in sharing the price.
  std::optional<units::Money> worth;
  std::string lot;    ///< label; empty: none
  std::string batch;  ///< the maker's; empty: none
  std::optional<time::Date> expires;
};

struct KitFile {
  Source source;
  std::string name;  ///< empty: none
  units::Money price;
  std::vector<KitPart> parts;  ///< at least one; a worth is given of all or of none
};

/// Reads and checks a kit file; refuses the same files as read_job(). Money in another currency
/// than the shop's is "currency.other". Keys of problems found later: "part[0].amount".
base::Result<KitFile> read_kit(const std::filesystem::path& path, const std::string& currency);
base::Result<KitFile> parse_kit(std::string text, std::string name, const std::string& currency);

}  // namespace wetout::files
