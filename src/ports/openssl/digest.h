// SHA-256 of text and of files.
#pragma once

#include <string>
#include <string_view>

#include "base/digest.h"

namespace rimehaul::ports::openssl {

[[nodiscard]] base::Digest digest_of(std::string_view bytes);

struct FileToDigest {
  std::string path;
  std::string shown;  ///< its name for people
};
/// Reads the file in pieces. Throws BadInput naming `shown` when it is no regular file, or cannot
/// be read.
[[nodiscard]] base::Digest digest_of_file(const FileToDigest& file);

}  // namespace rimehaul::ports::openssl
