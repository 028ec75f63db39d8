// Guards on the way from the disk to the parser.
#include "ports/toml/text_file.h"

#include <algorithm>
#include <cstddef>
#include <filesystem>
#include <fstream>
#include <string_view>
#include <system_error>
#include <utility>

#include "ports/toml/fault_log.h"

namespace rimehaul::ports::toml {

namespace {

namespace fs = std::filesystem;

constexpr std::size_t kMostBytes = 1'000'000;
/// A dotted key nests one table for each dot, and the parser frees tables by recursion: a file of
/// one line of dots would use up the stack.
constexpr std::size_t kMostBytesInLine = 4096;

/// Whether the file that a path leads to lies in or below the folder that the path names.
bool stays_in_folder(const fs::path& path) {
  std::error_code failed;
  const fs::path file = fs::canonical(path, failed);
  if (failed) {
    return false;
  }
  const fs::path parent = path.parent_path();
  const fs::path folder = fs::canonical(parent.empty() ? fs::path{"."} : parent, failed);
  if (failed) {
    return false;
  }
  return std::ranges::mismatch(folder, file).in1 == folder.end();
}

base::BadInput bad_file(const TextFile& file, Complaint complaint) {
  return base::BadInput{{.file = file.shown,
                         .place = "",
                         .problem = std::move(complaint.problem),
                         .remedy = std::move(complaint.remedy)}};
}

std::string bytes_of(const TextFile& file) {
  std::ifstream stream{file.path, std::ios::binary};
  std::string text(kMostBytes + 1, '\0');
  stream.read(text.data(), static_cast<std::streamsize>(text.size()));
  if (!stream.is_open() || stream.bad()) {
    throw bad_file(file, {"cannot be read", "make it readable for the account that runs this"});
  }
  text.resize(static_cast<std::size_t>(stream.gcount()));
  return text;
}

void refuse_long_lines(std::string_view text, const TextFile& file) {
  std::size_t start = 0;
  for (int line = 1; start < text.size(); ++line) {
    const std::size_t end = std::min(text.find('\n', start), text.size());
    if (end - start > kMostBytesInLine) {
      throw bad_file(file, {"line " + std::to_string(line) + " is longer than 4096 bytes",
                            "break it into several lines"});
    }
    start = end + 1;
  }
}

}  // namespace

std::string guarded_text(const TextFile& file) {
  std::error_code failed;
  const fs::file_status status = fs::status(file.path, failed);
  if (status.type() == fs::file_type::none) {
    throw bad_file(file, {"cannot be looked at: " + failed.message(),
                          "make its folder readable for the account that runs this"});
  }
  if (!fs::exists(status)) {
    throw bad_file(file, {"does not exist", "write it, or correct its name where it is named"});
  }
  if (!fs::is_regular_file(status) || !stays_in_folder(file.path)) {
    throw bad_file(file, {"is no regular file inside its folder", "put the file itself there"});
  }
  std::string text = bytes_of(file);
  if (text.size() > kMostBytes) {
    throw bad_file(file, {"is larger than 1 MB", "check that it is the right file"});
  }
  refuse_long_lines(text, file);
  return text;
}

}  // namespace rimehaul::ports::toml
