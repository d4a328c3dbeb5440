// `stock`: what is on the shelf, what comes in and goes, what to buy.
#pragma once

#include <filesystem>
#include <optional>
#include <string>

#include "wetout/base/problem.hpp"
#include "wetout/report/stock_document.hpp"
#include "wetout/time/read.hpp"
#include "wetout/units/money.hpp"
#include "wetout/units/print.hpp"
#include "wetout/work/workshop.hpp"

namespace wetout::work {

/// A document with what printing it needs beside it.
struct StockAnswer {
  report::StockDocument document;
  units::System units = units::System::us;  ///< of the shop
};

/// Materials are those of the shop file that a job here would use, named by their id or a beginning
/// of it; what leaves the shelf may also be one that only the log still knows. A log that does not
/// exist yet holds nothing; booking creates it. Problems of all: those of the shop file
/// ("shop.missing" where there is none), "log.*" as of joblog::Log::book().

/// By material: on hand, what boards that are scheduled or begun still need, what is short.
base::Result<StockAnswer> list_stock(const Workshop& workshop);
/// Lot by lot, used-up ones too when a material is named.
base::Result<StockAnswer> list_lots(const Workshop& workshop,
                                    const std::optional<std::string>& material);
/// Packs of the shop file that cover what runs short.
base::Result<StockAnswer> reorder_stock(const Workshop& workshop);

struct ReceiveRequest {
  std::string material, amount;  ///< as typed
  units::Money cost;             ///< not negative
  std::optional<std::string> lot, batch, note;
  std::optional<time::Date> expires;
  std::optional<time::Date> on;  ///< else today
  std::string token;             ///< names the call: the same again books nothing twice
};
struct KitRequest {
  std::filesystem::path file;
  std::optional<time::Date> on;
  std::optional<std::string> note;  ///< else the name of the kit
  std::string token;
};
struct CountRequest {
  std::string material, amount;
  std::optional<std::string> lot, note;
  std::string token;
};
struct WasteRequest {
  std::string material, amount;
  std::optional<std::string> lot, note;
  std::optional<time::Date> on;
  std::string token;
};

/// Problems: "material.unknown", "material.ambiguous"; of amounts (key AMOUNT); "currency.other";
/// "date.future"; of a kit those of files::read_kit(), "kit.no_price"; those of
/// joblog::Log::book(). Throw joblog::StoreError.
base::Result<StockAnswer> receive_stock(const Workshop& workshop, const ReceiveRequest& request);
base::Result<StockAnswer> receive_kit(const Workshop& workshop, const KitRequest& request);
base::Result<StockAnswer> count_stock(const Workshop& workshop, const CountRequest& request);
base::Result<StockAnswer> waste_stock(const Workshop& workshop, const WasteRequest& request);

/// Every row of a table of purchases (docs/formats/stock_csv.md) that is not in the log yet, or
/// none. Problems: those of files::read_table(), "import.*", and of every row those above.
base::Result<StockAnswer> import_stock(const Workshop& workshop, const std::filesystem::path& file);

}  // namespace wetout::work
