// Collects everything wrong in one file, so that a person hears of all of it at once.
#pragma once

#include <cstddef>
#include <string>
#include <utility>
#include <vector>

#include "base/fault.h"

namespace rimehaul::ports::toml {

/// A place in a TOML file: "line 12 (carrier.tern.mass_kg)".
struct Spot {
  int line = 1;
  std::string path;  ///< keys joined by dots; empty: the whole file
};

/// What is wrong there, and an imperative that helps.
struct Complaint {
  std::string problem;
  std::string remedy;
};

class FaultLog {
 public:
  explicit FaultLog(std::string file) : file_{std::move(file)} {}

  void fault(const Spot& spot, Complaint complaint);
  /// Only asks to be looked at.
  void doubt(const Spot& spot, Complaint complaint);

  /// How many faults so far, doubts left out: a reader that finds it grown knows that its part is
  /// not to be used.
  [[nodiscard]] std::size_t count() const { return count_; }
  /// Everything, in the order of lines.
  [[nodiscard]] std::vector<base::Fault> in_order() const;
  [[nodiscard]] const std::string& file() const { return file_; }

 private:
  struct Entry {
    int line = 1;
    base::Fault fault;
  };

  void add(const Spot& spot, Complaint complaint, base::Weight weight);

  std::string file_;
  std::vector<Entry> entries_;
  std::size_t count_ = 0;
};

}  // namespace rimehaul::ports::toml
