// QR symbols, read back by somebody else's reader.
#include "ports/qrencode/qr.h"

#include <doctest/doctest.h>

#include <filesystem>
#include <fstream>
#include <string>

#include "told.h"

namespace rimehaul {

namespace {

namespace fs = std::filesystem;

/// What zbarimg (another implementation of ISO/IEC 18004) reads in a picture of the symbol, eight
/// dots to a module with the quiet zone of four modules that the standard asks for.
std::string read_back(const card::QrSymbol& symbol) {
  constexpr int kDots = 8;
  constexpr int kQuiet = 4;
  const fs::path path = fs::temp_directory_path() / "rimehaul-qr-test.pgm";
  {
    std::ofstream file{path, std::ios::binary};
    const int side = (symbol.side + 2 * kQuiet) * kDots;
    file << "P5\n" << side << ' ' << side << "\n255\n";
    for (int y = 0; y < side; ++y) {
      for (int x = 0; x < side; ++x) {
        const int row = y / kDots - kQuiet;
        const int column = x / kDots - kQuiet;
        const bool inside = row >= 0 && row < symbol.side && column >= 0 && column < symbol.side;
        const bool dark =
            inside && symbol.dark.at(static_cast<std::size_t>(row * symbol.side + column));
        file.put(static_cast<char>(dark ? 0 : 255));
      }
    }
  }
  const std::string text = testing::told_by("zbarimg -q --raw '" + path.string() + "' 2>/dev/null");
  fs::remove(path);
  return text;
}

}  // namespace

TEST_CASE("a phone reads from the symbol what was put into it") {
  const std::string digest =
      "RIMEHAUL CARD 20260201-0730-3F9A "
      "sha256:9f86d081884c7d659a2feaa0c55ad015a3bf4f1b2b0b822cd15d6c15b0f00a08";
  CHECK(read_back(ports::qrencode::qr_of(digest)) == digest + "\n");
  CHECK(read_back(ports::qrencode::qr_of("a")) == "a\n");
}

TEST_CASE("a symbol is square, and its three corners carry the finder pattern") {
  const auto symbol = ports::qrencode::qr_of("short");
  REQUIRE(symbol.dark.size() ==
          static_cast<std::size_t>(symbol.side) * static_cast<std::size_t>(symbol.side));
  const auto dark = [&](int row, int column) {
    return symbol.dark.at(static_cast<std::size_t>(row * symbol.side + column));
  };
  const int last = symbol.side - 1;
  for (int i = 0; i < 7; ++i) {
    CHECK(dark(0, i));
    CHECK(dark(i, last));
    CHECK(dark(last, i));
  }
}

TEST_CASE("text that fits into no symbol is our own fault and not a picture without meaning") {
  CHECK_THROWS((void)ports::qrencode::qr_of(std::string(2332, 'x')));
  CHECK_NOTHROW((void)ports::qrencode::qr_of(std::string(2331, 'x')));
}

}  // namespace rimehaul
