// What is on the shelf.
#include <SQLiteCpp/Column.h>
#include <SQLiteCpp/Statement.h>

#include <algorithm>
#include <map>
#include <string>
#include <tuple>

#include "joblog/ledger_words.hpp"
#include "joblog/log_impl.hpp"
#include "joblog/transaction.hpp"

namespace wetout::joblog {
namespace {

// Lots with what they hold, of all materials or of one (?2).
std::string lot_query(bool one_material) {
  return std::string(
             "SELECT material, label, batch, received, expires, width_um, quantity, minor FROM"
             " (SELECT lot, sum(iif(target = 'stock', quantity, -quantity)) AS quantity,"
             "    sum(iif(target = 'stock', minor, -minor)) AS minor FROM movement WHERE lot ") +
         (one_material ? "IN (SELECT id FROM lot WHERE material = ?2)" : "IS NOT NULL") +
         "  GROUP BY lot) JOIN lot ON lot.id = lot WHERE ?1 OR quantity <> 0 OR minor <> 0";
}

void add_lots(SQLite::Statement& rows, std::map<std::int64_t, MaterialStock>& materials) {
  while (rows.executeStep()) {
    MaterialStock& material = materials[rows.getColumn(0).getInt64()];
    material.lots.push_back({.label = rows.getColumn(1).getString(),
                             .batch = rows.getColumn(2).getString(),
                             .received = to_instant(rows.getColumn(3).getInt64()),
                             .expires = read_date(rows.getColumn(4)),
                             .width_um = read_number(rows.getColumn(5)),
                             .quantity = rows.getColumn(6).getInt64(),
                             .minor = rows.getColumn(7).getInt64()});
    material.quantity += material.lots.back().quantity;
    material.minor += material.lots.back().minor;
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
    SQLite::Statement lots(db, lot_query(slug.has_value()));
    lots.bind(1, which == Lots::all ? 1 : 0);
    if (slug) lots.bind(2, materials.begin()->first);
    add_lots(lots, materials);
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
