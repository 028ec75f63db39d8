// A folder to write answers into.
#pragma once

#include <optional>
#include <string>

#include "app/ending_signals.h"

namespace rimehaul::app {

/// A folder that is there, or is made; one that was made goes away again where nothing comes of it,
/// also when a signal ends the program.
class FolderToFill {
 public:
  /// Throws BadInput where it cannot be made.
  explicit FolderToFill(const std::string& folder);
  ~FolderToFill();
  FolderToFill(const FolderToFill&) = delete;
  FolderToFill& operator=(const FolderToFill&) = delete;

  void keep() { made_.reset(); }

 private:
  std::optional<SweptPath> made_;
};

}  // namespace rimehaul::app
