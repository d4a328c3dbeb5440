// The ledger as text, as JSON, as a journal and as a table.
#include <gtest/gtest.h>

#include <nlohmann/json.hpp>

#include "ledger_sample.hpp"
#include "text_checks.hpp"

namespace wetout::report {
namespace {

using Json = nlohmann::json;
using units::System;

std::string journal() {
  std::string text;
  for (const LedgerEntry& entry : sample::entries()) text += journal_entry(entry);
  return text;
}

TEST(LedgerText, FitsTheTerminal) {
  for (const System system : {System::us, System::metric}) {
    for (const LedgerDocument& document :
         {sample::ledger_of_job(), sample::ledger_list(), sample::ledger_by_material(),
          sample::ledger_by_job(), sample::ledger_undo(), sample::ledger_bare()}) {
      EXPECT_EQ(unfit_line(to_text(document, system)), "") << document.action;
    }
  }
}

TEST(LedgerText, TellsOfABoardCoatByCoat) {
  EXPECT_EQ(to_text(sample::ledger_of_job(), System::metric),
            "sandpiper-6-4: what it used and cost, against revision 3 of its plan\n"
            "\n"
            "coat            material            planned       mixed        used         cost\n"
            "bottom-lam      e4                   1.80 m           -      1.80 m     4.27 EUR\n"
            "                resin-a               178 g       178 g       178 g     2.81 EUR\n"
            "deck-lam        resin-a               251 g           -           -            -\n"
            "                fin-box            2 pieces           -           -            -\n"
            "besides         gloves                    -           -    2 pieces     0.00 EUR\n"
            "\n"
            "work                                   time                                 cost\n"
            "bottom-lam/wet                       55 min                            22.00 EUR\n"
            "bottom-lam/trim                      35 min      from start to done    14.00 EUR\n"
            "of no step                            5 min                                    -\n"
            "\n"
            "goods           66.99 EUR planned                                       7.08 EUR\n"
            "labour          1 h 30 min                                             36.00 EUR\n"
            "in all                                                                 43.08 EUR\n"
            "Of the resin that was mixed 5.4 % was left over or spilled.\n"
            "  * what was mixed was not taken from stock\n"
            "\n"
            "Entries\n"
            "     2  2026-05-02  used for sandpiper-6-4 (bottom-lam/wet): 178 g resin-a (lot\n"
            "                    2026-05-01), 2.81 EUR\n"
            "                      1.80 m e4 (lot roll), 4.27 EUR\n"
            "     5  2026-05-05  work on sandpiper-6-4 (bottom-lam/wet): 55 min, 22.00 EUR\n");
}

TEST(LedgerText, ListsEveryKindOfEntry) {
  EXPECT_EQ(to_text(sample::ledger_list(), System::metric),
            "by month\n"
            "  month           bought          used        wasted       counted        labour\n"
            "  2026-04       0.00 EUR      0.00 EUR      6.30 EUR     -0.15 EUR     36.00 EUR\n"
            "  2026-05     144.00 EUR      7.08 EUR      6.30 EUR     -0.15 EUR     36.00 EUR\n"
            "\n"
            "Latest entries; 3 before them are in an export\n"
            "     1  2026-05-01  received: 5.00 kg resin-a (lot 2026-05-01), 79.00 EUR\n"
            "                      27.43 m e4 (lot roll), 65.00 EUR, \"kit; \"spring\"\n"
            "                      [2026-99-99] =1+1\"\n"
            "     2  2026-05-02  used for sandpiper-6-4 (bottom-lam/wet): 178 g resin-a (lot\n"
            "                    2026-05-01), 2.81 EUR\n"
            "                      1.80 m e4 (lot roll), 4.27 EUR\n"
            "     3  2026-05-03  wasted: 400 g resin-a (lot 2026-05-01), 6.32 EUR (taken back\n"
            "                    by entry 6)\n"
            "     4  2026-05-04  counted, missing: 0.00 m e4 (lot roll), 0.00 EUR\n"
            "                    counted, found more: 1 piece fin-box (lot -2), 0.00 EUR\n"
            "                    counted, as it was: leash-plug (lot x)\n"
            "     5  2026-05-05  work on sandpiper-6-4 (bottom-lam/wet): 55 min, 22.00 EUR\n"
            "     6  2026-05-03  takes back entry 3, \"was the old jug\"\n"
            "     7  2026-05-07  received: 250 g white (lot w), 0.00 EUR\n"
            "                      rest of the cost of white (lot w), 0.01 EUR (entered\n"
            "                      before)\n"
            "        2026-05-08  work on sandpiper-6-4 (bottom-lam/wet): 35 min, 14.00 EUR\n"
            "                    (from start to done, not booked)\n");
}

TEST(LedgerText, LeavesOutWhatNobodyKnows) {
  EXPECT_EQ(to_text(sample::ledger_bare(), System::metric),
            "pico: what it used and cost, without a plan\n"
            "\n"
            "coat            material            planned       mixed        used         cost\n"
            "besides         gloves                    -           -    2 pieces            -\n"
            "\n"
            "goods                                                                          -\n"
            "labour                                                                         -\n"
            "in all                                                                         -\n");
}

TEST(LedgerJson, HasEveryKeyAlways) {
  const Json json = Json::parse(to_json(sample::ledger_of_job()));
  EXPECT_EQ(json["format"], "wetout.ledger/1");
  EXPECT_EQ(json["cost"]["amount"], "43.08");
  EXPECT_EQ(json["sums"]["waste_pct"], 5.4321);
  EXPECT_EQ(json["plan_vs_actual"][0]["used"], 1.8);
  EXPECT_EQ(json["plan_vs_actual"][1]["recorded"], 178.123);
  EXPECT_EQ(json["plan_vs_actual"][4]["coat"], nullptr);
  EXPECT_EQ(json["entries"][0]["lines"][1]["unit"], "m");
  EXPECT_EQ(json["entries"][1]["lines"][0]["amount"], 55);
  EXPECT_EQ(json["entries"][1]["lines"][0]["material"], nullptr);
  const Json bare = Json::parse(to_json(sample::ledger_bare()));
  for (const char* key : {"currency", "cost", "undone"}) EXPECT_EQ(bare[key], nullptr) << key;
  EXPECT_EQ(bare["plan_vs_actual"][0]["cost"], nullptr);
}

TEST(Journal, HasAnEntryForEachWithCostsBehindAmounts) {
  EXPECT_EQ(
      journal(),
      "\n"
      "2026-05-01 * (1) receive, kit, \"spring\" (2026-99-99) =1+1\n"
      "    assets:stock:resin-a                      5000.000 g @@ 79.00 EUR  ; lot 2026-05-01\n"
      "    liabilities:supplier                      -79.00 EUR  ; lot 2026-05-01\n"
      "    assets:stock:e4                           27.432000 metre @@ 65.00 EUR  ; lot roll\n"
      "    liabilities:supplier                      -65.00 EUR  ; lot roll\n"
      "\n"
      "2026-05-02 * (2) use\n"
      "    expenses:board:sandpiper-6-4:resin-a      178.123 g @@ 2.81 EUR  ; lot 2026-05-01, "
      "bottom-lam/wet\n"
      "    assets:stock:resin-a                      -178.123 g @@ 2.81 EUR  ; lot 2026-05-01, "
      "bottom-lam/wet\n"
      "    expenses:board:sandpiper-6-4:e4           1.800000 metre @@ 4.27 EUR  ; lot roll, "
      "bottom-lam/wet\n"
      "    assets:stock:e4                           -1.800000 metre @@ 4.27 EUR  ; lot roll, "
      "bottom-lam/wet\n"
      "\n"
      "2026-05-03 * (3) waste, undone by 6\n"
      "    expenses:waste:resin-a                    400.000 g @@ 6.32 EUR  ; lot 2026-05-01\n"
      "    assets:stock:resin-a                      -400.000 g @@ 6.32 EUR  ; lot 2026-05-01\n"
      "\n"
      "2026-05-04 * (4) count\n"
      "    expenses:adjustment:e4                    0.000001 metre @@ 0.00 EUR  ; lot roll\n"
      "    assets:stock:e4                           -0.000001 metre @@ 0.00 EUR  ; lot roll\n"
      "    assets:stock:fin-box                      1 piece @@ 0.00 EUR  ; lot -2\n"
      "    expenses:adjustment:fin-box               -1 piece @@ 0.00 EUR  ; lot -2\n"
      "\n"
      "2026-05-05 * (5) labour\n"
      "    expenses:board:sandpiper-6-4:labour       55 min @@ 22.00 EUR  ; bottom-lam/wet\n"
      "    liabilities:labour                        -22.00 EUR  ; bottom-lam/wet\n"
      "\n"
      "2026-05-03 * (6) undo of 3, was the old jug\n"
      "    assets:stock:resin-a                      400.000 g @@ 6.32 EUR  ; lot 2026-05-01\n"
      "    expenses:waste:resin-a                    -400.000 g @@ 6.32 EUR  ; lot 2026-05-01\n"
      "\n"
      "2026-05-07 * (7) receive\n"
      "    assets:stock:white                        250.000 g @@ 0.00 EUR  ; lot w\n"
      "    liabilities:supplier                      0.00 EUR  ; lot w\n"
      "    expenses:adjustment:white                 0.01 EUR  ; lot w\n"
      "    assets:stock:white                        -0.01 EUR  ; lot w\n"
      "\n"
      "2026-05-08 * labour from start to done, not booked\n"
      "    expenses:board:sandpiper-6-4:labour       35 min @@ 14.00 EUR  ; bottom-lam/wet\n"
      "    liabilities:labour                        -14.00 EUR  ; bottom-lam/wet\n");
}

// What each entry posts comes to nothing in every commodity at cost: goods cost what is paid.
TEST(Journal, BalancesEachEntry) {
  for (const LedgerEntry& entry : sample::entries()) {
    std::int64_t sum = 0;
    for (const std::string& line : lines_of(journal_entry(entry))) {
      if (line.substr(0, 4) != "    ") continue;
      const std::string posting = line.substr(0, line.find("  ; "));
      const std::size_t at = posting.find("@@ ");
      std::string amount = at == std::string::npos ? posting.substr(46) : posting.substr(at + 3);
      const std::int64_t sign = posting[46] == '-' ? -1 : 1;
      if (amount[0] == '-') amount.erase(0, 1);
      amount.erase(amount.find('.'), 1);
      sum += sign * std::stoll(amount);
    }
    EXPECT_EQ(sum, 0) << journal_entry(entry);
  }
}

TEST(Journal, SaysWhatItCountsIn) {
  EXPECT_EQ(journal_head({"wetout 0.1.0", "2026-05-09T19:00:00-07:00", "EUR", "pico"}),
            "; wetout 0.1.0, 2026-05-09, pico\n"
            "commodity EUR\n  format 1000.00 EUR\n"
            "commodity g\n  format 1000.000 g\n"
            "commodity metre\n  format 1000.000000 metre\n");
  // A currency without decimals needs none of it, and its directive could not be read everywhere.
  EXPECT_EQ(journal_head({"wetout 0.1.0", "2026-05-09T19:00:00Z", "JPY", {}}).find("JPY"),
            std::string::npos);
  EXPECT_NE(journal_head({"wetout 0.1.0", "2026-05-09T19:00:00Z", "KWD", {}}).find("1000.000 KWD"),
            std::string::npos);
}

TEST(Journal, WithoutMoneyMovesGoodsOnly) {
  LedgerEntry entry = sample::entries()[0];
  for (LedgerLine& line : entry.lines) line.cost = {};
  const std::string text = journal_entry(entry);
  EXPECT_EQ(text.find("@@"), std::string::npos);
  EXPECT_NE(text.find("liabilities:supplier                      -5000.000 g"), std::string::npos)
      << text;
}

TEST(LedgerCsv, HasARowForEachLine) {
  std::string rows;
  for (const LedgerEntry& entry : sample::entries()) rows += csv_rows(entry);
  EXPECT_EQ(
      rows,
      "1,2026-05-01,receive,,,supplier,stock,resin-a,\"2026-05-01\",,,5000.000,g,79.00,EUR,\"kit; "
      "\"\"spring\"\" [2026-99-99] =1+1\"\r\n"
      "1,2026-05-01,receive,,,supplier,stock,e4,\"roll\",,,27.432000,m,65.00,EUR,\"kit; "
      "\"\"spring\"\" [2026-99-99] =1+1\"\r\n"
      "2,2026-05-02,use,,,stock,board,resin-a,\"2026-05-01\",sandpiper-6-4,\"bottom-lam/"
      "wet\",178.123,g,2.81,EUR,\r\n"
      "2,2026-05-02,use,,,stock,board,e4,\"roll\",sandpiper-6-4,\"bottom-lam/"
      "wet\",1.800000,m,4.27,EUR,\r\n"
      "3,2026-05-03,waste,,6,stock,waste,resin-a,\"2026-05-01\",,,400.000,g,6.32,EUR,\r\n"
      "4,2026-05-04,count,,,stock,adjustment,e4,\"roll\",,,0.000001,m,0.00,EUR,\r\n"
      "4,2026-05-04,count,,,adjustment,stock,fin-box,\"'-2\",,,1,piece,0.00,EUR,\r\n"
      "4,2026-05-04,count,,,stock,adjustment,leash-plug,\"x\",,,0,piece,0.00,EUR,\r\n"
      "5,2026-05-05,labour,,,labour,board,,,sandpiper-6-4,\"bottom-lam/wet\",55,min,22.00,EUR,\r\n"
      "6,2026-05-03,undo,3,,waste,stock,resin-a,\"2026-05-01\",,,400.000,g,6.32,EUR,\"was the old "
      "jug\"\r\n"
      "7,2026-05-07,receive,,,supplier,stock,white,\"w\",,,250.000,g,0.00,EUR,\r\n"
      "7,2026-05-07,receive,,,stock,adjustment,white,\"w\",,,0.000,g,0.01,EUR,\r\n"
      ",2026-05-08,labour,,,labour,board,,,sandpiper-6-4,\"bottom-lam/wet\",35,min,14.00,EUR,\r\n");
}

TEST(LedgerCsv, MarksWhatASpreadsheetWouldReckon) {
  const auto note_cell = [](const std::string& note) {
    LedgerEntry entry = sample::entries()[4];
    entry.note = note;
    const std::string row = csv_rows(entry);
    return row.substr(row.find("EUR,") + 4, row.size() - row.find("EUR,") - 6);
  };
  for (const char* formula : {"=1", "+1", "-1", "@A1", "\t=1", "  =1",
                              "\xef\xbc\x9d"
                              "1"}) {
    EXPECT_EQ(note_cell(formula), "\"'" + std::string(formula) + "\"");
  }
  EXPECT_EQ(note_cell("\r=1"), "\"' =1\"");
  for (const char* text : {"1=1", "a-b", "'=1", "e4 @ 30 in"}) {
    EXPECT_EQ(note_cell(text), "\"" + std::string(text) + "\"");
  }
  EXPECT_EQ(note_cell("a \"b\", c\nd"), "\"a \"\"b\"\", c d\"");
  EXPECT_EQ(note_cell(""), "");
}

}  // namespace
}  // namespace wetout::report
