#include "base/require.h"

namespace rimehaul::base {

void require(bool holds, std::string_view what) {
  if (!holds) {
    throw OurFault{std::string{what}};
  }
}

}  // namespace rimehaul::base
