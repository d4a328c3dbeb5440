#include "stock_booking.hpp"

#include <algorithm>
#include <utility>

#include "ledger_entries.hpp"
#include "stock_items.hpp"
#include "wetout/time/print.hpp"

namespace wetout::work {
namespace {

using joblog::Booked;
using joblog::Log;

base::Problems placed(base::Problems problems, const Wanted& wanted) {
  if (!wanted.place) return problems;
  for (base::Problem& problem : problems) problem = wanted.place(std::move(problem));
  return problems;
}

base::Result<std::vector<Booked>> foresee(const Log& log, const std::vector<Wanted>& wanted) {
  std::vector<joblog::NewEntry> entries;
  for (const Wanted& one : wanted) entries.push_back(one.entry);
  auto booked = log.foresee_bookings(entries);
  if (booked) return booked;
  // Which of them it was: the first that cannot follow those before it.
  std::size_t good = 0, bad = entries.size();
  base::Problems problems = booked.error();
  while (bad - good > 1) {
    const std::size_t middle = good + (bad - good) / 2;
    const auto some = log.foresee_bookings(
        {entries.begin(), entries.begin() + static_cast<std::ptrdiff_t>(middle)});
    if (some) {
      good = middle;
    } else {
      bad = middle;
      problems = some.error();
    }
  }
  return base::fail(placed(std::move(problems), wanted[bad - 1]));
}

// What a document says of an entry that was just booked.
report::LedgerEntry new_entry(const Wanted& wanted, const Booked& booked,
                              const EntryContext& context) {
  joblog::EntryRow row;
  row.number = booked.number;
  row.kind = wanted.kind;
  row.at = wanted.head.at;
  row.on = wanted.head.on;
  row.recorded = wanted.head.recorded;
  row.note = wanted.head.note;
  row.lines = booked.lines;
  return entry_of(row, context);
}

report::LedgerEntry earlier_entry(const StockShop& shop, std::int64_t number,
                                  const EntryContext& context) {
  joblog::EntryFilter filter;
  filter.number = number;
  report::LedgerEntry entry = entry_of(shop.log.value().entries(filter).at(0), context);
  entry.already = true;
  return entry;
}

void note_lines(const Booked& booked, const EntryContext& context, base::Notices& notices) {
  for (const joblog::Shortage& shortage : booked.shortages) {
    const report::GoodsAmount missing =
        amount_of(shortage.quantity, context.units.at(shortage.material));
    const bool pieces = missing.unit == report::GoodsUnit::piece;
    const double in_one = missing.unit == report::GoodsUnit::gram ? 1e3 : pieces ? 1.0 : 1e6;
    notices.push_back({.code = "stock.overdrawn",
                       .text = "more was taken than the log knows to be there: a purchase is not "
                               "in it, or a count is due",
                       .subject = shortage.material,
                       .value = static_cast<double>(missing.count) / in_one,
                       .limit = std::nullopt,
                       .unit = missing.unit == report::GoodsUnit::gram ? "g"
                               : pieces                                ? "pieces"
                                                                       : "m"});
  }
  for (const joblog::MovementRow& line : booked.lines) {
    if (!line.expired) continue;
    notices.push_back({.code = "stock.expired",
                       .text = "lot " + line.lot + " is past its last good day",
                       .subject = line.material});
  }
}

}  // namespace

Wanted::Wanted(joblog::NewReceipt receipt) : kind(joblog::EntryKind::receive), head(receipt.head) {
  for (const joblog::Received& part : receipt.parts) materials.push_back(part.material);
  entry = std::move(receipt);
}

Wanted::Wanted(joblog::NewCount count) : kind(joblog::EntryKind::count), head(count.head) {
  for (const joblog::Counted& part : count.counts) materials.push_back(part.material);
  entry = std::move(count);
}

Wanted::Wanted(joblog::NewWaste waste) : kind(joblog::EntryKind::waste), head(waste.head) {
  for (const joblog::Taking& part : waste.takings) materials.push_back(part.material);
  entry = std::move(waste);
}

base::Result<std::vector<Booked>> book_all(const Workshop& workshop, const StockShop& shop,
                                           const std::vector<Wanted>& wanted) {
  if (workshop.dry_run) {
    return shop.log ? foresee(*shop.log, wanted) : foresee(Log::in_memory(), wanted);
  }
  // A place that may be a slip of the hand is not made; a log that is there is only opened.
  Log log = Log::open(workshop.log,
                      {.access = joblog::Access::write, .make_folder = workshop.make_log_folder});
  std::vector<Booked> booked;
  const auto done = log.together([&]() -> base::Result<void> {
    base::Problems problems;
    for (const Wanted& one : wanted) {
      auto each = log.book(one.entry);
      if (each) {
        booked.push_back(std::move(*each));
        continue;
      }
      for (base::Problem& problem : placed(each.error(), one)) {
        problems.push_back(std::move(problem));
      }
    }
    if (!problems.empty()) return base::fail(std::move(problems));
    return {};
  });
  if (!done) return tl::unexpected(done.error());
  return booked;
}

StockAnswer booked_answer(const Workshop& workshop, const StockShop& shop, std::string action,
                          const std::vector<Wanted>& wanted, const std::vector<Booked>& booked) {
  StockAnswer answer = stock_answer(shop, std::move(action));
  report::StockDocument& document = answer.document;
  document.saved = !workshop.dry_run;
  EntryContext context = entry_context(shop.log ? &*shop.log : nullptr, shop.zone, shop.currency);
  std::vector<std::string> concerned;
  for (const Wanted& one : wanted) {
    for (const joblog::Material& material : one.materials) {
      context.units.emplace(material.slug, material.unit);
      concerned.push_back(material.slug);
    }
  }
  for (std::size_t i = 0; i < booked.size(); ++i) {
    document.entries.push_back(booked[i].already ? earlier_entry(shop, booked[i].number, context)
                                                 : new_entry(wanted[i], booked[i], context));
    note_lines(booked[i], context, document.notices);
  }
  if (!workshop.dry_run) {
    // What is odd about plans is of no interest here.
    base::Notices ignored;
    document.items = material_items(shop, concerned, ignored);
  }
  return answer;
}

base::Result<StockAnswer> book(const Workshop& workshop, const StockShop& shop, std::string action,
                               const std::vector<Wanted>& wanted) {
  const auto booked = book_all(workshop, shop, wanted);
  if (!booked) return tl::unexpected(booked.error());
  if (workshop.dry_run) {
    return booked_answer(workshop, shop, std::move(action), wanted, *booked);
  }
  const auto now = stock_shop(workshop);
  if (!now) return tl::unexpected(now.error());
  return booked_answer(workshop, *now, std::move(action), wanted, *booked);
}

joblog::EntryHead head_of(const std::string& token, time::Instant at, const StockShop& shop,
                          const std::optional<std::string>& note) {
  return {.token = token,
          .at = at,
          .on = day_of(at, shop.zone),
          .recorded = shop.now,
          .event = std::nullopt,
          .note = note.value_or("")};
}

}  // namespace wetout::work
