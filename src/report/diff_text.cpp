// What differs between two plans of one job, one line each.
#include <fmt/format.h>

#include <algorithm>

#include "layout.hpp"
#include "phrases.hpp"
#include "wetout/report/plan_text.hpp"

namespace wetout::report {
namespace {

using layout::plain;
using units::System;

template <class List, class Same>
auto find_in(const List& list, Same same) {
  const auto at = std::find_if(list.begin(), list.end(), same);
  return at == list.end() ? nullptr : &*at;
}

std::string batches_text(const laminate::CoatNeed& coat) {
  std::vector<std::string> masses;
  for (const laminate::Batch& batch : coat.batches) {
    masses.push_back(scale_grams(batch.mix, gram_decimals(std::span(&batch.mix, 1))));
  }
  return masses.empty() ? "none" : joined(masses, " + ");
}

std::string both(units::Milligrams mass, System system) {
  return units::print_both(mass.mass(), system);
}

std::string cut_text(const laminate::PlyNeed& ply, System system) {
  return units::print(ply.cut_length, system) + " x " + units::print_inches(ply.cut_width, system);
}

class Diff {
 public:
  Diff(const PlanDocument& was, const PlanDocument& now, System system)
      : was_(was), now_(now), system_(system) {}

  std::string text() {
    board();
    coats();
    plies();
    totals();
    assumptions();
    words();
    if (page_.lines().empty()) {
      return was_.plan == now_.plan ? "no differences\n"
                                    : "no differences as large as what is printed\n";
    }
    return page_.text();
  }

 private:
  /// One line when the two print differently.
  void changed(std::string_view what, const std::string& was, const std::string& now) {
    if (was != now) page_.item("~ ", fmt::format("{}: {} -> {}", what, was, now));
  }
  void added(const std::string& what) { page_.item("+ ", what); }
  void removed(const std::string& what) { page_.item("- ", what); }

  template <class T, class Print>
  void changed_optional(std::string_view what, const std::optional<T>& was,
                        const std::optional<T>& now, Print print) {
    changed(what, was ? print(*was) : "not known", now ? print(*now) : "not known");
  }

  void board() {
    const laminate::BoardSummary& was = was_.plan.board;
    const laminate::BoardSummary& now = now_.plan.board;
    const auto weight = [this](units::Milligrams m) {
      return units::print_weight(m.mass(), system_);
    };
    changed("program", plain(was_.program), plain(now_.program));
    changed("air", units::print(was_.plan.air, system_), units::print(now_.plan.air, system_));
    changed("board name", plain(was.name), plain(now.name));
    changed("foam", foam_text(was.foam), foam_text(now.foam));
    changed("length", units::print(was.length, system_), units::print(now.length, system_));
    changed("planform", units::print(was.planform, system_), units::print(now.planform, system_));
    changed("bottom area", units::print(was.bottom, system_), units::print(now.bottom, system_));
    changed("deck area", units::print(was.deck, system_), units::print(now.deck, system_));
    changed("volume", units::print_litres(was.volume, system_),
            units::print_litres(now.volume, system_));
    changed_optional("core weight", was.core_weight, now.core_weight, weight);
  }

  void coats() {
    const auto by_id = [](const laminate::CoatNeed& coat) {
      return [&coat](const laminate::CoatNeed& other) { return other.id == coat.id; };
    };
    const auto summary = [this](const laminate::CoatNeed& coat) {
      return fmt::format("coat {}: {}, {}", plain(coat.id), kind_on_face(coat.kind, coat.face),
                         both(coat.mix, system_));
    };
    for (const laminate::CoatNeed& coat : was_.plan.coats) {
      if (find_in(now_.plan.coats, by_id(coat)) == nullptr) removed(summary(coat));
    }
    for (const laminate::CoatNeed& coat : now_.plan.coats) {
      const laminate::CoatNeed* before = find_in(was_.plan.coats, by_id(coat));
      if (before == nullptr) {
        added(summary(coat));
      } else {
        one_coat(*before, coat);
      }
    }
    if (order(was_) != order(now_)) page_.item("~ ", "order of coats: now " + order(now_));
  }

  // Of those that both have.
  [[nodiscard]] std::string order(const PlanDocument& document) const {
    const auto has = [](const PlanDocument& d, const std::string& id) {
      const auto& coats = d.plan.coats;
      return std::any_of(coats.begin(), coats.end(), [&](const auto& c) { return c.id == id; });
    };
    std::vector<std::string> ids;
    for (const laminate::CoatNeed& coat : document.plan.coats) {
      if (has(was_, coat.id) && has(now_, coat.id)) ids.push_back(plain(coat.id));
    }
    return joined(ids, ", ");
  }

  void one_coat(const laminate::CoatNeed& was, const laminate::CoatNeed& now) {
    const auto field = [&](std::string_view what, const std::string& before,
                           const std::string& after) {
      changed(plain(now.id) + " " + std::string(what), before, after);
    };
    const auto mass = [&](std::string_view what, units::Milligrams before,
                          units::Milligrams after) {
      field(what, both(before, system_), both(after, system_));
    };
    field("name", plain(was.name), plain(now.name));
    field("kind", kind_on_face(was.kind, was.face), kind_on_face(now.kind, now.face));
    field("resin", plain(was.resin), plain(now.resin));
    field("ratio", ratio_text(was.ratio), ratio_text(now.ratio));
    field("laps", was.laps ? std::string(laminate::to_string(*was.laps)) : "none",
          now.laps ? std::string(laminate::to_string(*now.laps)) : "none");
    field("area", units::print(was.area, system_), units::print(now.area, system_));
    mass("on board", was.kept, now.kept);
    mass("lost", was.losses, now.losses);
    mass("margin", was.margin, now.margin);
    mass("mix", was.mix, now.mix);
    field("additives", additives(was), additives(now));
    field("batches", batches_text(was), batches_text(now));
    field("use within", use_within(was), use_within(now));
  }

  static std::string additives(const laminate::CoatNeed& coat) {
    std::vector<std::string> words;
    for (const laminate::Additive& each : coat.additives) {
      words.push_back(units::print_percent(each.share) + " " + plain(each.material));
    }
    return words.empty() ? "none" : joined(words, ", ");
  }

  // The shortest of the coat's batches.
  [[nodiscard]] std::string use_within(const laminate::CoatNeed& coat) const {
    const auto shortest =
        std::min_element(coat.batches.begin(), coat.batches.end(),
                         [](const auto& a, const auto& b) { return a.use_within < b.use_within; });
    return shortest == coat.batches.end() ? "-" : use_within_text(shortest->use_within, system_);
  }

  void plies() {
    const auto same = [](const laminate::PlyNeed& ply) {
      return [&ply](const laminate::PlyNeed& o) { return o.id == ply.id && o.coat == ply.coat; };
    };
    const auto title = [](const laminate::PlyNeed& ply) {
      return "ply " + plain(ply.id) + " of " + plain(ply.coat);
    };
    for (const laminate::PlyNeed& ply : was_.plan.plies) {
      if (find_in(now_.plan.plies, same(ply)) == nullptr) removed(title(ply));
    }
    for (const laminate::PlyNeed& ply : now_.plan.plies) {
      const laminate::PlyNeed* before = find_in(was_.plan.plies, same(ply));
      if (before == nullptr) {
        added(fmt::format("{}: {}, {}", title(ply), plain(ply.cloth), cut_text(ply, system_)));
        continue;
      }
      changed(title(ply) + " cloth", plain(before->cloth), plain(ply.cloth));
      changed(title(ply) + " cut", cut_text(*before, system_), cut_text(ply, system_));
      changed(title(ply) + " lap", units::print_inches(before->lap, system_),
              units::print_inches(ply.lap, system_));
    }
  }

  void totals() {
    const laminate::Totals& was = was_.plan.totals;
    const laminate::Totals& now = now_.plan.totals;
    changed("mixed in all", both(was.mix, system_), both(now.mix, system_));
    changed("cloth in all", both(was.fibre, system_), both(now.fibre, system_));
    changed_optional(
        "finished weight", was.finished_weight, now.finished_weight,
        [this](units::Milligrams m) { return units::print_weight(m.mass(), system_); });
    changed_optional("cost", was.cost, now.cost,
                     [](const units::Money& m) { return units::print(m); });
  }

  void assumptions() {
    const auto value = [this](const laminate::Assumption& a) {
      return quantity(a.value, a.unit, system_);
    };
    const auto by_name = [](const laminate::Assumption& a) {
      return [&a](const laminate::Assumption& other) { return other.name == a.name; };
    };
    for (const laminate::Assumption& each : was_.plan.assumptions) {
      if (find_in(now_.plan.assumptions, by_name(each)) == nullptr) {
        removed("assumed " + plain(each.name) + ": " + value(each));
      }
    }
    for (const laminate::Assumption& each : now_.plan.assumptions) {
      const laminate::Assumption* before = find_in(was_.plan.assumptions, by_name(each));
      if (before == nullptr) {
        added("assumed " + plain(each.name) + ": " + value(each));
      } else {
        changed("assumed " + plain(each.name), value(*before), value(each));
        changed("standing of " + plain(each.name), plain(before->standing), plain(each.standing));
      }
    }
  }

  void words() {
    const auto notice = [this](const base::Notice& n) {
      return "notice " + (n.subject.empty() ? "" : plain(n.subject) + ": ") +
             notice_text(n, system_);
    };
    const auto caution = [](const laminate::Caution& c) {
      return "caution " + plain(c.step) + ": " + plain(c.text);
    };
    listed(was_.plan.notices, now_.plan.notices, notice);
    listed(was_.plan.cautions, now_.plan.cautions, caution);
  }

  template <class T, class Print>
  void listed(const std::vector<T>& was, const std::vector<T>& now, Print print) {
    const auto lacks = [&print](const std::vector<T>& list, const T& wanted) {
      return std::none_of(list.begin(), list.end(),
                          [&](const T& each) { return print(each) == print(wanted); });
    };
    for (const T& each : was) {
      if (lacks(now, each)) removed(print(each));
    }
    for (const T& each : now) {
      if (lacks(was, each)) added(print(each));
    }
  }

  const PlanDocument& was_;
  const PlanDocument& now_;
  System system_;
  layout::Page page_;
};

}  // namespace

std::string plan_diff_text(const PlanDocument& was, const PlanDocument& now, units::System system) {
  return Diff(as_kept(was), as_kept(now), system).text();
}

}  // namespace wetout::report
