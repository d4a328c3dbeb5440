// The ledger as a table for spreadsheets (docs/formats/journal.md).
#include <fmt/format.h>

#include <string>
#include <string_view>

#include "ledger_export.hpp"
#include "ledger_fields.hpp"

namespace wetout::report {
namespace {

// A spreadsheet takes what begins so for a formula, blanks before it or not.
bool looks_like_formula(std::string_view text) {
  const std::size_t first = text.find_first_not_of(' ');
  if (first == std::string_view::npos) return false;
  const std::string_view rest = text.substr(first);
  constexpr std::string_view signs = "=+-@\t\r\n";
  if (signs.find(rest.front()) != std::string_view::npos) return true;
  // The same signs in full width: U+FF1D, U+FF0B, U+FF0D, U+FF20.
  for (const std::string_view wide :
       {"\xef\xbc\x9d", "\xef\xbc\x8b", "\xef\xbc\x8d", "\xef\xbc\xa0"}) {
    if (rest.starts_with(wide)) return true;
  }
  return false;
}

// Text that people typed: always in quotes, and marked as text where it looks like a formula.
std::string text_cell(const std::optional<std::string>& text) {
  if (!text || text->empty()) return "";
  std::string out = "\"";
  if (looks_like_formula(*text)) out += '\'';
  for (const char c : *text) {
    // One line for a row: not every reader takes a line's end in a cell.
    if (c == '\n' || c == '\r' || c == '\0') {
      out += ' ';
      continue;
    }
    if (c == '"') out += '"';
    out += c;
  }
  return out + '"';
}

std::string number_cell(const std::optional<std::int64_t>& number) {
  return number ? std::to_string(*number) : std::string();
}

std::string cost_cell(const units::Money& cost) {
  if (cost.currency.empty()) return "";
  const std::string text = units::print(cost);
  return text.substr(0, text.find(' '));
}

}  // namespace

std::string exact(const GoodsAmount& amount) {
  const int digits = amount.unit == GoodsUnit::gram ? 3 : amount.unit == GoodsUnit::metre ? 6 : 0;
  if (digits == 0) return std::to_string(amount.count);
  std::int64_t one = 1;
  for (int i = 0; i < digits; ++i) one *= 10;
  const std::int64_t size = amount.count < 0 ? -amount.count : amount.count;
  return fmt::format("{}{}.{:0{}}", amount.count < 0 ? "-" : "", size / one, size % one, digits);
}

std::string csv_head() {
  return "entry,date,kind,undoes,undone by,from,to,material,lot,job,step,amount,unit,cost,currency,"
         "note\r\n";
}

std::string csv_rows(const LedgerEntry& entry) {
  std::string rows;
  for (const LedgerLine& line : entry.lines) {
    rows += fmt::format("{},{},{},{},{},{},{},{},{},{},{},{},{},{},{},{}\r\n",
                        number_cell(entry.number), entry.date, entry.kind,
                        number_cell(entry.undoes), number_cell(entry.undone_by), line.from, line.to,
                        line.material.value_or(""), text_cell(line.lot), line.job.value_or(""),
                        text_cell(line.step), exact(line.amount), unit_word(line.amount.unit),
                        cost_cell(line.cost), line.cost.currency, text_cell(entry.note));
  }
  return rows;
}

}  // namespace wetout::report
