#include "app/frozen_files.h"

#include <cstdint>
#include <filesystem>
#include <fstream>
#include <iterator>

#include "base/fault.h"
#include "ports/openssl/digest.h"

namespace rimehaul::app {

namespace {

[[noreturn]] void refuse(const card::InputFile& input, const std::string& problem) {
  throw base::BadInput{{.file = input.name,
                        .place = "",
                        .problem = problem,
                        .remedy = "leave the site's files alone for a moment, and try again"}};
}

}  // namespace

void freeze(const FileToFreeze& file, day::Writing& writing) {
  const card::InputFile& input = file.input;
  std::error_code failed;
  const auto size = std::filesystem::file_size(file.path, failed);
  if (failed) {
    refuse(input, "cannot be read again: " + failed.message());
  }
  day::FrozenInput frozen{.name = input.name,
                          .role = input.what,
                          .digest = input.digest,
                          .bytes = static_cast<std::int64_t>(size),
                          .how = day::Frozen::whole};
  std::string content;
  if (frozen.bytes > day::kMostFrozenBytes) {
    frozen.how = day::Frozen::by_digest;
  } else {
    std::ifstream stream{file.path, std::ios::binary};
    content.assign(std::istreambuf_iterator<char>{stream}, {});
    if (ports::openssl::digest_of(content) != input.digest) {
      refuse(input, "has changed while it was worked with");
    }
  }
  writing.freeze(frozen, content);
}

}  // namespace rimehaul::app
