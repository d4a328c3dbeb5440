// What boards have used and cost. What came back by an undo is taken off.
#include <SQLiteCpp/Column.h>
#include <SQLiteCpp/Statement.h>

#include "joblog/ledger_words.hpp"
#include "joblog/log_impl.hpp"
#include "joblog/transaction.hpp"

namespace wetout::joblog {
namespace {

#define INTO_BOARD(column) "sum(iif(target = 'board', " column ", -" column "))"

void read_goods(SQLite::Database& db, std::int64_t job, JobCost& cost) {
  SQLite::Statement rows(db,
                         "SELECT step, slug, name, unit, label, " INTO_BOARD(
                             "quantity") " AS goods, " INTO_BOARD("minor") " AS money"
                         " FROM movement JOIN lot ON lot.id = lot"
                         " JOIN material ON material.id = material WHERE job = ?1"
                         " GROUP BY step, slug, label HAVING goods <> 0 OR money <> 0"
                         " ORDER BY step, slug, received, label");
  rows.bind(1, job);
  while (rows.executeStep()) {
    cost.goods.push_back({.step = rows.getColumn(0).getString(),
                          .material = {rows.getColumn(1).getString(), rows.getColumn(2).getString(),
                                       read_unit(rows.getColumn(3))},
                          .lot = rows.getColumn(4).getString(),
                          .quantity = rows.getColumn(5).getInt64(),
                          .minor = rows.getColumn(6).getInt64()});
    cost.goods_minor += cost.goods.back().minor;
  }
}

void read_work(SQLite::Database& db, std::int64_t job, JobCost& cost) {
  SQLite::Statement rows(db,
                         "SELECT step, " INTO_BOARD("quantity") " AS minutes, " INTO_BOARD(
                             "minor") " AS money"
                         " FROM movement WHERE job = ?1 AND lot IS NULL GROUP BY step"
                         " HAVING minutes <> 0 OR money <> 0 ORDER BY step");
  rows.bind(1, job);
  while (rows.executeStep()) {
    cost.work.push_back({.step = rows.getColumn(0).getString(),
                         .minutes = rows.getColumn(1).getInt64(),
                         .minor = rows.getColumn(2).getInt64()});
    cost.work_minor += cost.work.back().minor;
    cost.minutes += cost.work.back().minutes;
  }
}

}  // namespace

std::optional<JobCost> Log::job_cost(std::string_view slug) const {
  return impl_->guarded([&]() -> std::optional<JobCost> {
    SQLite::Database& db = impl_->db();
    const Transaction one_view(db, Transaction::Kind::read);
    const auto job = find_job(db, slug);
    if (!job) return std::nullopt;
    JobCost cost;
    read_goods(db, job->id, cost);
    read_work(db, job->id, cost);
    return cost;
  });
}

std::vector<LotInJob> Log::boards_with(std::string_view material, std::string_view lot) const {
  return impl_->guarded([&] {
    SQLite::Statement rows(
        impl_->db(),
        "SELECT job.slug, job.name, " INTO_BOARD("quantity") " AS goods, " INTO_BOARD("minor")
        " FROM movement JOIN job ON job.id = movement.job WHERE lot ="
        " (SELECT lot.id FROM lot JOIN material ON material.id = material"
        "  WHERE material.slug = ?1 AND label = ?2)"
        " GROUP BY job.id HAVING goods <> 0 ORDER BY job.slug");
    bind_text(rows, 1, material);
    bind_text(rows, 2, lot);
    std::vector<LotInJob> boards;
    while (rows.executeStep()) {
      boards.push_back({rows.getColumn(0).getString(), rows.getColumn(1).getString(),
                        rows.getColumn(2).getInt64(), rows.getColumn(3).getInt64()});
    }
    return boards;
  });
}

}  // namespace wetout::joblog
