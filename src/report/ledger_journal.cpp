// The ledger as a plain-text double-entry journal (docs/formats/journal.md).
#include <fmt/format.h>

#include <algorithm>
#include <string>

#include "layout.hpp"
#include "ledger_export.hpp"

namespace wetout::report {
namespace {

// Metres are not "m": programs that keep times read that as minutes.
std::string_view commodity(GoodsUnit unit) {
  switch (unit) {
    case GoodsUnit::gram:
      return "g";
    case GoodsUnit::metre:
      return "metre";
    case GoodsUnit::piece:
      return "piece";
    case GoodsUnit::minute:
      return "min";
  }
  return "";
}

// Text that people typed: no comment, no tag, no date in brackets can begin in it.
std::string harmless(const std::string& typed) {
  std::string text = layout::plain(typed);
  for (char& c : text) {
    if (c == ';') c = ',';
    if (c == '|') c = '/';
    if (c == '[' || c == '{') c = '(';
    if (c == ']' || c == '}') c = ')';
  }
  // Two blanks would end a name; a colon would make the word before it a tag.
  std::string out;
  for (const char c : text) {
    if (c == ':') continue;
    if (c != ' ' || (!out.empty() && out.back() != ' ')) out += c;
  }
  while (!out.empty() && out.back() == ' ') out.pop_back();
  return out;
}

std::string account(const std::string& place, const LedgerLine& line) {
  const std::string what = line.material.value_or("labour");
  if (place == "stock") return "assets:stock:" + what;
  if (place == "board") return "expenses:board:" + line.job.value_or("unknown") + ":" + what;
  if (place == "waste") return "expenses:waste:" + what;
  if (place == "adjustment") return "expenses:adjustment:" + what;
  return "liabilities:" + place;
}

class Transaction {
 public:
  void post(const LedgerLine& line) {
    if (line.amount.count == 0 && line.cost.minor == 0) return;
    const bool goods = line.amount.count != 0;
    posting(account(line.to, line), amount(line, line.to, goods, ""), line);
    posting(account(line.from, line), amount(line, line.from, goods, "-"), line);
  }
  [[nodiscard]] const std::string& text() const { return text_; }

 private:
  // Who sells and who works is paid; goods stay with the others.
  static std::string amount(const LedgerLine& line, const std::string& place, bool goods,
                            std::string_view sign) {
    const bool has_money = !line.cost.currency.empty();
    const bool is_paid = place == "supplier" || place == "labour";
    if (!goods || (is_paid && has_money)) {
      const std::string_view minus = line.cost.minor == 0 ? "" : sign;
      return fmt::format("{}{}", minus, units::print(line.cost));
    }
    std::string text =
        fmt::format("{}{} {}", sign, exact(line.amount), commodity(line.amount.unit));
    if (has_money) text += " @@ " + units::print(line.cost);
    return text;
  }

  void posting(const std::string& name, const std::string& amount, const LedgerLine& line) {
    text_ += fmt::format("    {:<40}  {}", name, amount);
    std::string about;
    if (line.lot) about = "lot " + harmless(*line.lot);
    if (line.step) about += (about.empty() ? "" : ", ") + harmless(*line.step);
    if (!about.empty()) text_ += "  ; " + about;
    text_ += '\n';
  }

  std::string text_;
};

std::string description(const LedgerEntry& entry) {
  std::string text = entry.kind;
  if (entry.undoes) text += fmt::format(" of {}", *entry.undoes);
  if (entry.undone_by) text += fmt::format(", undone by {}", *entry.undone_by);
  if (!entry.number) text += " from start to done, not booked";
  if (entry.note) {
    const std::string note = harmless(*entry.note);
    if (!note.empty()) text += ", " + note;
  }
  return text;
}

std::string directive(std::string_view unit, std::string_view sample) {
  return fmt::format("commodity {}\n  format {} {}\n", unit, sample, unit);
}

}  // namespace

std::string journal_head(const ExportHead& head) {
  std::string text = fmt::format("; {}, {}{}\n", harmless(head.program), head.made.substr(0, 10),
                                 head.job ? ", " + *head.job : std::string());
  const int digits = head.currency.empty() ? 0 : units::minor_digits(head.currency).value_or(0);
  if (digits > 0) {
    text += directive(head.currency, "1000." + std::string(static_cast<std::size_t>(digits), '0'));
  }
  text += directive("g", "1000.000");
  text += directive("metre", "1000.000000");
  return text;
}

std::string journal_entry(const LedgerEntry& entry) {
  Transaction transaction;
  for (const LedgerLine& line : entry.lines) transaction.post(line);
  std::string head = entry.date + " * ";
  if (entry.number) head += fmt::format("({}) ", *entry.number);
  head += description(entry);
  // A count that found what the log says moves nothing.
  if (transaction.text().empty()) return "\n; " + head + ": as it was\n";
  return "\n" + head + "\n" + transaction.text();
}

}  // namespace wetout::report
