// Every broken input of the tables gets its one clear line and its exit status, from the real
// commands.
#include <doctest/doctest.h>

#include <algorithm>
#include <nlohmann/json.hpp>
#include <optional>
#include <regex>

#include "app/broken_input.h"
#include "base/one_line.h"
#include "ports/gdal/utf8.h"

namespace rimehaul::testing {

namespace {

using app::Status;
using nlohmann::json;

/// "FOLDER" in a word or line stands for the folder of the site.
std::string placed(std::string text, const TinySite& site) {
  constexpr std::string_view kSite = "FOLDER";
  const std::string& folder = site.folder();
  for (std::size_t at = text.find(kSite); at != std::string::npos;
       at = text.find(kSite, at + folder.size())) {
    text.replace(at, kSite.size(), folder);
  }
  return text;
}

std::string line_wanted(const Said& said, const TinySite& site) {
  return placed(base::line_of({said.file, said.place, said.problem, said.remedy, {}}), site);
}

/// The same with every "line 12" as "line N".
std::string without_line_numbers(const std::string& line) {
  static const std::regex kNumber{"line [0-9]+"};
  return std::regex_replace(line, kNumber, "line N");
}

/// What holds for every line that a person gets: it is one, it can be printed, nothing of the
/// program's inside stands in it, and it says what to do.
void check_is_clear(const std::string& line, const Said& said) {
  CHECK(ports::gdal::is_utf8(line));
  CHECK_FALSE(base::has_controls(line));
  for (const char* inside :
       {"std::", "exception", "terminate", "nullptr", "what():", ".cpp", "basic_"}) {
    CAPTURE(inside);
    CHECK(line.find(inside) == std::string::npos);
  }
  CHECK_FALSE(said.problem.empty());
  CHECK_FALSE(said.remedy.empty());
}

/// The command says the wanted line and nothing else.
void check_says(const Ran& ran, Status status, const std::string& line) {
  CHECK(ran.status == status);
  CHECK(ran.out.empty());
  CHECK(without_line_numbers(ran.err) == line + "\n");
}

/// The faults of a site as `check --json` lists them, one line each.
std::vector<std::string> faults_listed(const std::string& report) {
  std::vector<std::string> lines;
  const json said = json::parse(report);
  for (const json& fault : said["faults"]) {
    if (fault["weight"] == "fault") {
      lines.push_back(without_line_numbers(
          base::line_of({fault["file"], fault["place"], fault["problem"], fault["remedy"], {}})));
    }
  }
  return lines;
}

enum class Reader { anybody, nobody };

Ran run_by(Reader reader, const std::vector<std::string>& words) {
  std::optional<AsNobody> nobody;
  if (reader == Reader::nobody) {
    nobody.emplace();
  }
  return run_command(words);
}

void check_files(const std::vector<BrokenFile>& table, Reader reader = Reader::anybody) {
  for (const BrokenFile& broken : table) {
    CAPTURE(broken.what);
    const TinySite site;
    broken.make(site);
    const std::string line = line_wanted(broken.said, site);
    check_is_clear(line, broken.said);
    CHECK_FALSE(broken.said.file.empty());
    check_says(run_by(reader, route_words(site)), Status::bad_input, line);
    const Ran checked = run_by(reader, {"check", site.folder(), "--json", "-"});
    if (broken.said.file == "site.toml" && checked.status == Status::bad_input) {
      check_says(checked, Status::bad_input, line);
    } else {
      CHECK(checked.status == Status::honest_no);
      CHECK(faults_listed(checked.out) == std::vector<std::string>{line});
    }
  }
}

void check_commands(const std::vector<BrokenCommand>& table) {
  for (const BrokenCommand& broken : table) {
    CAPTURE(broken.what);
    const TinySite site;
    broken.make(site);
    std::vector<std::string> words;
    for (const std::string& word : broken.words) {
      words.push_back(placed(word, site));
    }
    const std::string line = line_wanted(broken.said, site);
    check_is_clear(line, broken.said);
    check_says(run_command(words), broken.status, line);
  }
}

}  // namespace

TEST_CASE("a broken site.toml: one clear line, 3 from route, 1 or 3 from check") {
  check_files(broken_site_files());
}

TEST_CASE("broken rig sheets: one clear line each") {
  check_files(broken_rigs());
}

TEST_CASE("broken rules and snow reports: one clear line each") {
  check_files(broken_rules_and_snow());
}

TEST_CASE("broken heights: one clear line each") {
  check_files(broken_rasters());
}

TEST_CASE("broken trails, stations, zones and marks: one clear line each") {
  check_files(broken_trails());
  check_files(broken_places());
}

TEST_CASE("hostile names in a site, and hostile things under good names: one clear line each") {
  check_files(broken_names());
}

TEST_CASE("files that may not be read: one clear line each") {
  check_files(unreadable_files(), Reader::nobody);
}

TEST_CASE("options that make no sense: one clear line each, and 2") {
  check_commands(broken_options());
  check_commands(broken_questions());
}

TEST_CASE("hostile words on the command line: one clear line each") {
  check_commands(broken_words());
}

TEST_CASE("the tables hold far more than a hundred broken inputs") {
  std::size_t rows = broken_options().size() + broken_questions().size() + broken_words().size();
  for (const auto& table :
       {broken_site_files(), broken_rigs(), broken_rules_and_snow(), broken_rasters(),
        broken_trails(), broken_places(), broken_names(), unreadable_files()}) {
    rows += table.size();
  }
  CHECK(rows >= 310);
}

}  // namespace rimehaul::testing
