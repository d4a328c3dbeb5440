// Purchases out of a table.
#include <algorithm>
#include <array>
#include <map>
#include <optional>
#include <set>
#include <utility>

#include "stock_booking.hpp"
#include "wetout/base/sha256.hpp"
#include "wetout/base/shown.hpp"
#include "wetout/base/table_text.hpp"
#include "wetout/base/words.hpp"
#include "wetout/files/table_file.hpp"
#include "wetout/time/print.hpp"
#include "wetout/units/read.hpp"

namespace wetout::work {
namespace {

enum class Column { date, material, amount, cost, lot, batch, expires, note };

struct Named {
  std::string_view name;
  Column column;
};
constexpr std::array names{Named{"date", Column::date},
                           Named{"day", Column::date},
                           Named{"on", Column::date},
                           Named{"received", Column::date},
                           Named{"material", Column::material},
                           Named{"cloth", Column::material},
                           Named{"item", Column::material},
                           Named{"id", Column::material},
                           Named{"amount", Column::amount},
                           Named{"quantity", Column::amount},
                           Named{"cost", Column::cost},
                           Named{"price", Column::cost},
                           Named{"paid", Column::cost},
                           Named{"lot", Column::lot},
                           Named{"label", Column::lot},
                           Named{"batch", Column::batch},
                           Named{"maker batch", Column::batch},
                           Named{"maker s batch", Column::batch},
                           Named{"expires", Column::expires},
                           Named{"expiry", Column::expires},
                           Named{"best before", Column::expires},
                           Named{"use by", Column::expires},
                           Named{"note", Column::note},
                           Named{"notes", Column::note},
                           Named{"comment", Column::note}};

constexpr std::array needed{Column::date, Column::material, Column::amount, Column::cost};

std::string_view word_of(Column column) {
  for (const Named& one : names) {
    if (one.column == column) return one.name;
  }
  return "";
}

// "amount [kg]": the name and the unit in brackets.
std::pair<std::string, std::string> taken_apart(const std::string& cell) {
  const std::size_t open = cell.find_first_of("[(");
  if (open == std::string::npos) return {base::plain_name(cell), ""};
  std::string_view unit = std::string_view(cell).substr(open + 1);
  unit = unit.substr(0, unit.find_last_of("])"));
  return {base::plain_name(cell.substr(0, open)), std::string(base::trimmed(unit))};
}

class Importer {
 public:
  Importer(const files::TableFile& table, const StockShop& shop) : table_(table), shop_(shop) {}

  base::Result<std::vector<Wanted>> run() {
    read_header();
    if (!problems_.empty()) return base::fail(std::move(problems_));
    if (table_.rows.empty()) {
      return base::fail({.code = "import.empty",
                         .message = "there are no purchases in this table",
                         .file = table_.name,
                         .expected = "rows below the header"});
    }
    for (const files::TableRow& row : table_.rows) {
      if (problems_.size() >= most_problems) break;
      read_row(row);
    }
    if (!problems_.empty()) return base::fail(std::move(problems_));
    return std::move(wanted_);
  }

 private:
  static constexpr std::size_t most_problems = 1000;

  void refuse(const files::TableRow& row, const files::TableCell& cell, std::string_view key,
              base::Problem problem) {
    problem.key = key;
    if (problem.found.empty()) problem.found = base::shown(cell.text);
    problems_.push_back(files::at_cell(std::move(problem), table_, row, cell));
  }

  void read_header() {
    const files::TableRow& header = table_.header;
    for (std::size_t i = 0; i < header.cells.size(); ++i) {
      const auto [name, unit] = taken_apart(header.cells[i].text);
      const auto known =
          std::find_if(names.begin(), names.end(),
                       [&, &word = name](const Named& one) { return one.name == word; });
      if (known == names.end()) {
        unknown_column(header.cells[i], name);
        continue;
      }
      if (!columns_.emplace(known->column, i).second) {
        refuse(header, header.cells[i], "",
               {.code = "import.twice",
                .message = "there are two columns of this kind",
                .expected = "one column \"" + std::string(word_of(known->column)) + "\""});
      }
      read_unit(header.cells[i], known->column, unit);
    }
    for (const Column column : needed) {
      if (columns_.contains(column)) continue;
      refuse(
          header, {"", 1}, "",
          {.code = "import.missing",
           .message = "there is no column \"" + std::string(word_of(column)) + "\"",
           .found = base::shown(header.text),
           .expected = "a header such as \"date,material,amount,cost [" + shop_.currency + "]\""});
    }
  }

  void unknown_column(const files::TableCell& cell, const std::string& name) {
    std::vector<std::string> words;
    for (const Named& one : names) words.emplace_back(one.name);
    const auto near = base::nearest(name, words);
    refuse(
        table_.header, cell, "",
        {.code = "import.column",
         .message = "nobody knows this column",
         .expected = "date, material, amount, cost, lot, batch, expires, note",
         .hint = near ? "did you mean \"" + *near + "\"?" : "take it out, or name it otherwise"});
  }

  // In brackets stands what a number alone is in.
  void read_unit(const files::TableCell& cell, Column column, const std::string& unit) {
    if (unit.empty()) return;
    const std::string one = "1 " + unit;
    if (column == Column::amount && (units::read_mass_or_volume(one) || units::read_length(one))) {
      amount_unit_ = unit;
    } else if (column == Column::cost && units::read_currency(unit)) {
      cost_unit_ = unit;
    } else {
      const bool has_unit = column == Column::amount || column == Column::cost;
      refuse(table_.header, cell, "",
             {.code = "import.unit",
              .message = has_unit ? "this is no unit of such a column" : "this column has no unit",
              .expected = column == Column::amount ? "a unit, e.g. amount [kg]"
                          : column == Column::cost ? "a currency, e.g. cost [EUR]"
                                                   : std::string(word_of(column))});
    }
  }

  const files::TableCell& cell(const files::TableRow& row, Column column) const {
    static const files::TableCell none;
    const auto found = columns_.find(column);
    return found == columns_.end() ? none : row.cells[found->second];
  }

  // The number alone gets the unit of the header.
  std::string with_unit(const std::string& text, const std::string& unit) const {
    if (unit.empty() || !base::to_number(text, table_.delimiter == ';')) return text;
    std::string out = text + " " + unit;
    std::replace(out.begin(), out.end(), ',', '.');
    return out;
  }

  std::optional<time::Date> date(const files::TableRow& row, Column column) {
    const files::TableCell& at = cell(row, column);
    if (at.text.empty() && column == Column::expires) return std::nullopt;
    const auto read = time::read_date(at.text);
    if (read) return *read;
    for (const base::Problem& problem : read.error()) refuse(row, at, word_of(column), problem);
    return std::nullopt;
  }

  std::optional<Good> good(const files::TableRow& row) {
    const files::TableCell& at = cell(row, Column::material);
    auto found = good_meant(at.text, shop_.goods);
    if (found) return std::move(*found);
    for (const base::Problem& problem : found.error()) refuse(row, at, "material", problem);
    return std::nullopt;
  }

  // Zero with a problem.
  std::int64_t amount(const files::TableRow& row, Good& good) {
    const files::TableCell& at = cell(row, Column::amount);
    const auto read = read_amount(with_unit(at.text, amount_unit_), good, Least::something);
    if (read) return *read;
    for (const base::Problem& problem : read.error()) refuse(row, at, "amount", problem);
    return 0;
  }

  std::optional<units::Money> cost(const files::TableRow& row) {
    const files::TableCell& at = cell(row, Column::cost);
    const std::string& currency = shop_.file.shop.currency;
    const auto read = units::read_money(with_unit(at.text, cost_unit_));
    if (!read) {
      for (base::Problem problem : read.error()) {
        if (problem.code == "unit.missing") {
          problem.hint = "write \"" + at.text + " " + currency + "\", or \"cost [" + currency +
                         "]\" in the header";
        }
        refuse(row, at, "cost", std::move(problem));
      }
      return std::nullopt;
    }
    if (read->currency != currency) {
      refuse(row, at, "cost",
             {.code = "currency.other",
              .message = "the shop's currency is " + currency,
              .expected = "an amount in " + currency});
      return std::nullopt;
    }
    if (read->minor < 0) {
      refuse(row, at, "cost",
             {.code = "value.range",
              .message = "a cost is not below zero",
              .expected = "what was paid, e.g. 79.00 " + currency});
      return std::nullopt;
    }
    return *read;
  }

  void read_row(const files::TableRow& row) {
    const std::size_t before = problems_.size();
    const auto on = date(row, Column::date);
    std::optional<time::Instant> at;
    if (on) {
      if (const auto moment = moment_on(on, shop_)) {
        at = *moment;
      } else {
        refuse(row, cell(row, Column::date), "date", moment.error().front());
      }
    }
    auto what = good(row);
    const std::int64_t quantity = what ? amount(row, *what) : 0;
    const auto paid = cost(row);
    const auto expires = date(row, Column::expires);
    if (problems_.size() > before) return;

    joblog::Received part{.material = what->material,
                          .quantity = quantity,
                          .cost_minor = paid->minor,
                          .lot = cell(row, Column::lot).text,
                          .batch = cell(row, Column::batch).text,
                          .expires = expires,
                          .width_um = std::nullopt};
    if (what->width) part.width_um = std::llround(units::in_metres(*what->width) * 1e6);
    const std::string& note = cell(row, Column::note).text;
    joblog::NewReceipt receipt;
    receipt.head = head_of(token_of(row, *on, *what, quantity, *paid), *at, shop_,
                           note.empty() ? std::nullopt : std::optional(note));
    receipt.head.on = *on;
    receipt.currency = paid->currency;
    receipt.parts = {std::move(part)};
    Wanted wanted(std::move(receipt));
    wanted.place = [&table = table_, &row,
                    at = cell(row, Column::material)](base::Problem problem) {
      return files::at_cell(std::move(problem), table, row, at);
    };
    wanted_.push_back(std::move(wanted));
  }

  // Of what the row says; the second of equal rows is a second purchase. A volume is taken as it
  // is written: a better density does not make it another purchase.
  std::string token_of(const files::TableRow& row, time::Date on, const Good& good,
                       std::int64_t quantity, const units::Money& paid) {
    std::string amount = std::to_string(quantity);
    const auto volume =
        units::read_mass_or_volume(with_unit(cell(row, Column::amount).text, amount_unit_));
    if (volume && volume->is_volume) {
      constexpr double nanolitres = 1e12;
      amount = std::to_string(std::llround(volume->volume.si() * nanolitres)) + " nl";
    }
    std::string text = time::print(on);
    for (const std::string& field :
         {good.material.slug, amount, units::print(paid), cell(row, Column::lot).text,
          cell(row, Column::batch).text, cell(row, Column::expires).text,
          cell(row, Column::note).text}) {
      text += '\n' + field;
    }
    const std::string name = base::hex(base::sha256(text));
    const int n = ++times_[name];
    return "purchase/" + name + (n > 1 ? "/" + std::to_string(n) : "");
  }

  const files::TableFile& table_;
  const StockShop& shop_;
  std::map<Column, std::size_t> columns_;
  std::string amount_unit_, cost_unit_;
  std::map<std::string, int> times_;
  std::vector<Wanted> wanted_;
  base::Problems problems_;
};

}  // namespace

base::Result<StockAnswer> import_stock(const Workshop& workshop,
                                       const std::filesystem::path& file) {
  const auto shop = stock_shop(workshop);
  if (!shop) return tl::unexpected(shop.error());
  const auto table = files::read_table(file);
  if (!table) return tl::unexpected(table.error());
  const auto wanted = Importer(*table, *shop).run();
  if (!wanted) return tl::unexpected(wanted.error());
  auto answer = book(workshop, *shop, "import", *wanted);
  if (!answer) return answer;
  report::StockDocument& document = answer->document;
  const auto before = std::erase_if(document.entries,
                                    [](const report::LedgerEntry& entry) { return entry.already; });
  if (before > 0) {
    document.notices.push_back({.code = "import.before",
                                .text = "rows were entered before, and are not entered again",
                                .subject = table->name,
                                .value = static_cast<double>(before),
                                .limit = std::nullopt,
                                .unit = "rows"});
  }
  return answer;
}

}  // namespace wetout::work
