// The card of a coat: half a page that is read with gloves on.
#include <fmt/format.h>

#include <algorithm>
#include <chrono>
#include <cmath>
#include <set>

#include "job_sheet_parts.hpp"
#include "layout.hpp"
#include "phrases.hpp"
#include "schedule_phrases.hpp"
#include "schedule_slack.hpp"
#include "wetout/laminate/make_plan.hpp"

namespace wetout::report {
namespace {

using layout::plain;
using layout::whole;

// Room air that differs so much from what the cups are for changes how long they last: assumed.
constexpr double other_air_k = 3.0;

// As use_within_text() says it: nobody is told too long.
std::chrono::seconds told_seconds(units::Duration time) {
  const double minutes = std::floor(units::in_minutes(time) + 0.005);
  if (minutes >= 1.0) return std::chrono::seconds(60 * static_cast<long long>(minutes));
  return std::chrono::seconds(static_cast<long long>(std::floor(units::in_seconds(time))));
}

}  // namespace

void SheetWriter::card(const laminate::CoatNeed& planned, const Entry* wet) {
  const laminate::CoatNeed& coat = mixed(planned);
  const std::string title = wet != nullptr && wet->told != nullptr ? wet->told->title : coat.name;
  page_.open("article", {{"class", "card"}, {"id", "coat-" + coat.id}});
  page_.open("h4");
  if (wet != nullptr) {
    page_.put("span", whole(view_->wall.span(wet->start, wet->until)), {{"class", "clock-time"}});
    page_.text(" ");
  }
  name(title, "span");
  page_.close("h4");
  std::string facts = kind_on_face(coat.kind, coat.face);
  if (wets_a_face(coat.area)) facts += ", " + whole(units::print(coat.area, system_));
  facts += "; " + plain(coat.resin) + " " + whole(ratio_text(coat.ratio));
  if (coat.spread) facts += "; " + whole(units::print(*coat.spread, system_)) + " of spreading";
  page_.put("p", facts + ".", {{"class", "small"}});
  if (wet != nullptr && wet->is_done()) {
    film(*wet);
    page_.put("p", "Done.").close("article");
    return;
  }
  if (wet != nullptr) {
    page_.open("p", {{"class", "small"}});
    window(*wet);
    air(*wet);
    if (const StepSlack* least = tightest(*wet->timed)) {
      Spoken spoken(wet->day);
      page_.put("b", "Tightest");
      page_.text(" " + slack_text(*view_, *least, system_, spoken) + ". ");
    }
    chances(*wet);
    page_.close("p");
  }
  batches(coat, wet);
  if (wet != nullptr) film(*wet);
  cautions(coat);
  fields(coat.id, "wet", wet, Kind::coat, title);
  page_.close("article");
}

void SheetWriter::batches(const laminate::CoatNeed& coat, const Entry* wet) {
  if (coat.batches.empty()) page_.put("p", "Nothing is mixed for this coat.");
  const std::vector<BatchGroup> groups = group_batches(coat.batches);
  // Side by side where there are several, or the card would outgrow its half of a page.
  page_.open("div", {{"class", groups.size() > 1 ? "batches several" : "batches"}});
  for (const BatchGroup& group : groups) {
    const laminate::Batch& batch = *group.batch;
    const bool many = group.last > group.first;
    page_.open("div", {{"class", many ? "batch many" : "batch"}});
    page_.open("div", {{"class", "pour"}});
    page_.open("h5");
    page_.text(group_title(group, coat.batches.size()) + ": ");
    page_.put("b", whole(weighed(batch.mix, system_)));
    if (batch.cup) {
      page_.text(" in cup ");
      name(*batch.cup);
    }
    page_.close("h5");
    pours(batch);
    page_.close("div");
    page_.open("div", {{"class", "cups"}});
    for (int n = group.first; n <= group.last; ++n) {
      laminate::Batch one = batch;
      one.n = n;
      cup(coat, one, wet);
    }
    page_.close("div").close("div");
  }
  page_.close("div");
}

void SheetWriter::pours(const laminate::Batch& batch) {
  std::vector<units::Milligrams> masses;
  for (const laminate::Pour& pour : batch.pours) {
    masses.push_back(pour.add);
    masses.push_back(pour.reads);
  }
  const int decimals = gram_decimals(masses);
  page_.open("table", {{"class", "pours"}}).open("thead").open("tr");
  page_.put("th", "pour", {{"scope", "col"}});
  page_.put("th", "add", {{"scope", "col"}, {"class", "number"}});
  page_.put("th", "scale reads", {{"scope", "col"}, {"class", "number"}});
  page_.close("tr").close("thead").open("tbody");
  for (const laminate::Pour& pour : batch.pours) {
    page_.open("tr").open("th", {{"scope", "row"}});
    name(pour.what);
    page_.close("th");
    page_.put("td", whole(scale_grams(pour.add, decimals)), {{"class", "number"}});
    page_.put("td", whole(scale_grams(pour.reads, decimals)), {{"class", "number reads"}});
    page_.close("tr");
  }
  page_.close("tbody").close("table");
}

void SheetWriter::cup(const laminate::CoatNeed& coat, const laminate::Batch& batch,
                      const Entry* wet) {
  const auto seconds = told_seconds(batch.use_within);
  const std::string within = whole(use_within_text(batch.use_within, system_));
  // A later cup is mixed when the one before is empty: nobody knows when that is.
  const bool first = batch.n == coat.batches.front().n;
  page_.open("div", {{"class", "cup"},
                     {"data-cup", fmt::format("{}/{}", coat.id, batch.n)},
                     {"data-use-s", std::to_string(seconds.count())}});
  page_.open("p", {{"class", "before"}});
  std::string mixed, basis;
  if (wet != nullptr && first) {
    page_.put("span", "use before", {{"class", "say"}}).text(" ");
    page_.put("b", view_->wall.clock(wet->start + seconds), {{"class", "deadline"}});
    mixed = "if mixed at " + view_->wall.clock(wet->start);
    basis = "; within " + within + " of mixing in any case";
  } else {
    page_.put("span", "use within", {{"class", "say"}}).text(" ");
    page_.put("b", within, {{"class", "deadline"}});
    mixed = first ? "from mixing on" : "mix it when the cup before is empty";
  }
  page_.close("p");
  basis += ", at " + whole(units::print(batch.air, system_));
  if (batch.resin != batch.air) {
    basis += " with resin at " + whole(units::print(batch.resin, system_));
  }
  if (batch.spread_within) {
    basis += "; spread within " + whole(use_within_text(*batch.spread_within, system_));
  }
  page_.open("p", {{"class", "basis"}});
  if (coat.batches.size() > 1) page_.text(fmt::format("Batch {}: ", batch.n));
  page_.put("span", mixed, {{"class", "mixed"}}).text(basis + ".").close("p");
  if (wet != nullptr && first) {
    const auto room = course_->room(wet->start);
    if (room && std::abs((*room - batch.air).in_kelvin()) >= other_air_k) {
      page_.put("p",
                "The room will be at " + whole(units::print(*room, system_)) +
                    ": ask \"wetout mix\" with --air before you pour.",
                {{"class", "caution"}});
    }
  }
  clock(coat, batch);
  page_.close("div");
}

void SheetWriter::clock(const laminate::CoatNeed& coat, const laminate::Batch& batch) {
  const std::string of = coat.batches.size() > 1 ? fmt::format(", batch {}", batch.n) : "";
  page_.open("p", {{"class", "paper"}});
  page_.text("mixed at ").put("span", "", {{"class", "blank"}});
  page_.text(" use before ").put("span", "", {{"class", "blank"}}).close("p");
  page_.open("div", {{"class", "clock screen"}});
  page_.put("button", "Mixed now",
            {{"type", "button"},
             {"class", "start"},
             {"aria-label", "Mixed now: " + plain(coat.name) + of}});
  page_.open("label").put("span", "mixed at");
  page_.single("input", {{"type", "time"}, {"class", "mixed-at"}});
  page_.close("label");
  page_.put("button", "Stop",
            {{"type", "button"},
             {"class", "stop"},
             {"hidden", "hidden"},
             {"aria-label", "Stop the clock of " + plain(coat.name) + of}});
  page_.put("p", "", {{"class", "rest"}, {"role", "timer"}});
  page_.put("p", "", {{"class", "alarm"}, {"role", "alert"}});
  page_.put("p", "", {{"class", "sound small"}});
  page_.close("div");
}

void SheetWriter::film(const Entry& wet) {
  Spoken spoken(wet.day);
  std::vector<std::string> looks;
  std::string how;
  for (const Entry& entry : view_->entries) {
    if (!entry.is_watch() || entry.coat != wet.coat) continue;
    looks.push_back(whole(view_->wall.clock(entry.start)));
    if (entry.told != nullptr) how = plain(entry.told->how);
  }
  page_.open("p", {{"class", "small"}});
  if (!looks.empty() && !wet.is_done()) {
    page_.put("b", "Look");
    page_.text(" " + joined(looks, ", ") + (how.empty() ? "" : ": " + how) + ". ");
  }
  const auto phrases = film_phrases(*view_, wet, spoken);
  if (!phrases.empty()) {
    page_.put("b", "Film");
    page_.text(" " + joined(phrases, ", ") + ".");
  }
  page_.close("p");
}

// Its own, and those of mixing; what holds for the room and the core stands at the top of the page.
void SheetWriter::cautions(const laminate::CoatNeed& coat) {
  page_.open("ul", {{"class", "cautions"}});
  const auto today = sheet_.mixed.find(coat.id);
  for (const base::Notice& notice :
       today == sheet_.mixed.end() ? plan_.notices : today->second.notices) {
    if (notice.subject == coat.id) page_.put("li", notice_text(notice, system_));
  }
  std::set<std::string> of_mixing;
  for (const resin::Chemistry chemistry : {resin::Chemistry::epoxy, resin::Chemistry::polyester}) {
    for (std::string& text : laminate::mixing_cautions(chemistry)) {
      of_mixing.insert(std::move(text));
    }
  }
  // A plan of another version may word them otherwise: then all of them.
  const bool known = std::any_of(
      plan_.cautions.begin(), plan_.cautions.end(),
      [&](const auto& one) { return one.step == "all" && of_mixing.contains(one.text); });
  for (const std::string_view step : {std::string_view(coat.id), std::string_view("all")}) {
    for (const laminate::Caution& caution : plan_.cautions) {
      if (caution.step != step) continue;
      if (step == "all" && known && !of_mixing.contains(caution.text)) continue;
      page_.put("li", caution.text);
    }
  }
  page_.close("ul");
}

}  // namespace wetout::report
