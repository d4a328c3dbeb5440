// Reading quantities as people write them. Every reader takes the whole text, wants a unit, and
// answers with what was wrong and a correct example. Nothing here depends on the locale.
#pragma once

#include <string>
#include <string_view>

#include "wetout/base/problem.hpp"
#include "wetout/units/money.hpp"
#include "wetout/units/quantity.hpp"
#include "wetout/units/temperature.hpp"

namespace wetout::units {

/// Problems carry code, message, found, expected, hint; the caller adds file, line, key.
/// Codes: "unit.missing" (bare number), "unit.wrong" (a unit of another kind), "unit.unknown",
/// "unit.ambiguous" (a bare "oz" that may be mass or volume, degrees without a scale),
/// "number.bad", "number.not_finite" (nan, inf, or beyond what a double holds), "currency.unknown".
/// Signs are read where they make sense; ranges of sense (negative mass) are the caller's.

/// `6' 2 1/2"`, `6 ft 2.5 in`, `20 3/4 in`, `1/8"`, `188 cm`, `6'`, primes (′ ″), curly quotes. A
/// number alone after a foot mark is inches: `6'4`. Exact to the last bit of the double.
base::Result<Length> read_length(std::string_view text);
/// `1.2 m2`, `1.2 m²`, `12 ft2`, `12 sq ft`.
base::Result<Area> read_area(std::string_view text);
/// `900 ml`, `1 l`, `12 fl oz`, `1 qt`, `1/2 gal` (US measures).
base::Result<Volume> read_volume(std::string_view text);
/// `245 g`, `2.4 kg`, `5 lb`, `3 lb 4 oz`, `8 oz`: here a bare oz is the avoirdupois ounce.
base::Result<Mass> read_mass(std::string_view text);
/// `4 oz/yd2`, `135 g/m2`; cloth is named by it, so a bare `4 oz` is read as oz/yd².
base::Result<ArealWeight> read_areal_weight(std::string_view text);
/// `2 lb/ft3`, `32 kg/m3`, `1.13 g/ml`, `1.13 g/cm3`.
base::Result<Density> read_density(std::string_view text);
/// `6 g/m`, `0.07 oz/ft`.
base::Result<LinearWeight> read_linear_weight(std::string_view text);
/// `45 s`, `25 min`, `4 h`, `1 h 30 min`, `7 days`.
base::Result<Duration> read_duration(std::string_view text);
/// `7 min/m2`, `0.65 min/ft2`.
base::Result<Pace> read_pace(std::string_view text);
/// `22 C`, `22 °C`, `72F`, `-5C`.
base::Result<Temperature> read_temperature(std::string_view text);
/// A difference: `3 C`, `3 K`, `5 F` (5/9 of that).
base::Result<TempDelta> read_temp_delta(std::string_view text);
/// `2 %`, `0.5 %` as a share of 1.
base::Result<double> read_percent(std::string_view text);
/// `48.00 USD`, `48 USD`, at most the currency's own decimals. Digits are exact.
base::Result<Money> read_money(std::string_view text);
/// `30 USD/h`, `30 USD per hour`: money for one hour.
base::Result<Money> read_money_per_hour(std::string_view text);
/// `USD`: three letters of ISO 4217, returned in capitals. Code "currency.unknown".
base::Result<std::string> read_currency(std::string_view text);

/// What may stand in a pack or an amount: a mass or a volume, told apart by the unit. A bare `oz`
/// is refused here ("unit.ambiguous").
struct MassOrVolume {
  bool is_volume = false;
  Mass mass;
  Volume volume;
};
base::Result<MassOrVolume> read_mass_or_volume(std::string_view text);

/// Sheets print ranges: "25-30 min", "5 to 6 h", "13 h". Both ends are equal for a single value.
struct DurationRange {
  Duration low;
  Duration high;
};
base::Result<DurationRange> read_duration_range(std::string_view text);

}  // namespace wetout::units
