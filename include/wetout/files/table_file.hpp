// A table as spreadsheets save it (CSV): cells and where they stand. What they mean is for the
// reader of the table to say.
#pragma once

#include <cstddef>
#include <filesystem>
#include <string>
#include <string_view>
#include <vector>

#include "wetout/base/problem.hpp"

namespace wetout::files {

struct TableCell {
  std::string text;  ///< trimmed, without its quotes
  int column = 1;    ///< where it begins in its line, in characters from 1
};

struct TableRow {
  int line = 0;                  ///< from 1
  std::string text;              ///< the whole line, for messages
  std::vector<TableCell> cells;  ///< as many as the header has
};

struct TableFile {
  std::string name;  ///< as the user named it
  char delimiter = ',';
  TableRow header;
  std::vector<TableRow> rows;
};

inline constexpr std::size_t most_table_columns = 100;

/// The first line that is not empty and does not begin with # is the header. Cells are separated by
/// commas, or by semicolons if the header has one; quotes are those of spreadsheets (rfc4180),
/// within one line. Lines of separators alone are left out, empty cells beyond the header too.
/// Everything wrong is reported (above 1000 problems the first ones). Problems: "file.*" as of
/// read_job() (above 4 MiB "file.too_big"), "table.empty", "table.quote", "table.columns",
/// "table.big" (columns).
base::Result<TableFile> read_table(const std::filesystem::path& path);
base::Result<TableFile> parse_table(std::string_view text, std::string name);

/// A problem with the place of a cell: file, line, column, source line, and what stands there.
base::Problem at_cell(base::Problem problem, const TableFile& table, const TableRow& row,
                      const TableCell& cell);

}  // namespace wetout::files
