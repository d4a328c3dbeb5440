// What is on the shelf.
#include <SQLiteCpp/Column.h>
#include <SQLiteCpp/Statement.h>

#include <algorithm>
#include <cstdint>
#include <map>
#include <optional>
#include <string>
#include <tuple>

#include "joblog/ledger_words.hpp"
#include "joblog/log_impl.hpp"
#include "joblog/transaction.hpp"

namespace wetout::joblog {
namespace {

// Lots with what they hold, of all materials or of one.
void add_lots(SQLite::Database& db, std::optional<std::int64_t> material, Lots which,
              std::map<std::int64_t, MaterialStock>& materials) {
  SQLite::Statement rows(db,
                         std::string("SELECT material, label, batch, received, expires, width_um,"
                                     " sum(iif(target = 'stock', quantity, -quantity)) AS goods,"
                                     " sum(iif(target = 'stock', minor, -minor)) AS money"
                                     " FROM lot JOIN lot_sum ON lot = lot.id") +
                             (material ? " WHERE material = ?2" : "") +
                             " GROUP BY lot HAVING ?1 OR goods <> 0 OR money <> 0");
  rows.bind(1, which == Lots::all ? 1 : 0);
  if (material) rows.bind(2, *material);
  while (rows.executeStep()) {
    MaterialStock& stock = materials[rows.getColumn(0).getInt64()];
    stock.lots.push_back({.label = rows.getColumn(1).getString(),
                          .batch = rows.getColumn(2).getString(),
                          .received = to_instant(rows.getColumn(3).getInt64()),
                          .expires = read_date(rows.getColumn(4)),
                          .width_um = read_number(rows.getColumn(5)),
                          .quantity = rows.getColumn(6).getInt64(),
                          .minor = rows.getColumn(7).getInt64()});
    stock.quantity += stock.lots.back().quantity;
    stock.minor += stock.lots.back().minor;
  }
}

std::vector<MaterialStock> read_stock(SQLite::Database& db, std::optional<std::string_view> slug,
                                      Lots which) {
  SQLite::Statement rows(db,
                         "SELECT id, slug, name, unit FROM material WHERE ?1 IS NULL OR slug = ?1");
  if (slug) bind_text(rows, 1, *slug);
  std::map<std::int64_t, MaterialStock> materials;
  while (rows.executeStep()) {
    materials[rows.getColumn(0).getInt64()].material = {
        rows.getColumn(1).getString(), rows.getColumn(2).getString(), read_unit(rows.getColumn(3))};
  }
  if (!materials.empty()) {
    add_lots(db, slug ? std::optional(materials.begin()->first) : std::nullopt, which, materials);
  }
  std::vector<MaterialStock> stock;
  for (auto& [id, material] : materials) stock.push_back(std::move(material));
  std::sort(stock.begin(), stock.end(), [](const MaterialStock& a, const MaterialStock& b) {
    return a.material.slug < b.material.slug;
  });
  for (MaterialStock& material : stock) {
    std::sort(material.lots.begin(), material.lots.end(), [](const LotStock& a, const LotStock& b) {
      return std::tie(a.received, a.label) < std::tie(b.received, b.label);
    });
  }
  return stock;
}

}  // namespace

std::vector<MaterialStock> Log::stock(Lots lots) const {
  return impl_->guarded([&] {
    const Transaction one_view(impl_->db(), Transaction::Kind::read);
    return read_stock(impl_->db(), std::nullopt, lots);
  });
}

bool Log::keeps_stock() const {
  return impl_->guarded([&] {
    SQLite::Statement row(impl_->db(),
                          "SELECT EXISTS(SELECT 1 FROM entry AS one WHERE kind = 'receive'"
                          " AND NOT EXISTS(SELECT 1 FROM entry WHERE undoes = one.id))");
    row.executeStep();
    return row.getColumn(0).getInt() != 0;
  });
}

std::optional<MaterialStock> Log::stock_of(std::string_view material, Lots lots) const {
  return impl_->guarded([&]() -> std::optional<MaterialStock> {
    const Transaction one_view(impl_->db(), Transaction::Kind::read);
    auto stock = read_stock(impl_->db(), material, lots);
    if (stock.empty()) return std::nullopt;
    return std::move(stock.front());
  });
}

}  // namespace wetout::joblog
