// Entries on their way into the log, and what is said of them.
#pragma once

#include <functional>
#include <optional>
#include <string>
#include <vector>

#include "stock_shop.hpp"
#include "wetout/base/problem.hpp"
#include "wetout/joblog/log.hpp"

namespace wetout::work {

/// An entry that one call wants booked, with what to show of it.
struct Wanted {
  explicit Wanted(joblog::NewReceipt receipt);
  explicit Wanted(joblog::NewCount count);
  explicit Wanted(joblog::NewWaste waste);

  joblog::EntryKind kind = joblog::EntryKind::receive;
  joblog::EntryHead head;
  std::vector<joblog::Material> materials;
  joblog::NewEntry entry;
  /// Puts the place of it on a problem: the row of a table.
  std::function<base::Problem(base::Problem)> place = {};
};

/// Books all or none; on a dry run foresees them. What was booked before is left as it is.
base::Result<std::vector<joblog::Booked>> book_all(const Workshop& workshop, const StockShop& shop,
                                                   const std::vector<Wanted>& wanted);

/// A document with entries, items of the materials concerned (not on a dry run) and notices; the
/// shop as it is after booking.
StockAnswer booked_answer(const Workshop& workshop, const StockShop& shop, std::string action,
                          const std::vector<Wanted>& wanted,
                          const std::vector<joblog::Booked>& booked);

/// Both, with the log read again between them.
base::Result<StockAnswer> book(const Workshop& workshop, const StockShop& shop, std::string action,
                               const std::vector<Wanted>& wanted);

/// The head of an entry of this call.
joblog::EntryHead head_of(const std::string& token, time::Instant at, const StockShop& shop,
                          const std::optional<std::string>& note);

}  // namespace wetout::work
