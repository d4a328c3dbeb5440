// A weather document to print: nothing here is a model's answer.
#pragma once

#include "wetout/report/weather_document.hpp"

namespace wetout::report::sample {

/// Two days of October in UTC with every reason a start can have, a gap, a notice.
WeatherDocument weather();
/// Everything that may be unknown is unknown: one window, no humidity.
WeatherDocument bare_weather();

}  // namespace wetout::report::sample
