// What was recorded of a job: the answer of `record`.
#pragma once

#include <cstdint>
#include <optional>
#include <string>
#include <string_view>
#include <vector>

#include "wetout/base/notice.hpp"
#include "wetout/report/ledger_document.hpp"
#include "wetout/units/milligrams.hpp"
#include "wetout/units/print.hpp"
#include "wetout/units/temperature.hpp"

namespace wetout::report {

inline constexpr std::string_view record_format = "wetout.record/1";

/// One fact, as it stands in the log.
struct RecordedFact {
  std::int64_t number = 0;
  std::string token;
  bool already = false;  ///< it was there before: the call was sent again
  std::string kind;  ///< mixed | left | spilled | started | done | milestone | conditions | note
                     ///< | undo
  std::optional<std::string> step;  ///< "bottom-lam/wet"; nothing: of the whole job
  std::string at;                   ///< when it happened, RFC 3339 with offset
  std::string recorded;             ///< likewise
  std::optional<units::Milligrams> mass;
  std::optional<units::Milligrams> part_a;
  std::optional<units::Milligrams> part_b;
  std::optional<std::string> milestone;
  std::optional<units::Temperature> air;
  std::optional<double> humidity;  ///< share
  std::optional<std::string> note;
  std::optional<std::int64_t> undoes;
  std::optional<std::int64_t> undone_by;
  bool counts = true;  ///< for what is learned
};

/// What the records of one step come to, without what was taken back.
struct StepTotal {
  std::string step;
  std::optional<std::string> coat;           ///< id
  std::optional<units::Milligrams> planned;  ///< mix of the job's last plan
  units::Milligrams mixed;
  std::optional<units::Milligrams> part_a;  ///< nothing when some mix has no parts
  std::optional<units::Milligrams> part_b;
  units::Milligrams left;
  units::Milligrams spilled;
  std::optional<std::string> started;  ///< the last one recorded, RFC 3339 with offset
  std::optional<std::string> done;     ///< likewise
};

struct RecordedJob {
  std::string id;
  std::string name;
  std::optional<int> revision;  ///< of its last plan
  bool began = false;           ///< with this record
  bool brought_back = false;    ///< out of the archive, by this record
};

struct RecordDocument {
  std::string program;  ///< "wetout 0.1.0"
  std::string made;     ///< RFC 3339 with offset
  std::string action;   ///< record | list | undo
  bool saved = false;   ///< false of a dry run, and of a list
  RecordedJob job;
  std::vector<RecordedFact> events;    ///< of this call, or all of them
  std::optional<RecordedFact> undone;  ///< what an undo took back
  std::vector<LedgerEntry> booked;     ///< what came off the shelf and was worked for the events
  std::vector<StepTotal> totals;       ///< of the steps concerned
  std::vector<std::string> cautions;
  base::Notices notices;
};

/// One line; docs/formats/record.schema.json.
std::string to_json(const RecordDocument& document);
std::string to_text(const RecordDocument& document, units::System system);

}  // namespace wetout::report
