// The documents' fenced blocks and the commands in them.
#pragma once

#include <doctest/doctest.h>

#include <filesystem>
#include <fstream>
#include <sstream>
#include <string>
#include <vector>

namespace rimehaul::testing {

inline std::vector<std::string> lines_in(const std::filesystem::path& path) {
  std::ifstream file{path};
  REQUIRE_MESSAGE(file.good(), path.string());
  std::vector<std::string> lines;
  for (std::string line; std::getline(file, line);) {
    lines.push_back(line);
  }
  return lines;
}

/// A fenced block: what stands behind the opening fence, and its lines.
struct FencedBlock {
  std::string kind;
  std::vector<std::string> lines;
};

inline std::vector<FencedBlock> blocks_in(const std::filesystem::path& document) {
  std::vector<FencedBlock> blocks;
  bool inside = false;
  for (const std::string& line : lines_in(document)) {
    if (line.starts_with("```")) {
      inside = !inside;
      if (inside) {
        blocks.push_back({line.substr(3), {}});
      }
    } else if (inside) {
      blocks.back().lines.push_back(line);
    }
  }
  CHECK_MESSAGE(!inside, document.string() << " ends within a fenced block");
  return blocks;
}

/// One command as shown, on one line, and the exit status it is said to end with.
struct ShownCommand {
  std::string line;
  int ends_with = 0;
};

/// Lines that end in a backslash go on in the next. "# ends with N" says the status; other remarks
/// are for people.
inline std::vector<ShownCommand> commands_in(const FencedBlock& block) {
  std::vector<ShownCommand> commands;
  std::string whole;
  for (std::string line : block.lines) {
    if (line.ends_with('\\')) {
      line.pop_back();
      whole += line;
      continue;
    }
    whole += line;
    ShownCommand command;
    const std::size_t remark = whole.find(" # ");
    command.line = whole.substr(0, remark);
    const std::string says = "# ends with ";
    if (const std::size_t at = whole.find(says); at != std::string::npos) {
      command.ends_with = std::stoi(whole.substr(at + says.size()));
    }
    if (!whole.empty() && !whole.starts_with('#')) {
      commands.push_back(command);
    }
    whole.clear();
  }
  return commands;
}

}  // namespace rimehaul::testing
