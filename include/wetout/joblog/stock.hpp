// What is asked of the ledger: what is on the shelf, what a board has used and cost. All of it is
// summed from the movements; what was undone counts for nothing.
#pragma once

#include <chrono>
#include <cstdint>
#include <optional>
#include <string>
#include <vector>

#include "wetout/joblog/ledger.hpp"

namespace wetout::joblog {

struct LotStock {
  std::string label = {};
  std::string batch = {};  ///< the maker's; empty: none
  Instant received = {};
  std::optional<Date> expires = {};           ///< the last day on which it is good
  std::optional<std::int64_t> width_um = {};  ///< of a roll
  /// On hand. Below zero: more was taken than came in; a count puts it right.
  std::int64_t quantity = 0;
  std::int64_t minor = 0;  ///< what that is worth; zero when there is none of it
};

struct MaterialStock {
  Material material = {};
  std::int64_t quantity = 0;  ///< of all lots
  std::int64_t minor = 0;
  std::vector<LotStock> lots = {};  ///< by time received, then label
};

enum class Lots {
  open,  ///< those that hold something, or are overdrawn
  all,   ///< used-up ones too
};

/// What a board has of one lot in one step.
struct JobGoods {
  std::string step = {};  ///< empty: of no step
  Material material = {};
  std::string lot = {};
  std::int64_t quantity = 0;
  std::int64_t minor = 0;
};

struct JobWork {
  std::string step = {};  ///< empty: of no step
  std::int64_t minutes = 0;
  std::int64_t minor = 0;
};

struct JobCost {
  std::vector<JobGoods> goods = {};  ///< by step, material, lot
  std::vector<JobWork> work = {};    ///< by step
  std::int64_t goods_minor = 0;
  std::int64_t work_minor = 0;
  std::int64_t minutes = 0;
};

/// A board that holds some of a lot.
struct LotInJob {
  std::string job_slug = {};
  std::string job_name = {};
  std::int64_t quantity = 0;
  std::int64_t minor = 0;
};

struct Flow {
  std::int64_t quantity = 0;
  std::int64_t minor = 0;
  friend bool operator==(const Flow&, const Flow&) = default;
};

struct MaterialTotals {
  Material material = {};
  Flow received = {};
  Flow used = {};
  Flow wasted = {};
  /// What counts found (above zero) or missed (below).
  Flow adjusted = {};
  Flow on_hand = {};  ///< received − used − wasted + adjusted
};

/// Money of one month of the shop's calendar.
struct MonthTotals {
  std::chrono::year_month month = {};
  std::int64_t received_minor = 0;
  std::int64_t used_minor = 0;
  std::int64_t wasted_minor = 0;
  std::int64_t adjusted_minor = 0;
  std::int64_t work_minor = 0;
  std::int64_t minutes = 0;
};

struct JobTotals {
  std::string slug = {};
  std::string name = {};
  std::int64_t goods_minor = 0;
  std::int64_t work_minor = 0;
  std::int64_t minutes = 0;
};

/// Which entries to read; all conditions together.
struct EntryFilter {
  std::optional<std::string> job_slug = {};  ///< that has a line in it
  std::optional<std::int64_t> event = {};    ///< that it came from
  std::optional<std::int64_t> number = {};   ///< this one
};

}  // namespace wetout::joblog
