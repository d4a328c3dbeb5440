#include "joblog/draft.hpp"

#include <algorithm>

#include "wetout/base/check.hpp"
#include "wetout/base/words.hpp"
#include "wetout/time/print.hpp"

namespace wetout::joblog {
namespace {

constexpr std::size_t longest_label = 64;
constexpr const char* unknown_label = "unknown";

Draft begin(EntryKind kind, const EntryHead& head) { return {.kind = kind, .head = head}; }

// The label that a lot of this day gets: one that is free, or that of a lot that was taken back.
std::string made_label(const ShelfMaterial& material, Date on) {
  const std::string day = time::print(on);
  std::string label = day;
  for (int n = 2;; ++n) {
    const ShelfLot* lot = material.find(label);
    if (lot == nullptr || lot->bought == 0) return label;
    label = day + "-" + std::to_string(n);
  }
}

bool is_label(const std::string& label) {
  return !label.empty() && label.size() <= longest_label &&
         std::none_of(label.begin(), label.end(),
                      [](char c) { return static_cast<unsigned char>(c) < ' ' || c == '\x7f'; });
}

base::Problem taken_label(const ShelfMaterial& material, const std::string& label) {
  return {
      .code = "lot.taken",
      .message = "There is a lot \"" + label + "\" of \"" + material.material.slug + "\" already.",
      .key = material.material.slug,
      .found = label,
      .expected = "a label of its own for each container or roll",
      .hint = "Leave the label away to have one made from the date."};
}

base::Problem bad_label(const std::string& label) {
  return {.code = "lot.label",
          .message = "This cannot be the label of a lot.",
          .found = label,
          .expected = "up to 64 characters on one line, e.g. \"2026-06-13\""};
}

// The lot that a receipt fills; null with a problem.
ShelfLot* lot_to_receive(const Received& part, const EntryHead& head, ShelfMaterial& material,
                         base::Problems& problems) {
  const std::string label = part.lot.empty() ? made_label(material, head.on) : part.lot;
  if (!is_label(label)) {
    problems.push_back(bad_label(label));
    return nullptr;
  }
  ShelfLot* lot = material.find(label);
  if (lot != nullptr && lot->bought != 0) {
    problems.push_back(taken_label(material, label));
    return nullptr;
  }
  if (lot == nullptr) {
    lot = &material.add({.label = label, .received = head.at});
  } else {
    material.receive_again(*lot, head.at);
  }
  lot->batch = part.batch;
  lot->expires = part.expires;
  lot->width_um = part.width_um;
  lot->is_new = true;
  return lot;
}

void check_promises(const EntryHead& head) {
  base::promise(!head.token.empty(), "an entry has a token");
  base::promise(head.on.ok(), "an entry is of a day");
}

void check_promises(const std::string& currency, std::int64_t minor) {
  base::promise(!currency.empty() || minor == 0, "money is of a currency");
  base::promise(currency.empty() || units::minor_digits(currency).has_value(),
                "a currency is one of ISO 4217");
}

// Makes some lots of a material hold together what was counted; what is more goes to the youngest
// of them, at no cost.
void count_lots(Draft& draft, ShelfMaterial& material, const std::vector<ShelfLot*>& lots,
                std::int64_t counted) {
  const auto move = [&](ShelfLot& lot, bool found, std::int64_t quantity, std::int64_t minor) {
    const Account source = found ? Account::adjustment : Account::stock;
    const Account target = found ? Account::stock : Account::adjustment;
    material.move(lot, source, target, quantity, minor);
    draft.lines.push_back({.source = source,
                           .target = target,
                           .material = &material,
                           .lot = &lot,
                           .quantity = quantity,
                           .minor = minor});
  };
  const std::size_t lines = draft.lines.size();
  std::int64_t more = counted;
  for (ShelfLot* lot : lots) {
    const LotBalance was = lot->balance;
    if (was.quantity < 0) move(*lot, true, -was.quantity, -was.minor);
    more -= lot->balance.quantity;
  }
  for (ShelfLot* lot : lots) {
    const std::int64_t missing = std::min(lot->balance.quantity, -more);
    if (missing <= 0) continue;
    move(*lot, false, missing, cost_of_taking(lot->balance, missing));
    more += missing;
  }
  if (more > 0 || draft.lines.size() == lines) move(*lots.back(), more > 0, more, 0);
}

DraftLine like(Account target, const DraftJob& job) {
  return {.source = Account::stock,
          .target = target,
          .job = job.id,
          .job_slug = job.slug,
          .step = job.step};
}

}  // namespace

bool is_in_range(std::int64_t amount, std::int64_t least, const std::string& what,
                 const std::string& of, base::Problems& problems) {
  if (amount >= least && amount <= most_of_a_line) return true;
  problems.push_back(
      {.code = "amount.range",
       .message = "This " + what + (of.empty() ? "" : " of \"" + of + "\"") + " cannot be booked.",
       .key = of,
       .found = std::to_string(amount),
       .expected = std::to_string(least) + " to " + std::to_string(most_of_a_line)});
  return false;
}

ShelfMaterial* find_material(const Material& material, Shelf& shelf, base::Problems& problems) {
  base::promise(base::is_slug(material.slug) && !material.name.empty(),
                "a material has an id and a name");
  ShelfMaterial& found = shelf.material(material);
  if (found.material.unit == material.unit) return &found;
  const auto in_words = [](MaterialUnit unit) {
    switch (unit) {
      case MaterialUnit::milligram:
        return "by mass, e.g. \"500 g\"";
      case MaterialUnit::micrometre:
        return "by length, e.g. \"10 yd\"";
      case MaterialUnit::piece:
        return "in pieces, e.g. \"2\"";
    }
    base::broken_promise("unit of a material outside its list");
  };
  problems.push_back(
      {.code = "material.unit",
       .message = "The log keeps \"" + material.slug + "\" " + in_words(found.material.unit) + ".",
       .key = material.slug,
       .found = in_words(material.unit),
       .expected = in_words(found.material.unit)});
  return nullptr;
}

ShelfLot* find_lot(const ShelfMaterial& material, const std::string& label,
                   base::Problems& problems) {
  if (ShelfLot* lot = material.find(label)) return lot;
  constexpr std::size_t most_shown = 5;
  std::string labels;
  std::size_t shown = 0;
  for (auto lot = material.lots.rbegin(); lot != material.lots.rend(); ++lot) {
    if ((*lot)->balance.quantity <= 0 || shown == most_shown) continue;
    labels += (shown++ == 0 ? "" : ", ") + (*lot)->label;
  }
  problems.push_back(
      {.code = "lot.unknown",
       .message = "There is no lot \"" + label + "\" of \"" + material.material.slug + "\".",
       .key = material.material.slug,
       .found = label,
       .expected = labels.empty() ? "" : "a lot on the shelf, such as " + labels});
  return nullptr;
}

ShelfLot& last_lot(ShelfMaterial& material, Instant at) {
  if (!material.lots.empty()) return *material.lots.back();
  return material.add({.label = unknown_label, .received = at, .is_new = true});
}

Draft draft(const NewReceipt& receipt, Shelf& shelf, base::Problems& problems) {
  check_promises(receipt.head);
  base::promise(!receipt.parts.empty(), "something is received");
  Draft draft = begin(EntryKind::receive, receipt.head);
  draft.currency = receipt.currency;
  for (const Received& part : receipt.parts) {
    const std::string& slug = part.material.slug;
    check_promises(receipt.currency, part.cost_minor);
    base::promise(!part.width_um || *part.width_um > 0, "a roll has a width");
    ShelfMaterial* material = find_material(part.material, shelf, problems);
    const bool is_goods = is_in_range(part.quantity, 1, "quantity", slug, problems);
    const bool is_cost = is_in_range(part.cost_minor, 0, "cost", slug, problems);
    if (material == nullptr || !is_goods || !is_cost) continue;
    if (material->material.name != part.material.name) {
      material->material.name = part.material.name;
      material->is_renamed = true;
    }
    ShelfLot* lot = lot_to_receive(part, receipt.head, *material, problems);
    if (lot == nullptr) continue;
    material->move(*lot, Account::supplier, Account::stock, part.quantity, part.cost_minor);
    draft.lines.push_back({.source = Account::supplier,
                           .target = Account::stock,
                           .material = material,
                           .lot = lot,
                           .quantity = part.quantity,
                           .minor = part.cost_minor});
  }
  settle(draft);
  return draft;
}

Draft draft(const NewUse& use, const DraftJob& job, Shelf& shelf, base::Problems& problems) {
  check_promises(use.head);
  base::promise(!use.takings.empty(), "something is used");
  Draft draft = begin(EntryKind::use, use.head);
  for (const Taking& taking : use.takings) {
    take(draft, like(Account::board, job), taking, shelf, problems);
  }
  note_shortages(draft);
  return draft;
}

Draft draft(const NewWaste& waste, Shelf& shelf, base::Problems& problems) {
  check_promises(waste.head);
  base::promise(!waste.takings.empty(), "something is wasted");
  Draft draft = begin(EntryKind::waste, waste.head);
  for (const Taking& taking : waste.takings) {
    take(draft, like(Account::waste, {}), taking, shelf, problems);
  }
  note_shortages(draft);
  return draft;
}

Draft draft(const NewCount& count, Shelf& shelf, base::Problems& problems) {
  check_promises(count.head);
  base::promise(count.counts.empty() != count.cuts.empty(), "something is counted, or cut");
  Draft draft = begin(EntryKind::count, count.head);
  for (const Cut& one : count.cuts) cut(draft, one, shelf, problems);
  for (auto counted = count.counts.begin(); counted != count.counts.end(); ++counted) {
    const Counted& one = *counted;
    const std::string& slug = one.material.slug;
    base::promise(
        std::none_of(count.counts.begin(), counted,
                     [&](const Counted& other) {
                       return other.material.slug == slug &&
                              (other.lot.empty() || one.lot.empty() || other.lot == one.lot);
                     }),
        "a material, or a lot of it, is counted once");
    ShelfMaterial* material = find_material(one.material, shelf, problems);
    if (!is_in_range(one.quantity, 0, "quantity", slug, problems) || material == nullptr) continue;
    std::vector<ShelfLot*> lots;
    if (one.lot.empty()) {
      last_lot(*material, count.head.at);
      for (const auto& lot : material->lots) lots.push_back(lot.get());
    } else if (ShelfLot* lot = find_lot(*material, one.lot, problems)) {
      lots.push_back(lot);
    }
    if (!lots.empty()) count_lots(draft, *material, lots, one.quantity);
  }
  return draft;
}

Draft draft(const NewLabour& labour, const DraftJob& job, base::Problems& problems) {
  check_promises(labour.head);
  check_promises(labour.currency, labour.cost_minor);
  Draft draft = begin(EntryKind::labour, labour.head);
  draft.currency = labour.currency;
  base::promise(labour.minutes != 0 || labour.cost_minor != 0,
                "work takes time or costs something");
  is_in_range(labour.minutes, 0, "number of minutes", "", problems);
  is_in_range(labour.cost_minor, 0, "cost of work", "", problems);
  DraftLine line = like(Account::board, job);
  line.source = Account::labour;
  line.quantity = labour.minutes;
  line.minor = labour.cost_minor;
  draft.lines.push_back(std::move(line));
  return draft;
}

}  // namespace wetout::joblog
