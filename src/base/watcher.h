// Somebody who is told how far a long piece of work is.
#pragma once

#include <cstddef>

namespace rimehaul::base {

/// Whoever works long takes one, or none, and knows neither clock nor screen.
class Watcher {
 public:
  Watcher() = default;
  virtual ~Watcher() = default;
  Watcher(const Watcher&) = delete;
  Watcher& operator=(const Watcher&) = delete;

  /// Into how many parts of about one size the work falls; told before the first is done. Told
  /// again, so many come on top.
  virtual void parts_to_come(std::size_t parts) = 0;
  virtual void part_done() = 0;
};

}  // namespace rimehaul::base
