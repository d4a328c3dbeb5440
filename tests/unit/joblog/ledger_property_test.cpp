// Any sequence of entries: each line as the naive model has it, every question answered as a naive
// sum over all lines answers it, goods and money neither made nor lost.
#include <gtest/gtest.h>
#include <rapidcheck.h>
#include <rapidcheck/gtest.h>

#include <boost/multiprecision/cpp_int.hpp>
#include <cstdlib>

#include "joblog/fifo.hpp"
#include "ledger_model.hpp"
#include "ledger_questions.hpp"
#include "ledger_samples.hpp"
#include "support.hpp"
#include "wetout/joblog/care.hpp"

namespace wetout::joblog {
namespace {

using testing::LedgerModel;

const std::string materials[] = {"a", "b", "c"};

Material material(const std::string& slug) {
  return slug == "a"   ? testing::mass(slug)
         : slug == "b" ? testing::length(slug)
                       : testing::pieces(slug);
}

template <class T>
T one_of(const std::vector<T>& all) {
  return all[*rc::gen::inRange<std::size_t>(0, all.size())];
}

/// Makes entries that lie in what is there: small numbers, so that lots are used up to the last.
class Maker {
 public:
  explicit Maker(LedgerModel& model) : model_(model) {}

  NewEntry make() {
    token_ = "t" + std::to_string(++n_);
    day_ = *rc::gen::inRange(0, 40);
    // Receipts and uses more often than the rest.
    switch (*rc::gen::inRange(0, 12)) {
      case 0:
      case 1:
      case 2:
        return receipt();
      case 3:
      case 4:
      case 5:
      case 6:
        return testing::use(token_, one_of<std::string>({"sandpiper", "egret"}),
                            one_of<std::string>({"", "lam/wet", "gloss/wet"}), takings(), day_);
      case 7:
        return testing::waste(token_, takings(), day_);
      case 8:
        return count();
      case 9:
        return testing::labour(token_, one_of<std::string>({"sandpiper", "egret"}),
                               *rc::gen::inRange(1, 90), *rc::gen::inRange(0, 3000), day_);
      default:
        return testing::reversal(token_, *rc::gen::inRange<std::int64_t>(
                                             0, static_cast<std::int64_t>(model_.entries()) + 2));
    }
  }

 private:
  std::string slug() { return one_of(std::vector<std::string>(materials, materials + 3)); }

  // Mostly none; else one that is there, or nowhere.
  std::string label(const std::string& of) {
    const auto& lots = model_.lots(of);
    if (lots.empty() || *rc::gen::inRange(0, 4) != 0) return {};
    if (*rc::gen::inRange(0, 20) == 0) return "nowhere";
    return lots[*rc::gen::inRange<std::size_t>(0, lots.size())].label;
  }

  NewEntry receipt() {
    std::vector<Received> parts;
    for (int i = *rc::gen::inRange(1, 4); i > 0; --i) {
      const std::string of = slug();
      Received part{material(of), *rc::gen::inRange(1, 40), *rc::gen::inRange(0, 300)};
      part.lot = label(of);
      if (*rc::gen::inRange(0, 2) == 0) part.expires = testing::day(*rc::gen::inRange(0, 40));
      parts.push_back(part);
    }
    return testing::receipt(token_, parts, day_);
  }

  // All that is there, to the last, as often as any other number.
  std::int64_t amount(const std::string& of, std::int64_t least) {
    const std::int64_t there = model_.quantity(of);
    if (there >= least && *rc::gen::inRange(0, 3) == 0) return there;
    return *rc::gen::inRange(least, std::int64_t{50});
  }

  std::vector<Taking> takings() {
    std::vector<Taking> takings;
    for (int i = *rc::gen::inRange(1, 4); i > 0; --i) {
      const std::string of = slug();
      takings.push_back({material(of), amount(of, 1), label(of)});
    }
    return takings;
  }

  NewEntry count() {
    std::vector<Counted> counts;
    for (const std::string& of : materials) {
      if (*rc::gen::inRange(0, 2) == 0) counts.push_back({material(of), amount(of, 0), label(of)});
    }
    if (counts.empty()) counts.push_back({material("a"), amount("a", 0)});
    return testing::count(token_, counts, day_);
  }

  LedgerModel& model_;
  int n_ = 0;
  std::string token_ = {};
  int day_ = 0;
};

/// Books into a log and into the model, and compares.
class Run {
 public:
  explicit Run(Log log) : log_(std::move(log)) {}

  Log& log() { return log_; }
  void reopen(const std::filesystem::path& path) {
    log_ = Log::in_memory();
    log_ = Log::open(path, testing::writing());
  }

  void step() {
    const NewEntry entry = maker_.make();
    const auto foreseen = log_.foresee_bookings({entry});
    const auto expected = model_.book(entry);
    const auto booked = log_.book(entry);
    RC_ASSERT(booked.has_value() == expected.has_value());
    RC_ASSERT(foreseen.has_value() == expected.has_value());
    if (booked) {
      RC_ASSERT(booked->lines == *expected);
      RC_ASSERT(foreseen->at(0).lines == *expected);
      RC_ASSERT(booked->number == static_cast<std::int64_t>(model_.entries()));
      RC_ASSERT(booked->shortages == shortages(entry, *expected));
      booked_.emplace_back(entry, *booked);
    }
    RC_ASSERT(testing::stock(log_, Lots::all) == model_.stock());
  }

  // Sent again: the same answer, and nothing changes.
  void retry() {
    if (booked_.empty()) return;
    const auto& [entry, first] = booked_[*rc::gen::inRange<std::size_t>(0, booked_.size())];
    const auto again = log_.book(entry);
    RC_ASSERT(again.has_value());
    RC_ASSERT(again->already && again->number == first.number);
    // A lot that was received anew since may have another date.
    const auto without_marks = [](std::vector<MovementRow> lines) {
      for (MovementRow& line : lines) line.expired = false;
      return lines;
    };
    RC_ASSERT(without_marks(again->lines) == without_marks(first.lines));
    RC_ASSERT(again->shortages == first.shortages);
    RC_ASSERT(testing::stock(log_, Lots::all) == model_.stock());
  }

  void ask() {
    RC_ASSERT(testing::wrong_answers(log_) == "");
    RC_ASSERT(static_cast<std::size_t>(log_.info().entries) == model_.entries());
    for (const std::string& slug : materials) {
      for (const LedgerModel::Lot& lot : model_.lots(slug)) {
        const std::int64_t sign = lot.quantity() * lot.minor();
        RC_ASSERT(sign > 0 || lot.minor() == 0);
      }
    }
  }

 private:
  std::vector<Shortage> shortages(const NewEntry& entry, const std::vector<MovementRow>& lines) {
    std::vector<Shortage> all;
    if (!std::holds_alternative<NewUse>(entry) && !std::holds_alternative<NewWaste>(entry)) {
      return all;
    }
    for (std::size_t i = 0; i < lines.size(); ++i) {
      std::int64_t taken = 0;
      bool is_first = true;
      for (std::size_t k = 0; k < lines.size(); ++k) {
        if (lines[k].material != lines[i].material) continue;
        taken += lines[k].quantity;
        is_first = is_first && k >= i;
      }
      const std::int64_t missing = std::min(taken, -model_.quantity(lines[i].material));
      if (is_first && missing > 0) all.push_back({lines[i].material, missing});
    }
    return all;
  }

  Log log_;
  LedgerModel model_;
  Maker maker_{model_};
  std::vector<std::pair<NewEntry, Booked>> booked_ = {};
};

RC_GTEST_PROP(LedgerProperty, IsTheNaiveModelInMemory, ()) {
  Run run(testing::ledger());
  const int steps = *rc::gen::inRange(1, 40);
  for (int i = 0; i < steps; ++i) {
    *rc::gen::inRange(0, 8) == 0 ? run.retry() : run.step();
  }
  run.ask();
}

RC_GTEST_PROP(LedgerProperty, IsTheNaiveModelInAFileThatIsOpenedAgain, ()) {
  const testing::TempFolder folder;
  const auto path = folder / "log.db";
  {
    Log log = Log::open(path, testing::writing());
    log.save_plan(testing::sample_plan(1));
    log.save_plan(testing::sample_plan(1, "egret"));
  }
  Run run(Log::open(path, testing::writing()));
  for (int part = *rc::gen::inRange(1, 5); part > 0; --part) {
    const int steps = *rc::gen::inRange(1, 10);
    const bool together = *rc::gen::inRange(0, 2) == 0;
    const auto work = [&]() -> base::Result<void> {
      for (int i = 0; i < steps; ++i) run.step();
      return {};
    };
    const bool done = together ? run.log().together(work).has_value() : work().has_value();
    RC_ASSERT(done);
    run.reopen(path);
    run.retry();
  }
  run.ask();
  const auto findings = check(path);
  RC_ASSERT(findings.empty());
}

// Whatever a lot cost and however it was taken: each time round-half-even of the whole, and in the
// end the price. The numbers are as large as lines hold.
RC_GTEST_PROP(LedgerProperty, CostLeavesALotToTheLastCent, ()) {
  using Integer = boost::multiprecision::cpp_int;
  const auto size = *rc::gen::inRange<std::int64_t>(1, most_of_a_line + 1);
  const auto price = *rc::gen::inRange<std::int64_t>(0, most_of_a_line + 1);
  LotBalance lot;
  apply(lot, Account::supplier, Account::stock, size, price);
  std::int64_t taken = 0;
  std::int64_t paid = 0;
  while (taken < size) {
    const std::int64_t part =
        std::min(size - taken, *rc::gen::inRange<std::int64_t>(1, size / 3 + 2));
    const std::int64_t cost = cost_of_taking(lot, part);
    apply(lot, Account::stock, Account::board, part, cost);
    taken += part;
    paid += cost;
    const Integer twice = Integer(price) * taken * 2;
    const Integer error = Integer(paid) * size * 2 - twice;  // 2 × size × (paid − due)
    RC_ASSERT(boost::multiprecision::abs(error) <= Integer(size));
    RC_ASSERT(boost::multiprecision::abs(error) < Integer(size) || paid % 2 == 0);
  }
  RC_ASSERT(paid == price);
  RC_ASSERT(lot.quantity == 0 && lot.minor == 0);
}

RC_GTEST_PROP(LedgerProperty, APriceIsSplitExactly, ()) {
  const auto price = *rc::gen::inRange<std::int64_t>(0, most_of_a_line + 1);
  auto weights = *rc::gen::nonEmpty(
      rc::gen::container<std::vector<std::int64_t>>(rc::gen::inRange<std::int64_t>(0, 1'000)));
  weights.push_back(1);
  const auto shares = split_price(price, weights);
  std::int64_t sum = 0;
  std::int64_t whole = 0;
  for (const std::int64_t share : shares) sum += share;
  for (const std::int64_t weight : weights) whole += weight;
  RC_ASSERT(sum == price);
  for (std::size_t i = 0; i < weights.size(); ++i) {
    const double exact =
        static_cast<double>(price) * static_cast<double>(weights[i]) / static_cast<double>(whole);
    RC_ASSERT(std::abs(static_cast<double>(shares[i]) - exact) < 1.001);
  }
}

}  // namespace
}  // namespace wetout::joblog
