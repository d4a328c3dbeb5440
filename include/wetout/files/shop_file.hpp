// The shop file: what is in the shop and what the data sheets print (docs/formats/shop.md).
#pragma once

#include <filesystem>
#include <optional>
#include <string>
#include <vector>

#include "wetout/base/notice.hpp"
#include "wetout/base/problem.hpp"
#include "wetout/climate/room.hpp"
#include "wetout/files/job_file.hpp"
#include "wetout/laminate/shop.hpp"
#include "wetout/schedule/hours.hpp"
#include "wetout/units/print.hpp"

namespace wetout::files {

struct ShopFile {
  Source source;
  std::string time_zone;  ///< IANA name, known to this computer
  units::System units = units::System::us;
  laminate::Shop shop;
  climate::Room room;  ///< without [room]: unheated, with the default lag
  /// The usual forecast, as it can be opened: the file names it relative to itself.
  std::optional<std::filesystem::path> weather;
  std::vector<schedule::Person> people;       ///< at least one
  std::vector<schedule::SharedThing> shared;  ///< what the file names; one of each else
  std::optional<units::Money> labour;         ///< for an hour of work
  std::optional<units::Money> short_coat;     ///< what running short in a coat costs
  /// Worth knowing, though the file can be used: "resin.parts_differ", "room.unused".
  base::Notices notices;
};

/// Reads and checks a shop file; refuses the same files as read_job(). Throws std::runtime_error
/// when the computer has no zone database.
base::Result<ShopFile> read_shop(const std::filesystem::path& path);
base::Result<ShopFile> parse_shop(std::string text, std::string name);

}  // namespace wetout::files
