// `ledger`: what boards have used and cost, totals, exports; taking an entry back.
#pragma once

#include <cstdint>
#include <functional>
#include <optional>
#include <string>
#include <string_view>

#include "wetout/base/problem.hpp"
#include "wetout/report/ledger_document.hpp"
#include "wetout/units/print.hpp"
#include "wetout/work/workshop.hpp"

namespace wetout::work {

/// A document with what printing it needs beside it.
struct LedgerAnswer {
  report::LedgerDocument document;
  units::System units = units::System::us;  ///< of the shop
};

enum class LedgerBy { month, material, job };

struct LedgerRequest {
  std::optional<std::string> job = {};     ///< of the log
  std::optional<LedgerBy> by = {};         ///< else of a job what it used, without one months
  std::optional<std::size_t> latest = {};  ///< so many entries at most; else all
};

/// Time, units, currency and the cost of an hour are those of the shop file that a job here would
/// use; without one UTC, and work has no cost. Work that was recorded with a start and an end but
/// not booked is worked out and counted (docs/commands/ledger.md). Problems: "log.none",
/// "job.unknown", "job.ambiguous", those of the shop file. Throw joblog::StoreError.
base::Result<LedgerAnswer> ledger(const Workshop& workshop, const LedgerRequest& request);

enum class LedgerExport { journal, csv };

/// Hands over the text piece by piece: all entries, or those that concern a job.
base::Result<void> export_ledger(const Workshop& workshop, const std::optional<std::string>& job,
                                 LedgerExport format,
                                 const std::function<void(std::string_view)>& write);

struct LedgerUndo {
  std::int64_t entry = 0;  ///< number
  std::optional<std::string> note;
  std::string token;
};

/// Takes an entry back. Problems: "log.none", "entry.unknown", "entry.undone", "entry.is_undo",
/// "entry.token".
base::Result<LedgerAnswer> undo_entry(const Workshop& workshop, const LedgerUndo& undo);

}  // namespace wetout::work
