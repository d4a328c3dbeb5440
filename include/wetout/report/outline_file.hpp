// The outline as a file that drawing programs and machines open.
#pragma once

#include <string>
#include <string_view>

#include "wetout/board/hull.hpp"

namespace wetout::report {

/// In every such file that is made here.
inline constexpr std::string_view outline_svg_mark = "<!-- wetout: outline at full size -->";
inline constexpr std::string_view outline_dxf_mark = "wetout: outline at full size";
inline constexpr std::string_view outline_dxf_begins = "0\nSECTION";

/// SVG 1.1 in millimetres, nose up: one closed path "outline" of cubics, within 1e-7 m of the
/// board's outline at the apex, with its cut ends and its notch.
std::string outline_svg(const board::Hull& hull);

/// DXF of the oldest release that is still read everywhere (AC1009), in millimetres, nose up: one
/// closed POLYLINE of arcs on the layer "outline", within 2e-7 m.
std::string outline_dxf(const board::Hull& hull);

}  // namespace wetout::report
