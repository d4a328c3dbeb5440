// What the board takes in all, what it costs, what it will weigh.
#include <fmt/format.h>

#include "phrases.hpp"
#include "plan_parts.hpp"

namespace wetout::report {

using layout::plain;
using units::System;

namespace {

constexpr std::string_view indent = "   ";

std::string both(units::Milligrams mass, System system) {
  return units::print_both(mass.mass(), system);
}

std::string amount_text(const laminate::MaterialTotal& total, System system) {
  if (total.unit == "m") return units::print(units::metres(total.amount), system);
  if (total.unit == "g") {
    return units::print_both(units::grams(total.amount), system);
  }
  if (total.unit == "piece") {
    return units::print_number(total.amount, 0) + (total.amount == 1.0 ? " piece" : " pieces");
  }
  return quantity(total.amount, total.unit, system);
}

}  // namespace

void PlanWriter::totals() {
  const laminate::Totals& totals = document.plan.totals;
  page.heading("In all", "");
  constexpr std::size_t columns = 19;
  const auto resin_row = [&](std::string_view resin, std::string_view a, std::string_view b,
                             std::string_view mix) {
    page.line(std::string(indent) + layout::left(resin, columns) + layout::right(a, columns) +
              layout::right(b, columns) + layout::right(mix, columns));
  };
  if (!totals.by_resin.empty()) resin_row("resin", "part A", "part B", "mixed");
  for (const laminate::ResinTotal& each : totals.by_resin) {
    resin_row(plain(each.resin), both(each.part_a, system), both(each.part_b, system),
              both(each.mix, system));
    resin_row("", units::print(each.part_a_volume, system),
              units::print(each.part_b_volume, system), "");
  }
  materials();
  page.blank();
  const int decimals = gram_decimals(std::span(&totals.mix, 1));
  const std::vector<units::Milligrams> parts =
      printed_parts({totals.kept, totals.losses, totals.margin,
                     totals.mix - totals.kept - totals.losses - totals.margin},
                    totals.mix, decimals);
  const auto part = [&](std::string_view what, std::size_t i) {
    return layout::whole(fmt::format("{} {}", what, scale_grams(parts[i], decimals)));
  };
  page.item(
      indent,
      fmt::format("{} = {} + {} + {} + {}", layout::whole("mixed " + weighed(totals.mix, system)),
                  part("on board", 0), part("lost", 1), part("margin", 2), part("rounding", 3)));
}

void PlanWriter::materials() {
  const laminate::Totals& totals = document.plan.totals;
  if (totals.materials.empty()) return;
  page.blank();
  const auto row = [&](std::string_view what, std::string_view amount, std::string_view cost) {
    page.line(std::string(indent) + layout::left(what, 30) + layout::right(amount, 24) +
              layout::right(cost, 22));
  };
  row("material", "amount", "cost");
  for (const laminate::MaterialTotal& each : totals.materials) {
    row(plain(each.material), amount_text(each, system),
        each.cost ? units::print(*each.cost) : "no price");
  }
  if (totals.cost) row("all that has a price", "", units::print(*totals.cost));
}

void PlanWriter::finished_weight() {
  const laminate::Totals& totals = document.plan.totals;
  const auto& core = document.plan.board.core_weight;
  if (!totals.finished_weight || !core) {
    page.blank();
    page.item(indent, "finished weight: not known, because the core's weight is not given");
    return;
  }
  page.heading("Finished weight", "");
  // What is left of the sum is what was set into the board.
  const units::Milligrams inserts =
      *totals.finished_weight - *core - totals.fibre - totals.kept + totals.sanded;
  const units::Milligrams off = units::Milligrams(0) - totals.sanded;
  const std::vector<units::Milligrams> parts =
      printed_parts({*core, totals.fibre, totals.kept, inserts, off}, *totals.finished_weight, 0);
  const auto row = [&](std::string_view what, units::Milligrams printed, units::Milligrams exact) {
    page.line(std::string(indent) + layout::left(what, 20) +
              layout::right(scale_grams(printed, 0), 9) +
              (system == System::us ? layout::right(units::print_weight(exact.mass(), system), 16)
                                    : std::string()));
  };
  row("core", parts[0], *core);
  row("cloth", parts[1], totals.fibre);
  row("resin", parts[2], totals.kept);
  if (inserts.count() != 0) row("boxes and plugs", parts[3], inserts);
  row("sanded off", parts[4], off);
  row("board", *totals.finished_weight, *totals.finished_weight);
}

}  // namespace wetout::report
