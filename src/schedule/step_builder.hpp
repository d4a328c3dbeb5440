// Makes the steps of one board, coat by coat, in the order of the work (docs/models/schedule.md).
#pragma once

#include <array>
#include <cstddef>
#include <optional>
#include <string>
#include <utility>
#include <vector>

#include "wetout/schedule/steps.hpp"

namespace wetout::schedule {

// Part of a minute is not worth another five.
units::Duration on_grid_minutes(double m);
board::Face other_face(board::Face face);
std::size_t side_of(board::Face face);

class StepBuilder {
 public:
  StepBuilder(const BoardWork& board, const laminate::Shop& shop, const StepDefaults& defaults)
      : board_(board), shop_(shop), d_(defaults) {
    out_.wets.assign(board.coats.size(), -1);
    out_.sealed.assign(board.coats.size(), false);
    opened_.assign(board.coats.size(), false);
    sanded_.assign(board.coats.size(), false);
  }

  base::Result<BoardSteps> build();

 private:
  [[nodiscard]] const laminate::CoatSpec& spec(std::size_t i) const { return board_.coats[i]; }
  [[nodiscard]] const laminate::CoatNeed& need(std::size_t i) const { return board_.plan.coats[i]; }
  [[nodiscard]] const resin::Product& product(std::size_t i) const;
  [[nodiscard]] double rail_m() const { return units::in_metres(board_.plan.board.perimeter); }
  [[nodiscard]] double face_m2(board::Face face) const;

  // Whatever follows everything so far that takes place.
  int add(Step step);
  int add(std::size_t coat, StepWord word, std::string detail, double m, std::string title,
          std::string how = "", bool dusty = false, When when = {});
  void link(Link link) { out_.links.push_back(std::move(link)); }
  void after(std::size_t coat, Moment moment, int to, When when = {});
  int group(std::string id, std::vector<std::string> options, std::vector<std::string> texts);

  void begin();

  // --- one coat

  [[nodiscard]] bool laps_over(std::size_t i) const;
  [[nodiscard]] bool cut(std::size_t i) const;

  void coat(std::size_t i);

  void turn_up(board::Face face, std::size_t for_coat);

  void feather(std::size_t i);
  void finish_feathers();

  [[nodiscard]] bool notice_band(std::size_t film) const;
  [[nodiscard]] bool wet_on_wet(std::size_t film, std::size_t coat) const;

  // A film that the coat lands on: inside its window, or washed and scuffed first. `which` tells
  // several bands apart.
  void land(std::size_t i, std::size_t film, bool band, std::vector<Link>& landing,
            const std::string& which);

  int prepare(std::size_t i);

  [[nodiscard]] double minutes_beside_spreading(std::size_t i) const;
  [[nodiscard]] std::string wet_title(std::size_t i) const;
  [[nodiscard]] std::string wet_how(std::size_t i) const;

  void afterwards(std::size_t i);

  // --- afterwards

  void sand_hotcoats();
  void open_inserts(std::size_t hotcoat);
  // Whoever works on the face that lies below turns the board onto films that can be handled.
  void lie_on_the_other_face(board::Face face, int step);
  void sand(std::size_t i, double per_area, std::string how, bool dry);
  void spot();
  void polish_glosses();

  const BoardWork& board_;
  const laminate::Shop& shop_;
  const StepDefaults& d_;
  std::vector<std::size_t> order_;  // of the coats
  BoardSteps out_;
  std::vector<int> tails_;
  std::vector<std::pair<int, double>> waits_;  // the first wet waits for these, so many minutes
  std::optional<board::Face> up_;
  std::array<std::optional<std::size_t>, 2> film_on_;  // last full coat of each face
  std::array<std::vector<std::size_t>, 2> lap_on_;     // laps that lie on it since
  std::array<std::vector<std::size_t>, 2> fills_on_;   // inserts set in it since
  std::vector<std::size_t> wet_since_flip_, to_feather_, feathered_;
  std::vector<int> laps_group_;
  std::vector<bool> opened_, sanded_;
};

}  // namespace wetout::schedule
