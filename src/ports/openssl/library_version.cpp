#include "ports/openssl/library_version.h"

#include <openssl/crypto.h>

namespace rimehaul::ports::openssl {

std::string library_version() {
  return std::string{"OpenSSL "} + OpenSSL_version(OPENSSL_VERSION_STRING);
}

}  // namespace rimehaul::ports::openssl
