#include "wetout/schedule/steps.hpp"

#include <algorithm>
#include <array>
#include <cmath>
#include <utility>

#include "wetout/base/check.hpp"
#include "wetout/laminate/order.hpp"

namespace wetout::schedule {
namespace {

using laminate::CoatKind;
using laminate::CoatNeed;
using laminate::CoatSpec;
using laminate::Laps;
using units::Duration;
using units::minutes;

constexpr double grid_minutes = 5.0;

// Part of a minute is not worth another five.
Duration on_grid(double m) {
  return minutes(grid_minutes * std::max(1.0, std::ceil(m / grid_minutes - 1e-3)));
}

board::Face other(board::Face face) {
  return face == board::Face::deck ? board::Face::bottom : board::Face::deck;
}
std::size_t side(board::Face face) { return face == board::Face::deck ? 0 : 1; }

class Builder {
 public:
  Builder(const BoardWork& board, const laminate::Shop& shop, const StepDefaults& defaults)
      : board_(board), shop_(shop), d_(defaults) {
    out_.wets.assign(board.coats.size(), -1);
    out_.sealed.assign(board.coats.size(), false);
    opened_.assign(board.coats.size(), false);
    sanded_.assign(board.coats.size(), false);
  }

  base::Result<BoardSteps> build() {
    auto order = laminate::order_of_coats(board_.coats);
    if (!order) return tl::unexpected(order.error());
    order_ = std::move(*order);
    begin();
    for (const std::size_t i : order_) {
      if (spec(i).kind == CoatKind::gloss) sand_hotcoats();
      coat(i);
    }
    finish_feathers();
    sand_hotcoats();
    spot();
    polish_glosses();
    add({.name = {"", StepWord::weigh, ""},
         .attended = on_grid(d_.weigh.value),
         .title = "Weigh the board"});
    return std::move(out_);
  }

 private:
  [[nodiscard]] const CoatSpec& spec(std::size_t i) const { return board_.coats[i]; }
  [[nodiscard]] const CoatNeed& need(std::size_t i) const { return board_.plan.coats[i]; }
  [[nodiscard]] const resin::Product& product(std::size_t i) const {
    const auto found =
        std::find_if(shop_.resins.begin(), shop_.resins.end(),
                     [&](const resin::Product& one) { return one.id == spec(i).resin; });
    base::promise(found != shop_.resins.end(), "a planned coat has a resin of the shop");
    return *found;
  }
  [[nodiscard]] double rail_m() const { return units::in_metres(board_.plan.board.perimeter); }
  [[nodiscard]] double face_m2(board::Face face) const {
    return units::in_square_metres(face == board::Face::deck ? board_.plan.board.deck
                                                             : board_.plan.board.bottom);
  }

  // Whatever follows everything so far that takes place.
  int add(Step step) {
    const int index = static_cast<int>(out_.steps.size());
    const When when = step.when;
    out_.steps.push_back(std::move(step));
    for (const int before : tails_)
      link({.from = before, .moment = Moment::end, .to = index, .min = Duration{}});
    // A step of one option stands beside what took place without it.
    if (when.group < 0) tails_.clear();
    tails_.push_back(index);
    return index;
  }
  int add(std::size_t coat, StepWord word, std::string detail, double m, std::string title,
          std::string how = "", bool dusty = false, When when = {}) {
    return add({.name = {spec(coat).id, word, std::move(detail)},
                .coat = static_cast<int>(coat),
                .attended = on_grid(m),
                .dusty = dusty,
                .title = std::move(title),
                .how = std::move(how),
                .when = when});
  }
  void link(Link link) { out_.links.push_back(std::move(link)); }
  void after(std::size_t coat, Moment moment, int to, When when = {}) {
    link({.from = out_.wets[coat], .moment = moment, .to = to, .min = Duration{}, .when = when});
  }
  int group(std::string id, std::vector<std::string> options, std::vector<std::string> texts) {
    out_.groups.push_back({std::move(id), std::move(options), std::move(texts)});
    return static_cast<int>(out_.groups.size()) - 1;
  }

  void begin() {
    const int warm = add({.name = {"", StepWord::acclimatise, ""},
                          .attended = on_grid(d_.acclimatise.value),
                          .title = "Bring board, cloth and resin into the room",
                          .how = "until they are as warm as it is"});
    waits_.push_back({warm, d_.acclimatise_wait.value});
    const auto named = [&](const std::optional<Duration>& time, StepWord word, std::string title,
                           std::string how, double dries) {
      if (!time) return;
      const int step = add({.name = {"", word, ""},
                            .attended = on_grid(units::in_minutes(*time)),
                            .title = std::move(title),
                            .how = std::move(how)});
      waits_.push_back({step, dries});
    };
    named(board_.spackle, StepWord::spackle, "Fill dents and torn foam",
          "water-based spackle on polystyrene; sand flush when dry", d_.spackle_dries.value);
    named(board_.artwork, StepWord::artwork, "Artwork on the foam",
          "water-based paint on polystyrene", d_.artwork_dries.value);
  }

  // --- one coat

  [[nodiscard]] bool laps_over(std::size_t i) const {
    const CoatSpec& coat = spec(i);
    if (coat.kind == CoatKind::laminate) {
      return std::any_of(coat.plies.begin(), coat.plies.end(),
                         [](const laminate::PlySpec& ply) { return ply.lap.si() > 0.0; });
    }
    // The first of both faces goes past the apex.
    if (coat.kind != CoatKind::hotcoat && coat.kind != CoatKind::gloss) return false;
    return std::none_of(out_.wets.begin(), out_.wets.end(), [&](const int& wet) {
      const auto j = static_cast<std::size_t>(&wet - out_.wets.data());
      return wet >= 0 && j != i && spec(j).kind == coat.kind && spec(j).face != coat.face;
    });
  }
  [[nodiscard]] bool cut(std::size_t i) const {
    return spec(i).kind == CoatKind::laminate && spec(i).laps == Laps::cut && laps_over(i);
  }

  void coat(std::size_t i) {
    const CoatSpec& coat = spec(i);
    turn_up(coat.face, i);
    const bool install = coat.kind == CoatKind::install;
    const auto below = film_on_[side(coat.face)];
    std::vector<Link> landing;  // to the wet, once it is there
    if (!install) {
      if (below) land(i, *below, false, landing, "");
      std::vector<std::size_t> bands = lap_on_[side(coat.face)];
      if (laps_over(i)) {
        if (const auto across = film_on_[side(other(coat.face))]) bands.push_back(*across);
      }
      std::sort(bands.begin(), bands.end());
      bands.erase(std::unique(bands.begin(), bands.end()), bands.end());
      std::erase(bands, below.value_or(board_.coats.size()));
      std::erase_if(bands, [&](std::size_t band) { return sanded_[band]; });
      for (const std::size_t band : bands) {
        land(i, band, true, landing, bands.size() > 1 ? "-" + spec(band).id : "");
      }
      // What inserts were set in is a film too.
      for (const std::size_t fill : fills_on_[side(coat.face)]) {
        landing.push_back(
            {.from = out_.wets[fill], .moment = Moment::recoat_from, .min = Duration{}});
      }
    }
    const int ready = prepare(i);
    if (install && below) after(*below, Moment::sandable, ready);
    const int wet = add(i, StepWord::wet, "", wet_minutes(i), wet_title(i), wet_how(i));
    out_.wets[i] = wet;
    out_.sealed[i] = below.has_value() && !install;
    for (Link& link : landing) {
      link.to = wet;
      out_.links.push_back(link);
    }
    for (const auto& [step, wait] : waits_) {
      link({.from = step, .moment = Moment::end, .to = wet, .min = minutes(wait)});
    }
    waits_.clear();
    afterwards(i);
    if (install) {
      fills_on_[side(coat.face)].push_back(i);
      return;
    }
    film_on_[side(coat.face)] = i;
    lap_on_[side(coat.face)].clear();
    fills_on_[side(coat.face)].clear();
    if (laps_over(i)) lap_on_[side(other(coat.face))].push_back(i);
  }

  void turn_up(board::Face face, std::size_t for_coat) {
    if (!up_) up_ = face;
    if (*up_ == face) return;
    up_ = face;
    const int flip = add(for_coat, StepWord::flip, "", d_.flip.value,
                         "Turn the board, " + std::string(laminate::to_string(face)) + " up",
                         "padded stands, both hands");
    for (const std::size_t wet : wet_since_flip_) after(wet, Moment::handle, flip);
    wet_since_flip_.clear();
    std::vector<std::size_t> now;
    std::swap(now, to_feather_);
    for (const std::size_t i : now) feather(i);
  }

  void feather(std::size_t i) {
    const When ground{laps_group_[i], 1};
    const int edge =
        add(i, StepWord::feather, "edge", d_.edge.value + d_.edge_rail.value * rail_m(),
            "Grind the laps of " + spec(i).name + " to the line",
            "60-80 grit; glass dust: mask, extraction", true, ground);
    after(i, Moment::sandable, edge);
    const int step =
        add(i, StepWord::feather, "", d_.feather.value + d_.feather_rail.value * rail_m(),
            "Feather the laps of " + spec(i).name, "60-80 grit, not into the cloth", true);
    after(i, Moment::sandable, step);
    feathered_.push_back(i);
  }
  void finish_feathers() {
    std::vector<std::size_t> now;
    std::swap(now, to_feather_);
    for (const std::size_t i : now) feather(i);
  }

  [[nodiscard]] bool notice_band(std::size_t film) const {
    const resin::Product& sheet = product(film);
    return !sheet.lowest_air || !sheet.humidity_limit;
  }
  [[nodiscard]] bool wet_on_wet(std::size_t film, std::size_t coat) const {
    const auto family = [](const resin::Product& p) { return p.family.empty() ? p.id : p.family; };
    const resin::Product& a = product(film);
    const resin::Product& b = product(coat);
    return a.chemistry == b.chemistry && family(a) == family(b) && !a.waxed;
  }

  // A film that the coat lands on: inside its window, or washed and scuffed first. `which` tells
  // several bands apart.
  void land(std::size_t i, std::size_t film, bool band, std::vector<Link>& landing,
            const std::string& which) {
    // What was sanded since is ready.
    if (sanded_[film]) return;
    const bool edge_feathered =
        band && std::find(feathered_.begin(), feathered_.end(), film) != feathered_.end();
    When window, scuffed;
    if (wet_on_wet(film, i)) {
      const int g = group(spec(i).id + (band ? "/band" + which : "/ground"), {"window", "scuffed"},
                          {spec(i).name + " inside the recoat window of " + spec(film).name,
                           spec(film).name +
                               (band ? " washed and scuffed where laps meet it, for "
                                     : " washed and scuffed for ") +
                               spec(i).name});
      window = {g, 0};
      scuffed = {g, 1};
      landing.push_back({.from = out_.wets[film],
                         .moment = Moment::recoat_until,
                         .to_end = true,
                         .max = Duration{},
                         .tight = true,
                         .when = window});
      if (notice_band(film)) {
        landing.push_back(
            {.from = out_.wets[film], .moment = Moment::start, .good_film = true, .when = window});
      }
    }
    landing.push_back({.from = out_.wets[film], .moment = Moment::recoat_from, .min = Duration{}});
    if (band) {
      // Feathering has scuffed the edge; the other face's band is still to be done.
      if (edge_feathered && !laps_over(i)) return;
      const int step = add(i, StepWord::scuff, "laps" + which,
                           d_.wash.value + d_.scuff.value + d_.scuff_rail.value * rail_m(),
                           "Wash and scuff " + spec(film).name + " where laps meet it",
                           "clean water, pad, dry; then 120-150 grit", true, scuffed);
      after(film, Moment::sandable, step);
      return;
    }
    const double area = face_m2(spec(i).face);
    const int wash =
        add(i, StepWord::wash, "", d_.wash.value + d_.wash_area.value * area,
            "Wash " + spec(film).name, "clean water, abrasive pad, dry", false, scuffed);
    after(film, Moment::handle, wash);
    const int scuff =
        add(i, StepWord::scuff, "", d_.scuff.value + d_.scuff_area.value * area,
            "Scuff " + spec(film).name, "120-150 grit until dull all over", true, scuffed);
    after(film, Moment::sandable, scuff);
    for (const std::size_t fill : fills_on_[side(spec(i).face)]) {
      after(fill, Moment::sandable, scuff);
    }
  }

  int prepare(std::size_t i) {
    const CoatSpec& coat = spec(i);
    if (coat.kind == CoatKind::install) {
      const auto parts = static_cast<double>(coat.install->count);
      return add(i, StepWord::prepare, "", d_.prepare.value + d_.prepare_part.value * parts,
                 "Rout and fit for " + coat.name, "foam and glass dust: mask, extraction", true);
    }
    const auto plies = static_cast<double>(coat.plies.size());
    const std::string tape = cut(i) ? ", tape the lap line" : "";
    return add(i, StepWord::prepare, "", d_.prepare.value + d_.prepare_ply.value * plies,
               "Prepare " + coat.name,
               coat.kind == CoatKind::laminate ? "dust off, cut and lay out cloth" + tape
                                               : "dust off, tape, set out cups");
  }

  [[nodiscard]] double wet_minutes(std::size_t i) const {
    const CoatNeed& coat = need(i);
    double m = d_.mixing.value * static_cast<double>(std::max<std::size_t>(1, coat.batches.size()));
    if (coat.spread) m += units::in_minutes(*coat.spread);
    if (coat.kind == CoatKind::install) {
      return m + d_.set_part.value * static_cast<double>(spec(i).install->count);
    }
    m += d_.work_over.value;
    for (const laminate::PlyNeed& ply : board_.plan.plies) {
      if (ply.coat != coat.id) continue;
      m += d_.work_over_ply.value * units::in_square_metres(ply.area + ply.lap_area);
    }
    return m;
  }
  [[nodiscard]] std::string wet_title(std::size_t i) const {
    switch (spec(i).kind) {
      case CoatKind::seal:
        return "Seal: " + spec(i).name;
      case CoatKind::laminate:
        return "Wet out " + spec(i).name;
      case CoatKind::install:
        return "Set " + spec(i).name;
      case CoatKind::hotcoat:
      case CoatKind::gloss:
        return "Pour " + spec(i).name;
    }
    base::broken_promise("every kind of coat has a title");
  }
  [[nodiscard]] std::string wet_how(std::size_t i) const {
    const std::size_t cups = need(i).batches.size();
    return cups > 1 ? std::to_string(cups) + " batches" : "";
  }

  void afterwards(std::size_t i) {
    const CoatSpec& coat = spec(i);
    const int wet = out_.wets[i];
    wet_since_flip_.push_back(i);
    const auto watch = [&](int m) {
      const int step = add(i, StepWord::watch, std::to_string(m), d_.watch.value,
                           "Look at " + coat.name, "drips, dry cloth, bubbles, lifted laps");
      link({.from = wet,
            .moment = Moment::end,
            .to = step,
            .min = minutes(m),
            .max = minutes(m + d_.watch_late.value)});
    };
    if (coat.kind == CoatKind::install) {
      watch(30);
      return;
    }
    for (const int m : {15, 30, 60}) watch(m);
    if (cut(i)) {
      const int g =
          group(coat.id + "/laps", {"cut", "ground"},
                {"laps of " + coat.name + " cut while they are rubber",
                 "laps of " + coat.name + " ground later, as nobody is there to cut them"});
      laps_group_.resize(board_.coats.size(), -1);
      laps_group_[i] = g;
      const int trim =
          add(i, StepWord::trim, "", d_.trim.value + d_.trim_rail.value * rail_m(),
              "Cut the laps of " + coat.name, "fresh blade; pull the tape", false, {g, 0});
      after(i, Moment::gel, trim);
      link({.from = wet,
            .moment = Moment::trim_until,
            .to = trim,
            .to_end = true,
            .max = Duration{},
            .tight = true,
            .when = {g, 0}});
      to_feather_.push_back(i);
    }
    if (coat.kind == CoatKind::hotcoat || coat.kind == CoatKind::gloss) {
      const int peel = add(i, StepWord::peel, "", d_.peel.value, "Pull the tape of " + coat.name,
                           "once it has gelled");
      after(i, Moment::gel, peel);
    }
  }

  // --- afterwards

  void sand_hotcoats() {
    for (const std::size_t i : order_) {
      if (spec(i).kind != CoatKind::hotcoat || out_.wets[i] < 0 || sanded_[i]) continue;
      if (film_on_[side(spec(i).face)] != i) continue;  // covered by another coat
      open_inserts(i);
      sand(i, d_.sand_area.value, "80, 120, 150-220 grit; not through to the cloth", true);
    }
  }
  void open_inserts(std::size_t hotcoat) {
    for (std::size_t j = 0; j < board_.coats.size(); ++j) {
      const bool under = spec(j).kind == CoatKind::install && spec(j).face == spec(hotcoat).face &&
                         out_.wets[j] >= 0 && out_.wets[j] < out_.wets[hotcoat] && !opened_[j];
      if (!under) continue;
      opened_[j] = true;
      const int step = add(j, StepWord::open, "",
                           d_.open_part.value * static_cast<double>(spec(j).install->count),
                           "Open " + spec(j).name, "sand or cut to the edge of the part", true);
      after(hotcoat, Moment::sandable, step);
      after(j, Moment::sandable, step);
      lie_on_the_other_face(spec(j).face, step);
    }
  }
  // Whoever works on the face that lies below turns the board onto films that can be handled.
  void lie_on_the_other_face(board::Face face, int step) {
    if (!up_ || *up_ == face) return;
    for (const std::size_t wet : wet_since_flip_) after(wet, Moment::handle, step);
  }
  void sand(std::size_t i, double per_area, std::string how, bool dry) {
    When washed;
    if (notice_band(i) && dry) {
      const int g = group(spec(i).id + "/notice", {"as it is", "washed"},
                          {spec(i).name + " needs no wash",
                           spec(i).name + " washed before sanding: it cured cool or damp"});
      washed = {g, 1};
      const int wash =
          add(i, StepWord::wash, "sand", d_.wash.value + d_.wash_area.value * face_m2(spec(i).face),
              "Wash " + spec(i).name, "clean water, abrasive pad, dry", false, washed);
      after(i, Moment::handle, wash);
      lie_on_the_other_face(spec(i).face, wash);
    }
    const int step = add(i, StepWord::sand, "", d_.sand.value + per_area * face_m2(spec(i).face),
                         "Sand " + spec(i).name, std::move(how), dry);
    after(i, Moment::sandable, step);
    lie_on_the_other_face(spec(i).face, step);
    if (washed.group >= 0) {
      link({.from = out_.wets[i],
            .moment = Moment::start,
            .to = step,
            .good_film = true,
            .when = {washed.group, 0}});
    }
    sanded_[i] = true;
  }
  void spot() {
    if (!board_.spot) return;
    add({.name = {"", StepWord::spot, ""},
         .attended = on_grid(units::in_minutes(*board_.spot)),
         .title = "Spot pinholes and what was sanded through",
         .how = "a little resin, flush"});
  }
  void polish_glosses() {
    for (const std::size_t i : order_) {
      if (spec(i).kind != CoatKind::gloss) continue;
      sand(i, d_.gloss_sand_area.value, "wet, 400, 600, 800, 1000 grit", false);
      add(i, StepWord::polish, "", d_.polish.value + d_.polish_area.value * face_m2(spec(i).face),
          "Polish " + spec(i).name, "compound, slow and cool");
    }
  }

  const BoardWork& board_;
  const laminate::Shop& shop_;
  const StepDefaults& d_;
  std::vector<std::size_t> order_;  // of the coats
  BoardSteps out_;
  std::vector<int> tails_;
  std::vector<std::pair<int, double>> waits_;  // the first wet waits for these, so many minutes
  std::optional<board::Face> up_;
  std::array<std::optional<std::size_t>, 2> film_on_;  // last full coat of each face
  std::array<std::vector<std::size_t>, 2> lap_on_;     // laps that lie on it since
  std::array<std::vector<std::size_t>, 2> fills_on_;   // inserts set in it since
  std::vector<std::size_t> wet_since_flip_, to_feather_, feathered_;
  std::vector<int> laps_group_;
  std::vector<bool> opened_, sanded_;
};

}  // namespace

std::string_view to_string(Moment moment) {
  if (moment == Moment::start) return "start";
  if (moment == Moment::end) return "end";
  return resin::to_string(*milestone(moment));
}

std::optional<resin::Milestone> milestone(Moment moment) {
  using M = resin::Milestone;
  switch (moment) {
    case Moment::start:
    case Moment::end:
      return std::nullopt;
    case Moment::gel:
      return M::gel;
    case Moment::trim_until:
      return M::trim_until;
    case Moment::recoat_from:
      return M::recoat_from;
    case Moment::tack_free:
      return M::tack_free;
    case Moment::handle:
      return M::handle;
    case Moment::sandable:
      return M::sandable;
    case Moment::recoat_until:
      return M::recoat_until;
    case Moment::full_cure:
      return M::full_cure;
  }
  base::broken_promise("every moment is known");
}

base::Result<BoardSteps> steps_of(const BoardWork& board, const laminate::Shop& shop,
                                  const StepDefaults& defaults) {
  return Builder(board, shop, defaults).build();
}

}  // namespace wetout::schedule
