// Totals by material, month, job: each what went one way less what came back.
#include <SQLiteCpp/Column.h>
#include <SQLiteCpp/Statement.h>

#include <map>
#include <string>

#include "joblog/ledger_words.hpp"
#include "joblog/log_impl.hpp"
#include "joblog/transaction.hpp"

namespace wetout::joblog {
namespace {

/// What went into stock (or, of work, into a board) from an account, or out of it (below zero).
struct Sums {
  Account other = Account::supplier;
  Flow flow = {};
};

// Columns from `at` on: source, target, quantity, minor.
Sums read_sums(SQLite::Statement& row, int at) {
  const Account source = read_account(row.getColumn(at));
  const Account target = read_account(row.getColumn(at + 1));
  const Flow flow{row.getColumn(at + 2).getInt64(), row.getColumn(at + 3).getInt64()};
  const bool is_stock = source == Account::stock || target == Account::stock;
  const Account home = is_stock ? Account::stock : Account::board;
  if (target == home) return {source, flow};
  return {target, {-flow.quantity, -flow.minor}};
}

void add(Flow& sum, const Flow& flow) {
  sum.quantity += flow.quantity;
  sum.minor += flow.minor;
}

Flow negative(const Flow& flow) { return {-flow.quantity, -flow.minor}; }

void add(MaterialTotals& totals, const Sums& sums) {
  switch (sums.other) {
    case Account::supplier:
      add(totals.received, sums.flow);
      break;
    case Account::board:
      add(totals.used, negative(sums.flow));
      break;
    case Account::waste:
      add(totals.wasted, negative(sums.flow));
      break;
    default:
      add(totals.adjusted, sums.flow);
      break;
  }
  add(totals.on_hand, sums.flow);
}

void add(MonthTotals& totals, const Sums& sums) {
  switch (sums.other) {
    case Account::supplier:
      totals.received_minor += sums.flow.minor;
      break;
    case Account::board:
      totals.used_minor -= sums.flow.minor;
      break;
    case Account::waste:
      totals.wasted_minor -= sums.flow.minor;
      break;
    case Account::labour:
      totals.work_minor += sums.flow.minor;
      totals.minutes += sums.flow.quantity;
      break;
    default:
      totals.adjusted_minor += sums.flow.minor;
      break;
  }
}

// Of a query with "?1 IS NULL OR ..." or a job.
void bind_job(SQLite::Statement& rows, std::optional<std::string_view> job) {
  if (job) bind_text(rows, 1, *job);
}

constexpr const char* of_job = "job = (SELECT id FROM job WHERE slug = ?1)";

}  // namespace

std::vector<MaterialTotals> Log::material_totals(std::optional<std::string_view> job) const {
  return impl_->guarded([&] {
    SQLite::Database& db = impl_->db();
    const Transaction one_view(db, Transaction::Kind::read);
    std::map<std::string, MaterialTotals> totals;
    SQLite::Statement rows(
        db,
        std::string("SELECT slug, name, unit, source, target, sum(quantity), sum(minor) FROM ") +
            (job ? "(SELECT lot, source, target, sum(quantity) AS quantity,"
                   "    sum(minor) AS minor FROM movement WHERE lot IS NOT NULL AND " +
                       std::string(of_job) + "  GROUP BY lot, source, target)"
                 : "lot_sum") +
            " JOIN lot ON lot.id = lot JOIN material ON material.id = material"
            " GROUP BY slug, source, target");
    bind_job(rows, job);
    while (rows.executeStep()) {
      MaterialTotals& material = totals[rows.getColumn(0).getString()];
      material.material = {rows.getColumn(0).getString(), rows.getColumn(1).getString(),
                           read_unit(rows.getColumn(2))};
      add(material, read_sums(rows, 3));
    }
    std::vector<MaterialTotals> list;
    for (auto& [slug, material] : totals) list.push_back(std::move(material));
    return list;
  });
}

std::vector<MonthTotals> Log::month_totals(std::optional<std::string_view> job) const {
  return impl_->guarded([&] {
    std::map<std::chrono::year_month, MonthTotals> totals;
    SQLite::Statement rows(impl_->db(),
                           std::string("SELECT day, source, target, sum(quantity), sum(minor)"
                                       " FROM movement JOIN entry ON entry.id = entry WHERE ") +
                               (job ? of_job : "TRUE") + " GROUP BY day, source, target");
    bind_job(rows, job);
    while (rows.executeStep()) {
      const Date day = to_date(rows.getColumn(0).getInt64());
      const std::chrono::year_month month = day.year() / day.month();
      totals[month].month = month;
      add(totals[month], read_sums(rows, 1));
    }
    std::vector<MonthTotals> list;
    for (const auto& [month, sums] : totals) list.push_back(sums);
    return list;
  });
}

std::vector<JobTotals> Log::job_totals() const {
  return impl_->guarded([&] {
    SQLite::Statement rows(
        impl_->db(),
        "SELECT slug, name, sum(iif(lot IS NULL, 0, paid)), sum(iif(lot IS NULL, paid, 0)),"
        " sum(iif(lot IS NULL, goods, 0)) FROM"
        " (SELECT job, lot, iif(target = 'board', minor, -minor) AS paid,"
        "    iif(target = 'board', quantity, -quantity) AS goods FROM movement"
        "    WHERE job IS NOT NULL) JOIN job ON job.id = job GROUP BY slug ORDER BY slug");
    std::vector<JobTotals> list;
    while (rows.executeStep()) {
      list.push_back({rows.getColumn(0).getString(), rows.getColumn(1).getString(),
                      rows.getColumn(2).getInt64(), rows.getColumn(3).getInt64(),
                      rows.getColumn(4).getInt64()});
    }
    return list;
  });
}

}  // namespace wetout::joblog
