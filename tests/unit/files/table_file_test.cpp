#include "wetout/files/table_file.hpp"

#include "sample.hpp"

namespace wetout::files {
namespace {

std::string cells_of(const TableRow& row) {
  std::string out;
  for (const TableCell& cell : row.cells)
    out += "[" + cell.text + "@" + std::to_string(cell.column) + "]";
  return out;
}

std::string shown(std::string_view text) {
  const auto table = parse_table(text, "t.csv");
  if (!table) return list(table.error());
  std::string out = std::to_string(table->header.line) + cells_of(table->header);
  for (const TableRow& row : table->rows) out += "\n" + std::to_string(row.line) + cells_of(row);
  return out;
}

std::string code_of(std::string_view text) {
  const auto table = parse_table(text, "t.csv");
  if (table) return "none";
  const base::Problem& first = table.error().front();
  return first.code + " " + std::to_string(first.line);
}

TEST(Table, HasCellsWithTheirPlaces) {
  EXPECT_EQ(shown("date,amount\n2026-06-01, 5 kg\n"),
            "1[date@1][amount@6]\n2[2026-06-01@1][5 kg@13]");
}

TEST(Table, SkipsCommentsEmptyLinesAndDelimitersAlone) {
  EXPECT_EQ(shown("\xef\xbb\xbf# bought\r\n\r\n,,\r\na,b\r\n ; ,\r\n1,2"),
            "4[a@1][b@3]\n6[1@1][2@3]");
}

TEST(Table, ReadsQuotesOfSpreadsheets) {
  EXPECT_EQ(shown("a,b\n\"x, \"\"y\"\"\" ,2\n"), "1[a@1][b@3]\n2[x, \"y\"@2][2@13]");
  EXPECT_EQ(shown("a,b\n1,\"\"\n"), "1[a@1][b@3]\n2[1@1][@4]");
  EXPECT_EQ(code_of("a,b\n\"x,2\n"), "table.quote 2");
  EXPECT_EQ(code_of("a,b\n\"x\"y,2\n"), "table.quote 2");
  EXPECT_EQ(code_of("\"a,b\n"), "table.quote 1");
}

TEST(Table, IsCutAtSemicolonsIfTheHeaderIs) {
  EXPECT_EQ(shown("a;b\n1,5;2\n"), "1[a@1][b@3]\n2[1,5@1][2@5]");
  EXPECT_EQ(parse_table("a;b\n1;2\n", "t.csv")->delimiter, ';');
}

TEST(Table, HasRowsAsWideAsTheHeader) {
  EXPECT_EQ(shown("a,b,\n1,2,,,\n"), "1[a@1][b@3]\n2[1@1][2@3]");
  EXPECT_EQ(code_of("a,b\n1\n"), "table.columns 2");
  EXPECT_EQ(code_of("a,b\n1,2,3\n"), "table.columns 2");
  EXPECT_EQ(parse_table("a,b\n1\n1,2\n3\n", "t.csv").error().size(), 2U);
}

TEST(Table, CountsColumnsInCharacters) {
  EXPECT_EQ(shown("a,b\n\xc3\xa9\xc3\xa9,2\n"), "1[a@1][b@3]\n2[\xc3\xa9\xc3\xa9@1][2@4]");
}

TEST(Table, IsText) {
  EXPECT_EQ(code_of(""), "file.empty 0");
  EXPECT_EQ(code_of("# nothing\n,,\n"), "table.empty 0");
  EXPECT_EQ(code_of(std::string_view("a,b\n\0,2\n", 8)), "file.binary 2");
  EXPECT_EQ(code_of(std::string(300, ',') + "a\n"), "table.big 1");
  EXPECT_EQ(read_table("no/such.csv").error().front().code, "file.missing");
}

TEST(Table, PlacesAProblemAtItsCell) {
  const auto table = parse_table("a,b\n1,zwo\n", "t.csv");
  ASSERT_TRUE(table);
  const base::Problem problem =
      at_cell({.code = "x"}, *table, table->rows[0], table->rows[0].cells[1]);
  EXPECT_EQ(problem.file, "t.csv");
  EXPECT_EQ(problem.line, 2);
  EXPECT_EQ(problem.column, 3);
  EXPECT_EQ(problem.found, "zwo");
  EXPECT_EQ(problem.source_line, "1,zwo");
}

}  // namespace
}  // namespace wetout::files
