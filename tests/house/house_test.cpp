// The house: arrows point down, outside libraries stay in their rooms, and no room grows too big.
#include <doctest/doctest.h>

#include <algorithm>
#include <filesystem>
#include <fstream>
#include <map>
#include <regex>
#include <set>
#include <string>
#include <vector>

namespace {

namespace fs = std::filesystem;

const fs::path kRoot{RIMEHAUL_ROOT};

/// What each room may include beside itself; what those may include comes with them.
const std::map<std::string, std::vector<std::string>> kTable{
    {"base", {}},
    {"units", {"base"}},
    {"geo", {"units"}},
    {"terrain", {"geo"}},
    {"trails", {"geo"}},
    {"rig", {"units"}},
    {"snow", {"terrain"}},
    {"hazard", {"terrain", "trails"}},
    {"passage", {"trails", "rig", "snow", "hazard"}},
    {"crossing", {"passage"}},
    {"search", {"passage", "crossing"}},
    {"audit", {"passage"}},
    {"day", {"audit", "search"}},
    {"card", {"day"}},
    {"ports/gdal", {"card"}},
    {"ports/proj", {"card"}},
    {"ports/geos", {"card"}},
    {"ports/toml", {"card"}},
    {"ports/json", {"card"}},
    {"ports/openssl", {"card"}},
    {"ports/date", {"card"}},
    {"ports/cairo", {"card"}},
    {"ports/qrencode", {"card"}},
    {"ports/qpdf", {"card"}},
    {"app",
     {"ports/gdal", "ports/proj", "ports/geos", "ports/toml", "ports/json", "ports/openssl",
      "ports/date", "ports/cairo", "ports/qrencode", "ports/qpdf"}},
};

/// The one room in which an outside library's headers may be named, by how they begin.
const std::map<std::string, std::string> kOutside{
    {"boost/", "search"},          {"gdal", "ports/gdal"},    {"ogr", "ports/gdal"},
    {"cpl_", "ports/gdal"},        {"sqlite3", "ports/gdal"}, {"proj", "ports/proj"},
    {"geos", "ports/geos"},        {"toml++/", "ports/toml"}, {"nlohmann/", "ports/json"},
    {"openssl/", "ports/openssl"}, {"CLI/", "app"},           {"cairo", "ports/cairo"},
    {"pango/", "ports/cairo"},     {"date/", "ports/date"},   {"qrencode", "ports/qrencode"},
    {"qpdf/", "ports/qpdf"},
};

/// Standard headers that bring handles or clocks, or that are too heavy for a header.
const std::set<std::string> kNotInCore{"fstream", "iostream", "filesystem",
                                       "ctime",   "thread",   "functional"};

struct Include {
  fs::path file;  ///< relative to src/
  std::string name;
  bool quoted = false;
};

std::string room_of(const fs::path& file) {
  const auto parts = std::vector<fs::path>(file.begin(), file.end());
  return parts.front() == "ports" ? "ports/" + parts.at(1).string() : parts.front().string();
}

std::vector<fs::path> sources() {
  std::vector<fs::path> found;
  for (const auto& entry : fs::recursive_directory_iterator(kRoot / "src")) {
    const auto extension = entry.path().extension();
    if (entry.is_regular_file() && (extension == ".h" || extension == ".cpp")) {
      found.push_back(fs::relative(entry.path(), kRoot / "src"));
    }
  }
  std::ranges::sort(found);
  return found;
}

std::vector<std::string> lines_of(const fs::path& file) {
  std::ifstream stream{file};
  std::vector<std::string> lines;
  for (std::string line; std::getline(stream, line);) {
    lines.push_back(line);
  }
  return lines;
}

std::vector<Include> includes() {
  const std::regex pattern{R"(^\s*#\s*include\s*(["<])([^">]+)[">])"};
  std::vector<Include> found;
  for (const fs::path& file : sources()) {
    for (const std::string& line : lines_of(kRoot / "src" / file)) {
      std::smatch match;
      if (std::regex_search(line, match, pattern)) {
        found.push_back({file, match[2], match[1] == "\""});
      }
    }
  }
  return found;
}

std::set<std::string> reachable(const std::string& room) {
  std::set<std::string> rooms{room};
  for (const std::string& next : kTable.at(room)) {
    rooms.merge(reachable(next));
  }
  return rooms;
}

bool is_core(const std::string& room) {
  return room != "app" && !room.starts_with("ports/");
}

TEST_CASE("every room of the house stands in the table") {
  REQUIRE(sources().size() > 50);
  for (const fs::path& file : sources()) {
    CAPTURE(file);
    CHECK(kTable.contains(room_of(file)));
  }
}

TEST_CASE("arrows point down: a room includes only what its row of the table reaches") {
  for (const Include& include : includes()) {
    if (!include.quoted) {
      continue;
    }
    CAPTURE(include.file);
    CAPTURE(include.name);
    CHECK(fs::exists(kRoot / "src" / include.name));
    CHECK(reachable(room_of(include.file)).contains(room_of(include.name)));
  }
}

TEST_CASE("an outside library is named only in its own room, and there only in .cpp files") {
  for (const Include& include : includes()) {
    if (include.quoted) {
      continue;
    }
    CAPTURE(include.file);
    CAPTURE(include.name);
    const auto owner = std::ranges::find_if(
        kOutside, [&](const auto& pair) { return include.name.starts_with(pair.first); });
    if (owner != kOutside.end()) {
      CHECK(room_of(include.file) == owner->second);
      CHECK(include.file.extension() == ".cpp");
    } else {
      const bool standard = include.name.find('/') == std::string::npos &&
                            include.name.find('.') == std::string::npos;
      const bool system = include.name.starts_with("sys/") || include.name == "unistd.h" ||
                          include.name == "fcntl.h" || include.name == "pwd.h";
      CHECK((standard || (system && !is_core(room_of(include.file)))));
    }
  }
}

TEST_CASE("the core holds no file handles, starts no threads and reads no clock") {
  for (const Include& include : includes()) {
    if (is_core(room_of(include.file))) {
      CAPTURE(include.file);
      CAPTURE(include.name);
      CHECK_FALSE(kNotInCore.contains(include.name));
    }
  }
  for (const fs::path& file : sources()) {
    if (!is_core(room_of(file))) {
      continue;
    }
    for (const std::string& line : lines_of(kRoot / "src" / file)) {
      CAPTURE(file);
      CAPTURE(line);
      CHECK(line.find("system_clock") == std::string::npos);
      CHECK(line.find("steady_clock") == std::string::npos);
      CHECK(line.find("getenv") == std::string::npos);
    }
  }
}

TEST_CASE("no source file is longer than 300 lines, and each opens by saying what it is for") {
  for (const fs::path& file : sources()) {
    const auto lines = lines_of(kRoot / "src" / file);
    CAPTURE(file);
    CHECK(lines.size() <= 300);
    REQUIRE_FALSE(lines.empty());
    const bool implements_header =
        file.extension() == ".cpp" && lines.front().starts_with("#include \"");
    CHECK((lines.front().starts_with("// ") || implements_header));
  }
}

TEST_CASE("every header is read once however often it is included") {
  for (const fs::path& file : sources()) {
    if (file.extension() == ".h") {
      CAPTURE(file);
      const auto lines = lines_of(kRoot / "src" / file);
      CHECK(std::ranges::count(lines, "#pragma once") == 1);
    }
  }
}

TEST_CASE("the top level holds what was agreed and nothing else") {
  const std::set<std::string> agreed{"CMakeLists.txt", "README.md",   "DEVELOPERS.md", "src",
                                     "tests",          "dem-samples", "routes",        "docs"};
  for (const auto& entry : fs::directory_iterator(kRoot)) {
    const std::string name = entry.path().filename().string();
    CAPTURE(name);
    CHECK((agreed.contains(name) || name.starts_with(".") || name.starts_with("build")));
  }
}

}  // namespace
