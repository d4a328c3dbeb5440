// Instants are UTC; a Zone turns them into what a wall clock shows and back.
#pragma once

#include <chrono>
#include <string>
#include <string_view>

#include "wetout/base/problem.hpp"

namespace date {
class time_zone;
}

namespace wetout::time {

using Instant = std::chrono::sys_seconds;     // UTC, without leap seconds
using WallTime = std::chrono::local_seconds;  // what a clock on the wall shows, somewhere

/// What a wall time means in a zone: one instant; none, when clocks were put forward over it; two,
/// when they were put back.
struct WallReading {
  enum class Kind { once, skipped, twice };
  Kind kind = Kind::once;
  /// twice: the earlier instant. skipped: read with the offset that held before the change.
  Instant first;
  /// twice: the later instant. skipped: read with the offset that holds after the change.
  Instant second;
};

/// A time zone of the IANA database. Rules are known up to the end of 2037; after that the last
/// offset before it is taken, without summer time.
class Zone {
 public:
  Zone() = default;  ///< UTC

  /// "America/Los_Angeles", "UTC". Code "zone.unknown", with the name that was probably meant.
  /// Throws std::runtime_error when the computer has no zone database.
  static base::Result<Zone> named(std::string_view name);

  [[nodiscard]] const std::string& name() const { return name_; }
  [[nodiscard]] std::chrono::seconds offset_at(Instant instant) const;
  [[nodiscard]] WallTime wall(Instant instant) const;
  [[nodiscard]] WallReading read(WallTime wall) const;

 private:
  std::string name_ = "UTC";
  const date::time_zone* rules_ = nullptr;  // none: UTC; owned by the database for good
};

}  // namespace wetout::time
