// The README's ten minutes and the reference's examples of `new`, run as they stand there.
#include <doctest/doctest.h>

#include <algorithm>
#include <filesystem>
#include <fstream>
#include <iomanip>
#include <sstream>

#include "app/desk.h"

namespace rimehaul::app {
namespace {

namespace fs = std::filesystem;
using testing::Desk;
using testing::Ran;
using testing::run_command;
using testing::text_in;

bool says(const std::string& text, std::string_view part) {
  return text.find(part) != std::string::npos;
}

std::string readme_section() {
  const std::string readme = text_in(fs::path{RIMEHAUL_ROOT} / "README.md");
  const std::size_t from = readme.find("## Your own files in ten minutes");
  REQUIRE(from != std::string::npos);
  return readme.substr(from, readme.find("\n## ", from) - from);
}

std::vector<std::string> lines_of(const std::string& text) {
  std::vector<std::string> lines;
  std::istringstream stream{text};
  for (std::string line; std::getline(stream, line);) {
    lines.push_back(line);
  }
  return lines;
}

/// What a line is found by: its key with the equals sign, or a table's head.
std::string key_of(const std::string& line) {
  return line.starts_with('[') ? line : line.substr(0, line.find('=') + 1);
}

/// Puts each line of the README in the place of the next one with its key, # or not.
void fill_in(const fs::path& path, const std::vector<std::string>& said) {
  std::vector<std::string> lines = lines_of(text_in(path));
  auto at = lines.begin();
  for (const std::string& line : said) {
    const std::string key = key_of(line);
    at = std::find_if(at, lines.end(), [&](const std::string& each) {
      return each.starts_with(key) || each.starts_with("# " + key);
    });
    REQUIRE_MESSAGE(at != lines.end(), path.string() << " has no place for " << line);
    *at = line;
    ++at;
  }
  std::ofstream file{path, std::ios::trunc};
  for (const std::string& line : lines) {
    file << line << '\n';
  }
}

std::vector<std::string> words_on(const Desk& desk, const std::string& line) {
  std::istringstream stream{line.substr(std::string{"    rimehaul "}.size())};
  std::vector<std::string> words;
  for (std::string word; stream >> std::quoted(word);) {
    if (word.starts_with("survey/")) {
      word = desk.given(word.substr(7));
    } else if (word == "fell" || word.starts_with("fell/")) {
      word = desk.path(word);
    }
    words.push_back(word);
  }
  return words;
}

TEST_CASE("the examples of `new` in the reference make folders") {
  int made = 0;
  for (const std::string& line :
       lines_of(text_in(fs::path{RIMEHAUL_ROOT} / "docs" / "commands.md"))) {
    if (line.starts_with("    rimehaul new ")) {
      const Desk desk;
      CHECK(run_command(words_on(desk, line)).status == Status::honest_no);
      CHECK(fs::exists(desk.path("fell/site.toml")));
      ++made;
    }
  }
  CHECK(made == 2);
}

TEST_CASE("the README's ten minutes lead from one's own files to the first card") {
  const Desk desk;
  std::vector<Ran> ran;
  std::vector<std::string> said;
  bool is_toml = false;
  for (const std::string& line : lines_of(readme_section())) {
    if (line.starts_with("    rimehaul ")) {
      ran.push_back(run_command(words_on(desk, line)));
    } else if (line == "```toml") {
      is_toml = true;
      said.clear();
    } else if (is_toml && line == "```") {
      is_toml = false;
      REQUIRE(said.size() > 1);
      const std::string file = said.front().substr(2);
      said.erase(said.begin());
      fill_in(desk.path("fell/" + file), said);
    } else if (is_toml) {
      said.push_back(line);
    }
  }
  REQUIRE(ran.size() == 3);
  CAPTURE(ran[1].out);
  CAPTURE(ran[2].out);
  CAPTURE(ran[2].err);
  CHECK(ran[0].status == Status::honest_no);
  CHECK(ran[1].status == Status::yes);
  CHECK(says(ran[1].out, "0 faults"));
  CHECK(ran[2].status == Status::yes);
  CHECK(text_in(desk.path("fell/first-card.pdf")).starts_with("%PDF"));
}

}  // namespace
}  // namespace rimehaul::app
