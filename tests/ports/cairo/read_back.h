// What other programs find in a printed sheet: pages, words, the size of its letters.
#pragma once

#include <doctest/doctest.h>

#include <algorithm>
#include <regex>
#include <string>

#include "told.h"

namespace rimehaul::testing {

inline int pages_of(const std::string& bytes) {
  const std::string info = told_of(bytes, "pdfinfo");
  std::smatch pages;
  REQUIRE(std::regex_search(info, pages, std::regex{"Pages: +([0-9]+)"}));
  return std::stoi(pages[1]);
}

/// All text with every run of white space as one blank, so that folding does not matter.
inline std::string words_of(const std::string& bytes) {
  return std::regex_replace(told_of(bytes, "pdftotext -raw", "-"), std::regex{"\\s+"}, " ");
}

/// The same of one page, from 1.
inline std::string words_of(const std::string& bytes, int page) {
  const std::string number = std::to_string(page);
  return std::regex_replace(told_of(bytes, "pdftotext -raw -f " + number + " -l " + number, "-"),
                            std::regex{"\\s+"}, " ");
}

inline int times_in(const std::string& text, const std::string& part) {
  int count = 0;
  for (std::size_t at = text.find(part); at != std::string::npos; at = text.find(part, at + 1)) {
    ++count;
  }
  return count;
}

/// The smallest letters, points.
inline double smallest_letters(const std::string& bytes) {
  const std::string pages = told_of(bytes, "pdftohtml -xml -stdout -zoom 1 -i");
  const std::regex size{"fontspec id=\"[0-9]+\" size=\"([0-9]+)\""};
  double smallest = 1000;
  for (std::sregex_iterator at{pages.begin(), pages.end(), size}; at != std::sregex_iterator{};
       ++at) {
    smallest = std::min(smallest, std::stod((*at)[1]));
  }
  return smallest;
}

}  // namespace rimehaul::testing
