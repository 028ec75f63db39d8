// The example files of docs/site-format.md, whole or with one thing broken, in a folder of their
// own.
#pragma once

#include <doctest/doctest.h>
#include <unistd.h>

#include <filesystem>
#include <fstream>
#include <iterator>
#include <string>
#include <vector>

#include "base/fault.h"
#include "ports/toml/text_file.h"

namespace rimehaul::testing {

/// A folder that is gone when the test is over.
class TestFolder {
 public:
  TestFolder() {
    std::string pattern = (std::filesystem::temp_directory_path() / "rimehaul-XXXXXX").string();
    REQUIRE(mkdtemp(pattern.data()) != nullptr);
    path_ = pattern;
  }
  ~TestFolder() {
    std::error_code ignored;
    std::filesystem::remove_all(path_, ignored);
  }
  TestFolder(const TestFolder&) = delete;
  TestFolder& operator=(const TestFolder&) = delete;
  TestFolder(TestFolder&&) = delete;
  TestFolder& operator=(TestFolder&&) = delete;

  [[nodiscard]] std::string path() const { return path_.string(); }
  [[nodiscard]] ports::toml::TextFile file(const std::string& name) const {
    return {.path = (path_ / name).string(), .shown = name};
  }
  /// Writes a file and names it.
  [[nodiscard]] ports::toml::TextFile with(const std::string& name, const std::string& text) const {
    std::ofstream{path_ / name, std::ios::binary} << text;
    return file(name);
  }

 private:
  std::filesystem::path path_;
};

/// The TOML examples of docs/site-format.md in their order: site, rigs, rules, snow.
inline std::vector<std::string> documented_examples() {
  std::ifstream stream{std::filesystem::path{RIMEHAUL_ROOT} / "docs" / "site-format.md"};
  const std::string text{std::istreambuf_iterator<char>{stream}, {}};
  const std::string open = "```toml\n";
  std::vector<std::string> examples;
  for (std::size_t at = text.find(open); at != std::string::npos; at = text.find(open, at)) {
    at += open.size();
    examples.push_back(text.substr(at, text.find("```", at) - at));
  }
  REQUIRE(examples.size() == 4);
  return examples;
}

inline std::string site_example() {
  return documented_examples()[0];
}
inline std::string rigs_example() {
  return documented_examples()[1];
}
inline std::string rules_example() {
  return documented_examples()[2];
}
inline std::string snow_example() {
  return documented_examples()[3];
}

/// The text with the first `from` in it changed, which must be there.
inline std::string changed(std::string text, const std::string& from, const std::string& to) {
  const std::size_t at = text.find(from);
  REQUIRE_MESSAGE(at != std::string::npos, from);
  return text.replace(at, from.size(), to);
}

inline std::vector<std::string> lines_of(const std::vector<base::Fault>& faults) {
  std::vector<std::string> lines;
  for (const base::Fault& fault : faults) {
    lines.push_back(base::line_of(fault));
  }
  return lines;
}

/// The faults of a reading, or the one that made the file unreadable.
template <class Read>
std::vector<std::string> told_of(Read read) {
  try {
    return lines_of(read().faults);
  } catch (const base::BadInput& bad) {
    return {bad.what()};
  }
}

/// One way to break a file, and what a person is told.
struct Breakage {
  std::string from;
  std::string to;
  std::vector<std::string> lines;
};

}  // namespace rimehaul::testing
