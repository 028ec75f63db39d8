// As many hands as the machine has cores.
#pragma once

#include "base/crew.h"

namespace rimehaul::app {

class CrewOnCores final : public base::Crew {
 public:
  void do_all(base::Work& work, std::size_t parts) override;
};

/// How many parts a crew on this machine has under way at once: 1 or more.
[[nodiscard]] std::size_t hands();

}  // namespace rimehaul::app
