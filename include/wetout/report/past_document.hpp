// Boards of the past that were entered into the log: the answer of `record import`.
#pragma once

#include <cstdint>
#include <optional>
#include <string>
#include <string_view>
#include <vector>

#include "wetout/base/notice.hpp"
#include "wetout/units/milligrams.hpp"
#include "wetout/units/money.hpp"
#include "wetout/units/print.hpp"

namespace wetout::report {

inline constexpr std::string_view past_format = "wetout.past/1";

struct PastBoard {
  std::string job;  ///< id
  std::string name;
  bool began = false;  ///< with this import
  std::string from;    ///< first day, "2025-07-12"
  std::string to;      ///< last day
  std::int64_t steps = 0;
  std::int64_t facts = 0;   ///< new ones
  std::int64_t before = 0;  ///< facts that were entered before
  // Of what is new:
  units::Milligrams mixed;
  units::Milligrams left;  ///< left over and spilled
  std::int64_t minutes = 0;
  units::Money goods;  ///< taken from stock
  units::Money work;
};

struct PastDocument {
  std::string program;            ///< "wetout 0.1.0"
  std::string made;               ///< RFC 3339 with offset
  std::string file;               ///< as the user named it
  bool saved = false;             ///< false of a dry run
  std::vector<PastBoard> boards;  ///< in the order of the file
  std::int64_t facts = 0;         ///< new ones, of all boards
  std::int64_t before = 0;        ///< facts that were entered before
  std::int64_t entries = 0;       ///< booked in the ledger
  base::Notices notices;
};

/// One line; docs/formats/past.schema.json.
std::string to_json(const PastDocument& document);
std::string to_text(const PastDocument& document, units::System system);

}  // namespace wetout::report
