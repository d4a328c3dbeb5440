#include "wetout/report/mix_document.hpp"

#include <fmt/format.h>

#include <algorithm>

#include "json_writer.hpp"
#include "phrases.hpp"
#include "plan_fields.hpp"
#include "wetout/base/words.hpp"

namespace wetout::report {

template <>
struct Fields<MixDocument> {
  static void visit(auto& v, auto& mix) {
    v("program", mix.program);
    v("made", mix.made);
    v("job", mix.job);
    v("revision", mix.revision);
    v("board", mix.board);
    v("coat", mix.coat);
    v("coat_name", mix.coat_name);
    v("kind", mix.kind);
    v("face", mix.face);
    v("area_m2", mix.area, as::SquareMetres{});
    v("next_coat", mix.next_coat);
    v("resin", mix.resin);
    v("mass_g", mix.asked, as::Grams{});
    v("ratio", mix.ratio);
    v("batch_count", mix.batch_count);
    v("batches", mix.batches);
    v("cautions", mix.cautions);
    v("notices", mix.notices);
  }
};

namespace {

base::Result<std::size_t> find_coat(const PlanDocument& document, std::string_view wanted) {
  std::vector<std::string> ids;
  for (const laminate::CoatNeed& coat : document.plan.coats) ids.push_back(coat.id);
  const std::vector<std::size_t> found = base::matches(wanted, ids);
  if (found.size() == 1) return found.front();
  std::vector<std::string> choices = ids;
  if (!found.empty()) {
    choices.clear();
    for (const std::size_t i : found) choices.push_back(ids[i]);
  }
  base::Problem problem{
      .code = found.empty() ? "coat.unknown" : "coat.ambiguous",
      .message = found.empty() ? fmt::format("the plan of {} has no such coat", document.job.id)
                               : std::string("more than one coat begins like that"),
      .found = std::string(wanted),
      .expected = "one of: " + joined(choices, ", ")};
  if (found.empty()) {
    if (const auto near = base::nearest(wanted, ids)) problem.hint = "did you mean " + *near + "?";
  }
  return base::fail(std::move(problem));
}

}  // namespace

base::Result<MixDocument> mix_document(const PlanDocument& document, std::string_view coat,
                                       std::optional<int> batch) {
  const base::Result<std::size_t> index = find_coat(document, coat);
  if (!index) return base::fail(index.error());
  const laminate::Plan& plan = document.plan;
  const laminate::CoatNeed& need = plan.coats[*index];

  MixDocument mix;
  mix.program = document.program;
  mix.made = document.made;
  mix.job = document.job.id;
  if (document.job.revision != 0) mix.revision = document.job.revision;
  mix.board = plan.board.name;
  mix.coat = need.id;
  mix.coat_name = need.name;
  mix.kind = need.kind;
  mix.face = need.face;
  mix.area = need.area;
  if (*index + 1 < plan.coats.size()) mix.next_coat = plan.coats[*index + 1].name;
  mix.resin = need.resin;
  mix.ratio = need.ratio;
  mix.batch_count = static_cast<int>(need.batches.size());
  for (const laminate::Batch& each : need.batches) {
    if (!batch || each.n == *batch) mix.batches.push_back(each);
  }
  if (batch && mix.batches.empty()) {
    return base::fail({.code = "batch.unknown",
                       .message = fmt::format("coat {} has no such batch", need.id),
                       .found = std::to_string(*batch),
                       .expected = need.batches.empty() ? "no batch: nothing is mixed for it"
                                                        : fmt::format("1 to {}", mix.batch_count)});
  }
  // What is special to this coat first: it is the news.
  for (const std::string_view step : {std::string_view(need.id), std::string_view("all")}) {
    for (const laminate::Caution& caution : plan.cautions) {
      const auto& said = mix.cautions;
      if (caution.step == step && std::find(said.begin(), said.end(), caution.text) == said.end()) {
        mix.cautions.push_back(caution.text);
      }
    }
  }
  for (const base::Notice& notice : plan.notices) {
    if (notice.subject == need.id || notice.subject == need.resin) mix.notices.push_back(notice);
  }
  return mix;
}

std::string to_json(const MixDocument& document) { return document_json(mix_format, document); }

}  // namespace wetout::report
