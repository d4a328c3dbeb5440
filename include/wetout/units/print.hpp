// Printing quantities for people, in one of two systems. Digits are sensible, "-0" never appears,
// the decimal mark is a point whatever the locale. Every text but print_both() reads back through
// units/read.hpp to within half of the step named here. A quantity that is not finite is a bug.
#pragma once

#include <string>
#include <string_view>

#include "wetout/base/problem.hpp"
#include "wetout/units/money.hpp"
#include "wetout/units/quantity.hpp"
#include "wetout/units/temperature.hpp"

namespace wetout::units {

enum class System { us, metric };

/// "us" | "metric"; code "word.unknown".
base::Result<System> read_system(std::string_view text);
std::string_view to_string(System system);

/// us: inches below 2 ft (`20 3/4 in`), then feet and inches (`6 ft 4 in`), to 1/16 in.
/// metric: `52 mm` below 10 cm, `193.0 cm` below 10 m, to 1 mm; `27.43 m` above, to 1 cm.
std::string print(Length length, System system);
/// us: inches only (`75 1/8 in`); metric as print().
std::string print_inches(Length length, System system);
/// Films and plies: millimetres to 0.01 in both systems, as data sheets print them: `0.18 mm`.
std::string print_thickness(Length thickness, System system);

/// us 0.1 ft² (`9.7 ft²`), metric 0.01 m² (`0.90 m²`).
std::string print(Area area, System system);

/// us 0.1 fl oz (`8.0 fl oz`), metric 1 ml.
std::string print(Volume volume, System system);
/// Volume of a board: 0.1 l in both (`31.4 l`).
std::string print_litres(Volume volume, System system);

/// us 0.1 oz (`7.5 oz`), metric 1 g (`212 g`).
std::string print(Mass mass, System system);
/// What goes on a gram scale: us `212 g (7.5 oz)`, metric `212 g`.
std::string print_both(Mass mass, System system);
/// A whole board: us `6 lb 4.2 oz` to 0.1 oz, metric `2.84 kg` to 10 g.
std::string print_weight(Mass mass, System system);

/// us 0.1 oz/yd² (`4 oz/yd²`), metric 1 g/m².
std::string print(ArealWeight weight, System system);
/// us 0.01 lb/ft³ (`2 lb/ft³`), metric 0.1 kg/m³.
std::string print(Density density, System system);
/// us 0.01 oz/ft, metric 0.1 g/m.
std::string print(LinearWeight weight, System system);
/// us 0.01 min/ft², metric 0.1 min/m².
std::string print(Pace pace, System system);

/// `45 s` below a minute, `1 h 25 min` to 1 min below 48 h, `2 days 12 h` to 1 h above.
std::string print(Duration duration, System system);

/// us 1 °F (`72 °F`), metric 0.1 °C (`22.5 °C`).
std::string print(Temperature temperature, System system);
/// us 0.1 °F, metric 0.1 °C.
std::string print(TempDelta delta, System system);

/// 0.08 -> `8 %`, one decimal if needed.
std::string print_percent(double share);

/// `48.00 USD`, with the currency's own decimals; exact.
std::string print(const Money& money);

/// A number with at most `decimals`, no trailing zeros, never "-0", point as decimal mark. From
/// 1e15 on, six significant digits and an exponent.
std::string print_number(double value, int decimals);

}  // namespace wetout::units
