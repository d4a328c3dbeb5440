// [[coat.ply]]: layers of cloth in the order they are laid.
#include <optional>
#include <string>
#include <unordered_map>
#include <utility>
#include <vector>

#include "ids.hpp"
#include "job_parts.hpp"
#include "wetout/base/words.hpp"

namespace wetout::files {
namespace {

laminate::PlySpec read_ply(Fields& ply) {
  laminate::PlySpec spec;
  Named named = read_named(ply, "deck patch", true);
  spec.id = std::move(named.id);
  spec.name = std::move(named.name);
  if (auto cloth = ply.text("cloth", "e4", Must::be_there)) spec.cloth = std::move(*cloth);
  spec.lap = ply.quantity("lap", measures::lap).value_or(units::Length{});
  spec.from_tail = ply.quantity("from_tail", measures::place);
  spec.to = ply.quantity("to", measures::place);
  spec.width = ply.quantity("width", measures::width);
  ply.done();
  return spec;
}

}  // namespace

void read_plies(Fields& coat, laminate::CoatSpec& spec) {
  std::vector<Fields> tables =
      coat.subtables("ply", "at least one [[coat.ply]] with its cloth", Must::be_there);
  Ids ids("ply of this coat");
  for (Fields& ply : tables) {
    if (ply.document().full()) return;
    spec.plies.push_back(read_ply(ply));
    if (ply.has("id") || ply.has("name")) ids.add(ply, spec.plies.back().id);
  }
  // The unnamed ones are called after their cloth: e4, e4-2, e4-3.
  std::unordered_map<std::string, int> used;
  for (std::size_t i = 0; i < tables.size(); ++i) {
    laminate::PlySpec& ply = spec.plies[i];
    if (tables[i].has("id") || tables[i].has("name") || ply.cloth.empty()) continue;
    const std::string stem = base::slug(ply.cloth);
    int& n = used[stem];
    do {
      ++n;
      ply.id = n == 1 ? stem : stem + "-" + std::to_string(n);
    } while (ids.has(ply.id));
    ply.name = ply.id;
  }
}

}  // namespace wetout::files
