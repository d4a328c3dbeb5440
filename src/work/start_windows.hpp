// Runs of starts that the limits say the same of.
#pragma once

#include <string>
#include <string_view>
#include <vector>

#include "wetout/report/weather_document.hpp"
#include "wetout/schedule/limits.hpp"
#include "wetout/time/zone.hpp"

namespace wetout::work {

/// In words: "good", "too cold", "weather ends".
std::string_view reason_of(const schedule::Verdict& verdict, const schedule::OpenFilm& film,
                           const schedule::Conditions& conditions);

/// `films` started one after the other; the last window ends at `to`.
std::vector<report::StartWindow> start_windows(const std::vector<schedule::OpenFilm>& films,
                                               time::Instant to,
                                               const schedule::LimitTester& tester,
                                               const schedule::FilmRules& rules,
                                               const time::Zone& zone);

}  // namespace wetout::work
