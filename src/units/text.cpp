#include "text.hpp"

#include <array>

namespace wetout::units {
namespace {

struct Swap {
  std::string_view from;
  std::string_view to;
};

constexpr auto swaps = std::to_array<Swap>({
    {"\u2032", "'"},                                            // prime
    {"\u2019", "'"},                                            // right single quote
    {"\u2018", "'"},                                            // left single quote
    {"\u00b4", "'"},                                            // acute accent
    {"\u2033", "\""},                                           // double prime
    {"\u201d", "\""},                                           // right double quote
    {"\u201c", "\""},                                           // left double quote
    {"\u2212", "-"},                                            // minus sign
    {"\u2010", "-"},                                            // hyphen
    {"\u2011", "-"},                                            // hyphen that does not break
    {"\u2012", "-"},                                            // figure dash
    {"\u2013", "-"},                                            // en dash
    {"\u2014", "-"},                                            // em dash
    {"\u00a0", " "},                                            // blank that does not break
    {"\u202f", " "},                                            // the same, narrow
    {"\u2009", " "},                                            // thin blank
    {"\u2044", "/"},                                            // fraction slash
    {"\u2215", "/"},                                            // division slash
    {"\u00b2", "^2"},                                           // superscript two
    {"\u00b3", "^3"},                                           // superscript three
    {"\u00b0", "deg "},                                         // degree sign
    {"\u00ba", "deg "},                                         // masculine ordinal, typed for it
    {"\u2103", "deg c"}, {"\u2109", "deg f"}, {"\u00b5", "u"},  // micro sign
    {"\u03bc", "u"},                                            // Greek mu
    {"\u00bd", " 1/2"},  {"\u2153", " 1/3"},  {"\u2154", " 2/3"}, {"\u00bc", " 1/4"},
    {"\u00be", " 3/4"},  {"\u215b", " 1/8"},  {"\u215c", " 3/8"}, {"\u215d", " 5/8"},
    {"\u215e", " 7/8"},  {"\t", " "},
});

}  // namespace

std::string plain(std::string_view text) {
  std::string out;
  out.reserve(text.size());
  for (std::size_t i = 0; i < text.size();) {
    const char c = text[i];
    const Swap* found = nullptr;
    // Nearly everything typed is ASCII, and a file may hold ten thousand quantities.
    if (static_cast<unsigned char>(c) >= 0x80) {
      for (const Swap& swap : swaps) {
        if (text.substr(i, swap.from.size()) == swap.from) found = &swap;
      }
    }
    if (found != nullptr) {
      out += found->to;
      i += found->from.size();
    } else {
      const bool capital = c >= 'A' && c <= 'Z';
      out += capital ? static_cast<char>(c - 'A' + 'a') : c == '\t' ? ' ' : c;
      ++i;
    }
  }
  return out;
}

std::string_view trimmed(std::string_view text) {
  while (!text.empty() && text.front() == ' ') text.remove_prefix(1);
  while (!text.empty() && text.back() == ' ') text.remove_suffix(1);
  return text;
}

}  // namespace wetout::units
