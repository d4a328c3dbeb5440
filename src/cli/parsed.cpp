#include "parsed.hpp"

#include "read_value.hpp"
#include "wetout/base/check.hpp"
#include "wetout/units/read.hpp"

namespace wetout::cli {

Parsed::Parsed(const Program& program, std::vector<std::string_view> path, Given given)
    : program_(&program),
      path_(std::move(path)),
      description_(path_.empty() ? nullptr : find(program, path_)),
      given_(std::move(given)) {
  base::promise(path_.empty() || description_ != nullptr, "a command that is not described");
}

std::string_view Parsed::command() const { return path_.empty() ? "" : path_.front(); }

std::string_view Parsed::subcommand() const { return path_.size() < 2 ? "" : path_[1]; }

const std::vector<std::string>& Parsed::given(std::string_view name) const {
  static const std::vector<std::string> none;
  const auto found = given_.find(name);
  return found == given_.end() ? none : found->second;
}

const std::string* Parsed::one(std::string_view name, Reads reads) const {
  const Argument* argument = find(*program_, description_, name);
  base::promise(argument != nullptr, "an argument that the command does not describe");
  base::promise(!argument->repeatable && argument->kind != ArgumentKind::flag,
                "a repeatable argument or a flag asked for as a single value");
  base::promise(argument->reads == reads, "an argument asked for as something it is not");
  const std::vector<std::string>& texts = given(name);
  return texts.empty() ? nullptr : &texts.front();
}

bool Parsed::has(std::string_view name) const {
  base::promise(find(*program_, description_, name) != nullptr,
                "an argument that the command does not describe");
  return !given(name).empty();
}

bool Parsed::flag(std::string_view name) const {
  const Argument* argument = find(*program_, description_, name);
  base::promise(argument != nullptr && argument->kind == ArgumentKind::flag,
                "a flag that the command does not describe");
  return !given(name).empty();
}

std::optional<std::string> Parsed::text(std::string_view name) const {
  const Argument* argument = find(*program_, description_, name);
  base::promise(argument != nullptr, "an argument that the command does not describe");
  const std::string* text = one(name, argument->reads);
  return text == nullptr ? std::nullopt : std::optional<std::string>(*text);
}

const std::string& Parsed::needed(std::string_view name) const {
  const Argument* argument = find(*program_, description_, name);
  base::promise(argument != nullptr, "an argument that the command does not describe");
  const std::string* text = one(name, argument->reads);
  base::promise(text != nullptr, "an argument that this form does not need");
  return *text;
}

const std::vector<std::string>& Parsed::all(std::string_view name) const {
  const Argument* argument = find(*program_, description_, name);
  base::promise(argument != nullptr && argument->repeatable,
                "a repeatable argument that the command does not describe");
  return given(name);
}

std::optional<units::Temperature> Parsed::temperature(std::string_view name) const {
  const std::string* text = one(name, Reads::temperature);
  if (text == nullptr) return std::nullopt;
  return units::read_temperature(*text).value();
}

std::optional<units::Mass> Parsed::mass(std::string_view name) const {
  const Argument* argument = find(*program_, description_, name);
  const bool is_amount = argument != nullptr && argument->reads == Reads::amount;
  const std::string* text = one(name, is_amount ? Reads::amount : Reads::mass);
  if (text == nullptr) return std::nullopt;
  return units::read_mass(*text).value();
}

std::optional<double> Parsed::percent(std::string_view name) const {
  const std::string* text = one(name, Reads::percent);
  if (text == nullptr) return std::nullopt;
  return units::read_percent(*text).value();
}

std::optional<units::Duration> Parsed::duration(std::string_view name) const {
  const std::string* text = one(name, Reads::duration);
  if (text == nullptr) return std::nullopt;
  return units::read_duration(*text).value();
}

std::optional<int> Parsed::count(std::string_view name) const {
  const std::string* text = one(name, Reads::count);
  if (text == nullptr) return std::nullopt;
  return read_count(*text).value();
}

std::optional<time::Date> Parsed::date(std::string_view name) const {
  const std::string* text = one(name, Reads::date);
  if (text == nullptr) return std::nullopt;
  return time::read_date(*text).value();
}

std::optional<units::Money> Parsed::money(std::string_view name) const {
  const std::string* text = one(name, Reads::money);
  if (text == nullptr) return std::nullopt;
  return units::read_money(*text).value();
}

base::Result<std::optional<time::Instant>> Parsed::time(std::string_view name,
                                                        const time::Zone& zone) const {
  const std::string* text = one(name, Reads::time);
  if (text == nullptr) return std::nullopt;
  base::Result<time::Instant> instant = time::read_instant(*text, zone);
  if (instant) return *instant;
  for (base::Problem& problem : instant.error()) place(problem, name);
  return base::fail(std::move(instant.error()));
}

}  // namespace wetout::cli
