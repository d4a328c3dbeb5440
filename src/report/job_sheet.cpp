#include "wetout/report/job_sheet.hpp"

#include <fmt/format.h>

#include <algorithm>
#include <boost/archive/iterators/base64_from_binary.hpp>
#include <boost/archive/iterators/transform_width.hpp>
#include <string>

#include "job_sheet_code.hpp"
#include "job_sheet_parts.hpp"
#include "layout.hpp"
#include "phrases.hpp"
#include "weather_chart.hpp"
#include "wetout/base/sha256.hpp"

namespace wetout::report {
namespace {

using layout::plain;
using layout::whole;

// As a policy of contents names a script by its digest (RFC 4648, base 64).
std::string base64(const base::Digest& digest) {
  using namespace boost::archive::iterators;
  using Letters = base64_from_binary<transform_width<base::Digest::const_iterator, 6, 8>>;
  std::string out(Letters(digest.begin()), Letters(digest.end()));
  out.append((3 - digest.size() % 3) % 3, '=');
  return out;
}

}  // namespace

SheetWriter::SheetWriter(const JobSheet& sheet, units::System system, const time::Zone& zone)
    : sheet_(sheet), plan_(sheet.plan.plan), system_(system), zone_(zone) {
  if (!sheet.schedule) return;
  schedule_ = of_one_job(*sheet.schedule, sheet.plan.job.id);
  view_.emplace(*schedule_, zone_);
  course_.emplace(*schedule_);
}

std::string SheetWriter::page() {
  page_.raw(Markup::ours(std::string(job_sheet_begins) + "\n"));
  page_.open("html", {{"lang", "en"}});
  head();
  page_.open("body",
             {{"data-sheet", fmt::format("{}/{}", sheet_.plan.job.id, sheet_.plan.job.revision)},
              {"data-job", sheet_.plan.job.id}});
  page_.open("main");
  title();
  overview();
  lay_out();
  cut();
  work();
  films();
  record();
  page_.close("main");
  page_.code("script", Markup::ours(std::string(job_sheet_script)));
  page_.close("body").close("html");
  return page_.take();
}

void SheetWriter::head() {
  page_.open("head");
  page_.single("meta", {{"charset", "utf-8"}});
  // Nothing is loaded, and no script runs but ours.
  page_.single("meta",
               {{"http-equiv", "Content-Security-Policy"},
                {"content", "default-src 'none'; style-src 'unsafe-inline'; script-src 'sha256-" +
                                base64(base::sha256(job_sheet_script)) +
                                "'; base-uri 'none'; form-action 'none'"}});
  page_.single("meta", {{"name", "viewport"}, {"content", "width=device-width, initial-scale=1"}});
  page_.single("meta", {{"name", "referrer"}, {"content", "no-referrer"}});
  page_.put("title", plan_.board.name + ": job sheet");
  page_.code("style", Markup::ours(std::string(job_sheet_style)));
  page_.close("head");
}

void SheetWriter::name(std::string_view text, std::string_view tag) {
  page_.put(tag, plain(text), {{"dir", "auto"}});
}

void SheetWriter::section(std::string_view id, std::string_view title) {
  page_.open("section", {{"id", std::string(id)}, {"aria-labelledby", std::string(id) + "-title"}});
  page_.put("h2", title, {{"id", std::string(id) + "-title"}});
}

void SheetWriter::title() {
  page_.open("header", {{"class", "top"}});
  name(plan_.board.name, "h1");
  std::string what = "Job sheet of " + sheet_.plan.job.id;
  if (sheet_.plan.job.revision > 0) {
    what += ", revision " + std::to_string(sheet_.plan.job.revision);
  } else {
    what += ", a plan that is not saved";
  }
  if (has_schedule()) {
    what += fmt::format(", schedule {} of {}", schedule_->number,
                        whole(view_->wall.full(instant_of(schedule_->made))));
  }
  page_.put("p", what);
  std::vector<std::string> facts{whole(units::print(plan_.board.length, system_)) + " long",
                                 foam_text(plan_.board.foam),
                                 whole(units::print_litres(plan_.board.volume, system_))};
  if (plan_.totals.finished_weight) {
    facts.push_back("finished " +
                    whole(units::print_weight(plan_.totals.finished_weight->mass(), system_)));
  }
  if (has_schedule() && schedule_->finish) {
    facts.push_back("done " + whole(view_->wall.full(instant_of(*schedule_->finish))));
  }
  if (has_schedule() && schedule_->ride_from) {
    facts.push_back("ride from " + whole(view_->wall.full(instant_of(*schedule_->ride_from))));
  }
  page_.put("p", joined(facts, ", "));
  page_.close("header");

  page_.open("section", {{"class", "safety"}, {"aria-labelledby", "safety-title"}});
  page_.put("h2", "Before anything else", {{"id", "safety-title"}});
  page_.open("ul", {{"class", "cautions"}});
  for (const laminate::Caution& caution : plan_.cautions) {
    if (caution.step == "all") page_.put("li", caution.text);
  }
  page_.put("li",
            "Times are estimates from what a data sheet prints: watch the cup, not the page.");
  page_.close("ul");
  page_.put("p",
            "The clocks on this page sound only while it is open and the screen is on. Set the "
            "shop's own timer too.",
            {{"class", "timer-too"}});
  page_.close("section");
}

void SheetWriter::overview() {
  section("glance", "At a glance");
  if (!has_schedule()) {
    page_.put("p", sheet_.no_schedule, {{"class", "missing"}});
  }
  page_.open("table", {{"class", "coats"}}).open("thead").open("tr");
  page_.put("th", "coat", {{"scope", "col"}});
  if (has_schedule()) page_.put("th", "begin", {{"scope", "col"}});
  page_.put("th", "mix", {{"scope", "col"}, {"class", "number"}});
  page_.put("th", "use within", {{"scope", "col"}, {"class", "number"}});
  page_.close("tr").close("thead").open("tbody");
  for (const laminate::CoatNeed& planned : plan_.coats) {
    const laminate::CoatNeed& coat = mixed(planned);
    page_.open("tr").open("th", {{"scope", "row"}});
    page_.open("a", {{"href", "#coat-" + coat.id}});
    name(coat.name);
    page_.close("a").close("th");
    if (has_schedule()) {
      const Entry* wet = view_->find(schedule_->jobs.front().id + "/" + coat.id + "/wet");
      std::string when = wet == nullptr ? "-" : whole(view_->wall.full(wet->start));
      if (wet != nullptr && wet->is_done()) when += ", done";
      page_.put("td", when);
    }
    std::string mass = weighed(coat.mix, units::System::metric);
    if (coat.batches.size() > 1) mass += fmt::format(" in {}", coat.batches.size());
    page_.put("td", whole(mass), {{"class", "number"}});
    std::optional<units::Duration> shortest;
    for (const laminate::Batch& batch : coat.batches) {
      if (!shortest || batch.use_within < *shortest) shortest = batch.use_within;
    }
    page_.put("td", shortest ? whole(use_within_text(*shortest, system_)) : "-",
              {{"class", "number"}});
    page_.close("tr");
  }
  page_.close("tbody").close("table");
  if (has_schedule()) {
    page_.put("h3", "Room and windows");
    page_.open("div", {{"class", "charts"}});
    for (const Markup& chart : weather_charts(*view_, system_)) page_.raw(chart);
    page_.close("div");
    std::string key =
        "Thick line: the room; thin: outdoors; dots: dew point in the room. The row of each "
        "coat: framed where it may be started, dashed with a notice, black as planned. Work: "
        "everything else.";
    page_.put("p", key, {{"class", "key"}});
    page_.open("ol", {{"class", "key"}});
    for (const laminate::CoatNeed& coat : plan_.coats) name(coat.name, "li");
    page_.close("ol");
  }
  worth_knowing();
  page_.close("section");
}

// Notices that stand at no coat.
void SheetWriter::worth_knowing() {
  std::vector<std::string> each;
  const auto is_coat = [&](const std::string& id) {
    return std::any_of(plan_.coats.begin(), plan_.coats.end(),
                       [&](const auto& coat) { return coat.id == id; });
  };
  for (const base::Notice& notice : plan_.notices) {
    if (is_coat(notice.subject)) continue;
    each.push_back(subject_text(notice) + notice_text(notice, system_));
  }
  if (has_schedule()) {
    for (const base::Notice& notice : schedule_->notices) {
      // The batches of this page are for the air of their day.
      if (notice.code == "schedule.other_air") continue;
      each.push_back(subject_text(notice) + notice_text(notice, system_));
    }
  }
  if (each.empty()) return;
  page_.put("h3", "Worth knowing").open("ul", {{"class", "cautions"}});
  for (const std::string& text : each) page_.put("li", text);
  page_.close("ul");
}

const laminate::CoatNeed& SheetWriter::mixed(const laminate::CoatNeed& planned) const {
  const auto found = sheet_.mixed.find(planned.id);
  return found == sheet_.mixed.end() ? planned : found->second.need;
}

std::string SheetWriter::coat_name(std::string_view id) const {
  for (const laminate::CoatNeed& coat : plan_.coats) {
    if (coat.id == id) return coat.name;
  }
  return std::string(id);
}

std::string job_sheet(const JobSheet& sheet, units::System system, const time::Zone& zone) {
  return SheetWriter(sheet, system, zone).page();
}

}  // namespace wetout::report
