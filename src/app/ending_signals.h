// What is to go away when a signal ends the program: Ctrl-C, a kill, a terminal that closes.
#pragma once

#include <csignal>

#include <string>

namespace rimehaul::app {

/// From now on a signal that ends the program first removes all that is marked, and then ends it as
/// that signal does: a shell shows 128 and the signal's number. One that was ignored stays so.
void sweep_on_ending_signals();

/// Keeps the ending signals waiting, so that a file and its mark come and go together.
class SignalsHeld {
 public:
  SignalsHeld();
  ~SignalsHeld();
  SignalsHeld(const SignalsHeld&) = delete;
  SignalsHeld& operator=(const SignalsHeld&) = delete;

 private:
  sigset_t before_;
};

/// Marks a file, or a folder that is empty by then, to be removed should a signal end the program
/// while this lives. What was marked last goes first.
class SweptPath {
 public:
  explicit SweptPath(std::string path);
  ~SweptPath();
  SweptPath(const SweptPath&) = delete;
  SweptPath& operator=(const SweptPath&) = delete;

  [[nodiscard]] const std::string& path() const { return path_; }

 private:
  friend void sweep_now();

  std::string path_;
  SweptPath* older_;
};

}  // namespace rimehaul::app
