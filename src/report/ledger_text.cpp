// The ledger for people: one board, totals, entries.
#include <fmt/format.h>

#include <string>

#include "goods_text.hpp"
#include "phrases.hpp"
#include "wetout/report/ledger_document.hpp"

namespace wetout::report {
namespace {

using layout::left;
using layout::plain;
using layout::right;
using units::System;

class Writer {
 public:
  Writer(const LedgerDocument& document, System system) : document_(document), system_(system) {}

  std::string run() {
    const std::string& action = document_.action;
    if (action == "undo") undo();
    if (action == "job") job();
    if (action == "month" || action == "list") months();
    if (action == "material") materials();
    if (action == "board") boards();
    for (const base::Notice& notice : document_.notices) {
      page_.item("  * ", subject_text(notice) + notice_text(notice, system_));
    }
    if (action == "list" || action == "job") latest();
    return page_.text();
  }

 private:
  std::string text(const GoodsAmount& amount) const { return amount_text(amount, system_); }
  std::string or_dash(const std::optional<GoodsAmount>& amount) const {
    return amount && amount->count != 0 ? text(*amount) : "-";
  }
  static std::string of_job(const std::optional<LedgerJob>& job) {
    return job ? plain(job->id) + ": " : std::string();
  }
  static std::string work_text(std::int64_t minutes) {
    return units::print(units::minutes(static_cast<double>(minutes)), System::metric);
  }

  void undo() {
    for (const LedgerEntry& entry : document_.entries) entry_lines(page_, entry, system_);
    if (!document_.undone) return;
    LedgerEntry undone = *document_.undone;
    undone.undone_by.reset();  // the line above says so
    entry_lines(page_, undone, system_);
  }

  void job() {
    const LedgerJob& job = *document_.job;
    page_.line(plain(job.id) + ": what it used and cost" +
               (job.revision ? fmt::format(", against revision {} of its plan", *job.revision)
                             : std::string(", without a plan")));
    if (!document_.plan_vs_actual.empty()) {
      page_.blank();
      row("coat", "material", "planned", "mixed", "used", "cost");
    }
    const std::string* coat = nullptr;
    for (const PlanVsActual& one : document_.plan_vs_actual) {
      static const std::string none = "besides";
      const std::string& name = one.coat ? *one.coat : none;
      row(coat != nullptr && *coat == name ? "" : plain(name), plain(one.material),
          or_dash(one.planned), or_dash(one.recorded), or_dash(one.used),
          one.used.count == 0 && one.cost.minor == 0 ? "-" : money_text(one.cost));
      coat = &name;
    }
    work();
    sums();
  }

  void row(std::string_view coat, std::string_view material, std::string_view planned,
           std::string_view mixed, std::string_view used, std::string_view cost) {
    page_.line(left(coat, 15) + ' ' + left(material, 15) + right(planned, 12) + right(mixed, 12) +
               right(used, 12) + right(cost, 13));
  }

  void work() {
    if (document_.work.empty()) return;
    page_.blank();
    page_.line(left("work", 31) + right("time", 12) + right("", 24) + right("cost", 13));
    for (const StepWork& one : document_.work) {
      page_.line(left(one.step ? plain(*one.step) : "of no step", 31) +
                 right(work_text(one.minutes), 12) +
                 right(one.booked ? "" : "from start to done", 24) +
                 right(one.cost ? units::print(*one.cost) : "-", 13));
    }
  }

  void sums() {
    if (!document_.cost) return;
    const JobSums& sums = *document_.cost;
    page_.blank();
    const auto sum = [&](std::string_view what, const std::string& how, const units::Money& money) {
      page_.line(left(what, 16) + left(how, 47) + right(money_text(money), 17));
    };
    sum("goods", sums.planned_goods ? units::print(*sums.planned_goods) + " planned" : "",
        sums.goods);
    sum("labour", sums.minutes == 0 ? "" : work_text(sums.minutes), sums.labour);
    sum("in all", "", sums.all);
    if (sums.waste_share) {
      page_.line("Of the resin that was mixed " + units::print_percent(*sums.waste_share) +
                 " was left over or spilled.");
    }
  }

  void months() {
    if (document_.months.empty()) {
      page_.line("Nothing was booked.");
      return;
    }
    page_.line(of_job(document_.job) + "by month");
    const auto row = [&](std::string_view month, std::string_view a, std::string_view b,
                         std::string_view c, std::string_view d, std::string_view e) {
      page_.line("  " + left(month, 8) + right(a, 14) + right(b, 14) + right(c, 14) + right(d, 14) +
                 right(e, 14));
    };
    row("month", "bought", "used", "wasted", "counted", "labour");
    for (const MonthSums& one : document_.months) {
      row(one.month, money_text(one.received), money_text(one.used), money_text(one.wasted),
          money_text(one.adjusted), money_text(one.labour));
    }
  }

  void materials() {
    if (document_.materials.empty()) page_.line("Nothing was booked.");
    for (const MaterialSums& one : document_.materials) {
      page_.line(of_job(document_.job) + plain(one.material) +
                 (one.name == one.material ? "" : ", " + plain(one.name)));
      flow("bought", one.received);
      flow("used", one.used);
      flow("wasted", one.wasted);
      flow("counted", one.adjusted);
      // Of one board nothing else is looked at.
      if (!document_.job) flow("on hand", one.on_hand);
    }
  }

  void flow(std::string_view what, const GoodsFlow& flow) {
    if (flow.amount.count == 0 && flow.cost.minor == 0 && what != "on hand") return;
    page_.line("  " + left(what, 12) + right(text(flow.amount), 18) +
               right(money_text(flow.cost), 18));
  }

  void boards() {
    if (document_.boards.empty()) {
      page_.line("Nothing was booked for a board.");
      return;
    }
    const auto row = [&](std::string_view job, std::string_view a, std::string_view b,
                         std::string_view c, std::string_view d) {
      page_.line(left(job, 24) + right(a, 14) + right(b, 14) + right(c, 14) + right(d, 14));
    };
    row("board", "goods", "time", "labour", "in all");
    for (const BoardSums& one : document_.boards) {
      row(plain(one.job), money_text(one.goods), one.minutes == 0 ? "-" : work_text(one.minutes),
          money_text(one.labour), money_text(one.all));
    }
  }

  void latest() {
    if (document_.entries.empty()) return;
    page_.blank();
    page_.line(
        document_.earlier > 0
            ? fmt::format("Latest entries; {} before them are in an export", document_.earlier)
            : std::string("Entries"));
    for (const LedgerEntry& entry : document_.entries) entry_lines(page_, entry, system_);
  }

  const LedgerDocument& document_;
  System system_;
  layout::Page page_;
};

}  // namespace

std::string to_text(const LedgerDocument& document, System system) {
  return Writer(document, system).run();
}

}  // namespace wetout::report
