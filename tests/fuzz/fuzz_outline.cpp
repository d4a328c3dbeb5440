#include <cmath>
#include <cstddef>
#include <cstdint>
#include <cstdio>
#include <cstdlib>
#include <source_location>
#include <string_view>

#include "wetout/board/read_outline.hpp"

namespace {
void must(bool holds, std::source_location at = std::source_location::current()) {
  if (holds) return;
  std::fprintf(stderr, "line %u does not hold\n", static_cast<unsigned>(at.line()));
  std::abort();
}
}  // namespace

// The first byte chooses ends and nose; the rest is the drawing.
extern "C" int LLVMFuzzerTestOneInput(const std::uint8_t* data, std::size_t size) {
  using namespace wetout::board;
  if (size == 0) return 0;
  OutlineRequest request;
  request.length = wetout::units::metres(1.9);
  // "<" of a seed is 0x3c: round ends, nose up.
  const std::uint8_t choice = data[0] ^ 0x3cU;
  request.tail_end.shape = (choice & 1U) != 0U ? EndShape::square : EndShape::round;
  request.nose_end.shape = (choice & 2U) != 0U ? EndShape::square : EndShape::point;
  if ((choice & 4U) != 0U) request.nose = static_cast<Toward>((choice >> 3U) & 3U);
  const std::string_view text(reinterpret_cast<const char*>(data), size);
  const auto outline = read_outline(text, "fuzz.svg", request);
  if (!outline) {
    must(!outline.error().empty());
    for (const auto& problem : outline.error())
      must(!problem.code.empty() && !problem.message.empty());
    return 0;
  }
  const auto& knots = outline->drawn.knots;
  must(knots.size() >= 2 && outline->width.size() == knots.size());
  must(outline->drawn.tail_roots + outline->drawn.nose_roots < knots.size());
  double last = -1.0;
  for (const Knot& knot : knots) {
    must(knot.from_tail.si() > last && knot.from_tail.si() <= 1.9 + 1e-9);
    must(std::isfinite(knot.half_width.si()) && knot.half_width.si() >= 0.0);
    must(std::isfinite(knot.slope_behind) && std::isfinite(knot.slope_ahead));
    last = knot.from_tail.si();
  }
  must(std::isfinite(outline->drawn.tail_radius.si() + outline->drawn.nose_radius.si()));
  return 0;
}
