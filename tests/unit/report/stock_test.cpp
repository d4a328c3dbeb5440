// The shelf as text and as JSON.
#include <gtest/gtest.h>

#include <nlohmann/json.hpp>

#include "ledger_sample.hpp"
#include "text_checks.hpp"

namespace wetout::report {
namespace {

using Json = nlohmann::json;
using units::System;

TEST(StockText, FitsTheTerminal) {
  for (const System system : {System::us, System::metric}) {
    for (const StockDocument& document : {sample::stock_list(), sample::stock_lots(),
                                          sample::stock_reorder(), sample::stock_received()}) {
      EXPECT_EQ(unfit_line(to_text(document, system)), "") << document.action;
    }
  }
}

TEST(StockText, ListsMaterials) {
  EXPECT_EQ(to_text(sample::stock_list(), System::metric),
            "material               on hand        value      planned        short    expires\n"
            "a-box-whose-id...     -1 piece    -9.00 EUR            -            -          -\n"
            "e4                      1.00 m     5.80 EUR       3.22 m       2.22 m          -\n"
            "resin-a                5.00 kg    79.00 EUR        763 g            - 2027-06-30\n"
            "  * resin-a: 400 g of it is past its day\n"
            "  * white: counted otherwise\n");
  EXPECT_NE(to_text(sample::stock_list(), System::us).find("1.09 yd"), std::string::npos);
}

TEST(StockText, ListsLotsUnderTheirMaterial) {
  EXPECT_EQ(to_text(sample::stock_lots(), System::metric),
            "e4, 4 oz E-glass\n"
            "  lot                 received    last good day       on hand          value\n"
            "  2026-05-02          2026-05-02  -                   -0.50 m      -1.18 EUR\n"
            "      more was taken than came in: count it\n"
            "\n"
            "resin-a, Laminating resin, part A\n"
            "  lot                 received    last good day       on hand          value\n"
            "  jugs of  [31mJu...  2026-05-01  2026-05-08          1.20 kg      18.96 EUR\n"
            "      past its last good day\n"
            "      maker's batch KA-2207\n"
            "      in sandpiper-6-4 (178 g), pico (4.5 g)\n"
            "  2026-05-03          2026-05-03  -                       0 g       0.00 EUR\n");
}

TEST(StockText, SaysWhatToBuyByWhenAndForWhom) {
  EXPECT_EQ(to_text(sample::stock_reorder(), System::metric),
            "material                             short   needed                         cost\n"
            "resin-a                            1.30 kg   now                       33.50 EUR\n"
            "    buy 1 x 1 kg at 21.50 EUR and 1 x 500 g at 12.00 EUR\n"
            "    for pico (bottom-lam), then sandpiper-6-4, faial\n"
            "e4                                  2.22 m   2026-05-12 18:00                  -\n"
            "    the shop file has no packs of it\n"
            "    for sandpiper-6-4 (deck-lam)\n"
            "fin-box                           2 pieces   2026-05-12 18:00                  -\n"
            "    buy 2 x 1 piece\n"
            "    for sandpiper-6-4 (deck-lam)\n"
            "\n"
            "all that has a price                                                   33.50 EUR\n");
}

TEST(StockText, ShowsWhatWasBooked) {
  EXPECT_EQ(to_text(sample::stock_received(), System::metric),
            "Booked\n"
            "     1  2026-05-01  received: 5.00 kg resin-a (lot 2026-05-01), 79.00 EUR\n"
            "                      27.43 m e4 (lot roll), 65.00 EUR, \"kit; \"spring\"\n"
            "                      [2026-99-99] =1+1\"\n"
            "     3  2026-05-03  wasted: 400 g resin-a (lot 2026-05-01, past its day),\n"
            "                    6.32 EUR\n"
            "\n"
            "material               on hand        value      planned        short    expires\n"
            "e4                     27.43 m    65.00 EUR            -            -          -\n"
            "resin-a                5.00 kg    79.00 EUR            -            -          -\n");
  StockDocument dry = sample::stock_received();
  dry.saved = false;
  EXPECT_EQ(to_text(dry, System::metric).substr(0, 16), "Would be booked\n");
}

TEST(StockText, SaysThatThereIsNothing) {
  const auto text_of = [](StockDocument document) {
    document.items.clear();
    document.reorder.clear();
    document.notices.clear();
    document.reorder_cost.reset();
    return to_text(document, System::us);
  };
  EXPECT_EQ(text_of(sample::stock_list()), "Nothing is in stock, and no board needs anything.\n");
  EXPECT_EQ(text_of(sample::stock_lots()), "No lots.\n");
  EXPECT_EQ(text_of(sample::stock_reorder()), "Nothing runs short.\n");
}

TEST(StockJson, HasEveryKeyAlways) {
  const Json list = Json::parse(to_json(sample::stock_list()));
  EXPECT_EQ(list["format"], "wetout.stock/1");
  EXPECT_EQ(list["items"][1]["on_hand"], 1);
  EXPECT_EQ(list["items"][1]["unit"], "m");
  EXPECT_EQ(list["items"][1]["short"], 2.22);
  EXPECT_EQ(list["items"][1]["lot"], nullptr);
  EXPECT_EQ(list["items"][0]["on_hand"], -1);
  EXPECT_EQ(list["items"][0]["value"]["amount"], "-9.00");
  const Json lots = Json::parse(to_json(sample::stock_lots()));
  EXPECT_EQ(lots["items"][1]["planned"], nullptr);
  EXPECT_EQ(lots["items"][1]["short"], nullptr);
  EXPECT_EQ(lots["items"][1]["boards"][0]["amount"], 178.123);
  const Json reorder = Json::parse(to_json(sample::stock_reorder()));
  EXPECT_EQ(reorder["reorder"][0]["by"], nullptr);
  EXPECT_EQ(reorder["reorder"][0]["packs"][0]["size"], "1 kg");
  EXPECT_EQ(reorder["reorder"][1]["cost"], nullptr);
  EXPECT_EQ(reorder["reorder_cost"]["amount"], "33.50");
}

}  // namespace
}  // namespace wetout::report
