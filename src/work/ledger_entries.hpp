// Entries of the ledger on their way into documents.
#pragma once

#include <map>
#include <string>

#include "wetout/joblog/log.hpp"
#include "wetout/report/ledger_document.hpp"
#include "wetout/time/zone.hpp"

namespace wetout::work {

/// What an entry does not say of itself.
struct EntryContext {
  time::Zone zone;
  std::string currency;                               ///< of the log; empty: nothing costs anything
  std::map<std::string, joblog::MaterialUnit> units;  ///< by material
};

/// With the units of every material of the log, which may be null.
EntryContext entry_context(const joblog::Log* log, const time::Zone& zone, std::string currency);

report::LedgerLine line_of(const joblog::MovementRow& row, const EntryContext& context);
report::LedgerEntry entry_of(const joblog::EntryRow& row, const EntryContext& context);

}  // namespace wetout::work
