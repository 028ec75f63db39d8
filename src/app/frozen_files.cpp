#include "app/frozen_files.h"

#include <filesystem>
#include <fstream>
#include <iterator>

#include "app/input_files.h"
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

FileToFreeze file_to_freeze(const LoadedSite& site, const card::InputFile& input) {
  const std::string path = path_of({site.folder, input.name});
  std::error_code failed;
  const auto size = std::filesystem::file_size(path, failed);
  if (failed) {
    refuse(input, "cannot be read again: " + failed.message());
  }
  FileToFreeze file{
      .bytes = static_cast<std::int64_t>(size), .how = day::Frozen::whole, .content = {}};
  if (file.bytes > day::kMostFrozenBytes) {
    file.how = day::Frozen::by_digest;
    return file;
  }
  std::ifstream stream{path, std::ios::binary};
  file.content.assign(std::istreambuf_iterator<char>{stream}, {});
  if (ports::openssl::digest_of(file.content) != input.digest) {
    refuse(input, "has changed while the board was worked out");
  }
  return file;
}

}  // namespace rimehaul::app
