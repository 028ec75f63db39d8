// How a command ends, and the reasons for ending badly.
#pragma once

#include <stdexcept>
#include <string>
#include <vector>

#include "base/fault.h"

namespace rimehaul::app {

/// Exit status of every command.
enum class Status { yes = 0, honest_no = 1, wrong_usage = 2, bad_input = 3, our_fault = 4 };

/// The command line asks for something that is not there or makes no sense.
class WrongUsage : public std::runtime_error {
 public:
  using std::runtime_error::runtime_error;
};

/// A site, or a file given beside it, whose faults forbid its use; all of them are told.
class UnfitInput : public std::runtime_error {
 public:
  explicit UnfitInput(std::vector<base::Fault> faults)
      : std::runtime_error{"faults forbid the use of the input"}, faults_{std::move(faults)} {}
  [[nodiscard]] const std::vector<base::Fault>& faults() const { return faults_; }

 private:
  std::vector<base::Fault> faults_;
};

}  // namespace rimehaul::app
