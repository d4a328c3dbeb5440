#include "wetout/laminate/coat.hpp"

#include "wetout/base/check.hpp"

namespace wetout::laminate {

std::string_view to_string(CoatKind kind) {
  switch (kind) {
    case CoatKind::seal:
      return "seal";
    case CoatKind::laminate:
      return "laminate";
    case CoatKind::install:
      return "install";
    case CoatKind::hotcoat:
      return "hotcoat";
    case CoatKind::gloss:
      return "gloss";
  }
  base::broken_promise("coat kind outside its list");
}

std::string_view to_string(Laps laps) {
  switch (laps) {
    case Laps::cut:
      return "cut";
    case Laps::free:
      return "free";
  }
  base::broken_promise("laps outside their list");
}

std::string_view to_string(board::Face face) {
  switch (face) {
    case board::Face::deck:
      return "deck";
    case board::Face::bottom:
      return "bottom";
  }
  base::broken_promise("face outside its list");
}

std::string_view to_string(board::Foam foam) {
  switch (foam) {
    case board::Foam::eps:
      return "eps";
    case board::Foam::xps:
      return "xps";
    case board::Foam::pu:
      return "pu";
  }
  base::broken_promise("foam outside its list");
}

}  // namespace wetout::laminate
