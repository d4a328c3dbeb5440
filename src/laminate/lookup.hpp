// Finding things of the shop by id.
#pragma once

#include <string>
#include <string_view>
#include <vector>

#include "wetout/base/check.hpp"
#include "wetout/laminate/shop.hpp"

namespace wetout::laminate {

template <class Thing>
const Thing* find(const std::vector<Thing>& things, std::string_view id) {
  for (const Thing& thing : things) {
    if (thing.id == id) return &thing;
  }
  return nullptr;
}

/// For ids that check() has seen.
template <class Thing>
const Thing& get(const std::vector<Thing>& things, std::string_view id) {
  const Thing* thing = find(things, id);
  base::promise(thing != nullptr, "an id that was not checked");
  return *thing;
}

template <class Thing>
std::vector<std::string> ids_of(const std::vector<Thing>& things) {
  std::vector<std::string> ids;
  ids.reserve(things.size());
  for (const Thing& thing : things) ids.push_back(thing.id);
  return ids;
}

}  // namespace wetout::laminate
