#include "wetout/report/plan_text.hpp"

#include <fmt/format.h>

#include <algorithm>

#include "phrases.hpp"
#include "plan_parts.hpp"

namespace wetout::report {

using layout::whole;

bool PlanWriter::concerns(const base::Notice& notice, const laminate::CoatNeed& coat) const {
  if (notice.subject == coat.id) return true;
  const auto& plies = document.plan.plies;
  return std::any_of(plies.begin(), plies.end(), [&](const laminate::PlyNeed& ply) {
    if (ply.coat != coat.id) return false;
    return notice.subject == ply.id || notice.subject == coat.id + "/" + ply.id;
  });
}

void PlanWriter::heading() {
  const JobRef& job = document.job;
  page.heading(layout::plain(document.plan.board.name), "");
  page.item("job ", fmt::format("{}, {}", layout::plain(job.id),
                                job.saved ? fmt::format("revision {}", job.revision)
                                          : std::string("not saved")));
  page.item("made ", fmt::format("{} with {}", whole(when_text(document.made)),
                                 layout::plain(document.program)));
  std::vector<std::string> files;
  for (const InputRef& input : document.inputs) {
    if (input.role != "options") files.push_back(layout::plain(input.name));
  }
  if (!files.empty()) page.item("from ", joined(files, ", "));
}

void PlanWriter::board() {
  const laminate::BoardSummary& board = document.plan.board;
  page.blank();
  std::string core = "core weight not given";
  if (board.core_weight) {
    core = "core " + whole(units::print_weight(board.core_weight->mass(), system));
  }
  page.item("Board  ", fmt::format("{} long, {} foam, {}, {}",
                                   whole(units::print(board.length, system)), foam_text(board.foam),
                                   whole(units::print_litres(board.volume, system)), core));
  page.item("Areas  ", fmt::format("planform {}, bottom {}, deck {}; rail line {}",
                                   whole(units::print(board.planform, system)),
                                   whole(units::print(board.bottom, system)),
                                   whole(units::print(board.deck, system)),
                                   whole(units::print(board.perimeter, system))));
  page.item("Air    ", whole(units::print(document.plan.air, system)));
}

void PlanWriter::every_coat() {
  const auto& cautions = document.plan.cautions;
  const auto& coats = document.plan.coats;
  // "all", and whatever names no coat of this plan: no caution is lost.
  const auto is_for_all = [&coats](const laminate::Caution& caution) {
    return std::none_of(coats.begin(), coats.end(),
                        [&](const auto& coat) { return coat.id == caution.step; });
  };
  if (std::none_of(cautions.begin(), cautions.end(), is_for_all)) return;
  page.heading("For every coat", "");
  for (const laminate::Caution& caution : cautions) {
    if (is_for_all(caution)) page.item("! ", layout::plain(caution.text));
  }
}

void PlanWriter::notices() {
  const laminate::Plan& plan = document.plan;
  bool first = true;
  for (const base::Notice& notice : plan.notices) {
    const auto of_coat = [&](const laminate::CoatNeed& coat) { return concerns(notice, coat); };
    if (std::any_of(plan.coats.begin(), plan.coats.end(), of_coat)) continue;
    if (first) page.heading("Worth knowing", "");
    first = false;
    page.item("* ", subject_text(notice) + notice_text(notice, system));
  }
}

void PlanWriter::assumptions() {
  const laminate::Plan& plan = document.plan;
  if (plan.assumptions.empty()) return;
  page.heading("Numbers that nobody gave", "");
  constexpr std::size_t name_columns = 29;
  constexpr std::size_t value_columns = 17;
  constexpr std::size_t standing_columns = 9;
  const auto row = [&](std::string_view name, std::string_view value, std::string_view standing,
                       const std::string& used_by) {
    page.item(layout::left(name, name_columns) + ' ' + layout::left(value, value_columns) + ' ' +
                  layout::left(standing, standing_columns) + ' ',
              used_by);
  };
  row("name", "value", "standing", "used by");
  for (const laminate::Assumption& each : plan.assumptions) {
    std::vector<std::string> used_by;
    for (const std::string& id : each.used_by) used_by.push_back(layout::plain(id));
    const bool everywhere =
        plan.coats.size() > 1 &&
        std::all_of(plan.coats.begin(), plan.coats.end(), [&](const laminate::CoatNeed& coat) {
          return std::find(each.used_by.begin(), each.used_by.end(), coat.id) != each.used_by.end();
        });
    std::string users = everywhere ? "every coat" : joined(used_by, ", ");
    if (users.empty()) users.assign(1, '-');
    row(layout::plain(each.name), quantity(each.value, each.unit, system),
        layout::plain(each.standing), users);
  }
}

std::string plan_text(const PlanDocument& document, units::System system) {
  const PlanDocument kept = as_kept(document);
  PlanWriter writer{kept, system, {}};
  writer.heading();
  writer.board();
  writer.overview();
  writer.every_coat();
  writer.coats();
  writer.totals();
  writer.finished_weight();
  writer.notices();
  writer.assumptions();
  return writer.page.text();
}

}  // namespace wetout::report
