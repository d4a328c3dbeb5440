// Schedules that were saved: what a schedule is made of on its way into the log and out of it.
#pragma once

#include <cstdint>
#include <functional>
#include <optional>
#include <string>
#include <string_view>
#include <vector>

#include "wetout/joblog/moment.hpp"

namespace wetout::joblog {

enum class StepState {
  planned,  ///< may still be moved by the next schedule
  fixed,    ///< its start was given
  done,     ///< its times were recorded
};
/// "planned", "fixed", "done": the words of the log.
std::string_view to_string(StepState state);

/// The revision of a job's plan that a schedule was made for.
struct ScheduledJob {
  std::string slug = {};
  int revision = 0;
  friend bool operator==(const ScheduledJob&, const ScheduledJob&) = default;
};

struct ScheduledStep {
  std::string job = {};   ///< slug of a job of the schedule
  std::string step = {};  ///< as schedule::to_string writes it: "bottom-lam/wet"; unique in its job
  Instant start = {};
  Instant finish = {};  ///< not before start
  StepState state = StepState::planned;
  friend bool operator==(const ScheduledStep&, const ScheduledStep&) = default;
};

/// The forecast a schedule was made with, kept byte for byte.
struct WeatherText {
  std::string name = {};    ///< as the user named it
  std::string format = {};  ///< e.g. "csv", not empty
  std::string body = {};
};

struct NewSchedule {
  std::string program = {};  ///< "wetout 0.1.0"
  Instant made = {};
  Digest input_key = {};  ///< of everything the result depends on
  std::string result_format = {};
  /// Makes the document to keep, given the number it will have. Called inside the transaction and
  /// only when a schedule is saved; an exception undoes the save.
  std::function<std::string(std::int64_t number)> result_body = {};
  std::optional<WeatherText> weather = {};
  std::vector<ScheduledJob> jobs = {};  ///< at least one, each once
  std::vector<ScheduledStep> steps = {};
};

struct SavedSchedule {
  std::int64_t number = 0;  ///< 1, 2, 3 ... in the whole log
  /// The last schedule of every one of these jobs is one schedule of exactly these jobs, and it
  /// has the same input key: nothing was added.
  bool unchanged = false;
  /// The last schedule before it that holds any of its jobs.
  std::optional<std::int64_t> replaces = {};
  /// Slugs of jobs that were archived and are not any more.
  std::vector<std::string> brought_back = {};
};

struct ScheduleRow {
  std::int64_t number = 0;
  Instant made = {};
  std::string program = {};
  Digest input_key = {};
  std::optional<std::int64_t> replaces = {};
  std::vector<ScheduledJob> jobs = {};  ///< by slug, as the jobs are called now
  std::string format = {};
  std::string body = {};
  Digest sha256 = {};  ///< of body
};

/// A line of the list of schedules.
struct ScheduleHead {
  std::int64_t number = 0;
  Instant made = {};
  std::optional<std::int64_t> replaces = {};
  std::vector<ScheduledJob> jobs = {};  ///< by slug
};

}  // namespace wetout::joblog
