// The times of a record: read, and held against now and against what was recorded before.
#pragma once

#include <cstdint>
#include <map>
#include <optional>
#include <string>
#include <string_view>
#include <vector>

#include "wetout/base/notice.hpp"
#include "wetout/base/problem.hpp"
#include "wetout/joblog/log.hpp"
#include "wetout/resin/cure.hpp"
#include "wetout/time/zone.hpp"

namespace wetout::work {

struct Observed {
  resin::Milestone milestone = resin::Milestone::gel;
  time::Instant at;
};

/// Reads times that are past; what is wrong with them is gathered.
class RecordTimes {
 public:
  RecordTimes(const time::Zone& zone, time::Instant now) : zone_(zone), now_(now) {}

  /// Nothing where nothing was typed, or with a problem: of time::read_near, "time.future".
  std::optional<time::Instant> read(const std::optional<std::string>& text,
                                    std::string_view option);
  /// "gel=21:40". Problems "observed.form", "observed.milestone", and those of read().
  std::optional<Observed> observed(const std::string& text);

  /// "Sat 13 Jun 2026 16:15".
  [[nodiscard]] std::string print(time::Instant at) const;
  /// True when a time was read that tells no offset.
  [[nodiscard]] bool has_clock() const { return has_clock_; }
  base::Problems& problems() { return problems_; }
  /// "record.old": more than a year ago.
  base::Notices& notices() { return notices_; }

 private:
  const time::Zone& zone_;
  time::Instant now_;
  bool has_clock_ = false;
  base::Problems problems_;
  base::Notices notices_;
};

/// What counts of earlier events of one step: those that were not taken back, the last of a kind;
/// not those of the same call sent before, whose tokens begin alike.
struct StepHistory {
  std::optional<time::Instant> started;
  std::int64_t started_by = 0;  ///< number of that event
  std::optional<time::Instant> done;
  bool is_mixed = false;
  std::map<std::string, time::Instant> milestones;
};
StepHistory history_of(const std::vector<joblog::EventRow>& events, const std::string& step,
                       std::string_view token);

}  // namespace wetout::work
