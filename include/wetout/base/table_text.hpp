// Lines, cells and numbers of tables that are text. Views into the bytes, no copies; nothing
// depends on the locale.
#pragma once

#include <optional>
#include <string>
#include <string_view>
#include <vector>

namespace wetout::base {

std::string_view trimmed(std::string_view text);
/// Letters A to Z small, everything that is no letter, digit or byte beyond ASCII one blank, none
/// at the ends: "Dew_Point " is "dew point".
std::string plain_name(std::string_view text);
bool equal_but_for_case(std::string_view a, std::string_view b);

/// One line after the other, ended by LF or CRLF, or by CR where the text has no LF; the end of the
/// last may be missing.
class TextLines {
 public:
  explicit TextLines(std::string_view text)
      : rest_(text), mark_(text.find('\n') == std::string_view::npos ? '\r' : '\n') {}
  /// False when there is none left.
  bool next();
  [[nodiscard]] std::string_view line() const { return line_; }
  [[nodiscard]] int number() const { return number_; }  ///< from 1
  /// The line is the last one and nothing ended it.
  [[nodiscard]] bool cut_off() const { return cut_off_; }

 private:
  std::string_view rest_;
  char mark_;
  std::string_view line_;
  int number_ = 0;
  bool cut_off_ = false;
};

enum class Split { whole, open_quote, too_many };
inline constexpr std::size_t most_cells = 1000;

/// Splits at the delimiter, but not inside double quotes (rfc4180). A cell is trimmed and its
/// quotes are taken off; a doubled quote inside stays doubled. An open quote is not closed on the
/// line, or something other than a delimiter follows its end.
Split split(std::string_view line, char delimiter, std::vector<std::string_view>& cells);

/// Where `part` of `line` begins, in characters from 1.
int column_of(std::string_view line, std::string_view part);

/// The whole text as a number, a plus sign allowed; nan and inf come back as such. Nothing when it
/// is no number or beyond a double.
std::optional<double> to_number(std::string_view text, bool decimal_comma = false);
std::optional<int> to_int(std::string_view text);

}  // namespace wetout::base
