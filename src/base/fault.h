// What is wrong with something a person wrote: which file, where in it, and what to do about it.
#pragma once

#include <exception>
#include <string>
#include <vector>

namespace rimehaul::base {

/// A fault stops the thing it speaks of from being used; a doubt only asks to be looked at.
enum class Weight { fault, doubt };

/// One thing wrong or doubtful in a file a person wrote. Prints as one line.
struct Fault {
  std::string file;     ///< as the user named it
  std::string place;    ///< where in the file: "line 12", "trail North Bowl", "" for the whole file
  std::string problem;  ///< what is wrong, without a closing full stop
  std::string remedy;   ///< what to do, an imperative
  Weight weight = Weight::fault;

  friend bool operator==(const Fault&, const Fault&) = default;
};

/// "file: place: problem; remedy", on one line, as base/one_line.h keeps it.
[[nodiscard]] std::string line_of(const Fault& fault);

/// Thrown only in ports/ and only when nothing is readable; the app ends with exit status 3.
class BadInput : public std::exception {
 public:
  explicit BadInput(Fault fault);
  [[nodiscard]] const char* what() const noexcept override { return line_.c_str(); }
  [[nodiscard]] const Fault& fault() const { return fault_; }

 private:
  Fault fault_;
  std::string line_;
};

/// What a reader returns: the data it could read and everything it found wrong on the way.
template <class Data>
struct Reading {
  Data data;
  std::vector<Fault> faults;
};

}  // namespace rimehaul::base
