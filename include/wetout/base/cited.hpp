// A number and where it comes from.
#pragma once

#include <string_view>

namespace wetout::base {

/// How far a number can be trusted.
enum class Standing {
  standard,  ///< published, source named
  practice,  ///< common practice in the trade, no source
  memory,    ///< to be confirmed
  assumed,   ///< our choice
  sheet,     ///< the product's data sheet
  fitted,    ///< from the user's own data
  demo,      ///< invented, only in data-demo/
};

std::string_view to_string(Standing standing);

/// `key` names an entry of docs/references.bib, or is empty when there is no source; `locator` is
/// the table, equation or page, or the reason for an assumed value.
struct Source {
  std::string_view key;
  std::string_view locator;
  Standing standing = Standing::assumed;
};

/// A physical constant with its source.
template <class T>
struct Cited {
  T value;
  Source source;
};

/// A default that a user's file or record may replace: value, the range it holds for, source.
template <class T>
struct Default {
  std::string_view name;  ///< stable, dotted: "loss.left_in_cup"
  T value;
  T low;
  T high;
  Source source;
};

}  // namespace wetout::base
