// Printing quantities for people, in one of two systems. Digits are sensible, "-0" never appears,
// the decimal mark is a point whatever the locale. `us` text reads back through units/read.hpp.
#pragma once

#include <string>
#include <string_view>

#include "wetout/base/problem.hpp"
#include "wetout/units/money.hpp"
#include "wetout/units/quantity.hpp"
#include "wetout/units/temperature.hpp"

namespace wetout::units {

enum class System { us, metric };

base::Result<System> read_system(std::string_view text);  ///< "us" | "metric"
std::string_view to_string(System system);

/// us: feet and inches to 1/16 in (`6 ft 4 in`, `20 3/4 in`); metric: `193 cm` above 1 m with
/// millimetres kept (`193.0 cm`), `52 mm` below 10 cm. Documented precision: 1/16 in, 1 mm.
std::string print(Length length, System system);
/// us: inches only (`25 1/8 in`); metric as print().
std::string print_inches(Length length, System system);
/// Film thickness: us mils? no - both systems print millimetres to 0.01: `0.18 mm`.
std::string print_thickness(Length thickness, System system);
std::string print(Area area, System system);                ///< us 0.1 ft², metric 0.01 m²
std::string print(Volume volume, System system);            ///< us 0.1 fl oz, metric 1 ml
std::string print_litres(Volume volume, System system);     ///< board volume: 0.1 l in both
/// Resin and cloth masses: metric `212 g`; us `212 g (7.5 oz)` is print_both; print gives `7.5 oz`.
std::string print(Mass mass, System system);                ///< us 0.1 oz, metric 1 g
/// A whole board: us `6 lb 4.2 oz`, metric `2.84 kg`.
std::string print_weight(Mass mass, System system);
std::string print(ArealWeight weight, System system);       ///< us 0.1 oz/yd², metric 1 g/m²
std::string print(Density density, System system);          ///< us 0.01 lb/ft³, metric 0.1 kg/m³
std::string print(Duration duration, System system);        ///< `17 min`, `1 h 25 min`, `7 days`
std::string print(Temperature temperature, System system);  ///< us whole °F, metric 0.1 °C
std::string print(TempDelta delta, System system);
std::string print_percent(double share);                    ///< 0.08 -> `8 %`, one decimal if needed
std::string print(const Money& money);                      ///< `48.00 USD`

/// A number with at most `decimals`, no trailing zeros, never "-0", point as decimal mark.
std::string print_number(double value, int decimals);

}  // namespace wetout::units
