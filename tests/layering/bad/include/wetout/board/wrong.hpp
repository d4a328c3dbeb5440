// Not built: the include check must find both lines.
#include "wetout/resin/product.hpp"
#include <nlohmann/json.hpp>
