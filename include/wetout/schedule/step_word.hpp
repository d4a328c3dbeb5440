// What is done to a board, one word each; the words are those of the command line and of the log.
#pragma once

#include <array>
#include <cstddef>
#include <optional>
#include <string>
#include <string_view>

namespace wetout::schedule {

enum class StepWord {
  acclimatise,  ///< board, cloth and resin take the room's temperature
  spackle,      ///< dents and torn foam
  artwork,
  prepare,  ///< dust, cut, lay out, tape; of an install: rout
  wet,      ///< the coat itself, whatever its kind
  watch,    ///< 15, 30, 60 min after: drips, dry cloth, bubbles, lifted laps
  trim,     ///< cut laps, while the film is rubber
  peel,     ///< tape
  flip,     ///< for this coat
  feather,  ///< the edge of cut laps
  wash,     ///< before scuffing or sanding
  scuff,
  open,  ///< inserts under a hotcoat
  sand,
  spot,  ///< fill pinholes and what was sanded through
  polish,
  weigh,
  ride,
};

inline constexpr std::size_t step_word_count = 18;
inline constexpr std::array<StepWord, step_word_count> step_words{
    StepWord::acclimatise, StepWord::spackle, StepWord::artwork, StepWord::prepare,
    StepWord::wet,         StepWord::watch,   StepWord::trim,    StepWord::peel,
    StepWord::flip,        StepWord::feather, StepWord::wash,    StepWord::scuff,
    StepWord::open,        StepWord::sand,    StepWord::spot,    StepWord::polish,
    StepWord::weigh,       StepWord::ride};

std::string_view to_string(StepWord word);
/// "feather"; nothing for another word.
std::optional<StepWord> read_step_word(std::string_view text);

/// Done to the board as a whole rather than for one coat: acclimatise, spackle, artwork, spot,
/// weigh, ride.
bool is_of_board(StepWord word);

/// Work by hand whose minutes differ from shop to shop: prepare, trim, feather, wash, scuff, open,
/// sand, polish. A coat's own goes by laminate::Spreading.
bool has_own_pace(StepWord word);

/// One step of one board. As text "bottom-lam/wet", "bottom-lam/watch-30", "weigh"; before it the
/// job: "sandpiper/bottom-lam/wet".
struct StepName {
  std::string coat = {};  ///< id; empty for a step of the whole board
  StepWord word = StepWord::wet;
  std::string detail = {};  ///< "30" of watch-30, "laps" of scuff-laps; mostly empty

  friend bool operator==(const StepName&, const StepName&) = default;
};

std::string to_string(const StepName& name);
/// The other way; "bottom-lam" alone is its wet. Nothing where no word is known. Whether such a
/// coat exists is for the caller to know.
std::optional<StepName> read_step_name(std::string_view text);

}  // namespace wetout::schedule
