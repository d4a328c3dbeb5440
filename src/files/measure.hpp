// What a key's value must be: how it is read, in what range it makes sense, how to say so.
#pragma once

#include <string>
#include <string_view>

#include "wetout/base/problem.hpp"
#include "wetout/units/read.hpp"

namespace wetout::files {

template <class T>
struct Measure {
  base::Result<T> (*read)(std::string_view);
  std::string_view wanted;   ///< "a length"
  std::string_view unit;     ///< the one a bare number is most likely meant in
  std::string_view example;  ///< for this very key
  T low;
  bool low_allowed;
  T high;
  std::string_view range;  ///< the same for people: "more than 0"
};

template <class T>
bool within(const Measure<T>& measure, const T& value) {
  const bool above = measure.low_allowed ? value >= measure.low : value > measure.low;
  return above && value <= measure.high;
}
inline bool within(const Measure<units::DurationRange>& measure,
                   const units::DurationRange& value) {
  return value.low > measure.low.low && value.high <= measure.high.high;
}
inline bool within(const Measure<units::Money>& /*measure*/, const units::Money& value) {
  return value.minor >= 0;
}
inline bool within(const Measure<std::string>& /*measure*/, const std::string& /*value*/) {
  return true;
}

// Limits are where a value stops making sense on a board or in a shop, wide enough that only a
// wrong unit or a slip of the hand lies beyond.
namespace measures {

using units::Density;
using units::Duration;
using units::Length;
using units::Temperature;

constexpr Measure<Length> length(std::string_view example, Length low, bool low_allowed,
                                 Length high, std::string_view range,
                                 std::string_view unit = "in") {
  return {units::read_length, "a length", unit, example, low, low_allowed, high, range};
}
inline constexpr auto board_length =
    length("6 ft 4 in", Length{}, false, units::metres(12), "more than 0 and at most 12 m");
inline constexpr auto width =
    length("20 3/4 in", Length{}, false, units::metres(3), "more than 0 and at most 3 m");
inline constexpr auto tip_width = length("6 in", Length{}, true, units::metres(3), "from 0 to 3 m");
inline constexpr auto thickness =
    length("2 5/8 in", Length{}, false, units::metres(1), "more than 0 and at most 1 m");
inline constexpr auto tip_thickness =
    length("3/8 in", Length{}, true, units::metres(1), "from 0 to 1 m");
inline constexpr auto rocker = length("5 in", Length{}, true, units::metres(2), "from 0 to 2 m");
inline constexpr auto offset =
    length("1 in", -units::metres(6), true, units::metres(6), "on the board");
inline constexpr auto place =
    length("14 in", Length{}, true, units::metres(12), "0 or more and on the board");
inline constexpr auto depth =
    length("4 in", Length{}, false, units::metres(3), "more than 0 and on the board");
inline constexpr auto lap = length("2 in", Length{}, true, units::metres(1), "from 0 to 1 m");
inline constexpr auto gap = length("3 mm", Length{}, false, units::millimetres(100),
                                   "more than 0 and at most 100 mm", "mm");
inline constexpr auto film =
    length("0.18 mm", Length{}, true, units::millimetres(5), "from 0 to 5 mm", "mm");
inline constexpr auto cup_diameter =
    length("105 mm", Length{}, false, units::metres(2), "more than 0 and at most 2 m", "mm");
inline constexpr auto roll_width =
    length("30 in", Length{}, false, units::metres(5), "more than 0 and at most 5 m");
inline constexpr auto roll_length =
    length("10 yd", Length{}, false, units::metres(10000), "more than 0 and at most 10 km", "yd");

inline constexpr Measure<units::Mass> core_weight{units::read_mass,
                                                  "a mass",
                                                  "kg",
                                                  "2.4 kg",
                                                  units::Mass{},
                                                  false,
                                                  units::kilograms(200),
                                                  "more than 0 and at most 200 kg"};
inline constexpr Measure<units::Mass> small_mass{
    units::read_mass,     "a mass",         "g", "10 g", units::Mass{}, true,
    units::kilograms(50), "from 0 to 50 kg"};
inline constexpr Measure<units::Mass> positive_mass{units::read_mass,
                                                    "a mass",
                                                    "g",
                                                    "150 g",
                                                    units::Mass{},
                                                    false,
                                                    units::kilograms(200),
                                                    "more than 0 and at most 200 kg"};
inline constexpr Measure<units::Mass> scale_step{
    units::read_mass,  "a mass",         "g", "1 g", units::grams(0.01), true,
    units::grams(100), "0.01 g to 100 g"};

inline constexpr Measure<Density> foam_density{units::read_density,
                                               "a density",
                                               "lb/ft3",
                                               "2 lb/ft3",
                                               Density{},
                                               false,
                                               units::kilograms_per_cubic_metre(500),
                                               "more than 0 and at most 500 kg/m3 (31 lb/ft3)"};
constexpr Measure<Density> density_from(std::string_view example, double low, double high,
                                        std::string_view range) {
  return {units::read_density,
          "a density",
          "g/ml",
          example,
          units::grams_per_millilitre(low),
          true,
          units::grams_per_millilitre(high),
          range};
}
// From hollow spheres, heaped, to solid metal.
inline constexpr auto density = density_from("1.13 g/ml", 0.03, 20, "from 0.03 to 20 g/ml");
inline constexpr auto cured_density = density_from("1.15 g/ml", 0.5, 3, "from 0.5 to 3 g/ml");
inline constexpr auto fibre_density = density_from("2.54 g/ml", 0.5, 5, "from 0.5 to 5 g/ml");
inline constexpr Measure<units::ArealWeight> cloth_weight{units::read_areal_weight,
                                                          "a weight per area",
                                                          "oz/yd2",
                                                          "4 oz/yd2",
                                                          units::ArealWeight{},
                                                          false,
                                                          units::grams_per_square_metre(5000),
                                                          "more than 0 and at most 5000 g/m2"};
inline constexpr Measure<units::ArealWeight> uptake{units::read_areal_weight,
                                                    "a mass per area",
                                                    "g/m2",
                                                    "60 g/m2",
                                                    units::ArealWeight{},
                                                    true,
                                                    units::grams_per_square_metre(2000),
                                                    "from 0 to 2000 g/m2"};
inline constexpr Measure<units::LinearWeight> run_off{
    units::read_linear_weight,   "a mass per length", "g/m", "6 g/m", units::LinearWeight{}, true,
    units::grams_per_metre(500), "from 0 to 500 g/m"};
inline constexpr Measure<units::Pace> pace{units::read_pace,
                                           "a time per area",
                                           "min/m2",
                                           "7 min/m2",
                                           units::Pace{},
                                           false,
                                           units::minutes_per_square_metre(600),
                                           "more than 0 and at most 600 min/m2"};
inline constexpr Measure<units::Volume> cup_volume{units::read_volume,
                                                   "a volume",
                                                   "ml",
                                                   "900 ml",
                                                   units::Volume{},
                                                   false,
                                                   units::litres(200),
                                                   "more than 0 and at most 200 l"};
inline constexpr Measure<units::Volume> fill{units::read_volume,
                                             "a volume",
                                             "ml",
                                             "18 ml",
                                             units::Volume{},
                                             false,
                                             units::litres(20),
                                             "more than 0 and at most 20 l"};

constexpr Measure<Temperature> temperature(std::string_view example, double low_c, double high_c,
                                           std::string_view range) {
  return {units::read_temperature,
          "a temperature",
          "C",
          example,
          Temperature::celsius(low_c),
          true,
          Temperature::celsius(high_c),
          range};
}
inline constexpr auto air = temperature("22 C", -20, 60, "from -20 C to 60 C (-4 F to 140 F)");
inline constexpr auto sheet_air =
    temperature("25 C", -20, 60, "from -20 C to 60 C (-4 F to 140 F)");
inline constexpr auto glass_point = temperature("68 C", 0, 300, "from 0 C to 300 C");

constexpr Measure<double> percent(std::string_view example, double low, bool low_allowed,
                                  double high, std::string_view range) {
  return {units::read_percent, "a percentage", "%", example, low, low_allowed, high, range};
}
inline constexpr auto share = percent("2 %", 0.0, false, 1.0, "more than 0 % and at most 100 %");
inline constexpr auto humidity =
    percent("80 %", 0.0, false, 1.0, "more than 0 % and at most 100 %");
inline constexpr auto any_share = percent("8 %", 0.0, true, 1.0, "from 0 % to 100 %");
inline constexpr auto tolerance =
    percent("3 %", 0.0, false, 0.25, "more than 0 % and at most 25 %");
inline constexpr auto dose = percent("1.5 %", 0.0, false, 0.10, "more than 0 % and at most 10 %");
inline constexpr auto apex = percent("40 %", 0.01, true, 0.99, "from 1 % to 99 %");
inline constexpr auto fibre_fraction = percent("50 %", 0.10, true, 0.90, "from 10 % to 90 %");

inline constexpr Measure<Duration> lag{
    units::read_duration, "a time",          "h", "2.5 h", Duration{}, true,
    units::days(7),       "from 0 to 7 days"};
inline constexpr Measure<Duration> attended{
    units::read_duration,          "a time", "min", "20 min", Duration{}, false, units::hours(12),
    "more than 0 and at most 12 h"};
inline constexpr Measure<units::DurationRange> sheet_time{units::read_duration_range,
                                                          "a time or a range of times",
                                                          "h",
                                                          "5-6 h",
                                                          {Duration{}, Duration{}},
                                                          false,
                                                          {units::days(365), units::days(365)},
                                                          "more than 0 and at most 365 days"};
inline constexpr Measure<units::DurationRange> pot_life_time{units::read_duration_range,
                                                             "a time or a range of times",
                                                             "min",
                                                             "25-30 min",
                                                             {Duration{}, Duration{}},
                                                             false,
                                                             {units::days(30), units::days(30)},
                                                             "more than 0 and at most 30 days"};

inline const Measure<units::Money> price{
    units::read_money, "an amount of money", "USD", "48.00 USD", {}, true, {}, "0 or more"};
inline const Measure<units::Money> wage{units::read_money_per_hour,
                                        "money for an hour",
                                        "USD/h",
                                        "30 USD/h",
                                        {},
                                        true,
                                        {},
                                        "0 or more"};

}  // namespace measures
}  // namespace wetout::files
