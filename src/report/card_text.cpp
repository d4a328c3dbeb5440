// The mixing card: one screen that is read with gloves on.
#include <fmt/format.h>

#include <algorithm>
#include <cmath>

#include "layout.hpp"
#include "phrases.hpp"
#include "pour_table.hpp"
#include "wetout/report/mix_document.hpp"
#include "wetout/report/plan_text.hpp"

namespace wetout::report {
namespace {

using layout::ends;
using layout::page_columns;
using layout::plain;
using layout::whole;

constexpr std::size_t card_lines = 24;
/// Cautions get at least this many lines before batches get the rest.
constexpr std::size_t least_caution_lines = 4;
/// And this many before the pours are set apart.
constexpr std::size_t good_caution_lines = 7;

using Lines = std::vector<std::string>;

std::string upper(std::string text) {
  for (char& c : text) {
    if (c >= 'a' && c <= 'z') c = static_cast<char>(c - 'a' + 'A');
  }
  return text;
}

class Card {
 public:
  Card(const MixDocument& mix, units::System system, std::optional<int> now_clock)
      : mix_(mix), system_(system), now_clock_(now_clock) {}

  std::string text() {
    const Lines top = header();
    const Lines foot = footer();
    const Lines warn = warnings();
    const std::size_t kept_free = std::min(warn.size(), least_caution_lines);
    std::vector<Lines> blocks = batch_blocks();
    std::size_t room = card_lines - top.size() - foot.size() - kept_free;
    Lines body = choose(blocks, room);
    // Pours one can read from a step away come before a second page of cautions.
    const Lines airy = spread_out(body);
    const std::size_t wanted = std::min(warn.size(), good_caution_lines);
    if (top.size() + airy.size() + foot.size() + wanted <= card_lines) body = airy;
    room = card_lines - top.size() - foot.size() - body.size();
    const Lines shown = cut_warnings(warn, room);

    layout::Page page;
    for (const Lines* part : {&top, &std::as_const(body), &foot, &shown}) {
      for (const std::string& line : *part) page.line(line);
    }
    return page.text();
  }

 private:
  [[nodiscard]] Lines header() const {
    std::string what = mix_.coat_name ? plain(*mix_.coat_name) : "mix " + plain(mix_.resin);
    std::string whose;
    if (mix_.board) {
      whose = plain(*mix_.board) +
              (mix_.revision ? fmt::format(", revision {}", *mix_.revision) : ", not saved");
    }
    std::string where;
    if (mix_.kind && mix_.face) where = kind_on_face(*mix_.kind, *mix_.face);
    if (mix_.area && wets_a_face(*mix_.area)) where += ", " + units::print(*mix_.area, system_);
    return {ends(upper(std::move(what)), whose),
            ends(plain(mix_.resin) + " " + ratio_text(mix_.ratio), where),
            std::string(page_columns, '-')};
  }

  [[nodiscard]] Lines footer() const {
    std::string air;
    if (!mix_.batches.empty()) {
      const laminate::Batch& first = mix_.batches.front();
      air = fmt::format("air {}, resin {}", units::print(first.air, system_),
                        units::print(first.resin, system_));
    }
    std::string next;
    if (mix_.coat) next = mix_.next_coat ? "next: " + plain(*mix_.next_coat) : "the last coat";
    return {std::string(page_columns, '-'), ends(air, next)};
  }

  // A line, and a second one where there is a next cup.
  [[nodiscard]] Lines deadline(const BatchGroup& group) const {
    const laminate::Batch& batch = *group.batch;
    std::string out = "use within " + use_within_text(batch.use_within, system_);
    // Only one cup at a time: the clock of a later one has not begun.
    const bool later = !mix_.batches.empty() && group.first != mix_.batches.front().n;
    if (!later && now_clock_) {
      constexpr int day = 24 * 60;
      const int minutes = static_cast<int>(std::floor(units::in_minutes(batch.use_within) + 0.005));
      const int before = (*now_clock_ + minutes % day) % day;
      out += fmt::format(", before {:02}:{:02} if mixed now", before / 60, before % 60);
    }
    if (batch.spread_within) {
      out += "; spread within " + use_within_text(*batch.spread_within, system_);
    }
    Lines lines{std::move(out)};
    if (later) {
      lines.emplace_back("mix it when the cup before is empty");
    } else if (group.last != group.first) {
      lines.emplace_back("mix the next when it is empty");
    }
    return lines;
  }

  [[nodiscard]] std::vector<Lines> batch_blocks() {
    std::vector<Lines> blocks;
    groups_ = group_batches(mix_.batches);
    const auto all = static_cast<std::size_t>(std::max(mix_.batch_count, 1));
    for (const BatchGroup& group : groups_) {
      const laminate::Batch& batch = *group.batch;
      const std::string title = upper(group_title(group, all)) + ": " + weighed(batch.mix, system_);
      Lines block{ends(title, batch.cup ? "cup " + plain(*batch.cup) : std::string())};
      for (std::string& line : deadline(group)) block.push_back(std::move(line));
      const Lines table = pour_table(batch, system_, PourTable::bench);
      // The columns are named once.
      block.insert(block.end(), table.begin() + (blocks.empty() ? 0 : 1), table.end());
      blocks.push_back(std::move(block));
    }
    return blocks;
  }

  // Blocks that fit into `room`, the rest pointed at.
  [[nodiscard]] Lines choose(const std::vector<Lines>& blocks, std::size_t room) const {
    if (blocks.empty()) return {"Nothing is mixed for this coat."};
    Lines body;
    for (std::size_t i = 0; i < blocks.size(); ++i) {
      const bool last = i + 1 == blocks.size();
      const std::size_t gap = body.empty() ? 0 : 1;
      const std::size_t pointer = last ? 0 : 1;
      if (body.size() + gap + blocks[i].size() + pointer > room) {
        if (i == 0) body = compact(*groups_.front().batch, blocks.front(), room - pointer);
        const std::size_t next = i == 0 ? 1 : i;
        if (next < blocks.size()) {
          const int from = groups_[next].first;
          body.push_back(
              fmt::format("More batches: --batch {} to --batch {}", from, groups_.back().last));
        }
        return body;
      }
      if (gap == 1) body.emplace_back();
      body.insert(body.end(), blocks[i].begin(), blocks[i].end());
    }
    return body;
  }

  // More pours than lines: running on, what does not fit is counted.
  [[nodiscard]] static Lines compact(const laminate::Batch& batch, const Lines& block,
                                     std::size_t room) {
    constexpr std::size_t name_columns = 24;
    std::vector<units::Milligrams> masses;
    for (const laminate::Pour& pour : batch.pours) masses.push_back(pour.reads);
    const int decimals = gram_decimals(masses);
    for (std::size_t pours = batch.pours.size();; --pours) {
      std::string text = "pour until the scale reads:";
      for (std::size_t i = 0; i < pours; ++i) {
        const laminate::Pour& pour = batch.pours[i];
        text += ' ';
        text += whole(layout::fit(plain(pour.what), name_columns) + ' ' +
                      scale_grams(pour.reads, decimals));
        if (i + 1 < pours) text += ',';
      }
      if (pours < batch.pours.size()) {
        text += fmt::format(" - and {} more: see the plan", batch.pours.size() - pours);
      }
      Lines lines{block[0], block[1]};
      for (std::string& line : layout::wrap(text, page_columns)) lines.push_back(std::move(line));
      if (lines.size() <= room || pours == 0) return lines;
    }
  }

  [[nodiscard]] Lines warnings() {
    layout::Page page;
    // What is special to this mix comes before what is always true.
    for (const base::Notice& notice : mix_.notices) {
      page.item("* ", notice_text(notice, system_));
      warning_ends_.push_back(page.lines().size());
    }
    for (const std::string& caution : mix_.cautions) {
      page.item("! ", plain(caution));
      warning_ends_.push_back(page.lines().size());
    }
    return page.lines();
  }

  // Whole cautions only, in their order; that some are left out is said.
  [[nodiscard]] Lines cut_warnings(const Lines& lines, std::size_t room) const {
    if (lines.size() <= room) return lines;
    if (room == 0) return {};
    Lines out;
    std::size_t begin = 0;
    for (const std::size_t end : warning_ends_) {
      // The first that does not fit ends it: a lesser one must not take its place.
      if (out.size() + end - begin >= room) break;
      out.insert(out.end(), lines.begin() + static_cast<std::ptrdiff_t>(begin),
                 lines.begin() + static_cast<std::ptrdiff_t>(end));
      begin = end;
    }
    out.emplace_back(out.empty() ? "! cautions: read them in the plan"
                                 : "! more cautions stand in the plan");
    return out;
  }

  // Air between the rows of the tables, which are the lines that are indented.
  [[nodiscard]] static Lines spread_out(const Lines& body) {
    Lines out;
    bool in_table = false;
    for (const std::string& line : body) {
      const bool row = line.starts_with("  ");
      if (row || (in_table && !line.empty())) out.emplace_back();
      in_table = row;
      out.push_back(line);
    }
    if (in_table) out.emplace_back();
    return out;
  }

  const MixDocument& mix_;
  units::System system_;
  std::optional<int> now_clock_;
  std::vector<BatchGroup> groups_;
  std::vector<std::size_t> warning_ends_;  ///< lines up to the end of each warning
};

}  // namespace

std::string to_text(const MixDocument& document, units::System system,
                    std::optional<int> now_clock) {
  return Card(document, system, now_clock).text();
}

base::Result<std::string> card_text(const PlanDocument& document, std::string_view coat,
                                    const CardOptions& options, units::System system) {
  const base::Result<MixDocument> mix = mix_document(as_kept(document), coat, options.batch);
  if (!mix) return base::fail(mix.error());
  return to_text(*mix, system, options.now_clock);
}

}  // namespace wetout::report
