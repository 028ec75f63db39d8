// Whoever is cited by author and year stands in docs/references.md.
#include <doctest/doctest.h>

#include <algorithm>
#include <filesystem>
#include <fstream>
#include <regex>
#include <string>
#include <vector>

namespace {

namespace fs = std::filesystem;

const fs::path kRoot{RIMEHAUL_ROOT};

struct Citation {
  std::string words;
  std::vector<std::string> authors;
  std::string year;
};

std::vector<std::string> lines_of(const fs::path& file) {
  std::ifstream stream{file};
  std::vector<std::string> lines;
  for (std::string line; std::getline(stream, line);) {
    lines.push_back(line);
  }
  return lines;
}

/// "Hart, Nilsson and Raphael 1968", "Horn's (1981)", "Fierz et al. (2009)"; no dates, which go on
/// after their year.
std::vector<Citation> citations_in(const std::string& line) {
  const std::regex citation{
      R"(((?:[A-Z][a-z]+(?:, | and ))*[A-Z][a-z]+)(?:'s)?(?: et al\.)? \(?((?:18|19|20)[0-9]{2})(?![-0-9:]))"};
  const std::regex name{"[A-Z][a-z]+"};
  std::vector<Citation> found;
  // Datums and ellipsoids bear a name and a year as well.
  if (line.find("DATUM[") != std::string::npos || line.find("ELLIPSOID[") != std::string::npos) {
    return found;
  }
  for (std::sregex_iterator at{line.begin(), line.end(), citation}, end; at != end; ++at) {
    const std::string authors = (*at)[1];
    Citation one{.words = at->str(), .authors = {}, .year = (*at)[2]};
    for (std::sregex_iterator part{authors.begin(), authors.end(), name}; part != end; ++part) {
      one.authors.push_back(part->str());
    }
    found.push_back(one);
  }
  return found;
}

/// Whether one entry of the page has that year and names all these authors.
bool is_resolved(const Citation& citation, const std::vector<std::string>& page) {
  return std::ranges::any_of(page, [&](const std::string& line) {
    return line.starts_with("- ") && line.find("(" + citation.year + ")") != std::string::npos &&
           std::ranges::all_of(citation.authors, [&](const std::string& author) {
             return line.find(author) != std::string::npos;
           });
  });
}

std::vector<fs::path> files_under(const std::string& folder,
                                  const std::vector<std::string>& endings) {
  std::vector<fs::path> files;
  for (const auto& entry : fs::recursive_directory_iterator(kRoot / folder)) {
    if (std::ranges::find(endings, entry.path().extension().string()) != endings.end()) {
      files.push_back(entry.path());
    }
  }
  return files;
}

/// How many citations there are; each must be resolved.
std::size_t count_resolved(const std::vector<fs::path>& files) {
  const std::vector<std::string> page = lines_of(kRoot / "docs/references.md");
  std::size_t count = 0;
  for (const fs::path& file : files) {
    for (const std::string& line : lines_of(file)) {
      for (const Citation& citation : citations_in(line)) {
        CAPTURE(file.string());
        CAPTURE(citation.words);
        CHECK(is_resolved(citation, page));
        ++count;
      }
    }
  }
  return count;
}

}  // namespace

TEST_CASE("every author and year that a page of checks or the code cites is in the references") {
  CHECK(count_resolved(files_under("docs/checks", {".md"})) >= 1);
  CHECK(count_resolved(files_under("src", {".h", ".cpp"})) >= 15);
}

TEST_CASE("so is every one that the page of outside checks or a test cites") {
  CHECK(count_resolved({kRoot / "docs/outside-checks.md"}) >= 15);
  std::vector<fs::path> tests = files_under("tests", {".h", ".cpp"});
  std::erase(tests, kRoot / "tests/house/citations_test.cpp");  // it cites nobody on purpose
  CHECK(count_resolved(tests) >= 15);
}

TEST_CASE("every test that the page of outside checks names is there, and every row names one") {
  const std::regex path{"`(tests/[^`]+)`"};
  std::size_t rows = 0;
  for (const std::string& line : lines_of(kRoot / "docs/outside-checks.md")) {
    CAPTURE(line);
    const std::sregex_iterator first{line.begin(), line.end(), path};
    for (std::sregex_iterator at = first, end; at != end; ++at) {
      CHECK(fs::is_regular_file(kRoot / (*at)[1].str()));
    }
    if (line.starts_with("| ") && !line.starts_with("| What ")) {
      CHECK(first != std::sregex_iterator{});
      ++rows;
    }
  }
  CHECK(rows >= 50);
}

TEST_CASE("a citation is found however it is written, and one that nobody lists is not resolved") {
  const std::vector<std::string> page{"- Hart, P. E. and Raphael, B. (1968). A basis."};
  const auto one_in = [](const std::string& line) {
    const auto found = citations_in(line);
    REQUIRE(found.size() == 1);
    return found[0];
  };
  CHECK(is_resolved(one_in("steers it (Hart and Raphael 1968)."), page));
  CHECK(is_resolved(one_in("Hart's (1968) way"), page));
  CHECK(is_resolved(one_in("by Hart et al. (1968), page 3"), page));
  CHECK_FALSE(is_resolved(one_in("Hart and Raphael 1969"), page));
  CHECK_FALSE(is_resolved(one_in("Hart and Nobody 1968"), page));
  CHECK(citations_in("On 2026-02-01, rev. Made 2026-02-01T17:00:00Z").empty());
}
