#include <dl_creationadapter.h>
#include <dl_dxf.h>

#include <algorithm>
#include <map>
#include <numbers>
#include <sstream>

#include "drawing.hpp"

namespace wetout::board {
namespace {

constexpr double pi = std::numbers::pi;
constexpr int most_levels = 20;
constexpr std::size_t most_repeats = 10'000;
constexpr int pieces_a_span = 8;  // of a spline between two knots

double to_radians(double degrees) { return degrees * pi / 180.0; }

// Points and knots of a spline as they come.
struct Spline {
  std::size_t degree = 3;
  bool closed = false;
  std::vector<Vec> points, fit;
  std::vector<double> weights, knots;
};

// A rational B-spline by de Boor's algorithm, [piegl1997], 5.
class BSpline {
 public:
  explicit BSpline(const Spline& spline) : s_(spline) {}

  [[nodiscard]] bool good() const {
    return s_.degree >= 1 && s_.degree <= 16 && s_.points.size() > s_.degree &&
           s_.knots.size() == s_.points.size() + s_.degree + 1 &&
           std::is_sorted(s_.knots.begin(), s_.knots.end()) &&
           std::all_of(s_.weights.begin(), s_.weights.end(), [](double w) { return w > 0.0; });
  }

  [[nodiscard]] Vec at(double u) const {
    const std::size_t p = s_.degree;
    const auto above = std::upper_bound(s_.knots.begin() + static_cast<std::ptrdiff_t>(p),
                                        s_.knots.end() - static_cast<std::ptrdiff_t>(p) - 1, u);
    const auto k = static_cast<std::size_t>(above - s_.knots.begin()) - 1;
    struct Weighted {
      Vec v;
      double w;
    };
    std::vector<Weighted> d;
    for (std::size_t j = 0; j <= p; ++j) {
      const std::size_t i = k - p + j;
      d.push_back({s_.weights[i] * s_.points[i], s_.weights[i]});
    }
    for (std::size_t r = 1; r <= p; ++r) {
      for (std::size_t j = p; j >= r; --j) {
        const double low = s_.knots[k - p + j], high = s_.knots[j + 1 + k - r];
        const double a = high > low ? (u - low) / (high - low) : 0.0;
        d[j] = {(1.0 - a) * d[j - 1].v + a * d[j].v, (1.0 - a) * d[j - 1].w + a * d[j].w};
      }
    }
    return 1.0 / d[p].w * d[p].v;
  }

  // Cubics that meet it and its direction at many places.
  [[nodiscard]] std::vector<Cubic> pieces() const {
    std::vector<Cubic> out;
    for (std::size_t i = s_.degree; i + s_.degree + 1 < s_.knots.size(); ++i) {
      const double from = s_.knots[i], to = s_.knots[i + 1];
      if (!(to > from)) continue;
      const double step = (to - from) / pieces_a_span;
      for (int n = 0; n < pieces_a_span; ++n) {
        // A cubic through four points of the piece: at 0, 1/3, 2/3 and 1.
        const double u = from + n * step;
        const Vec a = at(u), b = at(u + step / 3.0), c = at(u + 2.0 * step / 3.0);
        const Vec e = n + 1 == pieces_a_span ? at_end(to) : at(u + step);
        out.push_back({{a, 1.0 / 6.0 * (18.0 * b - 5.0 * a - 9.0 * c + 2.0 * e),
                        1.0 / 6.0 * (18.0 * c - 9.0 * b + 2.0 * a - 5.0 * e), e}});
      }
    }
    return out;
  }

 private:
  [[nodiscard]] Vec at_end(double u) const {
    const double last = s_.knots[s_.knots.size() - s_.degree - 1];
    return at(u >= last ? std::nextafter(last, s_.knots.front()) : u);
  }

  const Spline& s_;
};

struct Insert {
  std::string block;
  Affine placed;
};
struct Layered {
  std::string layer;
  Chain chain;
};
struct Content {
  std::vector<Layered> chains;
  std::vector<std::pair<std::string, Insert>> inserts;  // with the layer
  Vec base;                                             // of a block
};

class Collector : public DL_CreationAdapter {
 public:
  Content drawing;
  std::map<std::string, Content> blocks;
  int units = 0;
  std::size_t pieces = 0;

  void setVariableInt(const std::string& key, int value, int /*code*/) override {
    if (key == "$INSUNITS") units = value;
  }

  void addBlock(const DL_BlockData& data) override {
    finish();
    into_ = &blocks[data.name];
    into_->base = {data.bpx, data.bpy};
  }
  void endBlock() override {
    finish();
    into_ = &drawing;
  }

  void addLine(const DL_LineData& data) override {
    finish();
    const Vec from{data.x1, data.y1}, to{data.x2, data.y2};
    if (length(to - from) > 0.0) add({{straight(from, to)}, false});
  }
  void addArc(const DL_ArcData& data) override {
    finish();
    double turn = std::fmod(data.angle2 - data.angle1, 360.0);
    if (turn <= 0.0) turn += 360.0;
    circle({data.cx, data.cy}, data.radius, to_radians(data.angle1), to_radians(turn), false);
  }
  void addCircle(const DL_CircleData& data) override {
    finish();
    circle({data.cx, data.cy}, data.radius, 0.0, 2.0 * pi, true);
  }
  void addEllipse(const DL_EllipseData& data) override {
    finish();
    double turn = std::fmod(data.angle2 - data.angle1, 2.0 * pi);
    if (turn <= 1e-12) turn += 2.0 * pi;
    const bool whole = turn > 2.0 * pi - 1e-9;
    const Affine placed{data.mx, data.my, -data.ratio * data.my, data.ratio * data.mx,
                        data.cx, data.cy};
    if (std::hypot(data.mx, data.my) > 0.0 && data.ratio > 0.0)
      add({arc(placed, data.angle1, turn), whole});
  }

  void addPolyline(const DL_PolylineData& data) override {
    finish();
    polyline_ = true;
    closed_ = (data.flags & 1) != 0;
  }
  void addVertex(const DL_VertexData& data) override {
    vertices_.push_back({data.x, data.y});
    bulges_.push_back(data.bulge);
  }

  void addSpline(const DL_SplineData& data) override {
    finish();
    spline_ = Spline{};
    spline_->degree = data.degree;
    spline_->closed = (data.flags & 1) != 0;
  }
  void addControlPoint(const DL_ControlPointData& data) override {
    if (!spline_) return;
    spline_->points.push_back({data.x, data.y});
    spline_->weights.push_back(data.w);
  }
  void addKnot(const DL_KnotData& data) override {
    if (spline_) spline_->knots.push_back(data.k);
  }
  void endEntity() override { finish(); }

  void addInsert(const DL_InsertData& data) override {
    finish();
    const double angle = to_radians(data.angle), c = std::cos(angle), s = std::sin(angle);
    const Affine turned{c, s, -s, c, data.ipx, data.ipy};
    const int columns = std::max(1, data.cols), rows = std::max(1, data.rows);
    if (static_cast<std::size_t>(columns) * static_cast<std::size_t>(rows) > most_repeats) return;
    for (int i = 0; i < columns; ++i) {
      for (int j = 0; j < rows; ++j) {
        const Affine scaled{data.sx, 0, 0, data.sy, i * data.colSp, j * data.rowSp};
        into_->inserts.push_back(
            {layer(), {data.name, seen_from_behind().after(turned.after(scaled))}});
      }
    }
  }

  // What is still open: entities say when they begin, not all of them when they end.
  void finish() {
    if (polyline_) polyline();
    if (spline_) spline();
    polyline_ = false;
    vertices_.clear();
    bulges_.clear();
    spline_.reset();
  }

 private:
  std::string layer() { return attributes.getLayer(); }

  // An entity that is seen from behind is drawn mirrored.
  Affine seen_from_behind() {
    const double* const direction = extrusion->getDirection();
    return direction[2] < 0.0 ? Affine{-1, 0, 0, 1, 0, 0} : Affine{};
  }

  void add(Chain chain) {
    pieces += chain.pieces.size();
    if (chain.pieces.empty() || pieces > most_drawing_pieces) return;
    into_->chains.push_back({layer(), std::move(chain)});
  }
  void circle(Vec centre, double radius, double from, double turn, bool closed) {
    if (!(radius > 0.0)) return;
    Chain chain{arc({radius, 0, 0, radius, centre.x, centre.y}, from, turn), closed};
    for (Cubic& piece : chain.pieces) piece = seen_from_behind().of(piece);
    add(std::move(chain));
  }

  // A bulge is the tangent of a quarter of the arc's angle, counter-clockwise above 0.
  void polyline() {
    Chain chain{{}, closed_};
    const std::size_t n = vertices_.size();
    for (std::size_t i = 0; i + (closed_ ? 0 : 1) < n; ++i) {
      const Vec from = vertices_[i], to = vertices_[(i + 1) % n];
      const double b = bulges_[i], chord = length(to - from);
      if (chord == 0.0) continue;
      if (std::abs(b) < 1e-12 || !std::isfinite(b)) {
        chain.pieces.push_back(straight(from, to));
        continue;
      }
      const double turn = 4.0 * std::atan(b);
      const Vec middle = 0.5 * (from + to),
                across{-(to.y - from.y) / chord, (to.x - from.x) / chord};
      // From the chord to the centre: half of it over the tangent of half the angle.
      const Vec centre = middle + 0.5 * chord * (1.0 - b * b) / (2.0 * b) * across;
      const double radius = chord * (1.0 + b * b) / (4.0 * std::abs(b));
      auto bent = arc({radius, 0, 0, radius, centre.x, centre.y},
                      std::atan2(from.y - centre.y, from.x - centre.x), turn);
      bent.front().p[0] = from;
      bent.back().p[3] = to;
      chain.pieces.insert(chain.pieces.end(), bent.begin(), bent.end());
    }
    for (Cubic& piece : chain.pieces) piece = seen_from_behind().of(piece);
    add(std::move(chain));
  }

  void spline() {
    const BSpline curve(*spline_);
    if (!curve.good()) return;
    Chain chain{curve.pieces(), false};
    if (chain.pieces.empty()) return;
    const double gap = length(chain.pieces.front().p[0] - chain.pieces.back().p[3]);
    if (spline_->closed && gap > 0.0) chain.pieces.back().p[3] = chain.pieces.front().p[0];
    chain.closed = spline_->closed;
    add(std::move(chain));
  }

  Content* into_ = &drawing;
  bool polyline_ = false, closed_ = false;
  std::vector<Vec> vertices_;
  std::vector<double> bulges_;
  std::optional<Spline> spline_;
};

class Flattening {
 public:
  Flattening(const Collector& read, std::string_view name) : read_(read), name_(name) {}

  base::Result<Drawing> run() {
    // y up the page, where other drawings have it down.
    place(read_.drawing, {1, 0, 0, -1, 0, 0}, "", 0);
    if (wrong_) return base::fail(std::move(*wrong_));
    for (auto& [layer, chains] : layers_)
      out_.shapes.push_back({layer, "layer", 0, std::move(chains)});
    constexpr std::pair<int, double> lengths[] = {
        {1, 0.0254}, {2, 0.3048}, {4, 1e-3}, {5, 1e-2}, {6, 1.0}};
    for (const auto& [unit, metres] : lengths) {
      if (read_.units != unit) continue;
      out_.metres = metres;
      out_.has_size = true;
    }
    return std::move(out_);
  }

 private:
  void refuse(std::string code, std::string message) {
    if (!wrong_)
      wrong_ = base::Problem{
          .code = std::move(code), .message = std::move(message), .file = std::string(name_)};
  }

  // What lies on layer 0 of a block takes the layer that the block is put on.
  void place(const Content& content, const Affine& placed, const std::string& layer, int level) {
    if (level > most_levels)
      return refuse("outline.too_deep", "blocks are nested deeper than anyone draws");
    for (const Layered& one : content.chains) {
      pieces_ += one.chain.pieces.size();
      if (pieces_ > most_drawing_pieces || wrong_)
        return refuse("outline.too_many", "the drawing has more lines than any outline");
      Chain chain = one.chain;
      for (Cubic& piece : chain.pieces) piece = placed.of(piece);
      layers_[level > 0 && one.layer == "0" ? layer : one.layer].push_back(std::move(chain));
    }
    for (const auto& [own, insert] : content.inserts) {
      const auto block = read_.blocks.find(insert.block);
      if (block == read_.blocks.end() || wrong_ || ++inserts_ > most_repeats) continue;
      const Vec base = block->second.base;
      place(block->second, placed.after(insert.placed).after({1, 0, 0, 1, -base.x, -base.y}),
            level > 0 && own == "0" ? layer : own, level + 1);
    }
  }

  const Collector& read_;
  std::string_view name_;
  Drawing out_;
  std::map<std::string, std::vector<Chain>> layers_;
  std::optional<base::Problem> wrong_;
  std::size_t pieces_ = 0, inserts_ = 0;
};

// Sums and squares of such numbers stay finite.
bool is_sane(const DrawnShape& shape) {
  constexpr double most = 1e12;
  for (const Chain& chain : shape.chains) {
    for (const Cubic& piece : chain.pieces) {
      for (const Vec& v : piece.p) {
        if (!(std::abs(v.x) <= most && std::abs(v.y) <= most)) return false;
      }
    }
  }
  return true;
}

}  // namespace

base::Result<Drawing> read_dxf(std::string_view bytes, std::string_view name) {
  const auto refused = [&](std::string code, std::string message) {
    return base::fail(base::Problem{
        .code = std::move(code), .message = std::move(message), .file = std::string(name)});
  };
  if (bytes.size() > most_drawing_bytes)
    return refused("outline.too_large", "the drawing is larger than 16 MiB");
  if (bytes.starts_with("AutoCAD Binary DXF"))
    return refused("outline.not_dxf", "this is the binary form of DXF: save it as text");
  Collector collector;
  std::istringstream stream{std::string(bytes)};
  DL_Dxf reader;
  if (!reader.in(stream, &collector))
    return refused("outline.not_dxf", "this cannot be read as a DXF drawing");
  collector.finish();
  if (collector.pieces > most_drawing_pieces)
    return refused("outline.too_many", "the drawing has more lines than any outline");
  return Flattening(collector, name).run();
}

base::Result<Drawing> read_drawing(std::string_view bytes, std::string_view name) {
  const std::string_view begin = bytes.substr(0, 4096);
  const std::size_t first = begin.find_first_not_of(" \t\r\n");
  const bool is_dxf = first != std::string_view::npos && begin[first] >= '0' &&
                      begin[first] <= '9' && begin.find("SECTION") != std::string_view::npos;
  if (bytes.size() <= most_drawing_bytes && !is_dxf && begin.find('<') == std::string_view::npos &&
      !begin.starts_with("AutoCAD")) {
    return base::fail({.code = "outline.not_drawing",
                       .message = "this is neither an SVG nor a DXF drawing",
                       .file = std::string(name),
                       .expected = "a drawing that was saved as SVG, or as DXF in its text form"});
  }
  auto drawing =
      is_dxf || begin.starts_with("AutoCAD") ? read_dxf(bytes, name) : read_svg(bytes, name);
  if (!drawing) return drawing;
  for (const DrawnShape& shape : drawing->shapes) {
    if (is_sane(shape)) continue;
    return base::fail({.code = "outline.number",
                       .message = "a place in the drawing is farther away than any board is long",
                       .file = std::string(name),
                       .line = shape.line,
                       .key = shape.what + (shape.id.empty() ? "" : "#" + shape.id)});
  }
  return drawing;
}

}  // namespace wetout::board
