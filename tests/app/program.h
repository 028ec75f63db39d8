// The built program as a shell or a terminal meets it.
#pragma once

#include <doctest/doctest.h>
#include <fcntl.h>
#include <stdlib.h>
#include <sys/wait.h>
#include <unistd.h>

#include <array>
#include <csignal>
#include <cstdio>
#include <string>

#include "app/ending_signals.h"

namespace rimehaul::testing {

/// What a shell command wrote to standard output, and what the shell says it ended with.
struct Told {
  std::string out;
  int ended = -1;
};

/// A child, 0 in the child itself, in which signals do what they do to any program: the handlers of
/// the test's own program never run there.
inline pid_t forked() {
  const app::SignalsHeld held;
  const pid_t child = ::fork();
  REQUIRE(child >= 0);
  if (child == 0) {
    for (const int signal : {SIGINT, SIGTERM, SIGHUP, SIGQUIT}) {
      ::signal(signal, SIG_DFL);
    }
  }
  return child;
}

/// "$rimehaul" in the command is the built program.
inline Told told_by_shell(const std::string& command) {
  const std::string whole = "rimehaul='" RIMEHAUL_PROGRAM "'\n" + command;
  FILE* shell = popen(whole.c_str(), "r");
  REQUIRE(shell != nullptr);
  Told told;
  std::array<char, 4096> part{};
  while (const std::size_t count = std::fread(part.data(), 1, part.size(), shell)) {
    told.out.append(part.data(), count);
  }
  const int status = pclose(shell);
  told.ended = WIFEXITED(status) ? WEXITSTATUS(status) : -1;
  return told;
}

/// The same on a terminal: both outputs, as the terminal shows them.
/// Whether this machine gives no terminals of its own, as a change of root without /dev/pts does
/// not: what needs one is then skipped.
inline bool no_terminal() {
  const int terminal = posix_openpt(O_RDWR | O_NOCTTY);
  if (terminal < 0) {
    return true;
  }
  close(terminal);
  return false;
}

inline Told told_on_terminal(const std::string& command) {
  return told_by_shell("export rimehaul; TERM=xterm NO_COLOR= script -qefc '" + command +
                       "' /dev/null </dev/null");
}

}  // namespace rimehaul::testing
