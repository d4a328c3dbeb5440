// The demo shop in a folder of its own, with a log of its own.
#pragma once

#include <gtest/gtest.h>
#include <stdlib.h>

#include <chrono>
#include <filesystem>
#include <fstream>
#include <string>

#include "wetout/joblog/log.hpp"
#include "wetout/work/plan.hpp"
#include "wetout/work/stock.hpp"

namespace wetout::work::testing {

class DemoShop : public ::testing::Test {
 protected:
  DemoShop() {
    // In memory if there is such a file system: an fsync on a busy disk takes its time.
    namespace fs = std::filesystem;
    const fs::path where = fs::exists("/dev/shm") ? "/dev/shm" : fs::temp_directory_path();
    std::string name = (where / "wetout-stock-XXXXXX").string();
    folder_ = ::mkdtemp(name.data());
    for (const char* file : {"shop.toml", "pico.toml", "faial.toml", "terceira.toml"}) {
      fs::copy_file(fs::path(WETOUT_DEMO_DATA) / file, folder_ / file);
    }
    workshop_.here = folder_;
    workshop_.log = folder_ / "log.db";
    workshop_.shop = folder_ / "shop.toml";
    workshop_.cache = fs::temp_directory_path() / "wetout-test-cups";
    workshop_.now = [this](const time::Zone&) -> base::Result<time::Instant> { return now_; };
  }
  ~DemoShop() override { std::filesystem::remove_all(folder_); }
  DemoShop(const DemoShop&) = delete;
  DemoShop& operator=(const DemoShop&) = delete;

  /// Returns the document of the plan.
  report::PlanDocument plan_board(const std::string& file) {
    const auto planned = plan(workshop_, {.file = folder_ / file, .as = {}, .choices = {}});
    EXPECT_TRUE(planned) << planned.error().front().message;
    return planned ? planned->document : report::PlanDocument{};
  }

  joblog::Log reading() const { return joblog::Log::open(workshop_.log); }
  joblog::Log writing() const {
    return joblog::Log::open(workshop_.log, {.access = joblog::Access::write});
  }

  joblog::EntryHead head() {
    return {.token = "entry " + std::to_string(++tokens_),
            .at = now_,
            .on = joblog::Date(std::chrono::floor<std::chrono::days>(now_)),
            .recorded = now_,
            .event = std::nullopt,
            .note = ""};
  }

  void receive(const std::string& material, const std::string& amount, std::int64_t minor) {
    const auto answer = receive_stock(workshop_, {.material = material,
                                                  .amount = amount,
                                                  .cost = {minor, "EUR"},
                                                  .lot = {},
                                                  .batch = {},
                                                  .note = {},
                                                  .expires = {},
                                                  .on = {},
                                                  .token = "receive " + std::to_string(++tokens_)});
    EXPECT_TRUE(answer) << answer.error().front().message;
  }

  void use(const std::string& job, const std::string& step, const std::string& material,
           joblog::MaterialUnit unit, std::int64_t quantity) {
    joblog::NewUse use;
    use.head = head();
    use.job_slug = job;
    use.step = step;
    use.takings = {{.material = {material, material, unit}, .quantity = quantity, .lot = ""}};
    EXPECT_TRUE(writing().book(use));
  }

  void record_event(const std::string& job, const std::string& step, joblog::EventKind kind,
                    joblog::Facts facts = {}, time::Instant at = {}) {
    joblog::NewEvents events;
    events.job_slug = job;
    events.recorded = now_;
    events.events = {{.token = "event " + std::to_string(++tokens_),
                      .kind = kind,
                      .step = step,
                      .at = at == time::Instant{} ? now_ : at,
                      .facts = std::move(facts)}};
    const auto recorded = writing().record_events(events);
    EXPECT_TRUE(recorded) << recorded.error().front().message;
  }

  std::filesystem::path folder_;
  Workshop workshop_;
  time::Instant now_ =
      std::chrono::sys_days(std::chrono::year(2026) / 6 / 13) + std::chrono::hours(16);
  int tokens_ = 0;
};

}  // namespace wetout::work::testing
