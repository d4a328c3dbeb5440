#include "wetout/files/job_file.hpp"

#include <array>
#include <utility>

#include "job_parts.hpp"
#include "measure.hpp"
#include "text_file.hpp"

namespace wetout::files {
namespace {

constexpr auto homes = std::to_array<Home>({
    {"length", "[board]"},
    {"foam", "[board]"},
    {"foam_density", "[board]"},
    {"core_weight", "[board]"},
    {"stringer_weight", "[board]"},
    {"outline", "[board]"},
    {"nose12", "[board.width], [board.thickness] and [board.rocker]"},
    {"tail12", "[board.width], [board.thickness] and [board.rocker]"},
    {"wide", "[board.width]"},
    {"wide_point", "[board.width]"},
    {"centre", "[board.thickness]"},
    {"at", "[[board.station]]"},
    {"station", "[board]: [[board.station]]"},
    {"depth", "tail = { shape = \"swallow\", depth = \"4 in\" }"},
    {"fullness", "rail = { name = \"60/40\", fullness = \"medium\" }"},
    {"exponent", "rail = { name = \"60/40\", exponent = 2.5 }"},
    {"apex", "rail = { apex = \"40 %\", fullness = \"medium\" }"},
    {"face", "[[coat]]"},
    {"kind", "[[coat]]"},
    {"resin", "[[coat]]"},
    {"laps", "[[coat]]"},
    {"additives", "[[coat]]"},
    {"after", "[[coat]]"},
    {"part", "[[coat]]"},
    {"count", "[[coat]]"},
    {"fill", "[[coat]]"},
    {"gap", "[[coat]]"},
    {"film", "[[coat]]"},
    {"ply", "[[coat]]: [[coat.ply]]"},
    {"lap", "[[coat.ply]]"},
    {"cloth", "[[coat.ply]]"},
    {"from_tail", "[[coat.ply]]"},
    {"to", "[[coat.ply]]"},
    {"spackle", "[steps]"},
    {"artwork", "[steps]"},
    {"spot", "[steps]"},
    {"shop", "the shop file"},
    {"room", "the shop file"},
    {"hours", "the shop file"},
    {"material", "the shop file"},
    {"losses", "the shop file"},
    {"pace", "the shop file"},
    {"costs", "the shop file"},
});

}  // namespace

base::Result<JobFile> parse_job(std::string text, std::string name, const board::Defaults& defaults,
                                const ReadBeside& read) {
  JobFile job;
  job.source = {std::move(name), std::move(text), {"board", "coat", "steps"}};
  base::Result<Document> document = Document::parse(job.source.text, job.source.name);
  if (!document) return base::fail(std::move(document.error()));
  document->set_homes(homes);

  Fields root(*document, document->root(), "");
  if (root.has("shop") && !root.has("board")) {
    return base::fail({.code = "file.other_kind",
                       .message = "this is a shop file, not a job file",
                       .file = job.source.name,
                       .expected = "a job file, with a table [board] and at least one [[coat]]",
                       .hint = "name the job file here and the shop file with --shop"});
  }
  if (auto board = root.subtable("board", "[board]", Must::be_there)) {
    read_board(std::move(*board), job, defaults, read);
  }
  read_coats(root, job);
  if (auto steps = root.subtable("steps", "[steps]")) {
    job.steps.spackle = steps->quantity("spackle", measures::attended);
    job.steps.artwork = steps->quantity("artwork", measures::attended);
    job.steps.spot = steps->quantity("spot", measures::attended);
    steps->done();
  }
  root.done();
  if (!document->faultless()) return base::fail(document->take_problems());
  return job;
}

base::Result<JobFile> read_job(const std::filesystem::path& path, const board::Defaults& defaults) {
  base::Result<std::string> text = read_text(path);
  if (!text) return base::fail(std::move(text.error()));
  return parse_job(std::move(*text), path.string(), defaults, [&](const std::string& name) {
    return read_bytes(path.parent_path() / name, drawing_file);
  });
}

}  // namespace wetout::files
