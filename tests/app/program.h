// The built program as a shell or a terminal meets it.
#pragma once

#include <doctest/doctest.h>
#include <sys/wait.h>

#include <array>
#include <cstdio>
#include <string>

namespace rimehaul::testing {

/// What a shell command wrote to standard output, and what the shell says it ended with.
struct Told {
  std::string out;
  int ended = -1;
};

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
inline Told told_on_terminal(const std::string& command) {
  return told_by_shell("export rimehaul; TERM=xterm NO_COLOR= script -qefc '" + command +
                       "' /dev/null </dev/null");
}

}  // namespace rimehaul::testing
