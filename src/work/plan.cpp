#include "wetout/work/plan.hpp"

#include <string>
#include <utility>
#include <vector>

#include "drawn_board.hpp"
#include "job_and_shop.hpp"
#include "learned_use.hpp"
#include "made_file.hpp"
#include "plan_kept.hpp"
#include "stored_plan.hpp"
#include "wetout/base/sha256.hpp"
#include "wetout/base/words.hpp"
#include "wetout/joblog/log.hpp"
#include "wetout/time/print.hpp"

#ifndef WETOUT_VERSION
#error "the build defines WETOUT_VERSION"
#endif

namespace wetout::work {

std::string program() { return "wetout " WETOUT_VERSION; }

namespace {

// Everything the result depends on, so that planning again without a change saves nothing.
base::Digest input_key(const std::string& slug, const std::vector<joblog::Input>& inputs) {
  std::string all = std::string(laminate::model_version()) + '\n' +
                    std::string(report::plan_format) + '\n' + slug + '\n';
  for (const joblog::Input& input : inputs) {
    all += input.role + ' ' + base::hex(base::sha256(input.body)) + '\n';
  }
  return base::sha256(all);
}

base::Result<std::string> job_slug(const PlanRequest& request, const files::JobFile& job) {
  const std::string wanted = request.as ? *request.as : job.board.id;
  const std::string slug = base::slug(wanted);
  const bool taken = base::is_reserved(slug);
  if (base::is_slug(slug) && !taken) return slug;
  return base::fail(
      {.code = "job.id",
       .message = taken ? "\"" + slug + "\" is a word of the command line"
                        : "this cannot be the id of a job",
       .key = request.as ? "--as" : "board.id",
       .found = wanted,
       .expected = "letters a-z, digits and hyphens, at most 64, e.g. \"sandpiper-2\""});
}

// The drawing, seen from where the user stands.
std::string beside_job(const JobAndShop& both) {
  const std::filesystem::path job(both.job.source.name);
  return (job.parent_path() / both.job.outline->name).lexically_normal().string();
}

std::vector<report::InputRef> refs(const std::vector<joblog::Input>& inputs,
                                   const JobAndShop& both) {
  std::vector<report::InputRef> found;
  for (const joblog::Input& input : inputs) {
    std::string name = input.name;
    if (input.role == "job") name = both.job.source.name;
    if (input.role == "shop") name = both.shop.source.name;
    if (input.role == "outline") name = beside_job(both);
    found.push_back({input.role, name, base::hex(base::sha256(input.body))});
  }
  return found;
}

}  // namespace

base::Result<PlanKept> plan_and_keep(const Workshop& workshop, const PlanRequest& request) {
  auto both = read_job_and_shop(workshop, request.file);
  if (!both) return tl::unexpected(both.error());
  const auto slug = job_slug(request, both->job);
  if (!slug) return tl::unexpected(slug.error());
  auto planned = plan_as_learned(workshop, *both, request.choices,
                                 request.no_learned ? Learned{} : learned_by(workshop));
  if (!planned) return tl::unexpected(planned.error());
  const auto zone = time::Zone::named(both->shop.time_zone);
  if (!zone) return tl::unexpected(zone.error());
  const auto now = workshop.now(*zone);
  if (!now) return tl::unexpected(now.error());

  const auto absolute = [&](const std::string& name) {
    return (workshop.here / name).lexically_normal().string();
  };
  std::vector<joblog::Input> inputs = {
      {"job", absolute(both->job.source.name), "wetout.job/1", both->job.source.text},
      {"shop", absolute(both->shop.source.name), "wetout.shop/1", both->shop.source.text},
      {"options", "options", "wetout.options/1", to_text(request.choices)}};
  if (const auto& drawing = both->job.outline) {
    inputs.push_back({"outline", absolute(beside_job(*both)), "svg", drawing->bytes});
  }
  if (!both->learned.empty()) {
    inputs.push_back({"learned", "records", "wetout.learned/1", both->learned});
  }

  PlanKept kept_plan;
  Printable& answer = kept_plan.printable;
  answer.units = both->shop.units;
  answer.time_zone = both->shop.time_zone;
  report::PlanDocument& document = answer.document;
  document.program = program();
  document.made = time::rfc3339(*now, *zone);
  document.job.id = *slug;
  document.inputs = refs(inputs, *both);
  document.plan = std::move(*planned);

  joblog::NewPlan new_plan;
  new_plan.job_slug = *slug;
  new_plan.job_name = both->job.board.name;
  new_plan.program = document.program;
  new_plan.made = *now;
  new_plan.input_key = input_key(*slug, inputs);
  new_plan.result_format = std::string(report::plan_format);
  new_plan.inputs = inputs;
  kept_plan.files = std::move(*both);
  std::string body;
  new_plan.result_body = [&](int revision) {
    document.job.revision = revision;
    document.job.saved = true;
    return body = report::to_json(document);
  };

  joblog::Saved saved;
  if (workshop.dry_run) {
    saved.revision = 1;
    if (joblog::Log::exists(workshop.log)) {
      saved = joblog::Log::open(workshop.log).foresee_plan(*slug, new_plan.input_key);
    }
    if (!saved.unchanged) document.job = {*slug, saved.revision, false};
    if (!saved.unchanged) body = report::to_json(document);
  } else {
    joblog::Log log = joblog::Log::open(
        workshop.log, {.access = joblog::Access::write, .make_folder = workshop.make_log_folder});
    saved = log.save_plan(new_plan);
  }
  if (saved.unchanged) {
    const joblog::Log log = joblog::Log::open(workshop.log);
    auto stored = stored_plan(log, *slug, saved.revision);
    if (!stored) return tl::unexpected(stored.error());
    answer.document = std::move(stored->document);
    answer.unchanged = true;
    return kept_plan;
  }
  // What is shown is what was kept, digit by digit: a later look at it prints the same.
  auto kept = report::read_plan(body);
  if (!kept) return tl::unexpected(kept.error());
  document = std::move(*kept);
  return kept_plan;
}

base::Result<Printable> plan(const Workshop& workshop, const PlanRequest& request) {
  if (request.drawing) {
    if (auto may = may_make(workshop, *request.drawing, made_drawing); !may) {
      return tl::unexpected(may.error());
    }
  }
  auto kept = plan_and_keep(workshop, request);
  if (!kept) return tl::unexpected(kept.error());
  if (request.drawing) {
    const report::PlanDocument& document = kept->printable.document;
    const units::System system = request.units.value_or(kept->printable.units);
    const auto board = drawn_board(kept->files.job.board, system);
    if (!board) return tl::unexpected(board.error());
    auto made = make_file(workshop, *request.drawing,
                          report::plan_drawing(document, *board, system), made_drawing);
    if (!made) return tl::unexpected(made.error());
    kept->printable.drawing_written = !workshop.dry_run;
  }
  return std::move(kept->printable);
}

}  // namespace wetout::work
