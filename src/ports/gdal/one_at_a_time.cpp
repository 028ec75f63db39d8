#include "ports/gdal/one_at_a_time.h"

#include <chrono>
#include <condition_variable>
#include <mutex>
#include <set>

#include "ports/gdal/gdal_guard.h"

namespace rimehaul::ports::gdal {

namespace {

struct Held {
  std::mutex mutex;
  std::condition_variable freed;
  std::set<std::string> paths;
};

Held& held() {
  static Held all;
  return all;
}

}  // namespace

OneAtATime::OneAtATime(const File& file, units::Seconds patience) : path_{file.path} {
  std::unique_lock lock{held().mutex};
  const bool is_free = held().freed.wait_for(lock, std::chrono::duration<double>{patience.value()},
                                             [this] { return !held().paths.contains(path_); });
  if (!is_free) {
    throw bad_file(file.shown, {"another part of this program is using it",
                                "wait until that has ended, and try again"});
  }
  held().paths.insert(path_);
}

OneAtATime::~OneAtATime() {
  const std::lock_guard lock{held().mutex};
  held().paths.erase(path_);
  held().freed.notify_all();
}

}  // namespace rimehaul::ports::gdal
