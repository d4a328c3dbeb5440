// The ledger once more, naively: every lot is replayed from its whole history at every step, costs
// are divisions of small numbers. What Log::book must answer, and what stock must be.
#pragma once

#include <map>
#include <optional>
#include <string>
#include <vector>

#include "wetout/joblog/log.hpp"

namespace wetout::joblog::testing {

class LedgerModel {
 public:
  /// The lines that the entry must have; nothing where it must be refused.
  std::optional<std::vector<MovementRow>> book(const NewEntry& entry);

  struct Lot {
    std::string label = {};
    Instant received = {};
    std::optional<Date> expires = {};
    std::vector<MovementRow> history = {};

    [[nodiscard]] std::int64_t quantity() const;
    [[nodiscard]] std::int64_t minor() const;
    [[nodiscard]] std::int64_t bought() const;
    [[nodiscard]] std::int64_t cost_of(std::int64_t quantity) const;
  };
  /// Of a material, the oldest first.
  std::vector<Lot>& lots(const std::string& material) { return lots_[material]; }
  [[nodiscard]] std::int64_t quantity(const std::string& material) const;
  [[nodiscard]] std::size_t entries() const { return entries_.size(); }
  /// As testing::stock prints it.
  [[nodiscard]] std::string stock() const;

 private:
  struct Entry {
    EntryKind kind = EntryKind::receive;
    std::vector<MovementRow> lines = {};
    bool undone = false;
  };

  bool draft(const NewReceipt& receipt);
  bool draft(const NewUse& use);
  bool draft(const NewWaste& waste);
  bool draft(const NewCount& count);
  bool draft(const NewLabour& labour);
  bool draft(const NewReversal& reversal);

  Lot* find(const std::string& material, const std::string& label);
  Lot& last(const std::string& material, Instant at);
  void sort(const std::string& material);
  void move(const MovementRow& line, bool merge_with_last = false);
  bool take(const Taking& taking, const EntryHead& head, MovementRow like);
  void settle();

  std::map<std::string, std::vector<Lot>> lots_ = {};
  std::vector<Entry> entries_ = {};
  Entry now_ = {};
};

}  // namespace wetout::joblog::testing
