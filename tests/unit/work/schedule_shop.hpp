// A shop in a folder of its own, with a job, made-up weather and a log, for the tests of schedule.
#pragma once

#include <filesystem>
#include <functional>
#include <optional>
#include <string>
#include <string_view>

#include "wetout/work/record.hpp"
#include "wetout/work/schedule.hpp"

namespace wetout::work::testing {

/// "2026-06-15 18:00" in UTC.
time::Instant utc(std::string_view wall);

class ScheduleShop {
 public:
  ScheduleShop();
  ScheduleShop(const ScheduleShop&) = delete;
  ScheduleShop& operator=(const ScheduleShop&) = delete;
  ~ScheduleShop();

  /// Of the files, as they were made; the next call reads what is written now.
  std::string hours = R"(mon = ["18:00-22:00"]
tue = ["18:00-22:00"]
wed = ["18:00-22:00"]
thu = ["18:00-22:00"]
fri = ["18:00-22:00"]
sat = ["09:00-13:00", "14:00-19:00"]
)";
  std::string room = "kind = \"unheated\"\nlag = \"2 h\"\n";
  std::string more_shop, more_job;  ///< put at the end
  /// Air and dew point in celsius, of hours after Sat 2026-06-13 00:00 UTC; so many.
  std::function<double(double)> air, dew;
  int weather_hours = 24 * 24;

  /// Writes shop.toml, board.toml, another.toml and weather.csv.
  void write() const;
  [[nodiscard]] std::filesystem::path folder() const { return folder_; }
  [[nodiscard]] Workshop workshop(std::string_view now) const;

  /// Of board.toml unless jobs are named.
  base::Result<ScheduleAnswer> schedule(std::string_view now, ScheduleRequest request = {}) const;
  /// The same; fails the test on problems.
  report::ScheduleDocument document(std::string_view now, ScheduleRequest request = {}) const;
  /// Fails the test on problems.
  report::RecordDocument record(std::string_view now, RecordRequest request) const;
  void undo(std::string_view now, std::int64_t event) const;

 private:
  std::filesystem::path folder_;
};

/// Null where there is none.
const report::TimelineStep* find(const report::ScheduleDocument& document, std::string_view id);
time::Instant start_of(const report::ScheduleDocument& document, std::string_view id);
/// Of a wet's film.
time::Instant milestone_of(const report::ScheduleDocument& document, std::string_view id,
                           std::string_view milestone);
/// The reason that a step moved; empty: it did not.
std::string why_moved(const report::ScheduleDocument& document, std::string_view id);

}  // namespace wetout::work::testing
