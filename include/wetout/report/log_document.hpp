// The state of the log: the answer of `log info | check | backup | restore`.
#pragma once

#include <cstdint>
#include <optional>
#include <string>
#include <string_view>
#include <vector>

namespace wetout::report {

inline constexpr std::string_view log_format = "wetout.log/1";

struct LogDocument {
  std::string program;
  std::string made;
  std::string action;  ///< info | check | backup | restore
  std::string path;
  int schema = 0;  ///< version of the tables
  std::int64_t size_bytes = 0;
  int jobs = 0;
  int plans = 0;
  int schedules = 0;
  int events = 0;  ///< of what was recorded, undone ones and undos among them
  int documents = 0;
  std::optional<bool> sound;             ///< nothing when the pages were not checked
  std::vector<std::string> faults;       ///< what the check found
  std::optional<std::string> copy;       ///< the other file of a backup or restore
  std::optional<std::string> kept = {};  ///< where the log that was there before a restore is now
};

/// One line; docs/formats/log.schema.json.
std::string to_json(const LogDocument& document);
std::string to_text(const LogDocument& document);

}  // namespace wetout::report
