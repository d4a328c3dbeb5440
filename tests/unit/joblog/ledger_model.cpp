#include "ledger_model.hpp"

#include <algorithm>
#include <cmath>
#include <set>
#include <tuple>

#include "ledger_samples.hpp"

namespace wetout::joblog::testing {
namespace {

struct Held {
  std::int64_t basis_quantity = 0;
  std::int64_t basis_minor = 0;
  std::int64_t out_quantity = 0;
  std::int64_t out_minor = 0;
};

// What a lot held when goods last came, were found or missed, and what was taken since.
Held replay(const std::vector<MovementRow>& history) {
  Held held;
  const auto rebase = [&] {
    held.basis_quantity -= std::exchange(held.out_quantity, 0);
    held.basis_minor -= std::exchange(held.out_minor, 0);
  };
  for (const MovementRow& line : history) {
    const bool in = line.target == Account::stock;
    held.out_quantity += in ? -line.quantity : line.quantity;
    held.out_minor += in ? -line.minor : line.minor;
    const Account other = in ? line.source : line.target;
    const bool is_taking = other == Account::board || other == Account::waste;
    if (!is_taking || held.out_quantity < 0) rebase();
  }
  return held;
}

bool has_expired(const LedgerModel::Lot& lot, Date on) {
  return lot.expires && std::chrono::sys_days(*lot.expires) < std::chrono::sys_days(on);
}

}  // namespace

std::int64_t LedgerModel::Lot::quantity() const {
  std::int64_t sum = 0;
  for (const MovementRow& line : history) {
    sum += line.target == Account::stock ? line.quantity : -line.quantity;
  }
  return sum;
}

std::int64_t LedgerModel::Lot::minor() const {
  std::int64_t sum = 0;
  for (const MovementRow& line : history) {
    sum += line.target == Account::stock ? line.minor : -line.minor;
  }
  return sum;
}

std::int64_t LedgerModel::Lot::bought() const {
  std::int64_t sum = 0;
  for (const MovementRow& line : history) {
    if (line.source == Account::supplier) sum += line.quantity;
    if (line.target == Account::supplier) sum -= line.quantity;
  }
  return sum;
}

std::int64_t LedgerModel::Lot::cost_of(std::int64_t taken) const {
  const Held held = replay(history);
  if (held.basis_quantity <= 0) return 0;
  // nearbyint takes halves to even; the numbers of these tests are small enough for a double.
  const double due = static_cast<double>(held.basis_minor * (held.out_quantity + taken)) /
                     static_cast<double>(held.basis_quantity);
  return std::max<std::int64_t>(static_cast<std::int64_t>(std::nearbyint(due)) - held.out_minor, 0);
}

std::int64_t LedgerModel::quantity(const std::string& material) const {
  std::int64_t sum = 0;
  const auto lots = lots_.find(material);
  if (lots == lots_.end()) return 0;
  for (const Lot& lot : lots->second) sum += lot.quantity();
  return sum;
}

std::string LedgerModel::stock() const {
  std::string text;
  for (const auto& [material, lots] : lots_) {
    if (lots.empty()) continue;
    text += (text.empty() ? "" : "; ") + material;
    const char* between = " ";
    for (const Lot& lot : lots) {
      text += between + lot.label + " " + std::to_string(lot.quantity()) + "@" +
              std::to_string(lot.minor());
      between = ", ";
    }
  }
  return text;
}

std::optional<std::vector<MovementRow>> LedgerModel::book(const NewEntry& entry) {
  const LedgerModel before = *this;
  now_ = {};
  if (!std::visit([&](const auto& one) { return draft(one); }, entry)) {
    *this = before;
    return std::nullopt;
  }
  entries_.push_back(now_);
  return now_.lines;
}

LedgerModel::Lot* LedgerModel::find(const std::string& material, const std::string& label) {
  for (Lot& lot : lots_[material]) {
    if (lot.label == label) return &lot;
  }
  return nullptr;
}

void LedgerModel::sort(const std::string& material) {
  std::sort(lots_[material].begin(), lots_[material].end(), [](const Lot& a, const Lot& b) {
    return std::tie(a.received, a.label) < std::tie(b.received, b.label);
  });
}

LedgerModel::Lot& LedgerModel::last(const std::string& material, Instant at) {
  if (lots_[material].empty()) lots_[material].push_back({"unknown", at, {}, {}});
  return lots_[material].back();
}

void LedgerModel::move(const MovementRow& line, bool merge_with_last) {
  find(line.material, line.lot)->history.push_back(line);
  if (merge_with_last) {
    now_.lines.back().quantity += line.quantity;
    now_.lines.back().minor += line.minor;
    now_.lines.back().overdrawn += line.overdrawn;
  } else {
    now_.lines.push_back(line);
  }
}

bool LedgerModel::draft(const NewReceipt& receipt) {
  now_.kind = EntryKind::receive;
  for (const Received& part : receipt.parts) {
    const std::string& material = part.material.slug;
    std::string label = part.lot;
    for (int n = 1; label.empty(); ++n) {
      std::string made =
          "2026-" + std::string(receipt.head.on.month() == std::chrono::June ? "06" : "07");
      const unsigned day = static_cast<unsigned>(receipt.head.on.day());
      made += (day < 10 ? "-0" : "-") + std::to_string(day);
      if (n > 1) made += "-" + std::to_string(n);
      const Lot* there = find(material, made);
      if (there == nullptr || there->bought() == 0) label = made;
    }
    Lot* lot = find(material, label);
    if (lot != nullptr && lot->bought() != 0) return false;
    if (lot == nullptr) lot = &lots_[material].emplace_back(Lot{.label = label});
    lot->received = receipt.head.at;
    lot->expires = part.expires;
    sort(material);
    move({.source = Account::supplier,
          .target = Account::stock,
          .material = material,
          .lot = label,
          .quantity = part.quantity,
          .minor = part.cost_minor});
  }
  settle();
  return true;
}

bool LedgerModel::take(const Taking& taking, const EntryHead& head, MovementRow like) {
  const std::string& material = taking.material.slug;
  like.source = Account::stock;
  like.material = material;
  std::int64_t rest = taking.quantity;
  const std::size_t first = now_.lines.size();
  const auto take_from = [&](const Lot& lot, std::int64_t quantity) {
    like.lot = lot.label;
    like.quantity = quantity;
    like.minor = lot.cost_of(quantity);
    like.expired = has_expired(lot, head.on);
    const std::int64_t had = std::max<std::int64_t>(lot.quantity(), 0);
    like.overdrawn = std::max<std::int64_t>(quantity - had, 0);
    rest -= quantity;
    for (std::size_t i = first; i < now_.lines.size(); ++i) {
      if (now_.lines[i].lot != lot.label) continue;
      std::swap(now_.lines[i], now_.lines.back());
      move(like, true);
      std::swap(now_.lines[i], now_.lines.back());
      return;
    }
    move(like);
  };
  if (!taking.lot.empty()) {
    const Lot* lot = find(material, taking.lot);
    if (lot == nullptr) return false;
    take_from(*lot, rest);
    return true;
  }
  for (const bool expired : {false, true}) {
    for (const Lot& lot : lots_[material]) {
      const std::int64_t there = std::min(rest, lot.quantity());
      if (there > 0 && has_expired(lot, head.on) == expired) take_from(lot, there);
    }
  }
  if (rest == 0) return true;
  const Lot* from = &last(material, head.at);
  for (const Lot& lot : lots_[material]) {
    if (!has_expired(lot, head.on)) from = &lot;
  }
  take_from(*from, rest);
  return true;
}

bool LedgerModel::draft(const NewUse& use) {
  now_.kind = EntryKind::use;
  return std::all_of(use.takings.begin(), use.takings.end(), [&](const Taking& taking) {
    return take(taking, use.head,
                {.target = Account::board, .job_slug = use.job_slug, .step = use.step});
  });
}

bool LedgerModel::draft(const NewWaste& waste) {
  now_.kind = EntryKind::waste;
  return std::all_of(waste.takings.begin(), waste.takings.end(), [&](const Taking& taking) {
    return take(taking, waste.head, {.target = Account::waste});
  });
}

bool LedgerModel::draft(const NewCount& count) {
  now_.kind = EntryKind::count;
  for (const Counted& one : count.counts) {
    const std::string& material = one.material.slug;
    if (!one.lot.empty() && find(material, one.lot) == nullptr) return false;
    last(material, count.head.at);
    std::vector<std::string> labels;
    for (const Lot& lot : lots_[material]) {
      if (one.lot.empty() || lot.label == one.lot) labels.push_back(lot.label);
    }
    const std::size_t lines = now_.lines.size();
    const auto adjust = [&](const std::string& label, std::int64_t quantity, std::int64_t minor) {
      const bool in = quantity > 0;
      move({.source = in ? Account::adjustment : Account::stock,
            .target = in ? Account::stock : Account::adjustment,
            .material = material,
            .lot = label,
            .quantity = in ? quantity : -quantity,
            .minor = minor});
    };
    std::int64_t there = 0;
    for (const std::string& label : labels) {
      const Lot lot = *find(material, label);
      if (lot.quantity() < 0) adjust(label, -lot.quantity(), -lot.minor());
      there += std::max<std::int64_t>(lot.quantity(), 0);
    }
    for (const std::string& label : labels) {
      const Lot lot = *find(material, label);
      const std::int64_t missing = std::min(lot.quantity(), there - one.quantity);
      if (missing <= 0) continue;
      adjust(label, -missing, lot.cost_of(missing));
      there -= missing;
    }
    if (there < one.quantity || now_.lines.size() == lines) {
      adjust(labels.back(), one.quantity - there, 0);
    }
  }
  return true;
}

bool LedgerModel::draft(const NewLabour& labour) {
  now_.kind = EntryKind::labour;
  now_.lines = {{.source = Account::labour,
                 .target = Account::board,
                 .job_slug = labour.job_slug,
                 .step = labour.step,
                 .quantity = labour.minutes,
                 .minor = labour.cost_minor}};
  return true;
}

bool LedgerModel::draft(const NewReversal& reversal) {
  const auto i = static_cast<std::size_t>(reversal.number) - 1;
  if (i >= entries_.size() || entries_[i].undone || entries_[i].kind == EntryKind::undo) {
    return false;
  }
  entries_[i].undone = true;
  now_.kind = EntryKind::undo;
  const std::vector<MovementRow> lines = entries_[i].lines;
  for (MovementRow line : lines) {
    std::swap(line.source, line.target);
    line.expired = false;
    line.overdrawn = 0;
    if (line.material.empty()) {
      now_.lines.push_back(line);
    } else {
      move(line);
    }
  }
  settle();
  return true;
}

// Cost without goods, or against their sign, goes to adjustment or comes from there.
void LedgerModel::settle() {
  std::set<std::pair<std::string, std::string>> seen;
  const std::vector<MovementRow> lines = now_.lines;
  for (const MovementRow& line : lines) {
    if (line.material.empty() || !seen.emplace(line.material, line.lot).second) continue;
    const Lot& lot = *find(line.material, line.lot);
    const std::int64_t quantity = lot.quantity();
    const std::int64_t minor = lot.minor();
    const bool is_sound = quantity > 0 ? minor >= 0 : quantity < 0 ? minor <= 0 : minor == 0;
    if (is_sound) continue;
    move({.source = minor > 0 ? Account::stock : Account::adjustment,
          .target = minor > 0 ? Account::adjustment : Account::stock,
          .material = line.material,
          .lot = line.lot,
          .minor = std::abs(minor)});
  }
}

}  // namespace wetout::joblog::testing
