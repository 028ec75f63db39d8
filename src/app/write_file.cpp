#include "app/write_file.h"

#include <fcntl.h>

#include <cerrno>
#include <memory>

#include "app/one_file.h"
#include "base/fault.h"

namespace rimehaul::app {

namespace {

void write_straight(const FileToWrite& file) {
  const int number = ::open(file.path.c_str(), O_WRONLY | O_CLOEXEC);
  if (number < 0) {
    throw not_written(file.path, errno);
  }
  Handle handle{number};
  const int why = handle.write(file.bytes);
  const int closing = handle.close();
  if (why != 0 || closing != 0) {
    throw not_written(file.path, why != 0 ? why : closing);
  }
}

/// Of files to write the one at `file` against those before it.
void expect_own_place(const std::vector<FileToWrite>& files, std::size_t file) {
  for (std::size_t other = 0; other < file; ++other) {
    if (are_one_file(files[other].path, files[file].path)) {
      throw base::BadInput{{files[file].path,
                            "",
                            "two answers cannot go into one file",
                            "name another for one",
                            {}}};
    }
  }
}

}  // namespace

void write_files(const std::vector<FileToWrite>& files,
                 const std::vector<std::unique_ptr<FreshFile>>& made) {
  for (std::size_t file = 0; file < files.size(); ++file) {
    expect_own_place(files, file);
  }
  std::vector<std::unique_ptr<FreshFile>> fresh;
  for (const FileToWrite& file : files) {
    if (auto place = place_of(file.path)) {
      fresh.push_back(std::make_unique<FreshFile>(file.path, std::move(*place)));
      fresh.back()->fill(file.bytes);
      fresh.back()->seal();
    } else {
      write_straight(file);
    }
  }
  for (const auto& file : made) {
    file->seal();
  }
  const SignalsHeld held;
  for (const auto& file : fresh) {
    file->give_name();
  }
  for (const auto& file : made) {
    file->give_name();
  }
}

void write_file(const std::string& path, std::string_view bytes) {
  write_files({{path, std::string{bytes}}});
}

}  // namespace rimehaul::app
