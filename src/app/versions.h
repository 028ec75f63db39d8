// The versions that a card was made with.
#pragma once

#include <string>
#include <vector>

#include "app/outside.h"
#include "card/made_from.h"

namespace rimehaul::app {

/// "rimehaul 0.1.0" and the outside libraries that inputs, numbers, digests and sheets
/// depend on.
[[nodiscard]] std::vector<std::string> versions();

/// What an answer tells of its making: these inputs, the versions and now.
[[nodiscard]] card::MadeFrom made_from(std::vector<card::InputFile> inputs, const Outside& outside);

}  // namespace rimehaul::app
