// A shop of a folder of its own with a planned board and goods on the shelf.
#pragma once

#include <gtest/gtest.h>
#include <stdlib.h>

#include <chrono>
#include <filesystem>
#include <stdexcept>
#include <string>
#include <vector>

#include "wetout/joblog/log.hpp"
#include "wetout/units/quantity.hpp"
#include "wetout/work/plan.hpp"
#include "wetout/work/record.hpp"

namespace wetout::work::testing {

using joblog::Access;
using joblog::Log;
using joblog::MaterialUnit;

inline constexpr const char* pico = "pico-5-4";

inline joblog::Instant on_day(int day, int hour = 12) {
  using namespace std::chrono;
  return sys_days(2026y / June / day) + hours(hour);
}

class RecordShelf : public ::testing::Test {
 protected:
  RecordShelf() {
    // In memory if there is such a file system: an fsync on a busy disk takes its time.
    const std::filesystem::path where =
        std::filesystem::exists("/dev/shm") ? "/dev/shm" : std::filesystem::temp_directory_path();
    std::string name = (where / "wetout-record-XXXXXX").string();
    folder_ = ::mkdtemp(name.data());
    for (const char* file : {"shop.toml", "pico.toml", "forecast.csv"}) {
      std::filesystem::copy_file(std::filesystem::path(WETOUT_DEMO_DATA) / file, folder_ / file);
    }
    workshop_.here = folder_ / "bench";  // files of other folders are opened by their full names
    workshop_.log = folder_ / "log.db";
    workshop_.now = [this](const time::Zone&) -> base::Result<time::Instant> { return now_; };
    const auto planned = plan(workshop_, {.file = folder_ / "pico.toml", .as = {}, .choices = {}});
    if (!planned)
      throw std::runtime_error(planned.error().front().message + " " +
                               planned.error().front().file);
  }
  ~RecordShelf() override { std::filesystem::remove_all(folder_); }
  RecordShelf(const RecordShelf&) = delete;
  RecordShelf& operator=(const RecordShelf&) = delete;

  Log log() const { return Log::open(workshop_.log); }
  Log writing() const { return Log::open(workshop_.log, {.access = Access::write}); }

  static joblog::EntryHead head(const std::string& token, int day) {
    return {.token = token,
            .at = on_day(day),
            .on = joblog::Date(std::chrono::floor<std::chrono::days>(on_day(day))),
            .recorded = on_day(day)};
  }

  void receive(const std::string& slug, MaterialUnit unit, std::int64_t quantity,
               std::int64_t minor, const std::string& label,
               std::optional<joblog::Date> expires = {}) {
    joblog::NewReceipt receipt;
    receipt.head = head("buy " + slug + label, 1);
    receipt.currency = "EUR";
    receipt.parts = {{.material = {slug, slug, unit},
                      .quantity = quantity,
                      .cost_minor = minor,
                      .lot = label,
                      .expires = expires}};
    const auto booked = writing().book(receipt);
    ASSERT_TRUE(booked);
  }

  /// Enough of all that the board needs.
  void fill_shelf() {
    receive("kelp-a", MaterialUnit::milligram, 5'000'000, 7900, "jug");
    receive("kelp-slow-b", MaterialUnit::milligram, 2'200'000, 5500, "can");
    receive("kelp-quick-b", MaterialUnit::milligram, 1'000'000, 2900, "can");
    receive("e4", MaterialUnit::micrometre, 20'000'000, 11'600, "roll");
    receive("e6", MaterialUnit::micrometre, 10'000'000, 7400, "roll");
    receive("side-box", MaterialUnit::piece, 4, 3000, "bag");
  }

  RecordRequest request(const std::string& step) {
    RecordRequest out;
    out.job = pico;
    out.step = step;
    out.token = "call-" + std::to_string(++calls_);
    return out;
  }

  std::int64_t on_hand(const std::string& slug) const {
    const auto stock = log().stock_of(slug, joblog::Lots::all);
    return stock ? stock->quantity : 0;
  }

  std::filesystem::path folder_;
  Workshop workshop_;
  time::Instant now_ = on_day(13, 16);
  int calls_ = 0;
};

/// Of the lines of documents' entries: "kelp-a jug 177778".
inline std::vector<std::string> lines_of(const report::RecordDocument& document) {
  std::vector<std::string> lines;
  for (const report::LedgerEntry& entry : document.booked) {
    for (const report::LedgerLine& line : entry.lines) {
      lines.push_back(line.material.value_or("work") + " " + line.lot.value_or("-") + " " +
                      std::to_string(line.amount.count));
    }
  }
  return lines;
}

}  // namespace wetout::work::testing
