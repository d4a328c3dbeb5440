// One coat of the plan: what it is, its cloth, its resin, its batches, what to mind.
#include <fmt/format.h>

#include <algorithm>
#include <set>

#include "phrases.hpp"
#include "plan_parts.hpp"
#include "pour_table.hpp"

namespace wetout::report {

using layout::plain;
using layout::whole;

namespace {

constexpr std::string_view indent = "   ";

// What becomes of a cup that nobody empties, as far as it is known.
std::string left_standing(const laminate::Batch& batch, units::System system) {
  if (!batch.gel) return "";
  const std::string after = units::print(*batch.gel, system);
  // A polyester's table is of small samples and films.
  if (!batch.runs_away) return whole("a film gels after " + after) + ", a full cup sooner";
  std::string left = "left in the cup it " + whole("gels after " + after);
  if (*batch.runs_away) {
    left += " and runs away";
  } else if (batch.peak) {
    left += " and gets to " + whole(about_temperature(*batch.peak, system));
  }
  return left;
}

}  // namespace

void PlanWriter::plies(const laminate::CoatNeed& coat) {
  constexpr std::size_t name_columns = 24;
  constexpr std::size_t cut_columns = 33;
  constexpr std::size_t mass_columns = 9;
  const auto row = [&](std::string_view name, std::string_view cut, std::string_view resin,
                       std::string_view thickness) {
    page.line(std::string(indent) + layout::left(name, name_columns) +
              layout::left(cut, cut_columns) + layout::right(resin, mass_columns) +
              layout::right(thickness, mass_columns));
  };
  bool first = true;
  for (const laminate::PlyNeed& ply : document.plan.plies) {
    if (ply.coat != coat.id) continue;
    if (first) row("cloth, in this order", "cut off the roll", "resin in", "thick");
    first = false;
    const bool own_name = ply.id != ply.cloth;
    row(plain(own_name ? ply.id + " (" + ply.cloth + ")" : ply.id),
        units::print(ply.cut_length, system) + " x " + units::print_inches(ply.cut_width, system),
        units::print(ply.resin.mass(), units::System::metric),
        units::print_thickness(ply.thickness, system));
    page.item(std::string(indent) + "  ", ply_placement(ply, system));
  }
  if (!first) page.blank();
}

void PlanWriter::resin(const laminate::CoatNeed& coat) {
  const int decimals = gram_decimals(std::span(&coat.mix, 1));
  const std::vector<units::Milligrams> parts =
      printed_parts({coat.kept, coat.losses, coat.margin, coat.rounding}, coat.mix, decimals);
  const auto row = [&](std::string_view name, std::size_t i, const std::string& of_it) {
    page.line(fmt::format("{}{:<10}{}{}{}", indent, name,
                          layout::right(scale_grams(parts[i], decimals), 9),
                          of_it.empty() ? "" : "   ", of_it));
  };
  const auto of_it = [&](units::Milligrams mass, std::string_view what) {
    if (mass.count() == 0) return std::string();
    return fmt::format("of it {} {}", units::print(mass.mass(), units::System::metric), what);
  };
  std::string on_board = of_it(coat.uptake, "soaked up by the foam");
  const std::string sanded = of_it(coat.sanded, "sanded off later");
  if (!on_board.empty() && !sanded.empty()) on_board += ", ";
  row("on board", 0, on_board + sanded);
  row("lost", 1, of_it(coat.trimmed, "in trimmed cloth"));
  row("margin", 2, "");
  row("rounding", 3, "");
  page.line(fmt::format(
      "{}{:<10}{}{}", indent, "mix", layout::right(scale_grams(coat.mix, decimals), 9),
      system == units::System::us ? "   (" + units::print(coat.mix.mass(), system) + ")" : ""));
}

void PlanWriter::batches(const laminate::CoatNeed& coat) {
  for (const BatchGroup& group : group_batches(coat.batches)) {
    const laminate::Batch& batch = *group.batch;
    page.blank();
    page.item(std::string(indent),
              fmt::format("{}: {}{}, use within {}", group_title(group, coat.batches.size()),
                          whole(weighed(batch.mix, system)),
                          batch.cup ? " in cup " + plain(*batch.cup) : "",
                          whole(use_within_text(batch.use_within, system))));
    for (const std::string& line : pour_table(batch, system, PourTable::full)) {
      page.line(std::string(indent) + line);
    }
    std::vector<std::string> more;
    if (batch.air != document.plan.air || batch.resin != batch.air) {
      more.push_back(whole("air " + units::print(batch.air, system)));
      more.push_back(whole("resin " + units::print(batch.resin, system)));
    }
    if (batch.spread_within) {
      more.push_back(whole("spread within " + use_within_text(*batch.spread_within, system)));
    }
    if (const std::string left = left_standing(batch, system); !left.empty()) {
      more.push_back(left);
    }
    if (!more.empty()) page.item(std::string(indent) + "  ", joined(more, ", "));
  }
}

std::string PlanWriter::coat_title(std::size_t index) const {
  return fmt::format("{} ({})", index + 1, plain(document.plan.coats[index].name));
}

// What has been said in full at an earlier coat is not said again.
void PlanWriter::coat_notices(std::size_t index) {
  const laminate::Plan& plan = document.plan;
  const laminate::CoatNeed& coat = plan.coats[index];
  const std::string label = std::string(indent) + "* ";
  for (const base::Notice& notice : plan.notices) {
    if (!concerns(notice, coat)) continue;
    const auto said_at = [&](const laminate::CoatNeed& earlier) {
      return std::any_of(plan.notices.begin(), plan.notices.end(), [&](const auto& other) {
        return other.text == notice.text && concerns(other, earlier);
      });
    };
    const auto end = plan.coats.begin() + static_cast<std::ptrdiff_t>(index);
    const auto first = std::find_if(plan.coats.begin(), end, said_at);
    const std::string about = notice.subject == coat.id ? std::string() : subject_text(notice);
    if (first == end) {
      page.item(label, about + notice_text(notice, system));
      continue;
    }
    const std::string at = coat_title(static_cast<std::size_t>(first - plan.coats.begin()));
    const std::string values = notice_values(notice, system);
    page.item(label, fmt::format("{}as noted at coat {}{}{}", about, at, values.empty() ? "" : ": ",
                                 values));
  }
}

void PlanWriter::coat_cautions(std::size_t index) {
  const laminate::Plan& plan = document.plan;
  const laminate::CoatNeed& coat = plan.coats[index];
  const std::string label = std::string(indent) + "! ";
  std::vector<std::string> seen_at;
  for (const laminate::Caution& caution : plan.cautions) {
    if (caution.step != coat.id) continue;
    const auto said_at = [&](const laminate::CoatNeed& earlier) {
      return std::any_of(plan.cautions.begin(), plan.cautions.end(), [&](const auto& other) {
        return other.step == earlier.id && other.text == caution.text;
      });
    };
    const auto end = plan.coats.begin() + static_cast<std::ptrdiff_t>(index);
    const auto first = std::find_if(plan.coats.begin(), end, said_at);
    if (first == end) {
      page.item(label, plain(caution.text));
      continue;
    }
    std::string at = coat_title(static_cast<std::size_t>(first - plan.coats.begin()));
    if (std::find(seen_at.begin(), seen_at.end(), at) == seen_at.end()) {
      seen_at.push_back(std::move(at));
    }
  }
  if (!seen_at.empty()) page.item(label, "also the cautions of coat " + joined(seen_at, ", "));
}

void PlanWriter::coat(std::size_t index) {
  const laminate::CoatNeed& coat = document.plan.coats[index];
  page.heading(fmt::format("{}. {}", index + 1, plain(coat.name)),
               kind_on_face(coat.kind, coat.face));
  std::string what = "resin " + plain(coat.resin) + " " + whole(ratio_text(coat.ratio));
  for (const laminate::Additive& additive : coat.additives) {
    what +=
        ", with " + whole(units::print_percent(additive.share)) + " " + plain(additive.material);
  }
  page.item(indent, what);
  std::vector<std::string> surface;
  if (wets_a_face(coat.area)) surface.push_back("wets " + whole(units::print(coat.area, system)));
  if (coat.laps) surface.push_back(fmt::format("{} laps", laminate::to_string(*coat.laps)));
  if (coat.spread) surface.push_back(whole(units::print(*coat.spread, system)) + " of spreading");
  if (coat.fill_peak) {
    surface.push_back("the fill gets to " + whole(about_temperature(*coat.fill_peak, system)));
  }
  page.item(indent, joined(surface, ", "));
  page.blank();
  plies(coat);
  resin(coat);
  batches(coat);
  page.blank();
  coat_notices(index);
  coat_cautions(index);
}

// All coats on one screen, before each in turn.
void PlanWriter::overview() {
  const laminate::Plan& plan = document.plan;
  if (plan.coats.empty()) return;
  page.heading("Coats", "");
  const auto row = [&](std::string_view name, std::string_view kind, std::string_view mix,
                       std::string_view batches, std::string_view within) {
    page.line(std::string(indent) + layout::left(name, 25) + " " + layout::left(kind, 22) +
              layout::right(mix, 9) + layout::right(batches, 8) + layout::right(within, 12));
  };
  row("", "", "mix", "batches", "within");
  for (std::size_t i = 0; i < plan.coats.size(); ++i) {
    const laminate::CoatNeed& coat = plan.coats[i];
    const auto shortest =
        std::min_element(coat.batches.begin(), coat.batches.end(),
                         [](const auto& a, const auto& b) { return a.use_within < b.use_within; });
    row(fmt::format("{}. {}", i + 1, plain(coat.name)), kind_on_face(coat.kind, coat.face),
        weighed(coat.mix, units::System::metric), std::to_string(coat.batches.size()),
        shortest == coat.batches.end() ? "-" : use_within_text(shortest->use_within, system));
  }
}

void PlanWriter::coats() {
  for (std::size_t i = 0; i < document.plan.coats.size(); ++i) coat(i);
}

}  // namespace wetout::report
