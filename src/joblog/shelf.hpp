// Lots and what they hold, as far as a booking needs them.
#pragma once

#include <SQLiteCpp/Database.h>
#include <SQLiteCpp/Statement.h>

#include <cstdint>
#include <map>
#include <memory>
#include <optional>
#include <string>
#include <string_view>
#include <unordered_map>
#include <vector>

#include "joblog/fifo.hpp"

namespace wetout::joblog {

struct ShelfLot {
  std::int64_t id = 0;  ///< 0: not in the log yet
  std::string label = {};
  std::string batch = {};
  Instant received = {};
  std::optional<Date> expires = {};
  std::optional<std::int64_t> width_um = {};
  LotBalance balance = {};
  std::int64_t bought = 0;  ///< what came from the supplier and was not taken back
  bool is_new = false;      ///< to be written, also where it describes an old lot anew
};

struct ShelfMaterial {
  std::int64_t id = 0;  ///< 0: not in the log yet
  Material material = {};
  std::vector<std::unique_ptr<ShelfLot>> lots = {};  ///< by time received, then label
  std::int64_t quantity = 0;                         ///< of all lots
  bool is_renamed = false;
  std::size_t first_open = 0;  ///< lots before it hold nothing
  std::unordered_map<std::string_view, ShelfLot*> by_label = {};

  ShelfLot* find(std::string_view label) const;
  ShelfLot* find(std::int64_t id) const;
  ShelfLot& add(ShelfLot lot);
  /// Gives a lot that is here already another time of receipt.
  void receive_again(ShelfLot& lot, Instant received);
  /// Moves goods and cost to or from a lot of this material.
  void move(ShelfLot& lot, Account source, Account target, std::int64_t quantity,
            std::int64_t minor);
};

/// What is on the shelf, read once for each material and then kept up to date by its user. Good as
/// long as nobody else writes: in one transaction. Members throw SQLite::Exception.
class Shelf {
 public:
  explicit Shelf(SQLite::Database& db) : db_(db) {}

  /// The material of that slug; one that the log does not know is added, not yet written.
  ShelfMaterial& material(const Material& wanted);
  /// The material of a lot that is in the log.
  ShelfMaterial& material_of(std::int64_t lot);
  void forget() { materials_.clear(); }

 private:
  void read_lots(ShelfMaterial& material);
  ShelfMaterial& keep(ShelfMaterial material);

  SQLite::Database& db_;
  std::map<std::string, ShelfMaterial, std::less<>> materials_;
};

}  // namespace wetout::joblog
