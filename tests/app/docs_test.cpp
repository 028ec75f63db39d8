// Every command that the README and the documents show, run as its reader would run it.
#include <doctest/doctest.h>

#include <algorithm>
#include <filesystem>
#include <fstream>
#include <iterator>
#include <string>
#include <vector>

#include "app/documents.h"
#include "app/program.h"
#include "app/workplace.h"

namespace rimehaul::app {
namespace {

namespace fs = std::filesystem;
using testing::blocks_in;
using testing::commands_in;
using testing::FencedBlock;
using testing::lines_in;
using testing::Ran;
using testing::run_command;
using testing::ShownCommand;
using testing::told_by_shell;
using testing::Workplace;

const fs::path kRoot{RIMEHAUL_ROOT};

/// README first, then everything under docs by name.
std::vector<fs::path> documents() {
  std::vector<fs::path> found;
  for (const auto& entry : fs::recursive_directory_iterator{kRoot / "docs"}) {
    if (entry.path().extension() == ".md") {
      found.push_back(entry.path());
    }
  }
  std::ranges::sort(found);
  found.insert(found.begin(), kRoot / "README.md");
  return found;
}

/// What a line is found by: its key with the equals sign, or a table's head.
std::string key_of(const std::string& line) {
  return line.starts_with('[') ? line : line.substr(0, line.find('=') + 1);
}

/// Puts each line of a document in the place of the file's next one with its key, # or not.
void fill_in(const fs::path& path, const std::vector<std::string>& said) {
  std::vector<std::string> lines = lines_in(path);
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

/// As a shell runs it. The scripts of the repository build and run these very tests: they are there
/// and can be read.
void run(const ShownCommand& shown) {
  CAPTURE(shown.line);
  const bool is_script = shown.line.starts_with("bash ");
  const std::string line =
      is_script ? "cd '" + kRoot.string() + "' && bash -n " + shown.line.substr(5) : shown.line;
  const testing::Told told =
      told_by_shell("rimehaul() { \"$rimehaul\" \"$@\"; }\n{ " + line + "\n} 2>&1");
  CAPTURE(told.out);
  CHECK(told.ended == shown.ends_with);
}

/// A folder that an earlier command made is filled in with what the document says to write there.
void follow(const FencedBlock& block) {
  if (block.kind == "sh") {
    for (const ShownCommand& command : commands_in(block)) {
      run(command);
    }
    return;
  }
  const bool names_file = block.kind == "toml" && block.lines.front().starts_with("# ");
  const fs::path file = names_file ? fs::path{"fell"} / block.lines.front().substr(2) : "";
  if (names_file && fs::exists(file)) {
    fill_in(file, {block.lines.begin() + 1, block.lines.end()});
  }
}

/// What the README's ten minutes have led to.
void check_first_card() {
  const Ran checked = run_command({"check", "fell"});
  CHECK(checked.status == Status::yes);
  CHECK(checked.out.find("0 faults") != std::string::npos);
  std::ifstream card{"fell/first-card.pdf", std::ios::binary};
  std::string start(4, ' ');
  card.read(start.data(), 4);
  CHECK(start == "%PDF");
}

std::string bytes_of(const fs::path& path) {
  std::ifstream file{path, std::ios::binary};
  return {std::istreambuf_iterator<char>{file}, std::istreambuf_iterator<char>{}};
}

/// Pictures that the commands draw anew stand in the repository too. One that has become old is
/// told and fails nothing: whoever changes a sheet makes it anew when the sheet is done.
void tell_old_pictures() {
  for (const auto& entry : fs::directory_iterator{"docs"}) {
    const fs::path kept = kRoot / "docs" / entry.path().filename();
    CHECK_MESSAGE(fs::exists(kept), kept.string());
    const bool same = bytes_of(entry.path()) == bytes_of(kept);
    WARN_MESSAGE(same, kept.string() << " is not what its command draws now");
  }
}

}  // namespace

TEST_CASE("every command of the documents ends as they say") {
  for (const fs::path& document : documents()) {
    CAPTURE(document.string());
    const Workplace workplace;
    for (const FencedBlock& block : blocks_in(document)) {
      follow(block);
    }
    if (document.filename() == "README.md") {
      check_first_card();
    }
    tell_old_pictures();
  }
}

TEST_CASE("no document shows a command outside of what is run") {
  for (const fs::path& document : documents()) {
    for (const std::string& line : lines_in(document)) {
      CAPTURE(document.string());
      CAPTURE(line);
      CHECK_FALSE(line.starts_with("    rimehaul "));
      CHECK_FALSE(line.starts_with("    bash "));
    }
  }
}

TEST_CASE("pictures and pages that the documents point to are there") {
  for (const fs::path& document : documents()) {
    for (const std::string& line : lines_in(document)) {
      for (std::size_t at = line.find("]("); at != std::string::npos;
           at = line.find("](", at + 1)) {
        const std::string target = line.substr(at + 2, line.find_first_of(")#", at + 2) - at - 2);
        if (!target.empty() && target.find("://") == std::string::npos) {
          CAPTURE(document.string());
          CAPTURE(target);
          CHECK(fs::exists(document.parent_path() / target));
        }
      }
    }
  }
}

TEST_CASE("the demo's question is answered with a card") {
  const Workplace workplace;
  std::string question;
  for (const std::string& line : lines_in("routes/demo.sh")) {
    if (!question.empty() || line.starts_with("\"$folder/rimehaul\"")) {
      question += line + "\n";
    }
    if (!question.empty() && !line.ends_with('\\')) {
      break;
    }
  }
  REQUIRE(!question.empty());
  const testing::Told told =
      told_by_shell("folder=\"$(dirname \"$rimehaul\")\"\nout=.\n{ " + question + "} 2>&1");
  CAPTURE(told.out);
  CHECK(told.ended == 0);
  for (const char* file : {"card.pdf", "card.pdf.record.json", "card.json", "card.gpx"}) {
    CHECK(fs::exists(file));
  }
}

}  // namespace rimehaul::app
