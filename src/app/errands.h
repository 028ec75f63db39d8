// The verb `errands`: several stops with things to put off and take on, in their best order.
#pragma once

#include <string>
#include <vector>

#include "app/options.h"

namespace rimehaul::app {

/// `yes` with the round, `honest_no` with how far it gets and why. Throws OurFault when a trip that
/// was found does not stand up to being walked again: all of it is withheld.
[[nodiscard]] Status errands(const ErrandsOptions& options, const Outside& outside);

/// Names of all files that the cards of a round may be printed to, their records among them.
[[nodiscard]] std::vector<std::string> trip_files();

}  // namespace rimehaul::app
