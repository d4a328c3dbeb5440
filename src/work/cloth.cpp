#include "wetout/work/cloth.hpp"

#include <algorithm>
#include <cmath>
#include <map>
#include <utility>

#include "made_file.hpp"
#include "planned_job.hpp"
#include "stock_coat_facts.hpp"
#include "stored_plan.hpp"
#include "wetout/base/check.hpp"
#include "wetout/base/shown.hpp"
#include "wetout/cloth/cutting.hpp"
#include "wetout/laminate/cost.hpp"
#include "wetout/time/print.hpp"
#include "wetout/units/read.hpp"

namespace wetout::work {
namespace {

using cloth::Cutting;
using cloth::Piece;
using report::CutFrom;
using report::CutPiece;
using units::Length;

constexpr files::Made made_cutting{"a drawing of a cutting", report::cloth_drawing_begins};

// Strips of one ply lie over each other by this much: common practice, no source.
constexpr double seam_mm = 25.0;
constexpr double same_weight = 1e-6;  // share

// Hundredths of a millimetre; what is cut is rounded up, what there is down.
constexpr double per_mm = 100.0, hair = 1e-6;
std::int64_t at_least(Length length) {
  return static_cast<std::int64_t>(std::ceil(units::in_millimetres(length) * per_mm - hair));
}
std::int64_t at_most(Length length) {
  return static_cast<std::int64_t>(std::floor(units::in_millimetres(length) * per_mm + hair));
}
Length length_of(std::int64_t hundredths) {
  return units::millimetres(static_cast<double>(hundredths) / per_mm);
}

// One cloth, and all that is cut of it.
struct Bolt {
  laminate::Cloth cloth;
  std::vector<Piece> pieces;
  std::vector<CutPiece> named;  // of each piece
};

// A piece that is there already; with the label of its lot where stock has it.
struct Rest {
  std::string cloth;
  cloth::Remnant size;
  std::optional<std::string> lot = {};
};

class Cutter {
 public:
  Cutter(report::ClothDocument& document, bool several_jobs)
      : document_(document), several_jobs_(several_jobs) {}

  // `log`: where the job stands in it; coats that are done there need no cloth any more.
  base::Result<void> add(const PlannedJob& job, const joblog::Log* log) {
    const laminate::Plan& plan = job.document.plan;
    std::map<std::string, CoatFacts> facts;
    if (log != nullptr) facts = coat_facts(log->events(job.document.job.id), plan);
    document_.jobs.push_back({job.document.job.id, plan.board.name, job.document.job.revision});
    std::string told;
    for (const laminate::PlyNeed& ply : plan.plies) {
      const auto fact = facts.find(ply.coat);
      if (fact != facts.end() && fact->second.done) {
        if (told != ply.coat) is_done(ply.coat);
        told = ply.coat;
        continue;
      }
      const laminate::Cloth& cloth = named(job.files.shop.shop, ply.cloth);
      if (auto added = add(job, ply, cloth); !added) return added;
    }
    return {};
  }

  // Lots that are narrower than the roll are pieces that were kept.
  void stock(const joblog::Log& log) {
    for (const Bolt& bolt : bolts_) {
      const auto stock = log.stock_of(bolt.cloth.id);
      if (!stock) continue;
      for (const joblog::LotStock& lot : stock->lots) {
        if (!lot.width_um || lot.quantity <= 0) continue;
        const Length width = units::millimetres(static_cast<double>(*lot.width_um) / 1e3);
        const Length length = units::millimetres(static_cast<double>(lot.quantity) / 1e3);
        if (at_most(width) >= at_most(bolt.cloth.width) || at_most(length) <= 0) continue;
        rests_.push_back({bolt.cloth.id, {at_most(length), at_most(width)}, lot.label});
      }
    }
  }

  base::Result<void> remnants(const std::vector<std::string>& texts) {
    for (const std::string& text : texts) {
      if (auto read = remnant(text); !read) return read;
    }
    return {};
  }

  void cut_all() {
    for (Bolt& bolt : bolts_) cut(bolt);
    int n = 0;
    for (CutFrom& from : document_.rolls) {
      for (CutPiece& piece : from.pieces) piece.n = ++n;
    }
  }

 private:
  static const laminate::Cloth& named(const laminate::Shop& shop, const std::string& id) {
    const auto found = std::find_if(shop.cloths.begin(), shop.cloths.end(),
                                    [&](const laminate::Cloth& one) { return one.id == id; });
    base::promise(found != shop.cloths.end(), "the cloth of a planned ply is the shop's");
    return *found;
  }

  Bolt* bolt_of(const std::string& id) {
    const auto found = std::find_if(bolts_.begin(), bolts_.end(),
                                    [&](const Bolt& bolt) { return bolt.cloth.id == id; });
    return found == bolts_.end() ? nullptr : &*found;
  }

  base::Result<Bolt*> bolt(const laminate::Cloth& cloth) {
    if (Bolt* const there = bolt_of(cloth.id)) {
      if (there->cloth.width == cloth.width && there->cloth.weight == cloth.weight) return there;
      return base::fail({.code = "cloth.differs",
                         .message = "the shop files of these jobs have two kinds of \"" + cloth.id +
                                    "\": of another width or weight",
                         .key = "JOB",
                         .expected = "jobs planned with one shop file"});
    }
    Bolt bolt;
    bolt.cloth = cloth;
    bolts_.push_back(std::move(bolt));
    return &bolts_.back();
  }

  base::Result<void> add(const PlannedJob& job, const laminate::PlyNeed& ply,
                         const laminate::Cloth& cloth) {
    const laminate::Cloth* of = &cloth;
    std::int64_t strips = 1;
    std::int64_t width = at_least(ply.cut_width);
    if (width > at_most(cloth.width)) {
      of = wider(job.files.shop.shop, cloth, width);
      if (of != nullptr) {
        notice("cloth.wider", ply, "wider than the roll: cut of \"" + of->id + "\", which is",
               of->width);
      } else {
        of = &cloth;
        const std::int64_t seam = std::llround(seam_mm * per_mm);
        const std::int64_t roll = at_most(cloth.width);
        base::promise(roll > seam, "a roll is wider than a seam");
        strips = (width - seam + (roll - seam) - 1) / (roll - seam);
        width = (width + (strips - 1) * seam + strips - 1) / strips;
        notice("cloth.seam", ply,
               "wider than the roll: joined of " + std::to_string(strips) +
                   " strips, which lie over each other by",
               units::millimetres(seam_mm));
        const Length lap = ply.lap - 0.5 * (ply.cut_width - cloth.width);
        if (ply.lap > Length() && lap > Length()) {
          notice("cloth.lap", ply, "one piece would do for a lap of", lap);
        }
      }
    }
    const auto to = bolt(*of);
    if (!to) return tl::unexpected(to.error());
    for (std::int64_t k = 1; k <= strips; ++k) {
      (*to)->pieces.push_back({at_least(ply.cut_length), width});
      CutPiece piece;
      piece.job = job.document.job.id;
      piece.coat = ply.coat;
      piece.ply = ply.id;
      if (strips > 1) piece.strip = std::to_string(k) + " of " + std::to_string(strips);
      (*to)->named.push_back(std::move(piece));
    }
    return {};
  }

  static const laminate::Cloth* wider(const laminate::Shop& shop, const laminate::Cloth& cloth,
                                      std::int64_t width) {
    const laminate::Cloth* best = nullptr;
    for (const laminate::Cloth& other : shop.cloths) {
      if (std::abs(other.weight / cloth.weight - 1.0) > same_weight || at_most(other.width) < width)
        continue;
      if (best == nullptr || other.width < best->width) best = &other;
    }
    return best;
  }

  void is_done(const std::string& coat) {
    document_.notices.push_back(
        {.code = "cloth.done",
         .text = "is done: its cloth is not cut again",
         .subject = several_jobs_ ? document_.jobs.back().id + ' ' + coat : coat});
  }

  void notice(std::string code, const laminate::PlyNeed& ply, std::string text, Length value) {
    std::string subject = ply.coat + "/" + ply.id;
    if (several_jobs_) subject = document_.jobs.back().id + ' ' + subject;
    document_.notices.push_back({.code = std::move(code),
                                 .text = std::move(text),
                                 .subject = subject,
                                 .value = units::in_metres(value),
                                 .unit = "m"});
  }

  base::Result<void> remnant(const std::string& text) {
    const auto wrong = [&] {
      return base::fail({.code = "remnant.form",
                         .message = "--remnant: this is no cloth with a length and a width",
                         .key = "--remnant",
                         .found = base::shown(text),
                         .expected = "cloth, length along the warp x width, e.g. e4=60cmx40cm"});
    };
    const std::size_t equals = text.find('=');
    if (equals == std::string::npos || equals == 0) return wrong();
    const std::string id = text.substr(0, equals), size = text.substr(equals + 1);
    const std::size_t by = size.find_last_of("xX");
    if (by == std::string::npos) return wrong();
    const auto length = units::read_length(size.substr(0, by));
    const auto width = units::read_length(size.substr(by + 1));
    if (!length || !width || !(*length > Length()) || !(*width > Length())) return wrong();
    if (bolt_of(id) == nullptr) {
      std::string cloths;
      for (const Bolt& bolt : bolts_) cloths += (cloths.empty() ? "" : ", ") + bolt.cloth.id;
      return base::fail({.code = "remnant.cloth",
                         .message = "--remnant: no ply is cut of this cloth",
                         .key = "--remnant",
                         .found = base::shown(id),
                         .expected = cloths.empty() ? "a board with cloth" : cloths});
    }
    rests_.push_back({id, {at_most(*length), at_most(*width)}});
    return {};
  }

  void cut(Bolt& bolt) {
    std::vector<cloth::Remnant> remnants;
    std::vector<std::optional<std::string>> lots;
    for (const Rest& rest : rests_) {
      if (rest.cloth != bolt.cloth.id) continue;
      remnants.push_back(rest.size);
      lots.push_back(rest.lot);
    }
    const cloth::Shares shares = cloth::use_remnants(bolt.pieces, remnants);
    for (const cloth::FromRemnant& used : shares.remnants) {
      const cloth::Remnant& remnant = remnants[used.remnant];
      CutFrom from = cut_from(bolt, used.pieces, remnant.width);
      from.is_remnant = from.proved = true;
      from.lot = lots[used.remnant];
      from.take = from.bound = length_of(remnant.length);
      finish(bolt, std::move(from));
    }
    if (shares.left.empty()) return;
    std::vector<Piece> rest;
    for (const std::size_t i : shares.left) rest.push_back(bolt.pieces[i]);
    Cutting cutting = cloth::cut(rest, at_most(bolt.cloth.width));
    for (cloth::Placed& placed : cutting.pieces) placed.piece = shares.left[placed.piece];
    CutFrom from = cut_from(bolt, cutting.pieces, at_most(bolt.cloth.width));
    from.take = length_of(cutting.length);
    from.bound = length_of(cutting.bound);
    from.proved = cutting.proved;
    finish(bolt, std::move(from));
  }

  static CutFrom cut_from(const Bolt& bolt, const std::vector<cloth::Placed>& pieces,
                          std::int64_t width) {
    CutFrom from;
    from.cloth = bolt.cloth.id;
    from.name = bolt.cloth.name;
    from.width = length_of(width);
    for (const cloth::Placed& placed : pieces) {
      CutPiece piece = bolt.named[placed.piece];
      piece.length = length_of(bolt.pieces[placed.piece].length);
      piece.width = length_of(bolt.pieces[placed.piece].width);
      piece.along = length_of(placed.along);
      piece.edge = length_of(placed.edge);
      from.one_by_one += piece.length;
      from.pieces.push_back(std::move(piece));
    }
    return from;
  }

  void finish(const Bolt& bolt, CutFrom from) {
    from.waste = from.take * from.width;
    for (const CutPiece& piece : from.pieces) from.waste -= piece.length * piece.width;
    from.waste_weight = units::Milligrams::nearest(bolt.cloth.weight * from.waste);
    // As so much of the roll's length is worth.
    const double metres = units::in_square_metres(from.waste) / units::in_metres(bolt.cloth.width);
    from.waste_cost = laminate::cost_of(bolt.cloth.packs, std::nullopt, metres, "m");
    document_.rolls.push_back(std::move(from));
  }

  report::ClothDocument& document_;
  bool several_jobs_;
  std::vector<Bolt> bolts_;
  std::vector<Rest> rests_;
};

}  // namespace

base::Result<ClothCut> cut_cloth(const Workshop& workshop, const ClothRequest& request) {
  base::promise(!request.jobs.empty(), "cloth is cut for a board");
  if (request.drawing) {
    if (auto may = may_make(workshop, *request.drawing, made_cutting); !may)
      return tl::unexpected(may.error());
  }
  ClothCut answer;
  report::ClothDocument& document = answer.document;
  Cutter cutter(document, request.jobs.size() > 1);
  std::optional<joblog::Log> log;
  if (joblog::Log::exists(workshop.log)) {
    auto opened = open_log(workshop);
    if (!opened) return tl::unexpected(opened.error());
    log = std::move(*opened);
  }
  std::optional<time::Zone> zone;
  for (const std::string& name : request.jobs) {
    const auto job = planned_job(workshop, name, {});
    if (!job) return tl::unexpected(job.error());
    if (!zone) {
      answer.units = job->files.shop.units;
      const auto of_shop = time::Zone::named(job->files.shop.time_zone);
      if (!of_shop) return tl::unexpected(of_shop.error());
      zone = *of_shop;
    }
    const bool is_of_log = log && job->document.job.revision > 0;
    if (auto added = cutter.add(*job, is_of_log ? &*log : nullptr); !added)
      return tl::unexpected(added.error());
  }
  if (log) cutter.stock(*log);
  if (auto read = cutter.remnants(request.remnants); !read) return tl::unexpected(read.error());
  cutter.cut_all();
  const auto now = workshop.now(*zone);
  if (!now) return tl::unexpected(now.error());
  document.program = program();
  document.made = time::rfc3339(*now, *zone);
  if (!document.rolls.empty()) {
    // Common practice, no source.
    document.cautions = {
        "Cut edges of glass shed splinters that itch and harm eyes: sleeves, gloves, eye "
        "protection; a sharp blade, away from your hand. Sweep up wet, do not blow.",
        "Safety data sheets, local rules and licensed practice come first."};
  }
  if (request.drawing) {
    const units::System system = request.units.value_or(answer.units);
    auto made = make_file(workshop, *request.drawing, report::cloth_drawing(document, system),
                          made_cutting);
    if (!made) return tl::unexpected(made.error());
    answer.drawing_written = !workshop.dry_run;
  }
  return answer;
}

}  // namespace wetout::work
