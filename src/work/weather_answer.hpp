// The coming days without files and clock.
#pragma once

#include "weather_in_use.hpp"
#include "wetout/climate/defaults.hpp"
#include "wetout/climate/room.hpp"
#include "wetout/report/weather_document.hpp"
#include "wetout/resin/answer_cache.hpp"
#include "wetout/resin/defaults.hpp"
#include "wetout/resin/product.hpp"
#include "wetout/schedule/defaults.hpp"
#include "wetout/work/defaults.hpp"

namespace wetout::work {

struct WeatherQuestion {
  const WeatherInUse& use;
  const resin::Product& product;
  const climate::Room& room;
  climate::Guard guard = climate::Guard::normal;
  time::Instant from, to;  ///< inside the weather, `from` before `to`
  time::Zone zone;
};

struct WeatherAssumed {
  WorkDefaults work;
  schedule::LimitDefaults limits;
  climate::ClimateDefaults climate;
  climate::WeatherDefaults reading;
  resin::Defaults resin;
};

/// All but program and made. Keys of problems: lines of a data sheet ("gel").
base::Result<report::WeatherDocument> weather_answer(const WeatherQuestion& question,
                                                     const WeatherAssumed& assumed,
                                                     resin::AnswerCache* cache);

}  // namespace wetout::work
