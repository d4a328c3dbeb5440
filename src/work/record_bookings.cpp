#include "record_bookings.hpp"

#include <algorithm>
#include <chrono>
#include <cmath>
#include <map>
#include <optional>
#include <utility>

#include "record_times.hpp"
#include "stock_coat_facts.hpp"
#include "stock_needs.hpp"
#include "stock_shop.hpp"
#include "stored_plan.hpp"

namespace wetout::work {
namespace {

using joblog::EventKind;
using joblog::MaterialUnit;

// Nobody works on one step for so long: the start or the end is a slip, or was forgotten.
constexpr std::chrono::hours longest_work{12};
constexpr std::int64_t minutes_of_an_hour = 60;

class Booker {
 public:
  Booker(const RecordContext& context, const joblog::Log* log)
      : context_(context),
        log_(log),
        step_(schedule::to_string(context.step)),
        keeps_stock_(log != nullptr && log->keeps_stock()) {
    if (context.job.shop) goods_ = goods_of(context.job.shop->shop);
  }

  base::Result<Bookings> run(const std::vector<joblog::RecordedEvent>& events) {
    for (const joblog::RecordedEvent& event : events) {
      if (event.row.kind == EventKind::started) started_ = event.row.at;
    }
    bool any_new = false;
    for (const joblog::RecordedEvent& event : events) {
      if (event.already) continue;
      any_new = true;
      if (keeps_stock_) {
        if (event.row.kind == EventKind::mixed) mixed(event.row);
        if (event.row.token.ends_with("/used")) named(event.row);
        if (event.row.kind == EventKind::done) as_planned(event.row);
      }
      if (event.row.kind == EventKind::done) work(event.row);
    }
    if (any_new && keeps_stock_) check_lots();
    if (any_new && keeps_stock_) check_pieces();
    if (!problems_.empty()) return base::fail(std::move(problems_));
    return std::move(out_);
  }

 private:
  joblog::EntryHead head(const joblog::EventRow& event, std::string_view name) const {
    return {.token = event.token + "/" + std::string(name),
            .at = event.at,
            .on = day_of(event.at, context_.job.zone),
            .recorded = event.recorded,
            .event = event.number,
            .note = ""};
  }

  bool is_wet() const {
    return !context_.step.coat.empty() && context_.step.word == schedule::StepWord::wet;
  }

  // Nothing where the log keeps it in another unit: it cannot be taken then.
  std::optional<joblog::Material> material(const std::string& slug, MaterialUnit unit) {
    joblog::Material out{slug, slug, unit};
    for (const Good& good : goods_) {
      if (good.material.slug == slug) out.name = good.material.name;
    }
    const auto kept = log_->stock_of(slug);
    if (!kept || kept->material.unit == unit) return out;
    out_.notices.push_back({.code = "stock.other_unit",
                            .text = "not taken from stock: the log keeps it in another unit",
                            .subject = slug});
    return std::nullopt;
  }

  joblog::Taking taking(joblog::Material material, std::int64_t quantity) {
    joblog::Taking out{std::move(material), quantity, ""};
    const auto lot = context_.goods.lots.find(out.material.slug);
    if (lot != context_.goods.lots.end()) out.lot = lot->second;
    return out;
  }

  // Was it ever received? What never was lies in a lot of unknown origin once it has been taken.
  void see(const std::string& slug) {
    const auto kept = log_->stock_of(slug, joblog::Lots::all);
    if (!kept) out_.never_received.insert(slug);
    const bool is_unknown =
        !kept || std::all_of(kept->lots.begin(), kept->lots.end(),
                             [](const joblog::LotStock& lot) { return lot.label == "unknown"; });
    if (is_unknown) out_.unreceived.insert(slug);
  }

  // Pieces that are kept go off the roll first, so that they cost what was paid for it.
  void keep_pieces(const joblog::EventRow& event, joblog::Taking& taking) {
    joblog::NewCount entry;
    std::int64_t off = 0;
    for (const KeptPiece& piece : context_.goods.kept) {
      if (piece.material.slug != taking.material.slug) continue;
      off += piece.off_roll_um;
      entry.cuts.push_back({.material = taking.material,
                            .quantity = piece.off_roll_um,
                            .lot = taking.lot,
                            .length = piece.length_um,
                            .width_um = piece.width_um});
    }
    if (entry.cuts.empty()) return;
    kept_of_.insert(taking.material.slug);
    if (off >= taking.quantity) {
      problems_.push_back(
          {.code = "remnant.large",
           .message = "--remnant: this is all that was cut of \"" + taking.material.slug + "\"",
           .key = "--remnant",
           .expected = "pieces smaller than what is cut, e.g. a length with --cloth " +
                       taking.material.slug + "=2m"});
      return;
    }
    taking.quantity -= off;
    entry.head = head(event, "remnant-" + taking.material.slug);
    out_.entries.emplace_back(std::move(entry));
  }

  void use(const joblog::EventRow& event, std::vector<joblog::Taking> takings) {
    if (takings.empty()) return;
    for (joblog::Taking& one : takings) {
      if (one.material.unit == MaterialUnit::micrometre) keep_pieces(event, one);
    }
    for (const joblog::Taking& one : takings) {
      out_.materials.push_back(one.material);
      see(one.material.slug);
    }
    out_.entries.emplace_back(joblog::NewUse{.head = head(event, "use"),
                                             .job_slug = context_.job.slug,
                                             .step = step_,
                                             .takings = std::move(takings)});
  }

  void mixed(const joblog::EventRow& event) {
    std::map<std::string, std::int64_t> parts;
    if (is_wet() && context_.job.plan) {
      auto facts = coat_facts({event}, context_.job.plan->plan);
      parts = std::move(facts[context_.step.coat].mixed);
    } else if (context_.resin != nullptr && event.facts.part_a && event.facts.part_b) {
      parts[context_.resin->part_a] = event.facts.part_a->count();
      parts[context_.resin->part_b] = event.facts.part_b->count();
    }
    std::vector<joblog::Taking> takings;
    for (const auto& [slug, quantity] : parts) {
      if (quantity == 0) continue;
      if (auto one = material(slug, MaterialUnit::milligram)) {
        takings.push_back(taking(std::move(*one), quantity));
      }
    }
    if (parts.empty()) {
      out_.notices.push_back(
          {.code = "stock.which_resin",
           .text = "no plan tells which resin it was, so none is taken from stock: --resin does",
           .subject = step_});
    }
    use(event, std::move(takings));
  }

  void named(const joblog::EventRow& event) {
    std::vector<joblog::Taking> takings;
    for (const NamedGood& one : context_.goods.named) {
      takings.push_back(taking(one.material, one.quantity));
    }
    use(event, std::move(takings));
  }

  bool is_named(const std::string& slug) const {
    return std::any_of(context_.goods.named.begin(), context_.goods.named.end(),
                       [&](const NamedGood& one) { return one.material.slug == slug; });
  }

  // Cloth and what is set in: resin is mixed, and said to be.
  void as_planned(const joblog::EventRow& event) {
    if (!is_wet() || !context_.job.plan) return;
    const auto stored = stored_plan(*log_, context_.job.slug, std::nullopt);
    const auto planned = stored ? goods_of_plan(*stored) : tl::unexpected(stored.error());
    if (!planned) {
      // What was done is kept all the same.
      out_.notices.push_back({.code = "stock.plan_unread",
                              .text = "the plan's job file cannot be read any more, so nothing is "
                                      "taken as planned: --cloth and --used do",
                              .subject = step_});
      return;
    }
    std::set<std::string> taken;
    if (const auto cost = log_->job_cost(context_.job.slug)) {
      for (const joblog::JobGoods& one : cost->goods) {
        if (one.step == step_) taken.insert(one.material.slug);
      }
    }
    std::vector<joblog::Taking> takings;
    for (const CoatGoods& one : *planned) {
      const bool is_of_it = one.coat == context_.step.coat && one.unit != MaterialUnit::milligram;
      if (!is_of_it || is_named(one.material) || taken.count(one.material) != 0) continue;
      auto what = material(one.material, one.unit);
      if (!what) continue;
      const bool is_length = one.unit == MaterialUnit::micrometre;
      out_.notices.push_back({.code = "record.as_planned",
                              .text = "taken as planned",
                              .subject = one.material,
                              .value = static_cast<double>(one.quantity) * (is_length ? 1e-6 : 1.0),
                              .limit = std::nullopt,
                              .unit = is_length ? "m" : "pieces"});
      takings.push_back(taking(std::move(*what), one.quantity));
    }
    use(event, std::move(takings));
  }

  // From the last start to the end. What goes on by itself takes nobody's time, and a ride is no
  // work.
  void work(const joblog::EventRow& event) {
    using schedule::StepWord;
    const JobOfRecord& job = context_.job;
    const bool is_work = context_.step.word != StepWord::acclimatise &&
                         context_.step.word != StepWord::spackle &&
                         context_.step.word != StepWord::ride;
    if (!is_work || !job.shop || !job.shop->labour) return;
    const StepHistory history = history_of(context_.before, step_, event.token);
    const auto start = started_ ? started_ : history.started;
    if (!start || (history.done && *history.done > *start)) return;
    const auto took = event.at - *start;
    if (took > longest_work) {
      out_.notices.push_back(
          {.code = "record.long_work",
           .text = "too long for work, so none is booked",
           .subject = step_,
           .value = static_cast<double>(took.count()) / 60.0,
           .limit = std::chrono::duration<double, std::ratio<60>>(longest_work).count(),
           .unit = "min"});
      return;
    }
    const std::int64_t minutes = std::chrono::round<std::chrono::minutes>(took).count();
    const units::Money& hour = *job.shop->labour;
    const std::int64_t minor = (minutes * hour.minor + minutes_of_an_hour / 2) / minutes_of_an_hour;
    if (minutes == 0) return;
    const auto currency = log_ != nullptr ? log_->currency() : std::nullopt;
    if (currency && *currency != hour.currency) {
      out_.notices.push_back({.code = "record.currency",
                              .text = "work is not booked: the log is kept in " + *currency +
                                      ", the shop file pays in " + hour.currency,
                              .subject = step_});
      return;
    }
    out_.entries.emplace_back(joblog::NewLabour{.head = head(event, "work"),
                                                .job_slug = job.slug,
                                                .step = step_,
                                                .minutes = minutes,
                                                .cost_minor = minor,
                                                .currency = hour.currency});
  }

  void check_pieces() {
    for (const KeptPiece& piece : context_.goods.kept) {
      const std::string& slug = piece.material.slug;
      if (kept_of_.count(slug) != 0) continue;
      problems_.push_back({.code = "remnant.no_cut",
                           .message = "--remnant: this record cuts none of \"" + slug + "\"",
                           .key = "--remnant",
                           .found = slug,
                           .expected = "what it was cut from, e.g. --cloth " + slug + "=2m"});
    }
  }

  void check_lots() {
    for (const auto& [slug, label] : context_.goods.lots) {
      const bool is_taken =
          std::any_of(out_.materials.begin(), out_.materials.end(),
                      [&, id = slug](const joblog::Material& one) { return one.slug == id; });
      if (is_taken) continue;
      std::string list;
      for (const joblog::Material& one : out_.materials) {
        list += (list.empty() ? "one of: " : ", ") + one.slug;
      }
      problems_.push_back({.code = "goods.lot",
                           .message = "--lot: this record takes none of \"" + slug + "\"",
                           .key = "--lot",
                           .found = slug + "=" + label,
                           .expected = list});
    }
  }

  const RecordContext& context_;
  const joblog::Log* log_;
  std::string step_;
  bool keeps_stock_;
  std::vector<Good> goods_;
  std::optional<time::Instant> started_;  // by this call
  std::set<std::string> kept_of_;         // cloths of which a piece was kept
  base::Problems problems_;
  Bookings out_;
};

}  // namespace

base::Result<Bookings> bookings_of(const RecordContext& context,
                                   const std::vector<joblog::RecordedEvent>& events,
                                   const joblog::Log* log) {
  return Booker(context, log).run(events);
}

base::Result<std::vector<joblog::Booked>> book_all(joblog::Log& log,
                                                   const std::vector<joblog::NewEntry>& entries) {
  std::vector<joblog::Booked> booked;
  for (const joblog::NewEntry& entry : entries) {
    auto one = log.book(entry);
    if (!one) return tl::unexpected(one.error());
    booked.push_back(std::move(*one));
  }
  return booked;
}

base::Result<std::vector<joblog::Booked>> foresee_all(
    const joblog::Log* log, const std::vector<joblog::NewEntry>& entries) {
  if (log != nullptr) return log->foresee_bookings(entries);
  return joblog::Log::in_memory().foresee_bookings(entries);
}

std::vector<joblog::NewEntry> reversals_of(const joblog::Log& log, std::int64_t event,
                                           const joblog::EventRow& undo) {
  joblog::EntryFilter filter;
  filter.event = event;
  std::vector<joblog::NewEntry> reversals;
  auto entries = log.entries(filter);
  std::reverse(entries.begin(), entries.end());
  for (const joblog::EntryRow& entry : entries) {
    if (entry.kind == joblog::EntryKind::undo || entry.undone_by) continue;
    reversals.emplace_back(
        joblog::NewReversal{.token = undo.token + "/entry-" + std::to_string(entry.number),
                            .number = entry.number,
                            .recorded = undo.recorded,
                            .event = undo.number,
                            .note = undo.facts.note});
  }
  return reversals;
}

}  // namespace wetout::work
