// Orders of named persons as JSON.
#pragma once

#include <string>
#include <vector>

#include "day/records.h"

namespace rimehaul::ports::json {

[[nodiscard]] std::string orders_json(const std::vector<day::Override>& orders);

}  // namespace rimehaul::ports::json
