// Where an action works: what the caller found out about files, clock and log. Nothing in work
// reads the clock, the environment or the current folder.
#pragma once

#include <filesystem>
#include <functional>
#include <optional>
#include <string>

#include "wetout/base/problem.hpp"
#include "wetout/base/sink.hpp"
#include "wetout/time/zone.hpp"

namespace wetout::work {

struct Workshop {
  std::filesystem::path here;                       ///< absolute; relative names start there
  std::optional<std::filesystem::path> shop;        ///< named by the user
  std::optional<std::filesystem::path> usual_shop;  ///< in the user's configuration folder
  std::filesystem::path log;
  bool make_log_folder = false;  ///< the log's place was not named by the user
  /// The instant of the action; a wall time the user gave is read in the zone of the shop.
  std::function<base::Result<time::Instant>(const time::Zone&)> now;
  /// Followed cups are kept here from one run to the next (files::AnswerStore); results are the
  /// same without.
  std::optional<std::filesystem::path> cache;
  bool dry_run = false;
  base::Sink sink = base::drop;
};

/// "wetout 0.1.0"
std::string program();

}  // namespace wetout::work
