#include "app/write_file.h"

#include <fcntl.h>
#include <unistd.h>

#include <cerrno>
#include <cstdio>
#include <filesystem>
#include <memory>
#include <optional>
#include <system_error>
#include <utility>

#include "app/ending_signals.h"
#include "app/one_file.h"
#include "base/fault.h"

namespace rimehaul::app {

namespace {

namespace fs = std::filesystem;

base::BadInput not_written(const std::string& path, int why) {
  const bool on_the_disk = why == ENOSPC || why == EDQUOT || why == EFBIG || why == EIO;
  return base::BadInput{{path,
                         "",
                         "cannot be written: " + std::generic_category().message(why),
                         on_the_disk
                             ? "make room, or name a file where there is some"
                             : "name a file in a folder that exists and where you may write",
                         {}}};
}

/// An open file.
class Handle {
 public:
  explicit Handle(int number) : number_{number} {}
  ~Handle() { close(); }
  Handle(const Handle&) = delete;
  Handle& operator=(const Handle&) = delete;

  /// 0, or why it was not written.
  [[nodiscard]] int write(std::string_view bytes) const {
    while (!bytes.empty()) {
      const ssize_t written = ::write(number_, bytes.data(), bytes.size());
      if (written < 0 && errno != EINTR) {
        return errno;
      }
      bytes.remove_prefix(written < 0 ? 0 : static_cast<std::size_t>(written));
    }
    return 0;
  }
  /// 0, or why it is not safe on the disk; a pipe or a device need not be.
  [[nodiscard]] int sync() const {
    return ::fsync(number_) == 0 || errno == EINVAL || errno == EROFS ? 0 : errno;
  }
  int close() {
    const int number = std::exchange(number_, -1);
    return number < 0 || ::close(number) == 0 || errno == EINTR ? 0 : errno;
  }

 private:
  int number_;
};

/// A file beside its place, which goes away unless it was given its name.
class Fresh {
 public:
  Fresh(const std::string& shown, fs::path place) : shown_{&shown}, place_{std::move(place)} {
    // A name as long as may be leaves no room to make it longer.
    const std::string name = place_.filename().string().substr(0, 200);
    for (int attempt = 0; !swept_; ++attempt) {
      const fs::path beside =
          place_.parent_path() / (name + ".unfinished-" + std::to_string(::getpid()) +
                                  (attempt == 0 ? "" : "-" + std::to_string(attempt)));
      const SignalsHeld held;
      const int number = ::open(beside.c_str(), O_WRONLY | O_CREAT | O_EXCL | O_CLOEXEC, 0666);
      if (number >= 0) {
        handle_ = std::make_unique<Handle>(number);
        swept_.emplace(beside.string());
      } else if (errno != EEXIST || attempt == 100) {
        throw not_written(shown, errno);
      }
    }
  }
  ~Fresh() {
    if (swept_) {
      const SignalsHeld held;
      ::unlink(swept_->path().c_str());
      swept_.reset();
    }
  }
  Fresh(const Fresh&) = delete;
  Fresh& operator=(const Fresh&) = delete;

  [[nodiscard]] const fs::path& place() const { return place_; }

  void fill(std::string_view bytes) {
    int why = handle_->write(bytes);
    why = why == 0 ? handle_->sync() : why;
    const int closing = handle_->close();
    if (why != 0 || closing != 0) {
      throw not_written(*shown_, why != 0 ? why : closing);
    }
  }
  /// To be called while signals are held.
  void give_name() {
    if (::rename(swept_->path().c_str(), place_.c_str()) != 0) {
      throw not_written(*shown_, errno);
    }
    swept_.reset();
    // That the name is on the disk too is asked for, but no file is lost where it cannot be had.
    const fs::path folder = place_.has_parent_path() ? place_.parent_path() : fs::path{"."};
    if (const int number = ::open(folder.c_str(), O_RDONLY | O_DIRECTORY | O_CLOEXEC);
        number >= 0) {
      (void)Handle{number}.sync();
    }
  }

 private:
  const std::string* shown_;
  fs::path place_;
  std::unique_ptr<Handle> handle_;
  std::optional<SweptPath> swept_;
};

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

/// Where the file itself is to lie: at the end of all links. Nothing for what is no regular file.
std::optional<fs::path> place_of(const std::string& path) {
  std::error_code trouble;
  const fs::file_status status = fs::status(path, trouble);
  if (fs::is_directory(status)) {
    throw base::BadInput{{path, "", "cannot be written: it is a folder", "name a file", {}}};
  }
  if (fs::exists(status) && !fs::is_regular_file(status)) {
    return std::nullopt;
  }
  return fs::is_symlink(fs::symlink_status(path, trouble)) ? end_of_links(path) : fs::path{path};
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

void write_files(const std::vector<FileToWrite>& files) {
  for (std::size_t file = 0; file < files.size(); ++file) {
    expect_own_place(files, file);
  }
  std::vector<std::unique_ptr<Fresh>> fresh;
  for (const FileToWrite& file : files) {
    if (auto place = place_of(file.path)) {
      fresh.push_back(std::make_unique<Fresh>(file.path, std::move(*place)));
      fresh.back()->fill(file.bytes);
    } else {
      write_straight(file);
    }
  }
  const SignalsHeld held;
  for (const auto& file : fresh) {
    file->give_name();
  }
}

void write_file(const std::string& path, std::string_view bytes) {
  write_files({{path, std::string{bytes}}});
}

}  // namespace rimehaul::app
