// Hands on what several workers tell, one word at a time.
#pragma once

#include <cstddef>
#include <mutex>

#include "base/watcher.h"

namespace rimehaul::app {

class SharedWatcher final : public base::Watcher {
 public:
  /// The parts of all workers together are told at once.
  SharedWatcher(base::Watcher& watcher, std::size_t parts) : watcher_{watcher} {
    watcher_.parts_to_come(parts);
  }
  void parts_to_come(std::size_t /*parts*/) override {}
  void part_done() override {
    const std::scoped_lock one_at_a_time{told_};
    watcher_.part_done();
  }

 private:
  base::Watcher& watcher_;
  std::mutex told_;
};

}  // namespace rimehaul::app
