// The promise the program makes to itself: a broken one is our fault, never the user's.
#pragma once

#include <stdexcept>
#include <string>
#include <string_view>

namespace rimehaul::base {

/// Thrown when the program finds itself wrong. The app reports it and ends with exit status 4.
class OurFault : public std::logic_error {
 public:
  using std::logic_error::logic_error;
};

/// Checks what must hold in release builds too. Throws OurFault carrying `what` when it does not.
void require(bool holds, std::string_view what);

}  // namespace rimehaul::base
