// outline = "board.svg": a drawing instead of widths.
#include <fmt/format.h>

#include <cmath>
#include <string>
#include <utility>

#include "job_parts.hpp"
#include "wetout/board/hull.hpp"
#include "wetout/board/read_outline.hpp"
#include "wetout/units/print.hpp"

namespace wetout::files {
namespace {

using board::Toward;

constexpr Word<Toward> noses[] = {
    {"up", Toward::up}, {"down", Toward::down}, {"left", Toward::left}, {"right", Toward::right}};
constexpr std::string_view file_example = "board.svg";
// Nearer than this the drawing and a tape agree.
constexpr double same_width = 3e-3;  // metres

struct Named {
  std::string file;
  board::OutlineRequest request;
};

void split(std::string text, Named& named) {
  const std::size_t hash = text.rfind('#');
  named.file = text.substr(0, hash);
  if (hash != std::string::npos) named.request.id = text.substr(hash + 1);
}

std::optional<Named> named_in(Fields& board) {
  Named named;
  const toml::node* node = board.find("outline");
  if (node == nullptr || !node->is_table()) {
    auto text = board.text("outline", file_example);
    if (!text) return std::nullopt;
    split(std::move(*text), named);
    return named;
  }
  Fields fields(board.document(), *node->as_table(), board.path_of("outline"));
  auto file = fields.text("file", file_example, Must::be_there);
  if (file) split(std::move(*file), named);
  if (auto id = fields.text("id", "outline")) named.request.id = std::move(*id);
  named.request.nose = fields.choice("nose", noses);
  fields.done();
  return file ? std::optional(std::move(named)) : std::nullopt;
}

// At the key of the job file; the drawing's own place stands in the message.
void report(Fields& board, base::Problems problems) {
  for (base::Problem& one : problems) {
    std::string where = one.file;
    if (one.line > 0) where += ":" + std::to_string(one.line);
    if (!one.key.empty()) where += ": " + one.key;
    if (!where.empty()) one.message = where + ": " + one.message;
    one.file.clear();
    one.key.clear();
    one.line = 0;
    board.wrong_value("outline", std::move(one));
  }
}

}  // namespace

void read_outline(BoardReading& reading, const ReadBeside& read) {
  Fields& board = reading.board;
  auto named = named_in(board);
  if (!named || !reading.length) return;
  auto bytes = read ? read(named->file)
                    : base::fail({.code = "outline.unread",
                                  .message = "the drawing is not at hand here",
                                  .expected = "a job file that is read from a folder"});
  if (!bytes) return report(board, std::move(bytes.error()));
  board::Spec& spec = reading.spec();
  named->request.length = *reading.length;
  named->request.tail_end = spec.tail;
  named->request.nose_end = spec.nose;
  auto outline = board::read_outline(*bytes, named->file, named->request);
  reading.job.outline = Attachment{named->file, std::move(*bytes)};
  if (!outline) return report(board, std::move(outline.error()));
  spec.drawn = std::move(outline->drawn);
  spec.width = std::move(outline->width);
  reading.job.notices = std::move(outline->notices);
}

void compare_figures(BoardReading& reading) {
  board::Spec& spec = reading.spec();
  if (!spec.drawn || reading.figures.empty()) return;
  const auto hull = board::Hull::make(spec);
  if (!hull) return;  // said when it is planned
  for (const Figure& figure : reading.figures) {
    const units::Length drawn =
        figure.from_tail ? hull->width(*figure.from_tail) : hull->max_width();
    if (std::abs((drawn - figure.width).si()) <= same_width) continue;
    reading.job.notices.push_back({.code = "outline.figures",
                                   .text = "the drawing has another width: it is the one used",
                                   .subject = figure.key,
                                   .value = units::in_millimetres(drawn),
                                   .limit = units::in_millimetres(figure.width),
                                   .unit = "mm"});
  }
}

}  // namespace wetout::files
