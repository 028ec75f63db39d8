#include "app/fresh_file.h"

#include <fcntl.h>
#include <unistd.h>

#include <cerrno>
#include <system_error>

#include "app/one_file.h"

namespace rimehaul::app {

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

int Handle::write(std::string_view bytes) const {
  while (!bytes.empty()) {
    const ssize_t written = ::write(number_, bytes.data(), bytes.size());
    if (written < 0 && errno != EINTR) {
      return errno;
    }
    bytes.remove_prefix(written < 0 ? 0 : static_cast<std::size_t>(written));
  }
  return 0;
}

int Handle::sync() const {
  return ::fsync(number_) == 0 || errno == EINVAL || errno == EROFS ? 0 : errno;
}

int Handle::close() {
  const int number = std::exchange(number_, -1);
  return number < 0 || ::close(number) == 0 || errno == EINTR ? 0 : errno;
}

FreshFile::FreshFile(std::string shown, fs::path place)
    : shown_{std::move(shown)}, place_{std::move(place)} {
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
      throw not_written(shown_, errno);
    }
  }
}

FreshFile::~FreshFile() {
  if (swept_) {
    const SignalsHeld held;
    ::unlink(swept_->path().c_str());
    swept_.reset();
  }
}

void FreshFile::fill(std::string_view bytes) {
  const int why = handle_->write(bytes);
  if (why != 0) {
    throw not_written(shown_, why);
  }
}

void FreshFile::seal() {
  const int closing = handle_->close();
  // By its name: another writer may have begun the file anew.
  const int number = ::open(path().c_str(), O_WRONLY | O_CLOEXEC);
  if (closing != 0 || number < 0) {
    throw not_written(shown_, closing != 0 ? closing : errno);
  }
  const int why = Handle{number}.sync();
  if (why != 0) {
    throw not_written(shown_, why);
  }
}

void FreshFile::give_name() {
  if (::rename(swept_->path().c_str(), place_.c_str()) != 0) {
    throw not_written(shown_, errno);
  }
  swept_.reset();
  // That the name is on the disk too is asked for, but no file is lost where it cannot be had.
  const fs::path folder = place_.has_parent_path() ? place_.parent_path() : fs::path{"."};
  if (const int number = ::open(folder.c_str(), O_RDONLY | O_DIRECTORY | O_CLOEXEC); number >= 0) {
    (void)Handle{number}.sync();
  }
}

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

}  // namespace rimehaul::app
