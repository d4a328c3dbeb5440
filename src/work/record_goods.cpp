#include "record_goods.hpp"

#include <algorithm>
#include <cmath>
#include <optional>
#include <string_view>
#include <utility>

#include "wetout/base/table_text.hpp"
#include "wetout/units/print.hpp"
#include "wetout/units/read.hpp"

namespace wetout::work {
namespace {

using joblog::MaterialUnit;

std::string amount_in_words(const joblog::Material& material, std::int64_t quantity,
                            units::System system) {
  switch (material.unit) {
    case MaterialUnit::milligram:
      return units::print_number(static_cast<double>(quantity) * 1e-3, 3) + " g";
    case MaterialUnit::micrometre:
      return units::print(units::metres(static_cast<double>(quantity) * 1e-6), system);
    case MaterialUnit::piece:
      return std::to_string(quantity);
  }
  return "";
}

std::int64_t micrometres(units::Length length) {
  return std::llround(units::in_metres(length) * 1e6);
}

bool is_cloth(const Good& good) { return good.width.has_value(); }

class Reader {
 public:
  Reader(const RecordRequest& request, const JobOfRecord& job, const joblog::Log* log)
      : request_(request), job_(job), log_(log) {
    if (job.shop) goods_ = goods_of(job.shop->shop);
  }

  base::Result<GoodsOfRecord> run() {
    if (request_.cloth.empty() && request_.used.empty() && request_.lots.empty() &&
        request_.remnants.empty()) {
      return out_;
    }
    if (!job_.shop) return base::fail(no_shop());
    for (const std::string& text : request_.cloth) amount("--cloth", text, "e4=1.9m", true);
    for (const std::string& text : request_.used) amount("--used", text, "side-box=2", false);
    for (const std::string& text : request_.remnants) remnant(text);
    for (const std::string& text : request_.lots) lot(text);
    if (!problems_.empty()) return base::fail(std::move(problems_));
    for (const NamedGood& one : out_.named) {
      out_.said += (out_.said.empty() ? "used " : ", ") +
                   amount_in_words(one.material, one.quantity, job_.shop->units) + " " +
                   one.material.slug;
    }
    for (std::size_t i = 0; i < out_.kept.size(); ++i) {
      const KeptPiece& piece = out_.kept[i];
      const std::string before = i > 0 ? ", " : out_.said.empty() ? "kept " : "; kept ";
      out_.said += before + length_in_words(piece.length_um) + " x " +
                   length_in_words(piece.width_um) + " of " + piece.material.slug;
    }
    return std::move(out_);
  }

 private:
  std::string length_in_words(std::int64_t micrometres) const {
    return units::print(units::metres(static_cast<double>(micrometres) * 1e-6), job_.shop->units);
  }

  base::Problem no_shop() const {
    std::string option = "--lot";
    if (!request_.remnants.empty()) option = "--remnant";
    if (!request_.used.empty()) option = "--used";
    if (!request_.cloth.empty()) option = "--cloth";
    return {
        .code = "goods.no_shop",
        .message = option + ": what materials there are stands in the shop file, and there is none",
        .key = option,
        .expected = "a shop file with [[material]] and [[cloth]]",
        .hint = "--shop FILE names it; wetout new begins one"};
  }

  void add(base::Problems problems, std::string_view option) {
    for (base::Problem& problem : problems) {
      problem.key = option;
      problem.message = std::string(option) + ": " + problem.message;
      problems_.push_back(std::move(problem));
    }
  }

  // "e4=1.9 m": the material and what is said of it.
  std::optional<std::pair<Good, std::string_view>> named(std::string_view option,
                                                         std::string_view text,
                                                         std::string_view example) {
    const std::size_t equals = text.find('=');
    const std::string_view id = base::trimmed(text.substr(0, equals));
    const std::string_view rest =
        equals == std::string_view::npos ? "" : base::trimmed(text.substr(equals + 1));
    if (id.empty() || rest.empty()) {
      add({{.code = "goods.form",
            .message = "a material and what is said of it belong together",
            .found = std::string(text),
            .expected = "for example " + std::string(option) + " " + std::string(example)}},
          option);
      return std::nullopt;
    }
    auto good = good_meant(id, goods_);
    if (!good) {
      add(good.error(), option);
      return std::nullopt;
    }
    return std::pair(as_kept_here(std::move(*good)), rest);
  }

  Good as_kept_here(Good good) const {
    const auto kept = log_ != nullptr ? log_->stock_of(good.material.slug) : std::nullopt;
    return kept ? as_kept(std::move(good), kept->material) : good;
  }

  void amount(std::string_view option, std::string_view text, std::string_view example,
              bool cloth) {
    auto one = named(option, text, example);
    if (!one) return;
    auto& [good, value] = *one;
    const std::string& slug = good.material.slug;
    if (is_cloth(good) != cloth) {
      return add({{.code = "goods.kind",
                   .message = "\"" + slug + (cloth ? "\" is not a cloth" : "\" is a cloth"),
                   .found = std::string(text),
                   .hint = cloth ? "--used " + slug + "=AMOUNT" : "--cloth " + slug + "=LENGTH"}},
                 option);
    }
    const auto quantity = read_amount(value, good, Least::something);
    if (!quantity) return add(quantity.error(), option);
    const auto same = std::find_if(out_.named.begin(), out_.named.end(),
                                   [&](const NamedGood& it) { return it.material.slug == slug; });
    if (same != out_.named.end()) {
      same->quantity += *quantity;
    } else {
      out_.named.push_back({good.material, *quantity});
    }
  }

  // "60 cm x 40 cm": along the roll, and across it.
  void remnant(std::string_view text) {
    auto one = named("--remnant", text, "e4=60cmx40cm");
    if (!one) return;
    const auto& [good, value] = *one;
    if (!is_cloth(good)) {
      return add({{.code = "goods.kind",
                   .message = "\"" + good.material.slug + "\" is not a cloth",
                   .found = std::string(text)}},
                 "--remnant");
    }
    std::size_t mark = value.find_first_of("xX");
    std::size_t size = 1;
    if (mark == std::string_view::npos) {
      mark = value.find("\xc3\x97");
      size = 2;
    }
    const bool has_both = mark != std::string_view::npos;
    const auto length = units::read_length(base::trimmed(value.substr(0, mark)));
    const auto width = units::read_length(has_both ? base::trimmed(value.substr(mark + size))
                                                   : std::string_view());
    if (!has_both || !length || !width || *length <= units::Length{} || *width <= units::Length{}) {
      return add({{.code = "remnant.form",
                   .message = "this is not the length and the width of a piece",
                   .found = std::string(text),
                   .expected = "ID=LENxWID, e.g. e4=60cmx40cm"}},
                 "--remnant");
    }
    KeptPiece piece{good.material, micrometres(*length), micrometres(*width), 0};
    const std::int64_t roll = micrometres(*good.width);
    if (piece.width_um > roll || piece.length_um > joblog::most_of_a_line) {
      return add({{.code = "remnant.large",
                   .message = "the roll is not so wide",
                   .found = std::string(text),
                   .expected = "LENxWID, a width of at most " + length_in_words(roll)}},
                 "--remnant");
    }
    const double share = static_cast<double>(piece.width_um) / static_cast<double>(roll);
    piece.off_roll_um =
        std::max<std::int64_t>(std::llround(static_cast<double>(piece.length_um) * share), 1);
    out_.kept.push_back(std::move(piece));
  }

  void lot(std::string_view text) {
    const auto one = named("--lot", text, "kelp-a=2026-05-04");
    if (!one) return;
    const std::string& slug = one->first.material.slug;
    if (!out_.lots.emplace(slug, std::string(one->second)).second) {
      add({{.code = "goods.twice",
            .message = "two lots of \"" + slug + "\" in one record",
            .found = std::string(text),
            .hint = "make two records of it"}},
          "--lot");
    }
  }

  const RecordRequest& request_;
  const JobOfRecord& job_;
  const joblog::Log* log_;
  std::vector<Good> goods_;
  base::Problems problems_;
  GoodsOfRecord out_;
};

}  // namespace

base::Result<GoodsOfRecord> goods_of_record(const RecordRequest& request, const JobOfRecord& job,
                                            const joblog::Log* log) {
  return Reader(request, job, log).run();
}

}  // namespace wetout::work
