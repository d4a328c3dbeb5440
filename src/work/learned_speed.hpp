// How fast a shop's resins are against their sheets: films of which milestones were seen.
#pragma once

#include <map>
#include <string>
#include <string_view>
#include <vector>

#include "job_and_shop.hpp"
#include "wetout/base/notice.hpp"
#include "wetout/climate/weather.hpp"
#include "wetout/joblog/log.hpp"
#include "wetout/learn/robust_fit.hpp"
#include "wetout/resin/calibrate.hpp"

namespace wetout::work {

/// One film; several milestones of it are one record, their mean.
struct FilmSeen {
  std::string job, coat, resin;
  double log_speed = 0.0;  ///< of the resin over its sheet
  double spread = 0.0;     ///< of that, as assumed
  std::int64_t event = 0;  ///< of its last milestone
};

/// What is believed of the logarithm of a resin's speed before anything was seen of it.
learn::Belief belief_of_speed();

/// Looks at boards one after the other; keeps the weather of schedules it has read.
class FilmWatch {
 public:
  explicit FilmWatch(const joblog::Log& log) : log_(log) {}

  /// Epoxies whose sheets print a film time, coats that are done before anything was seen. The air
  /// is that of a schedule of the board whose weather covers the film, led through the room and
  /// moved by what was read in the room meanwhile; without such a schedule what was read there.
  /// Notice "learn.air": milestones that were seen, without any air. `files` without what was
  /// learned; `events`: all of the board.
  std::vector<FilmSeen> seen(const std::string& job, const JobAndShop& files,
                             const std::vector<joblog::EventRow>& events, base::Notices& notices);

 private:
  struct Air;
  const climate::Weather* covering(const std::string& job, const JobAndShop& files,
                                   time::Instant from, time::Instant to);

  const joblog::Log& log_;
  std::map<std::int64_t, std::optional<climate::Weather>> read_;
};

}  // namespace wetout::work
