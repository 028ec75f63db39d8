// The version of OpenSSL that is linked, for cards.
#pragma once

#include <string>

namespace rimehaul::ports::openssl {

/// "OpenSSL 3.0.11", for instance.
[[nodiscard]] std::string library_version();

}  // namespace rimehaul::ports::openssl
