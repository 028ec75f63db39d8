// The files of a Shapefile of any bytes. The first byte chooses what is looked for; then follow
// parts: one byte for the file, four for its length (the lowest first), and its bytes.
#include <algorithm>

#include "fuzz/input_folder.h"
#include "fuzz/look_at_layers.h"

namespace {

constexpr std::array<const char*, 5> kNames{"a.shp", "a.shx", "a.dbf", "a.prj", "a.cpg"};
constexpr std::size_t kHead = 5;

std::size_t length_in(std::string_view head) {
  std::size_t length = 0;
  for (std::size_t i = kHead - 1; i > 0; --i) {
    length = length << 8U | static_cast<unsigned char>(head[i]);
  }
  return length;
}

void write_parts(const rimehaul::fuzz::InputFolder& folder, std::string_view rest) {
  while (rest.size() >= kHead) {
    const std::string name = kNames.at(static_cast<unsigned char>(rest[0]) % kNames.size());
    const std::size_t length = std::min(length_in(rest), rest.size() - kHead);
    folder.write(name, rest.substr(kHead, length));
    rest.remove_prefix(kHead + length);
  }
}

}  // namespace

extern "C" int LLVMFuzzerTestOneInput(const std::uint8_t* bytes, std::size_t size) {
  using namespace rimehaul;
  static const fuzz::InputFolder folder;
  if (size < 1) {
    return 0;
  }
  folder.clear();
  write_parts(folder, fuzz::text_of(bytes + 1, size - 1));
  fuzz::read_and_look({folder.path(), "a.shp"}, bytes[0]);
  return 0;
}
