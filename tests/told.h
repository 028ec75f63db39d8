// What another program says: of a command, or of a file made of some bytes.
#pragma once

#include <doctest/doctest.h>
#include <unistd.h>

#include <array>
#include <cstdio>
#include <filesystem>
#include <fstream>
#include <string>

namespace rimehaul::testing {

/// Everything that a command writes to its standard output.
inline std::string told_by(const std::string& command) {
  FILE* program = popen(command.c_str(), "r");
  REQUIRE(program != nullptr);
  std::string text;
  std::array<char, 4096> part{};
  while (std::fgets(part.data(), part.size(), program) != nullptr) {
    text += part.data();
  }
  pclose(program);
  return text;
}

/// What `command FILE options` says of a file of these bytes, which is gone afterwards.
inline std::string told_of(const std::string& bytes, const std::string& command,
                           const std::string& options = "") {
  const std::filesystem::path path =
      std::filesystem::temp_directory_path() / ("rimehaul-told-of-" + std::to_string(::getpid()));
  std::ofstream{path, std::ios::binary} << bytes;
  const std::string text = told_by(command + " '" + path.string() + "' " + options);
  std::filesystem::remove(path);
  return text;
}

}  // namespace rimehaul::testing
