#include "ports/gdal/utf8.h"

#include <cpl_string.h>

#include "base/one_line.h"
#include "ports/gdal/gdal_guard.h"

namespace rimehaul::ports::gdal {

namespace {

/// The library lets half letters of UTF-16 pass, which have no place in UTF-8.
bool holds_surrogate(std::string_view text) {
  for (std::size_t at = text.find('\xed'); at != std::string_view::npos && at + 1 < text.size();
       at = text.find('\xed', at + 1)) {
    if (static_cast<unsigned char>(text[at + 1]) >= 0xa0) {
      return true;
    }
  }
  return false;
}

}  // namespace

bool is_utf8(std::string_view text) {
  return CPLIsUTF8(text.data(), static_cast<int>(text.size())) != 0 && !holds_surrogate(text);
}

std::string printable(std::string_view text) {
  if (is_utf8(text)) {
    return base::one_line(text);
  }
  const Text ascii{CPLForceToASCII(text.data(), static_cast<int>(text.size()), '?')};
  return base::one_line(ascii.get());
}

std::string short_line(std::string_view text) {
  constexpr std::size_t kMostBytes = 200;
  constexpr std::string_view kDots = "...";
  std::string line = printable(text);
  if (line.size() <= kMostBytes) {
    return line;
  }
  std::size_t end = kMostBytes - kDots.size();
  const auto within_a_letter = [&line](std::size_t at) {
    return (static_cast<unsigned char>(line[at]) & 0xc0U) == 0x80U;
  };
  while (within_a_letter(end)) {
    --end;
  }
  return line.substr(0, end) + std::string{kDots};
}

}  // namespace rimehaul::ports::gdal
