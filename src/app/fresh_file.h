// A file that comes to be beside its place, and gets its name when it is whole.
#pragma once

#include <filesystem>
#include <memory>
#include <optional>
#include <string>
#include <string_view>
#include <utility>

#include "app/ending_signals.h"
#include "base/fault.h"

namespace rimehaul::app {

/// "cannot be written: ..." with what to do; `why` is an errno.
[[nodiscard]] base::BadInput not_written(const std::string& path, int why);

/// Where a file itself is to lie: at the end of all links. Nothing for a device or a pipe. Throws
/// BadInput for a folder.
[[nodiscard]] std::optional<std::filesystem::path> place_of(const std::string& path);

/// An open file.
class Handle {
 public:
  explicit Handle(int number) : number_{number} {}
  ~Handle() { close(); }
  Handle(const Handle&) = delete;
  Handle& operator=(const Handle&) = delete;

  /// 0, or why it was not written.
  [[nodiscard]] int write(std::string_view bytes) const;
  /// 0, or why it is not safe on the disk; a pipe or a device need not be.
  [[nodiscard]] int sync() const;
  int close();

 private:
  int number_;
};

/// A file beside its place, which goes away unless it was given its name, also when a signal ends
/// the program. Each throws BadInput.
class FreshFile {
 public:
  /// `shown` names it in faults.
  FreshFile(std::string shown, std::filesystem::path place);
  ~FreshFile();
  FreshFile(const FreshFile&) = delete;
  FreshFile& operator=(const FreshFile&) = delete;

  /// Where it lies until it has its name; whoever needs to may write there.
  [[nodiscard]] const std::string& path() const { return swept_->path(); }
  void fill(std::string_view bytes);
  /// Brings to the disk what was written, by whomever. Nothing is written after that.
  void seal();
  /// To be called while signals are held.
  void give_name();

 private:
  std::string shown_;
  std::filesystem::path place_;
  std::unique_ptr<Handle> handle_;
  std::optional<SweptPath> swept_;
};

}  // namespace rimehaul::app
